/**
 * Where the words for steadiness and transparency change. Common practice, and called rough.
 *
 * @packageDocumentation
 */
import type { SteadinessLimits } from "../core/weather/steadiness.ts";
import type { TransparencyLimits } from "../core/weather/transparency.ts";

/** Wind near 250 hPa, metres per second. */
export const STEADINESS: SteadinessLimits = {
  steadyBelowMetresPerSecond: 20,
  unsteadyAboveMetresPerSecond: 40,
};

/** Aerosol optical depth at 550 nm. */
export const TRANSPARENCY: TransparencyLimits = { clearUpTo: 0.12, hazyAbove: 0.3 };
