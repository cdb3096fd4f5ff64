/**
 * A comet of typed elements through a span: its perihelion, and where to look night by night.
 *
 * @packageDocumentation
 */
import { COMET_ROWS, PLANET_RULES } from "../config/outreach.ts";
import { SUN_GUARD_DEG } from "../core/cautions.ts";
import type { Night } from "../core/night/night.ts";
import { nightTimes } from "../core/night/night-times.ts";
import { highestIn } from "../core/outreach/body-night.ts";
import { type CometElements, type CometPlace, cometPlace } from "../core/outreach/comet-orbit.ts";
import type { Site } from "../core/site.ts";
import { fixedTrack } from "../core/targets/placer.ts";
import { visibleIntervals } from "../core/targets/visibility.ts";
import type { Figure, Section } from "./answer.ts";
import { type EventSpan, minutesAfter, type SkyEvent, utcDate } from "./sky-event.ts";
import { clockTime, shortDateWords } from "./words/clock.ts";
import { dayClockWords } from "./words/day-words.ts";
import { compassWords, declinationWords, rightAscensionWords } from "./words/sky.ts";

/** Where a comet stands in one night. */
export type CometNight = {
  readonly night: Night;
  readonly place: CometPlace;
  /** When it stands highest in the dark over the skyline; `null` when it does not. */
  readonly best: { readonly at: Date; readonly altitudeDeg: number; readonly azimuthDeg: number } | null;
};

/** Nights spread over a span, with the comet in each. */
export function cometNights(site: Site, comet: CometElements, nights: readonly Night[]): CometNight[] {
  const every = Math.max(1, Math.ceil(nights.length / COMET_ROWS));
  return nights
    .filter((_, index) => index % every === 0)
    .map((night) => {
      const middle = new Date((night.noon.getTime() + night.nextNoon.getTime()) / 2);
      const place = cometPlace(comet, middle);
      const track = fixedTrack(site, place, middle);
      const clearance = { skyline: site.skyline, leastAltitudeDeg: PLANET_RULES.leastAltitudeDeg };
      const dark = nightTimes(site, night).workingWindows;
      return {
        night,
        place,
        best: highestIn(
          track,
          visibleIntervals((at) => track(at.getTime()), clearance, dark),
        ),
      };
    });
}

/** Its perihelion, when it falls into the span. */
export function cometEvents(comet: CometElements, { from, to }: EventSpan): SkyEvent[] {
  const at = comet.perihelionAt;
  if (at < from || at >= to) return [];
  const place = cometPlace(comet, at);
  return [
    {
      key: `comet-perihelion-${comet.name}-${utcDate(at)}`,
      kind: "comets",
      at,
      start: at,
      end: minutesAfter(at, 1),
      title: `${comet.name} at perihelion`,
      fromHere: `${comet.perihelionAu.toFixed(2)} AU from the Sun, ${place.elongationDeg.toFixed(0)}° from it on the sky`,
      lines: [],
      seen: null,
      notable: false,
      solar: place.elongationDeg <= SUN_GUARD_DEG,
      figures: { type: "comet-perihelion", name: comet.name, elongationDeg: place.elongationDeg },
    },
  ];
}

/** Whether any of its nights brings it near the Sun. */
export function isNearSun(nights: readonly CometNight[]): boolean {
  return nights.some(({ place }) => place.elongationDeg <= SUN_GUARD_DEG);
}

/** The night on which it stands highest in the dark. */
export function cometSummary(comet: CometElements, nights: readonly CometNight[]): string {
  let highest: CometNight | null = null;
  for (const each of nights) {
    if ((each.best?.altitudeDeg ?? -90) > (highest?.best?.altitudeDeg ?? -90)) highest = each;
  }
  if (highest === null || highest.best === null) {
    return `${comet.name} does not clear the skyline in the dark in that time.`;
  }
  return `${comet.name} stands highest in the dark about ${shortDateWords(highest.night.date)}: ${Math.round(highest.best.altitudeDeg)}° in the ${compassWords(highest.best.azimuthDeg)}.`;
}

export function cometSection(comet: CometElements, nights: readonly CometNight[], zone: string): Section {
  return {
    heading: comet.name,
    lines: [
      `Perihelion ${dayClockWords(comet.perihelionAt, zone)}. From the elements as typed: no planet's pull since their epoch${comet.brightness === null ? "; brightness unknown without H" : "; brightness by a rule comets often break"}.`,
    ],
    table: {
      columns: [
        "Night",
        "Best",
        "Right ascension",
        "Declination",
        "From Sun",
        "From us",
        "Off the Sun",
        "Mag",
      ],
      rows: nights.map(({ night, place, best }) => [
        shortDateWords(night.date),
        best === null
          ? "–"
          : `${clockTime(best.at, zone)}, ${Math.round(best.altitudeDeg)}° ${compassWords(best.azimuthDeg)}`,
        rightAscensionWords(place.raDeg),
        declinationWords(place.decDeg),
        `${place.sunDistanceAu.toFixed(2)} AU`,
        `${place.earthDistanceAu.toFixed(2)} AU`,
        `${Math.round(place.elongationDeg)}°`,
        place.magnitude === null ? "–" : place.magnitude.toFixed(1),
      ]),
    },
  };
}

export function cometFigures(comet: CometElements, nights: readonly CometNight[]): Figure {
  return {
    name: comet.name,
    perihelionAt: comet.perihelionAt.toISOString(),
    perihelionAu: comet.perihelionAu,
    eccentricity: comet.eccentricity,
    inclinationDeg: comet.inclinationDeg,
    perihelionArgumentDeg: comet.perihelionArgumentDeg,
    nodeDeg: comet.nodeDeg,
    nights: nights.map(({ night, place, best }) => ({
      night: night.date,
      raDeg: place.raDeg,
      decDeg: place.decDeg,
      sunDistanceAu: place.sunDistanceAu,
      earthDistanceAu: place.earthDistanceAu,
      elongationDeg: place.elongationDeg,
      magnitude: place.magnitude,
      best: best === null ? null : { ...best, at: best.at.toISOString() },
    })),
  };
}
