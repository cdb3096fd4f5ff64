/**
 * Who comes to a public evening, and what that asks of it.
 *
 * @packageDocumentation
 */

export type Audience = "families" | "school" | "adults" | "mixed";

/** What an audience asks for; the figures stand in `config/`. */
export type AudienceRules = {
  /** Children come: only what shows at first glance, and home by bedtime. */
  readonly children: boolean;
  /** The clock, `HH:MM`, before which people do not come. */
  readonly notBefore: string;
  /** When they have to leave, `HH:MM`: past midnight when it is smaller than `notBefore`. */
  readonly leave: string;
  /** At the eyepiece, queue and steps included. */
  readonly secondsPerGuest: number;
  /** Evenings on which they come more readily: 1 Monday to 7 Sunday. */
  readonly readyWeekdays: readonly number[];
  /** Likewise by day. */
  readonly readyDays: readonly number[];
  /** A surface must stand so far above the threshold of the eye. */
  readonly leastLevel: number;
  /** Stars must be so much brighter than the faintest that the instrument shows, magnitudes. */
  readonly leastMarginMag: number;
  /** Appeal times how well it shows: less than this is not worth the queue. */
  readonly leastWorth: number;
};
