/**
 * One figure of the bench, and how it is taken.
 *
 * @packageDocumentation
 */

export type Measured = {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  /** At most this; `null` for a figure that stands for comparison. */
  readonly budget: number | null;
  readonly note?: string;
};

/** The middle of an odd number of timings, milliseconds; a first run warms up and does not count. */
export async function medianMs(runs: number, work: () => unknown | Promise<unknown>): Promise<number> {
  await work();
  const times: number[] = [];
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  times.sort((one, other) => one - other);
  return times[Math.floor(times.length / 2)] ?? Number.NaN;
}
