/**
 * The weather's verdict on a public session: judged by the club's limits, over the session's own hours.
 *
 * @packageDocumentation
 */
import { type Interval, intervalHours, totalHours } from "../core/interval.ts";
import type { NightTimes } from "../core/night/night.ts";
import type { ModelForecast } from "../core/weather/forecast-hour.ts";
import type { ObservingLimits } from "../core/weather/observing-limits.ts";
import { type NightVerdict, nightVerdict } from "../core/weather/verdict.ts";
import { durationWords } from "./words/clock.ts";
import { verdictWords, worstWords } from "./words/weather-words.ts";

/** A night's times cut down to a session, by day or by night: all of it counts as time to be used. */
export function timesOfSession(times: NightTimes, session: Interval): NightTimes {
  return {
    ...times,
    night: { ...times.night, noon: session.start, nextNoon: session.end },
    sunrise: session.end,
    darkWindows: [session],
    moonFreeDarkWindows: [],
    deepestTwilight: "astronomical",
    workingWindows: [session],
  };
}

/** Judges a session as a night is judged. */
export function sessionVerdict(
  times: NightTimes,
  session: Interval,
  models: readonly ModelForecast[],
  limits: ObservingLimits,
  at: Date,
): NightVerdict {
  return nightVerdict(timesOfSession(times, session), models, limits, at);
}

/** `Forecast for the session: go, 2 h of 2 h usable; nothing against it.`, or that none is worth anything yet. */
export function sessionWeatherWords(
  times: NightTimes,
  session: Interval,
  verdict: NightVerdict,
  limits: ObservingLimits,
): string {
  if (verdict.kind === "unknown") {
    return verdict.leadNights > limits.outlookNights
      ? `No forecast is worth anything ${verdict.leadNights} nights ahead: look again ${limits.outlookNights} nights before.`
      : "No forecast is at hand for the session.";
  }
  const usable = `${durationWords(totalHours(verdict.usable))} of ${durationWords(intervalHours(session))} usable`;
  const sample = verdict.sample ? " (sample forecast)" : "";
  return `Forecast for the session${sample}: ${verdictWords(verdict)}, ${usable}; ${worstWords(verdict, timesOfSession(times, session))}.`;
}
