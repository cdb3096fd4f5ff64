/**
 * A public evening worked out: who, where, when, with what, in which order, under which weather.
 *
 * @packageDocumentation
 */

import {
  AUDIENCES,
  EYE_SLOT_MINUTES,
  GUESTS,
  PLANET_SUN_DEPTH_DEG,
  SET_UP_MINUTES,
  SLOT_MINUTES,
  SUN_DEPTH_DEG,
  USUAL_INSTRUMENTS,
  VIEWING,
} from "../config/outreach-evenings.ts";
import { LEAST_ALTITUDE_DEG } from "../config/ranking.ts";
import { type Pointing, SUN_GUARD_DEG } from "../core/cautions.ts";
import type { Interval } from "../core/interval.ts";
import type { Audience, AudienceRules } from "../core/outreach/audience.ts";
import { type Instrument, placesAt, type Viewer, viewerOf } from "../core/outreach/instruments.ts";
import { runningOrder, type Station } from "../core/outreach/running-order.ts";
import type { Session } from "../core/outreach/session.ts";
import { bodyOf, type Showable } from "../core/outreach/showable.ts";
import { type Sight, sightsOf } from "../core/outreach/sights.ts";
import type { NightVerdict } from "../core/weather/verdict.ts";
import { AskError } from "./ask-error.ts";
import type { Context } from "./context.ts";
import { pointingAt } from "./pointings.ts";
import { parseInstruments } from "./read/instruments.ts";
import { limitsOf } from "./read/limits.ts";
import { textOption } from "./read/numbers.ts";
import { said } from "./read/said.ts";
import { audienceOf, guestsOf, sessionOf } from "./read/session.ts";
import { targetOf } from "./read/target.ts";
import type { Request } from "./request.ts";
import { sessionVerdict } from "./session-weather.ts";
import { showablesOf, wantedShowable } from "./showables.ts";
import { type Situation, situationOf } from "./situation.ts";
import { targetName } from "./words/target-words.ts";

export type PublicEvening = {
  readonly situation: Situation;
  readonly session: Session;
  readonly audience: Audience;
  readonly guests: number;
  readonly instruments: readonly Instrument[];
  readonly stations: readonly Station[];
  readonly sights: readonly Sight[];
  /** Of the session, not of the whole night. */
  readonly verdict: NightVerdict;
  /** What was asked for and cannot be shown. */
  readonly notShown: readonly string[];
  /** When the gear is carried out. */
  readonly setUp: Date;
  readonly assumptions: readonly string[];
};

/** At most so many things may be asked for. */
const WANTED_AT_MOST = 12;
const MS_PER_MINUTE = 60_000;

/**
 * Works an evening out.
 *
 * @throws AskError when it lies in the past or by day, when anything cannot be read, or when something
 *   asked for stands near the Sun while it is up
 */
export async function publicEvening(request: Request, context: Context): Promise<PublicEvening> {
  const audience = audienceOf(request);
  const guests = guestsOf(request);
  const named = textOption(request, "instruments");
  const instruments = parseInstruments("instruments", named ?? USUAL_INSTRUMENTS);
  const wanted = wantedOf(request, context);
  const situation = await situationOf(request, context);
  const { site, times, report, conditions } = situation;
  const session = sessionOf(request, times, site.name);
  refusePast(session, request.at);
  refuseNearSun(situation, session, wanted);
  const rules = AUDIENCES[audience];
  const viewers = viewersOf(instruments);
  const listed = showablesOf(context.catalogue).filter(
    ({ name }) => !wanted.some((other) => other.name === name),
  );
  const sights = sightsOf({
    conditions,
    session,
    showables: [...wanted, ...listed],
    viewers,
    audience: rules,
    rules: {
      guests: GUESTS,
      sunDepthDeg,
      leastAltitudeDeg: LEAST_ALTITUDE_DEG.public,
    },
  });
  const stations = runningOrder(
    sights,
    viewers.map((viewer) => ({ viewer, slotMinutes: slotMinutes(viewer.instrument, guests, rules) })),
    session,
  );
  refuseStopsNearSun(situation, stations);
  return {
    situation,
    session,
    audience,
    guests,
    instruments,
    stations,
    sights,
    verdict: sessionVerdict(times, session, report.models, await limitsOf(request, context), request.at),
    notShown: wanted
      .filter(
        ({ name }) => !stations.some(({ stops }) => stops.some(({ sight }) => sight.what.name === name)),
      )
      .map(({ name }) => name),
    setUp: new Date(session.start.getTime() - SET_UP_MINUTES * MS_PER_MINUTE),
    assumptions: assumptionsOf(situation, named === null, textOption(request, "guests") === null, guests),
  };
}

/** What serves in the dark: instruments made for the Sun stay packed. */
function viewersOf(instruments: readonly Instrument[]): readonly Viewer[] {
  const forNight = instruments.filter(({ kind }) => kind !== "solar-telescope");
  if (forNight.length > 0) return forNight.map((instrument) => viewerOf(instrument, VIEWING));
  throw new AskError(
    "nothing-for-night",
    "instruments",
    "“instruments”: a solar telescope shows nothing by night; name another, or ask for session sun.",
  );
}

function wantedOf(request: Request, context: Context): readonly Showable[] {
  const text = textOption(request, "show");
  if (text === null) return [];
  const names = text
    .split(/[,;]/)
    .map((name) => name.trim())
    .filter((name) => name !== "");
  if (names.length === 0 || names.length > WANTED_AT_MOST) {
    throw new AskError(
      "too-many",
      "show",
      `“show” needs 1 to ${WANTED_AT_MOST} names with commas between, such as Saturn, M13.`,
    );
  }
  return names.map((name) => {
    const target = targetOf({ ...request, options: { show: name } }, context, "show");
    if (target.kind === "body" && target.body === "Sun") {
      throw new AskError(
        "sun-by-night",
        "show",
        "“show”: the Sun is shown in a Sun session alone, behind filters over the front: ask for session sun.",
      );
    }
    const showable = wantedShowable(context.catalogue, target);
    if (showable !== null) return showable;
    throw new AskError(
      "not-for-guests",
      "show",
      `“show”: ${said(targetName(target))} is nothing that guests can be shown; name an object or a planet.`,
    );
  });
}

function refusePast(session: Interval, at: Date): void {
  if (session.end > at) return;
  throw new AskError(
    "in-the-past",
    "night",
    "“night”: that evening is over; name one that is still to come.",
  );
}

/** Whatever an organiser names: never an instrument near the Sun while it is up. */
function refuseNearSun({ site }: Situation, session: Interval, wanted: readonly Showable[]): void {
  for (const { name, target } of wanted) {
    const [start, end] = [session.start.getTime(), session.end.getTime()];
    for (let ms = start; ms <= end; ms += 10 * MS_PER_MINUTE) {
      if (isNearRisenSun(pointingAt(site, target, new Date(ms)))) throw nearSun(name);
    }
  }
}

/** The last look at the finished order. */
function refuseStopsNearSun({ site }: Situation, stations: readonly Station[]): void {
  for (const { sight, start, end } of stations.flatMap(({ stops }) => stops)) {
    for (const at of [start, new Date((start.getTime() + end.getTime()) / 2), end]) {
      if (isNearRisenSun(pointingAt(site, sight.what.target, at))) throw nearSun(sight.what.name);
    }
  }
}

/** The upper limb on the horizon, refraction included; a little more, to be safe. */
const SUN_UP_DEG = -0.9;

function isNearRisenSun({ sunAltitudeDeg, sunSeparationDeg }: Pointing): boolean {
  return sunAltitudeDeg > SUN_UP_DEG && sunSeparationDeg <= SUN_GUARD_DEG;
}

function nearSun(name: string): AskError {
  return new AskError(
    "near-the-sun",
    "show",
    `“show”: ${said(name)} stands within ${SUN_GUARD_DEG}° of the Sun while it is up, and no instrument may point there: begin after sunset, or ask for session sun.`,
  );
}

/** How deep the Sun must stand before a thing is shown. */
export function sunDepthDeg(what: Showable): number {
  const body = bodyOf(what);
  return (body === null ? undefined : PLANET_SUN_DEPTH_DEG[body]) ?? SUN_DEPTH_DEG[what.kind];
}

/** So long that everybody gets a look, within reason. */
export function slotMinutes(instrument: Instrument, guests: number, rules: AudienceRules): number {
  if (instrument.kind === "eyes") return EYE_SLOT_MINUTES;
  const needed = (guests * rules.secondsPerGuest) / 60 / placesAt(instrument);
  const whole = 5 * Math.ceil(needed / 5);
  return Math.min(SLOT_MINUTES.max, Math.max(SLOT_MINUTES.min, whole));
}

/** Directions that the plan invites to look in, through all its stops. */
export function pointingsOf({ situation, stations }: PublicEvening): readonly Pointing[] {
  return stations.flatMap(({ stops }) =>
    stops.flatMap(({ sight, start, end }) =>
      [start, end].map((at) => pointingAt(situation.site, sight.what.target, at)),
    ),
  );
}

function assumptionsOf(
  situation: Situation,
  usualInstruments: boolean,
  usualGuests: boolean,
  guests: number,
): readonly string[] {
  return [
    ...situation.assumptions,
    ...(usualInstruments ? [`Instruments are taken as ${USUAL_INSTRUMENTS}: nobody named any.`] : []),
    ...(usualGuests ? [`${guests} guests are reckoned with: nobody gave a number.`] : []),
    `Telescopes are taken with eyepieces that give beams of ${VIEWING.exitPupilsMm.join(", ")} mm and fields of ${VIEWING.apparentFieldDeg}°, at most ${VIEWING.mostPower}×.`,
  ];
}
