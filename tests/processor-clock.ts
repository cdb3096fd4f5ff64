/**
 * How much processor time a piece of work takes, so that what else the machine does is left out.
 *
 * @packageDocumentation
 */

/** Starts counting this process's processor time; what comes back reads it, milliseconds. */
export function processorClock(): () => number {
  const before = process.cpuUsage();
  return () => {
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  };
}
