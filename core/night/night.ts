/**
 * A night and its times: what the rest of the core reads.
 *
 * A night is named by the local date on which it begins and runs from local noon
 * to the next local noon, so it may last 23 or 25 hours.
 *
 * @packageDocumentation
 */
import type { Interval } from "../interval.ts";

export type Night = {
  /** `YYYY-MM-DD`, the local date on which it begins. */
  readonly date: string;
  readonly timeZone: string;
  /** Local noon of `date`, and of the day after. */
  readonly noon: Date;
  readonly nextNoon: Date;
};

export type Twilight = "astronomical" | "nautical" | "civil" | "none";

/** Every crossing is `null` when it does not come that night. */
export type NightTimes = {
  readonly night: Night;
  readonly sunset: Date | null;
  readonly civilDusk: Date | null;
  readonly nauticalDusk: Date | null;
  readonly astronomicalDusk: Date | null;
  readonly astronomicalDawn: Date | null;
  readonly nauticalDawn: Date | null;
  readonly civilDawn: Date | null;
  readonly sunrise: Date | null;
  readonly moon: {
    readonly rise: Date | null;
    readonly set: Date | null;
    readonly illuminatedFraction: number;
    readonly phaseAngleDeg: number;
    readonly waxing: boolean;
  };
  /** Sun below −18° only; empty otherwise. */
  readonly darkWindows: readonly Interval[];
  readonly moonFreeDarkWindows: readonly Interval[];
  /** The deepest of the Sun's crossings that happens. */
  readonly deepestTwilight: Twilight;
  /** The dark windows, or the deepest twilight there is, down to the Sun below −6°; may be empty. */
  readonly workingWindows: readonly Interval[];
};
