/**
 * Negative figures as they are printed.
 *
 * @packageDocumentation
 */

/** `−0.4`: the minus of print, which does not break or look like a dash. */
export function withMinus(figure: number | string): string {
  return String(figure).replace("-", "−");
}
