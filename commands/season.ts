/**
 * `season`: one object through a year, month by month, and its best weeks.
 *
 * @packageDocumentation
 */
import { DateTime } from "luxon";
import type { Site } from "../core/site.ts";
import type { FixedPlace } from "../core/targets/placer.ts";
import {
  type BestWeeks,
  bestWeeks,
  neverClears,
  type SeasonMonth,
  seasonMonths,
  seasonNights,
} from "../core/targets/season.ts";
import type { Target } from "../core/targets/sky-object.ts";
import type { Clearance } from "../core/targets/visibility.ts";
import type { Answer } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import { cautionsFor } from "./cautions.ts";
import type { SeasonChart } from "./chart.ts";
import type { Command } from "./command.ts";
import { keptOptions } from "./kept-options.ts";
import { clearanceOf } from "./looking.ts";
import { objectFigures } from "./object-figures.ts";
import { pointingAt } from "./pointings.ts";
import { nightOf } from "./read/night.ts";
import { NIGHT, RIG, SITE, TARGET } from "./read/options.ts";
import { rigOf } from "./read/rig.ts";
import { siteOf } from "./read/site.ts";
import { targetOf } from "./read/target.ts";
import type { Request } from "./request.ts";
import { durationWords } from "./words/clock.ts";
import { shortName, targetName } from "./words/target-words.ts";

const NIGHTS_IN_A_YEAR = 365;

export const season: Command = {
  definition: {
    name: "season",
    description: "A year of one object: dark, Moon-free hours a month, and the best weeks",
    options: [TARGET, SITE, RIG, NIGHT],
  },
  audience: "member",

  async answer(request, context) {
    const what = targetOf(request, context);
    if (what.kind === "body") {
      throw new AskError(
        "moving-target",
        "target",
        `“target”: ${what.body} moves among the stars; a season is for fixed objects. Ask “planets” or “moon”.`,
      );
    }
    const site = await siteOf(request, context);
    const rig = await rigOf(request, context);
    return describeSeason(request, site, what, clearanceOf(rig, site));
  },
};

type FixedTarget = Exclude<Target, { kind: "body" }>;

function describeSeason(request: Request, site: Site, what: FixedTarget, clearance: Clearance): Answer {
  const place = what.kind === "object" ? what.object : what;
  const night = nightOf(request, site);
  const { first, nights, best } = wholeSeason(site, place, clearance, night.date);
  const months = seasonMonths(nights).slice(0, 12);
  const name = targetName(what);
  const summary =
    best === null
      ? neverSummary(site, place, clearance, night.noon, name)
      : `${name} is best from ${dayWords(best.from)} to ${dayWords(best.to)}: about ${durationWords(best.hoursPerNight)} of darkness a night above your skyline.`;
  // Whoever reads of a season by day may point there at once.
  const cautions = cautionsFor({ pointings: [pointingAt(site, what, request.at)] });
  return {
    title: `${name} through the year from ${site.name}`,
    summary,
    sections: [
      ...(best === null
        ? []
        : [
            {
              heading: "Hours a night",
              lines: [`Above the skyline and ${clearance.leastAltitudeDeg}°, the Sun below −18°.`],
              table: {
                columns: ["Month", "Moon down", "Moon or not"],
                rows: months.map((month) => [
                  monthWords(month.month),
                  durationWords(month.moonFreeHours),
                  durationWords(month.darkHours),
                ]),
              },
            },
          ]),
    ],
    charts: best === null ? [] : [seasonChart(name, months, best, first, summary, cautions)],
    cautions,
    next: followUps(request, what, best, night.date),
    figures: {
      object: objectFigures(what, site, night.noon),
      months: months.map((month) => ({ ...month })),
      best: best === null ? null : { ...best },
      nights: nights.map((each) => ({ ...each })),
    },
    credits: [],
  };
}

/** A year from the month of a night on, or from where the season that runs by then began. */
function wholeSeason(site: Site, place: FixedPlace, clearance: Clearance, date: string) {
  const monthOf = (day: string) => `${day.slice(0, 7)}-01`;
  const yearFrom = (first: string) => {
    const nights = seasonNights(site, place, clearance, first, NIGHTS_IN_A_YEAR);
    return { first, nights, best: bestWeeks(nights) };
  };
  const year = yearFrom(monthOf(date));
  const begun = year.best?.from ?? date;
  return begun < year.first ? yearFrom(monthOf(begun)) : year;
}

function neverSummary(
  site: Site,
  place: { readonly raDeg: number; readonly decDeg: number },
  clearance: Clearance,
  at: Date,
  name: string,
): string {
  return neverClears(site, place, clearance, at)
    ? `${name} never clears ${clearance.leastAltitudeDeg}° and the skyline of ${site.name}.`
    : `${name} is never up in true darkness at ${site.name}.`;
}

function monthWords(month: string): string {
  return DateTime.fromISO(`${month}-01`, { zone: "utc" }).setLocale("en-GB").toFormat("LLLL yyyy");
}

function dayWords(date: string): string {
  return DateTime.fromISO(date, { zone: "utc" }).setLocale("en-GB").toFormat("d LLLL");
}

function seasonChart(
  name: string,
  months: readonly SeasonMonth[],
  best: BestWeeks,
  firstDate: string,
  summary: string,
  cautions: Answer["cautions"],
): SeasonChart {
  const most = Math.max(...months.map(({ moonFreeHours }) => moonFreeHours));
  return {
    kind: "season",
    name: "season",
    title: `${name}: ${dayWords(best.from)} to ${dayWords(best.to)}`,
    alt: `Dark, Moon-free hours a night in each of twelve months, at most ${most.toFixed(1)}. ${summary}`,
    cautions: cautions.map(({ text }) => text),
    caption: "Dark, Moon-free hours a night above the skyline",
    months: months.map(({ month, moonFreeHours }) => ({
      label: DateTime.fromISO(`${month}-01`, { zone: "utc" }).setLocale("en-GB").toFormat("LLL"),
      hoursPerNight: moonFreeHours,
    })),
    best: {
      fromMonth: monthsFrom(firstDate, best.from),
      toMonth: monthsFrom(firstDate, best.to),
      label: "best weeks",
    },
  };
}

/** Months from the first of them, with its part of the month. */
function monthsFrom(firstDate: string, date: string): number {
  const from = DateTime.fromISO(firstDate, { zone: "utc" });
  const to = DateTime.fromISO(date, { zone: "utc" });
  return Math.min(12, to.diff(from, "months").months);
}

function followUps(
  request: Request,
  what: FixedTarget,
  best: BestWeeks | null,
  date: string,
): Answer["next"] {
  const target = shortName(what);
  const where = keptOptions(request, ["site"]);
  const tonight = { label: `${target} tonight`, command: "target", options: { target, ...where } };
  // A season that runs has opened.
  if (best === null || (best.from <= date && date <= best.to)) return [tonight];
  const opens = best.from > date ? best.from : yearAfter(best.from);
  return [
    tonight,
    { label: "When the season opens", command: "target", options: { target, night: opens, ...where } },
  ];
}

function yearAfter(date: string): string {
  return DateTime.fromISO(date, { zone: "utc" }).plus({ years: 1 }).toFormat("yyyy-MM-dd");
}
