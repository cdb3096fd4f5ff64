/**
 * Eclipses of Sun and Moon as events at a site.
 *
 * @packageDocumentation
 */
import { clearSpans } from "../core/outreach/eclipse-sight.ts";
import { type LunarEclipse, lunarEclipsesIn } from "../core/outreach/lunar-eclipse.ts";
import {
  type LocalSolarEclipse,
  type SolarEclipse,
  solarEclipseAt,
  solarEclipsesIn,
} from "../core/outreach/solar-eclipse.ts";
import type { Site } from "../core/site.ts";
import { localEclipseFigures, lunarEclipseFigures } from "./eclipse-figures.ts";
import { type EventSpan, minutesAfter, type SkyEvent, utcDate } from "./sky-event.ts";
import { clockSpan, clockTime } from "./words/clock.ts";
import { localEclipseWords, lunarEclipseWords } from "./words/eclipse-words.ts";

/** Eclipses within a span, those of the Sun always under the solar caution. */
export function eclipseEvents(site: Site, { from, to }: EventSpan): SkyEvent[] {
  return [
    ...solarEclipsesIn(from, to).map((eclipse) => solarEvent(site, eclipse)),
    ...lunarEclipsesIn(from, to).map((eclipse) => lunarEvent(site, eclipse)),
  ];
}

function solarEvent(site: Site, eclipse: SolarEclipse): SkyEvent {
  const local = solarEclipseAt(site, eclipse.greatest);
  const common = {
    key: `solar-eclipse-${utcDate(eclipse.greatest)}`,
    kind: "eclipses",
    solar: true,
  } as const;
  const onEarth = { kind: eclipse.kind, greatest: eclipse.greatest.toISOString() };
  if (local === null) {
    return {
      ...common,
      title: `${SOLAR_NAMES[eclipse.kind]} eclipse of the Sun, elsewhere`,
      at: eclipse.greatest,
      start: eclipse.greatest,
      end: minutesAfter(eclipse.greatest, 1),
      fromHere: "not here: the Moon misses the Sun",
      lines: [],
      seen: false,
      notable: false,
      figures: { type: "solar-eclipse", onEarth, local: null },
    };
  }
  const seen = clearSpans(site, "Sun", { start: local.begins.at, end: local.ends.at });
  return {
    ...common,
    title: solarTitle(eclipse, local),
    at: local.greatest.at,
    start: local.begins.at,
    end: local.ends.at,
    fromHere: solarSight(local, seen.length > 0, site.timeZone),
    lines: [localEclipseWords(local, seen, site.timeZone)],
    seen: seen.length > 0,
    notable: seen.length > 0,
    figures: { type: "solar-eclipse", onEarth, local: localEclipseFigures(local, seen) },
  };
}

const SOLAR_NAMES = { partial: "Partial", annular: "Annular", total: "Total" } as const;
const LUNAR_NAMES = { penumbral: "Penumbral", partial: "Partial", total: "Total" } as const;

/** What it is here comes first: nobody shall take a partial eclipse for a total one. */
function solarTitle(eclipse: SolarEclipse, local: LocalSolarEclipse): string {
  const here = `${SOLAR_NAMES[local.kind]} eclipse of the Sun`;
  return eclipse.kind === local.kind ? here : `${here} (${eclipse.kind} elsewhere)`;
}

function solarSight(local: LocalSolarEclipse, isSeen: boolean, zone: string): string {
  if (!isSeen) return "not here: the Sun is down or behind the skyline";
  const span = clockSpan({ start: local.begins.at, end: local.ends.at }, zone);
  return `${local.kind} ${span}, ${Math.round(local.obscuration * 100)} % covered at ${clockTime(local.greatest.at, zone)}`;
}

function lunarEvent(site: Site, eclipse: LunarEclipse): SkyEvent {
  const zone = site.timeZone;
  const whole = { start: eclipse.penumbraBegins, end: eclipse.penumbraEnds };
  const dark =
    eclipse.partialBegins === null || eclipse.partialEnds === null
      ? whole
      : { start: eclipse.partialBegins, end: eclipse.partialEnds };
  const seen = clearSpans(site, "Moon", whole);
  const isSeen = seen.some(({ start, end }) => start < dark.end && end > dark.start);
  return {
    key: `lunar-eclipse-${utcDate(eclipse.greatest)}`,
    kind: "eclipses",
    at: eclipse.greatest,
    start: dark.start,
    end: dark.end,
    title: `${LUNAR_NAMES[eclipse.kind]} eclipse of the Moon`,
    fromHere: isSeen
      ? `${clockSpan(dark, zone)}, greatest ${clockTime(eclipse.greatest, zone)}`
      : "not here: the Moon is down or behind the skyline",
    lines: [lunarEclipseWords(eclipse, seen, zone)],
    seen: isSeen,
    notable: isSeen && eclipse.kind !== "penumbral",
    solar: false,
    figures: { type: "lunar-eclipse", local: lunarEclipseFigures(eclipse, seen) },
  };
}
