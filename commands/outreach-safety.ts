import { AUDIENCES, HEAVY_TELESCOPE_MM } from "../config/outreach-evenings.ts";
import { COLD_CELSIUS } from "../core/cautions.ts";
import { needsDarkness } from "../core/outreach/sights.ts";
import { weatherAt } from "../core/weather/interpolate.ts";
import type { Answer } from "./answer.ts";
import { cautionsFor } from "./cautions.ts";
import { type PublicEvening, pointingsOf } from "./outreach-evening.ts";
import { endToSunriseMinutes } from "./pointings.ts";
import type { ChecklistFacts } from "./words/checklist-words.ts";
import { clockTime } from "./words/clock.ts";

/** From here on the Moon lights the ground. */
const BRIGHT_MOON = 0.4;

/** What the checklist asks of a plan. */
export function checklistFacts(evening: PublicEvening): ChecklistFacts {
  const { situation, instruments, setUp, stations } = evening;
  const { sunset } = situation.times;
  const telescopes = instruments.filter((instrument) => instrument.kind === "telescope");
  const stops = stations.flatMap((station) => station.stops);
  const zone = situation.site.timeZone;
  return {
    setUp: clockTime(setUp, zone),
    sunset: sunset !== null && sunset > setUp ? clockTime(sunset, zone) : null,
    children: AUDIENCES[evening.audience].children,
    telescopes: telescopes.length > 0,
    binoculars: instruments.some(({ kind }) => kind === "binoculars"),
    eyes: instruments.some(({ kind }) => kind === "eyes"),
    heavy: telescopes.some(({ apertureMm }) => apertureMm >= HEAVY_TELESCOPE_MM),
    needsDarkness: stops.some(({ sight }) => needsDarkness(sight.what.kind)),
    brightMoon:
      situation.times.moon.illuminatedFraction >= BRIGHT_MOON &&
      stops.some(({ sight }) => sight.what.kind === "moon"),
    dew: evening.verdict.dew.length > 0,
    cold: lowestOf(evening) !== null && (lowestOf(evening) ?? 0) <= COLD_CELSIUS,
  };
}

/** Coldest of the session's two ends, °C; `null` without a forecast. */
function lowestOf({ verdict, session }: PublicEvening): number | null {
  const found = [session.start, session.end].flatMap(
    (at) => weatherAt(verdict.hours, at)?.temperatureCelsius ?? [],
  );
  return found.length === 0 ? null : Math.min(...found);
}

/** The solar caution comes with anything near the Sun, and with gear that stands out before sunset. */
export function planCautions(evening: PublicEvening): Answer["cautions"] {
  const { situation, session, instruments, setUp, verdict } = evening;
  const { sunset, sunrise } = situation.times;
  const telescopes = instruments.filter((instrument) => instrument.kind === "telescope");
  const inDaylight = (sunset !== null && setUp < sunset) || (sunrise !== null && session.end > sunrise);
  return cautionsFor({
    solar: inDaylight,
    pointings: pointingsOf(evening),
    endToSunriseMinutes: endToSunriseMinutes(situation.times, session.end),
    lowestCelsius: lowestOf(evening),
    dewExpected: verdict.dew.length > 0,
    publicSession: true,
    children: AUDIENCES[evening.audience].children,
    laser: instruments.some(({ kind }) => kind === "eyes"),
    mainsPower: telescopes.length > 0,
    awayFromHome: true,
    heavyGear: telescopes.some(({ apertureMm }) => apertureMm >= HEAVY_TELESCOPE_MM),
  });
}
