import { RAIN_DATE_NIGHTS } from "../config/outreach-evenings.ts";
import type { Night } from "../core/night/night.ts";
import type { Audience } from "../core/outreach/audience.ts";
import type { EveningFacts } from "../core/outreach/evening-facts.ts";
import { type Placed, rainDate } from "../core/outreach/evening-worth.ts";
import type { Site } from "../core/site.ts";
import type { NightVerdict } from "../core/weather/verdict.ts";
import type { Figure } from "./answer.ts";
import type { OutreachStripChart } from "./chart.ts";
import type { ForecastReport } from "./context.ts";
import { siteFigures } from "./object-figures.ts";
import { dateWords } from "./words/clock.ts";
import { attractionWords, eveningReasons } from "./words/evening-words.ts";
import { verdictWords } from "./words/weather-words.ts";

/** An evening's facts with what the forecast says, as far as it says anything. */
export type DatedEvening = EveningFacts & { readonly verdict: NightVerdict | null };

export type Evenings = {
  readonly site: Site;
  readonly audience: Audience;
  readonly nights: readonly Night[];
  readonly evenings: readonly Placed<DatedEvening>[];
  readonly report: ForecastReport;
  readonly best: readonly Placed<DatedEvening>[];
};

/** The strip of evenings, the best three numbered. */
export function stripChart(found: Evenings, cautions: readonly string[]): OutreachStripChart {
  const { site, evenings, best } = found;
  const [first] = best;
  const told = best.slice(0, 3);
  return {
    kind: "outreach-strip",
    name: "outreach-dates",
    title: first === undefined ? "No evening suits" : `${dateWords(first.facts.times.night.date)} suits best`,
    caption: `${site.name}, for ${audienceName(found.audience)}. A post is as tall as the dark time before people leave.`,
    alt: `${evenings.length} evenings as posts. The best: ${told
      .map(({ facts, merits }) => `${dateWords(facts.times.night.date)} (${attractionWords(facts, merits)})`)
      .join("; ")}.`,
    cautions,
    evenings: evenings.map((evening) => {
      const { facts } = evening;
      const rank = told.indexOf(evening);
      return {
        night: facts.times.night.date,
        label: String(Number(facts.times.night.date.slice(8))),
        weekend: facts.weekday === 5 || facts.weekday === 6,
        darkHours: facts.darkHours,
        illuminatedFraction: facts.times.moon.illuminatedFraction,
        waxing: facts.times.moon.waxing,
        southern: site.latitudeDeg < 0,
        planets: facts.planets.map(({ body }) => body),
        rank: rank < 0 ? null : rank + 1,
        reason: rank < 0 ? null : attractionWords(facts, evening.merits),
        verdict: facts.verdict === null ? null : verdictWords(facts.verdict),
      };
    }),
  };
}

export function datesFigures(found: Evenings): { readonly [name: string]: Figure } {
  const { site, audience, evenings, best, nights } = found;
  return {
    site: siteFigures(site),
    session: "night",
    audience,
    considered: nights.length,
    evenings: evenings.map((evening) => eveningFigure(found, evening, best.indexOf(evening))),
  };
}

function eveningFigure(found: Evenings, evening: Placed<DatedEvening>, place: number): Figure {
  const { facts } = evening;
  const rain = place < 0 ? null : rainDate(evening, found.evenings, RAIN_DATE_NIGHTS);
  const reach = (body: EveningFacts["planets"][number]) => ({
    body: body.body,
    start: body.span.start.toISOString(),
    end: body.span.end.toISOString(),
    altitudeDeg: body.altitudeDeg,
    azimuthDeg: body.azimuthDeg,
    diameterArcsec: body.diameterArcsec,
    lostEarly: body.lostEarly,
  });
  return {
    night: facts.times.night.date,
    place: place < 0 ? null : place + 1,
    start: facts.session.start.toISOString(),
    end: facts.session.end.toISOString(),
    darkFrom: facts.darkFrom?.toISOString() ?? null,
    darkHours: facts.darkHours,
    moonIlluminatedFraction: facts.times.moon.illuminatedFraction,
    moon: facts.moon === null ? null : reach(facts.moon),
    planets: facts.planets.map(reach),
    events: facts.events.map(({ kind, title, at }) => ({ kind, title, at: at.toISOString() })),
    verdict: facts.verdict?.kind ?? null,
    outlook: facts.verdict?.outlook ?? false,
    rainDate: rain?.facts.times.night.date ?? null,
    reasons: place < 0 ? [] : eveningReasons(evening),
  };
}

/** `families`, `a school class`. */
export function audienceName(audience: Audience): string {
  switch (audience) {
    case "families":
      return "families";
    case "school":
      return "a school class";
    case "adults":
      return "adults";
    case "mixed":
      return "everybody";
  }
}
