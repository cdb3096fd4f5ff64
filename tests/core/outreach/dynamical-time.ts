/**
 * Dynamical time for tests against books and libraries that speak it.
 *
 * @packageDocumentation
 */

const UNIX_EPOCH_JD = 2_440_587.5;
const MS_PER_DAY = 86_400_000;

/** UTC of an instant given in dynamical time, by the TT − UTC of its year. */
export function fromDynamical(text: string, ttMinusUtcSeconds: number): Date {
  return new Date(Date.parse(text) - ttMinusUtcSeconds * 1000);
}

/** Julian ephemeris day of an instant since 2017, when TT − UTC became 69.184 s. */
export function ephemerisDay(at: Date): number {
  return UNIX_EPOCH_JD + (at.getTime() + 69_184) / MS_PER_DAY;
}

/** Instants spread over ten years, never at one hour of the day. */
export function spreadInstants(count: number): Date[] {
  return Array.from(
    { length: count },
    (_, i) => new Date(Date.UTC(2022, 0, 3, 5) + i * 8.7654321e9 * (36 / count)),
  );
}
