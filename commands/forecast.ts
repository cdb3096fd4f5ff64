/**
 * `forecast`: which of the coming nights are worth it, a row each, and why.
 *
 * @packageDocumentation
 */
import { nightsFrom } from "../core/night/local-night.ts";
import type { NightTimes } from "../core/night/night.ts";
import { nightTimes } from "../core/night/night-times.ts";
import type { Site } from "../core/site.ts";
import type { ModelForecast } from "../core/weather/forecast-hour.ts";
import type { ObservingLimits } from "../core/weather/observing-limits.ts";
import { type NightVerdict, nightVerdict } from "../core/weather/verdict.ts";
import { type Answer, type Figure, type FollowUp, isoOrNull, type Section } from "./answer.ts";
import { cautionsFor } from "./cautions.ts";
import type { Command } from "./command.ts";
import type { Context, ForecastReport } from "./context.ts";
import { FORECAST_RECORD, recordAnswer } from "./forecast-record.ts";
import { keptOptions } from "./kept-options.ts";
import { spanFigure, spanFigures } from "./object-figures.ts";
import { limitsOf } from "./read/limits.ts";
import { nightsOf } from "./read/night.ts";
import { defineSubcommand, defineWhole, NIGHT, SITE } from "./read/options.ts";
import { siteOf } from "./read/site.ts";
import type { Request } from "./request.ts";
import { dateWords, shortDateWords } from "./words/clock.ts";
import { moonWords } from "./words/night-words.ts";
import {
  airLines,
  cloudLines,
  limitsLine,
  lowestCelsius,
  usableCount,
  verdictSentence,
  verdictWords,
  votesLine,
  windowWords,
  worstWords,
} from "./words/weather-words.ts";

/** No forecast reaches further. */
const NIGHTS_AT_MOST = 16;

export const forecast: Command = {
  definition: {
    name: "forecast",
    description: "Which of the coming nights are worth setting up, and why",
    options: [
      defineSubcommand("nights", "Verdict, window and reasons for the coming nights", [
        SITE,
        NIGHT,
        defineWhole("nights", `That night and the following, 1 to ${NIGHTS_AT_MOST}`),
      ]),
      FORECAST_RECORD,
    ],
    defaultSubcommand: "nights",
  },
  audience: "member",

  async answer(request, context) {
    return request.subcommand === "record" ? recordAnswer(request, context) : nightsAnswer(request, context);
  },
};

type ForecastNight = { readonly times: NightTimes; readonly verdict: NightVerdict };

async function nightsAnswer(request: Request, context: Context): Promise<Answer> {
  const site = await siteOf(request, context);
  const limits = await limitsOf(request, context);
  const asked = nightsOf(request, site, NIGHTS_AT_MOST);
  const report = await context.forecasts.at(site, request.at);
  const nights = withOutlook(asked, request, limits).map((night): ForecastNight => {
    const times = nightTimes(site, night);
    return { times, verdict: nightVerdict(times, report.models, limits, request.at) };
  });
  return describeForecast({ site, nights, report, limits, request });
}

/** Without a word on which nights: tonight and as many as a forecast is worth anything for. */
function withOutlook(asked: readonly NightTimes["night"][], request: Request, limits: ObservingLimits) {
  const [first] = asked;
  const said = request.options.night !== undefined || request.options.nights !== undefined;
  return said || first === undefined ? asked : nightsFrom(first, limits.outlookNights + 1);
}

type ForecastFacts = {
  readonly site: Site;
  readonly nights: readonly ForecastNight[];
  readonly report: ForecastReport;
  readonly limits: ObservingLimits;
  readonly request: Request;
};

function describeForecast({ site, nights, report, limits, request }: ForecastFacts): Answer {
  const [first] = nights;
  const sample = nights.some(({ verdict }) => verdict.sample) ? "Sample forecast" : "Forecast";
  return {
    title: `${sample} for ${site.name}`,
    summary:
      first === undefined
        ? "No night was asked about."
        : `${verdictSentence(first.verdict, first.times)} ${moonWords(first.times)}`,
    sections: [
      ...(nights.length > 1 ? [nightsSection(nights)] : []),
      ...(first === undefined ? [] : [detailSection(first)]),
      smallPrint(nights, report, limits),
    ],
    charts: [],
    cautions: first === undefined ? [] : cautionsOfNight(first),
    next: followUps(nights, request),
    figures: {
      nights: nights.map(nightFigures),
      providers: report.models.map(providerFigures),
    },
    credits: report.credits,
  };
}

function nightsSection(nights: readonly ForecastNight[]): Section {
  return {
    heading: "Nights",
    lines: [],
    table: {
      columns: ["Night", "Verdict", "Window", "Dark hours usable", "What weighs most"],
      rows: nights.map(({ times, verdict }) => [
        shortDateWords(verdict.night),
        verdictWords(verdict),
        windowWords(verdict, times),
        usableCount(verdict),
        worstWords(verdict, times),
      ]),
    },
  };
}

function detailSection({ times, verdict }: ForecastNight): Section {
  return {
    heading: dateWords(verdict.night),
    lines: [
      ...verdict.reasons,
      ...verdict.warnings,
      ...(verdict.kind === "unknown" ? [] : cloudLines(verdict, times)),
      ...(verdict.kind === "unknown" ? [] : airLines(verdict, times)),
      ...votesLine(verdict.votes),
    ],
  };
}

function smallPrint(
  nights: readonly ForecastNight[],
  report: ForecastReport,
  limits: ObservingLimits,
): Section {
  const judged = nights.some(({ verdict }) => verdict.kind !== "unknown");
  return { heading: "", lines: [...(judged ? [limitsLine(limits)] : []), ...report.problems] };
}

/** A night nobody should go out in invites to nothing. */
function cautionsOfNight({ times, verdict }: ForecastNight): Answer["cautions"] {
  if (verdict.kind === "no-go" || verdict.kind === "unknown") return [];
  return cautionsFor({
    lowestCelsius: lowestCelsius(verdict, times),
    dewExpected: verdict.dew.length > 0,
  });
}

function followUps(nights: readonly ForecastNight[], request: Request): readonly FollowUp[] {
  const where = keptOptions(request, ["site"]);
  const best = nights.find(({ verdict }) => verdict.kind === "go") ?? nights[0];
  if (best === undefined) return [];
  const { night } = best.verdict;
  return [
    { label: `What fits on ${shortDateWords(night)}`, command: "tonight", options: { night, ...where } },
    { label: `Darkness on ${shortDateWords(night)}`, command: "night", options: { night, ...where } },
  ];
}

function nightFigures({ verdict }: ForecastNight): Figure {
  return {
    night: verdict.night,
    verdict: verdict.kind === "unknown" ? null : verdict.kind,
    outlook: verdict.outlook,
    window: verdict.window === null ? null : spanFigure(verdict.window),
    usableHours: verdict.usableHours,
    darkHours: verdict.darkHours,
    meanCloudPercent: verdict.meanCloudPercent,
    agreement: verdict.agreement,
    reasons: verdict.reasons,
    warnings: verdict.warnings,
    usable: spanFigures(verdict.usable),
    dew: verdict.dew.map((settled) => ({ kind: settled.kind, ...spanFigure(settled) })),
    votes: verdict.votes.map(({ provider, model, kind }) => ({ provider, model, verdict: kind })),
    sample: verdict.sample,
  };
}

function providerFigures({ provider, model, issuedAt, fetchedAt }: ModelForecast): Figure {
  return { name: provider, model, issuedAt: isoOrNull(issuedAt), fetchedAt: isoOrNull(fetchedAt) };
}
