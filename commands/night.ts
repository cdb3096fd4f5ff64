/**
 * `night`: when it is dark and where the Moon is, for one night or many.
 *
 * @packageDocumentation
 */
import { longestInterval, totalHours } from "../core/interval.ts";
import type { Night, NightTimes } from "../core/night/night.ts";
import { nightTimes } from "../core/night/night-times.ts";
import type { Site } from "../core/site.ts";
import { type Answer, type Figure, type FollowUp, isoOrNull } from "./answer.ts";
import type { NightChart } from "./chart.ts";
import type { Command } from "./command.ts";
import { keptOptions } from "./kept-options.ts";
import { nightPicture } from "./night-picture.ts";
import { siteFigures, spanFigures } from "./object-figures.ts";
import { nightsOf } from "./read/night.ts";
import { NIGHT, NIGHTS, SITE } from "./read/options.ts";
import { siteOf } from "./read/site.ts";
import type { Request } from "./request.ts";
import { clockHours, dateWords, durationWords, shortDateWords } from "./words/clock.ts";
import {
  darknessWords,
  litWords,
  moonPassageWords,
  moonWords,
  nightsTable,
  twilightTable,
  windowMark,
} from "./words/night-words.ts";

export const night: Command = {
  definition: {
    name: "night",
    description: "When it is dark, and where the Moon is",
    options: [SITE, NIGHT, NIGHTS],
  },
  audience: "member",

  async answer(request, context) {
    const site = await siteOf(request, context);
    const nights = nightsOf(request, site);
    const [first] = nights;
    return request.options.nights === undefined && first !== undefined
      ? describeNight(site, nightTimes(site, first), request)
      : describeNights(
          site,
          nights.map((each) => nightTimes(site, each)),
          request,
        );
  },
};

function describeNight(site: Site, times: NightTimes, request: Request): Answer {
  return {
    title: `${site.name}, the night of ${dateWords(times.night.date)}`,
    summary: `${darknessWords(times)} ${moonWords(times)}`,
    sections: [
      { heading: "Sun", lines: [levelWords(times.night)], table: twilightTable(times) },
      { heading: "Moon", lines: [`${capitalised(moonPassageWords(times))}; ${litWords(times)}.`] },
    ],
    charts: [nightChart(site, times)],
    cautions: [],
    next: followUps(request, [
      { label: "What fits this night", command: "tonight", options: { night: times.night.date } },
      { label: "The weather", command: "forecast", options: { night: times.night.date } },
      { label: "A month of nights", command: "night", options: { night: times.night.date, nights: 30 } },
    ]),
    figures: nightFigures(site, times),
    credits: [],
  };
}

function describeNights(site: Site, nights: readonly NightTimes[], request: Request): Answer {
  const best = darkestOf(nights);
  return {
    title: `${site.name}: ${nights.length === 1 ? "one night" : `${nights.length} nights`}`,
    summary: summaryOfNights(nights, best),
    sections: [
      {
        heading: "",
        lines: nights.slice(0, 1).map((times) => levelWords(times.night)),
        table: nightsTable(nights),
      },
    ],
    charts: [],
    cautions: [],
    next:
      best === null
        ? []
        : followUps(request, [
            {
              label: `The night of ${shortDateWords(best.night.date)}`,
              command: "night",
              options: { night: best.night.date },
            },
            {
              label: `What fits on ${shortDateWords(best.night.date)}`,
              command: "tonight",
              options: { night: best.night.date },
            },
          ]),
    figures: { nights: nights.map((times) => nightFigures(site, times)) },
    credits: [],
  };
}

/** The night with the most darkness free of the Moon; the earlier of two alike; `null` when none has any. */
function darkestOf(nights: readonly NightTimes[]): NightTimes | null {
  let best: NightTimes | null = null;
  let most = 0;
  for (const times of nights) {
    const hours = totalHours(times.moonFreeDarkWindows);
    if (hours > most) [best, most] = [times, hours];
  }
  return best;
}

function summaryOfNights(nights: readonly NightTimes[], best: NightTimes | null): string {
  if (best === null) {
    return nights.some((times) => times.darkWindows.length > 0)
      ? "The Moon is up through all the darkness there is."
      : "None of them gets truly dark.";
  }
  const most = totalHours(best.moonFreeDarkWindows);
  const alike = nights.filter((times) => totalHours(times.moonFreeDarkWindows) >= most / 2).length;
  const longest = `Most darkness without the Moon: ${durationWords(most)} on ${dateWords(best.night.date)}`;
  if (nights.length === 1) return `${longest}.`;
  return `${longest}; at least half as much on ${alike} of the ${nights.length} nights.`;
}

/** What the times hold for. */
function levelWords(which: Night): string {
  return `Times are those of ${which.timeZone}, for a level horizon.`;
}

function capitalised(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}

/** The same site again, where one was named. */
function followUps(request: Request, asked: readonly FollowUp[]): readonly FollowUp[] {
  const where = keptOptions(request, ["site"]);
  return asked.map((one) => ({ ...one, options: { ...one.options, ...where } }));
}

function nightChart(site: Site, times: NightTimes): NightChart {
  const darkness = darknessWords(times);
  const window = longestInterval(times.workingWindows);
  return nightPicture({
    site,
    times,
    hours: [],
    paths: [],
    window: windowMark(times),
    title: darkness.replace(/\.$/, ""),
    alt: `The twilights of the night${window === null ? "" : `, a window of ${durationWords(clockHours([window]))}`}, and the Moon's height. ${darkness} ${moonWords(times)}`,
    cautions: [],
  });
}

function nightFigures(site: Site, times: NightTimes): { readonly [name: string]: Figure } {
  return {
    site: siteFigures(site),
    night: times.night.date,
    sunset: isoOrNull(times.sunset),
    civilDusk: isoOrNull(times.civilDusk),
    nauticalDusk: isoOrNull(times.nauticalDusk),
    astronomicalDusk: isoOrNull(times.astronomicalDusk),
    astronomicalDawn: isoOrNull(times.astronomicalDawn),
    nauticalDawn: isoOrNull(times.nauticalDawn),
    civilDawn: isoOrNull(times.civilDawn),
    sunrise: isoOrNull(times.sunrise),
    moon: {
      rise: isoOrNull(times.moon.rise),
      set: isoOrNull(times.moon.set),
      illuminatedFraction: times.moon.illuminatedFraction,
      phaseAngleDeg: times.moon.phaseAngleDeg,
      waxing: times.moon.waxing,
    },
    darkWindows: spanFigures(times.darkWindows),
    moonFreeDarkWindows: spanFigures(times.moonFreeDarkWindows),
    deepestTwilight: times.deepestTwilight,
    workingWindows: spanFigures(times.workingWindows),
  };
}
