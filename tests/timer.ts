/**
 * Whether a wait kept its limit, told by a timer of the same process: on a busy machine both are late alike.
 *
 * @packageDocumentation
 */

/** Sets a timer; what comes back tells whether it has run out. */
export function timerOf(ms: number): () => boolean {
  let ranOut = false;
  setTimeout(() => {
    ranOut = true;
  }, ms).unref();
  return () => ranOut;
}
