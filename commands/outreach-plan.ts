/**
 * `outreach plan` by night: the running order by the clock, with what to point at, what to see and
 * what to say, and the checklist that follows from it.
 *
 * @packageDocumentation
 */

import { MOON_FEATURES } from "../config/moon-features.ts";
import { LEAST_TOWARDS_US, TERMINATOR } from "../config/outreach.ts";
import { CLOUD_PLAN } from "../config/outreach-checklist.ts";
import { AUDIENCES } from "../config/outreach-evenings.ts";
import { fallBackOf } from "../core/outreach/fall-back.ts";
import { globeSeen } from "../core/outreach/globe.ts";
import { featuresOnTerminator, type LunarFeatureKind } from "../core/outreach/lunar-terminator.ts";
import { moonDisc } from "../core/outreach/moon-disc.ts";
import type { Station, Stop } from "../core/outreach/running-order.ts";
import type { Answer, Figure, Section } from "./answer.ts";
import type { Context } from "./context.ts";
import { keptOptions } from "./kept-options.ts";
import { prominent } from "./moon-picture.ts";
import { siteFigures } from "./object-figures.ts";
import { type PublicEvening, publicEvening } from "./outreach-evening.ts";
import { checklistFacts, planCautions } from "./outreach-safety.ts";
import { sheetOf, sheetText } from "./outreach-sheet.ts";
import { instrumentWords } from "./read/instruments.ts";
import { limitsOf } from "./read/limits.ts";
import type { Request } from "./request.ts";
import { sessionWeatherWords } from "./session-weather.ts";
import { eveningChecklist } from "./words/checklist-words.ts";
import { clockSpan, clockTime, dateWords } from "./words/clock.ts";
import { type BodyDetails, guestWords } from "./words/guest-words.ts";
import { litWords } from "./words/night-words.ts";
import { listWords } from "./words/sky.ts";
import { whereWords } from "./words/where-words.ts";

/** A stop with the station it belongs to, in the order of the clock. */
type Turn = { readonly station: Station; readonly stop: Stop };

/** Answers `outreach plan` for a night. */
export async function planEvening(request: Request, context: Context): Promise<Answer> {
  const evening = await publicEvening(request, context);
  const { situation, session, verdict } = evening;
  const weather = sessionWeatherWords(situation.times, session, verdict, await limitsOf(request, context));
  return describePlan(request, evening, weather);
}

function describePlan(request: Request, evening: PublicEvening, weather: string): Answer {
  const { situation, session, audience } = evening;
  const { site, times, report } = situation;
  const turns = inOrder(evening.stations);
  const details = detailsOf(evening);
  const cautions = planCautions(evening);
  const zone = site.timeZone;
  const checklist = eveningChecklist(checklistFacts(evening));
  const title = `Public evening at ${site.name}, ${dateWords(times.night.date)}${evening.verdict.sample ? " (sample forecast)" : ""}`;
  const sections: Section[] = [
    {
      heading: "By the clock",
      lines: turns.map((turn) => turnLine(evening, turn, details)),
    },
    { heading: "Each guest", lines: evening.stations.map((station) => timeLine(station, evening)) },
    { heading: "If clouds come", lines: cloudLines(turns) },
    ...checklist.map(({ heading, lines }) => ({ heading: `Checklist: ${heading.toLowerCase()}`, lines })),
    {
      heading: "",
      lines: [
        weather,
        moonLine(evening),
        ...notShownLines(evening),
        ...evening.assumptions,
        ...report.problems,
      ],
    },
  ].filter(({ lines }) => lines.length > 0);
  const summary = summaryWords(evening, turns);
  const caption = `${clockSpan(session, zone)}, ${audienceWords(audience)}, ${listWords(evening.instruments.map(instrumentWords))}`;
  const onPaper = [
    ...evening.stations.map((station) => stationBlock(evening, station)),
    { heading: "If clouds come", lines: cloudLines(turns) },
    { heading: "Not to forget", lines: checklist.flatMap((part) => part.short) },
    { heading: "Weather", lines: [weather] },
  ].filter(({ lines }) => lines.length > 0);
  const sheet = sheetOf({ title, summary, sections: onPaper, cautions, caption });
  return {
    title,
    summary,
    sections,
    charts: [sheet],
    cautions,
    next: [
      {
        label: "Other evenings",
        command: "outreach",
        options: { subcommand: "dates", ...keptOptions(request, ["site", "audience"]) },
      },
      { label: "Tonight's Moon", command: "moon", options: keptOptions(request, ["site", "night"]) },
    ],
    figures: planFigures(evening, turns),
    credits: report.credits,
    attachments: [sheetText({ title, summary, sections, cautions, caption }, times.night.date)],
  };
}

function inOrder(stations: readonly Station[]): Turn[] {
  return stations
    .flatMap((station) => station.stops.map((stop) => ({ station, stop })))
    .sort((one, other) => one.stop.start.getTime() - other.stop.start.getTime());
}

/** A station's evening in short lines, for the printed page; the text file has every word. */
function stationBlock({ situation }: PublicEvening, { viewer, stops }: Station): Section {
  const { site } = situation;
  return {
    heading: capital(instrumentWords(viewer.instrument)),
    lines: stops.map(({ sight, start }) => {
      const where = whereWords(sight.track(start.getTime()), site.skyline);
      return `${clockTime(start, site.timeZone)} ${capital(sight.what.name)}: ${where}`;
    }),
  };
}

/** `19:00 Saturn, in the 80 mm telescope, to 19:20. Two fists above … You see … Say: “…”` */
function turnLine(evening: PublicEvening, { station, stop }: Turn, details: BodyDetails): string {
  const { site } = evening.situation;
  const { what, window, track } = stop.sight;
  const zone = site.timeZone;
  const where = whereWords(track(stop.start.getTime()), site.skyline);
  const moves =
    stop.end.getTime() >= window.end.getTime() - 60_000 && window.end < evening.session.end
      ? " Then it is lost: do not begin late."
      : "";
  const fallBack = fallBackOf(stop, evening.sights);
  const instead = fallBack === null ? "" : ` If cloud hides it: ${fallBack.what.name}.`;
  return `${clockTime(stop.start, zone)} ${capital(what.name)}, ${instrumentWords(station.viewer.instrument)}, to ${clockTime(stop.end, zone)}: ${where}.${moves} ${guestWords(stop.sight, details)} Say: “${what.line}”${instead}`;
}

function timeLine({ viewer, slotMinutes, stops }: Station, { guests, audience }: PublicEvening): string {
  const name = capital(instrumentWords(viewer.instrument));
  if (viewer.instrument.kind === "eyes") {
    return `${name}: everybody together, ${stops.length} ${stops.length === 1 ? "stop" : "stops"} of ${slotMinutes} min.`;
  }
  if (stops.length === 0) return `${name}: nothing to show this evening; leave it packed.`;
  const places = viewer.instrument.count;
  const seconds = Math.floor((slotMinutes * 60 * places) / guests);
  const wanted = AUDIENCES[audience].secondsPerGuest;
  const each = `${slotMinutes} min a stop, ${seconds >= 120 ? `${Math.floor(seconds / 60)} min` : `${seconds} s`} a guest for ${guests}`;
  return seconds < wanted
    ? `${name}: ${each}. That is less than the ${wanted} s one needs: put up another, or let in fewer at a time.`
    : `${name}: ${each}.`;
}

function cloudLines(turns: readonly Turn[]): string[] {
  const bright = [
    ...new Set(
      turns
        .map(({ stop }) => stop.sight.what)
        .filter(({ kind }) => kind === "moon" || kind === "planet")
        .map(({ name }) => name),
    ),
  ];
  return [
    bright.length === 0 ? CLOUD_PLAN.noBright : `${CLOUD_PLAN.gaps} Tonight that is ${listWords(bright)}.`,
    CLOUD_PLAN.indoors,
  ];
}

function summaryWords({ situation, session, stations }: PublicEvening, turns: readonly Turn[]): string {
  const zone = situation.site.timeZone;
  const span = clockSpan(session, zone);
  if (turns.length === 0) {
    return `From ${span} nothing clears the skyline in the dark that these guests would see: choose another evening.`;
  }
  const count = new Set(turns.map(({ stop }) => stop.sight.what.name)).size;
  const firsts = [...new Set(stations.flatMap(({ stops }) => stops[0]?.sight.what.name ?? []))];
  return `From ${span} ${count} things to show; begin with ${listWords(firsts)}.`;
}

function moonLine({ situation, sights }: PublicEvening): string {
  const isShown = sights.some(({ what }) => what.kind === "moon");
  return `The Moon is ${litWords(situation.times)}${isShown ? "" : "; in these hours it does not clear the skyline high enough to be shown"}.`;
}

function notShownLines({ notShown }: PublicEvening): string[] {
  if (notShown.length === 0) return [];
  return [
    `Asked for, and not in the order: ${listWords(notShown)}. It does not clear the skyline in the dark, leaves no time, or is too faint for these guests and instruments.`,
  ];
}

/** Lunar features that need no explaining: rilles and swirls are for those who look often. */
const PLAIN_TO_GUESTS: ReadonlySet<LunarFeatureKind> = new Set(["crater", "mountains", "bay", "scarp"]);

/** What is particular to this night of the Moon and Saturn. */
function detailsOf({ situation, session, stations }: PublicEvening): BodyDetails {
  const middle = new Date((session.start.getTime() + session.end.getTime()) / 2);
  const shows = (body: string) =>
    stations.some(({ stops }) =>
      stops.some(({ sight }) => sight.what.target.kind === "body" && sight.what.target.body === body),
    );
  const disc = shows("Moon") ? moonDisc(situation.site, middle) : null;
  const lit =
    disc === null
      ? []
      : featuresOnTerminator(MOON_FEATURES, disc, disc.libration, TERMINATOR, LEAST_TOWARDS_US);
  return {
    onTerminator: prominent(lit)
      .filter(({ feature }) => PLAIN_TO_GUESTS.has(feature.kind))
      .sort((one, other) => other.feature.diameterKm - one.feature.diameterKm)
      .map(({ feature }) => feature.name),
    ringTiltDeg: shows("Saturn") ? globeSeen("Saturn", null, middle).centre.latitudeDeg : null,
  };
}

function audienceWords(audience: PublicEvening["audience"]): string {
  switch (audience) {
    case "families":
      return "for families";
    case "school":
      return "for a school class";
    case "adults":
      return "for adults";
    case "mixed":
      return "for everybody";
  }
}

function planFigures(evening: PublicEvening, turns: readonly Turn[]): { readonly [name: string]: Figure } {
  const { situation, session, verdict } = evening;
  return {
    site: siteFigures(situation.site),
    night: situation.times.night.date,
    session: "night",
    start: session.start.toISOString(),
    end: session.end.toISOString(),
    setUp: evening.setUp.toISOString(),
    audience: evening.audience,
    guests: evening.guests,
    instruments: evening.instruments.map(instrumentFigure),
    stops: turns.map(({ station, stop }) => stopFigure(station, stop)),
    notShown: evening.notShown,
    verdict: verdict.kind === "unknown" ? null : verdict.kind,
    outlook: verdict.outlook,
    usableHours: verdict.usableHours,
    assumptions: evening.assumptions,
  };
}

function instrumentFigure(instrument: PublicEvening["instruments"][number]): Figure {
  return { ...instrument };
}

function stopFigure({ viewer, slotMinutes }: Station, { sight, start, end }: Stop): Figure {
  const place = sight.track(start.getTime());
  return {
    start: start.toISOString(),
    end: end.toISOString(),
    what: sight.what.name,
    kind: sight.what.kind,
    instrument: instrumentWords(viewer.instrument),
    slotMinutes,
    altitudeDeg: place.altitudeDeg,
    azimuthDeg: place.azimuthDeg,
    window: { start: sight.window.start.toISOString(), end: sight.window.end.toISOString() },
    power: sight.view.use.power,
    ease: sight.view.ease,
    contrastLevel: sight.view.level,
    apparentDeg: sight.view.apparentDeg,
  };
}

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}
