/**
 * The stand-in's own clock: real time plus an offset that a test moves.
 *
 * Ids, nonces, rate limits and the three seconds of an interaction all go by it.
 *
 * @packageDocumentation
 */

/** Milliseconds at which Discord's ids begin: 2015-01-01. */
const DISCORD_EPOCH_MS = 1_420_070_400_000;

export class StandInClock {
  private offsetMs = 0;
  private counter = 0;

  now(): number {
    return Date.now() + this.offsetMs;
  }

  advance(ms: number): void {
    this.offsetMs += ms;
  }

  /** Makes it `at` now; it runs on from there. */
  set(at: Date): void {
    this.offsetMs = at.getTime() - Date.now();
  }

  /** An id that sorts by time, as Discord makes them. */
  snowflake(): string {
    this.counter = (this.counter + 1) % 4096;
    return ((BigInt(this.now() - DISCORD_EPOCH_MS) << 22n) + BigInt(this.counter)).toString();
  }
}

/** When an id was made. */
export function snowflakeMs(id: string): number {
  return Number(BigInt(id) >> 22n) + DISCORD_EPOCH_MS;
}
