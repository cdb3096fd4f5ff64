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
import type { ForecastReport } from "./context.ts";
import { durationWords } from "./words/clock.ts";
import { verdictWords, worstWords } from "./words/weather-words.ts";

const MS_PER_DAY = 86_400_000;

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

/** Whether it is worth asking the forecast at all: a model is at hand, and the session within its reach. */
export function mayBeForetold(
  session: Interval,
  { models }: ForecastReport,
  limits: ObservingLimits,
  at: Date,
): boolean {
  const daysAhead = (session.start.getTime() - at.getTime()) / MS_PER_DAY;
  return models.length > 0 && daysAhead <= limits.outlookNights + 1;
}

/** A verdict that says something, else `null`. */
export function knownVerdict(verdict: NightVerdict): NightVerdict | null {
  return verdict.kind === "unknown" ? null : verdict;
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
