/**
 * A night's weather in words: verdict, window, hours, air, models.
 *
 * @packageDocumentation
 */
import { STEADINESS, TRANSPARENCY } from "../../config/air-words.ts";
import type { Interval } from "../../core/interval.ts";
import type { NightTimes } from "../../core/night/night.ts";
import { MS_PER_HOUR } from "../../core/sky/time.ts";
import { oktas } from "../../core/weather/cloud.ts";
import type { ForecastHour } from "../../core/weather/forecast-hour.ts";
import { instantValue } from "../../core/weather/interpolate.ts";
import { meanOver } from "../../core/weather/mean.ts";
import type { VerdictKind } from "../../core/weather/night-judgement.ts";
import type { NightObjection } from "../../core/weather/night-objections.ts";
import type { ObservingLimits } from "../../core/weather/observing-limits.ts";
import { steadinessOf } from "../../core/weather/steadiness.ts";
import { transparencyOf } from "../../core/weather/transparency.ts";
import type { ModelVote, NightVerdict } from "../../core/weather/verdict.ts";
import { clockSpan, clockTime, dateWords, durationWords } from "./clock.ts";
import { withMinus } from "./minus.ts";
import { listWords } from "./sky.ts";

/** `go`, `outlook: go`, `no verdict`. */
export function verdictWords(verdict: NightVerdict): string {
  const word = kindWords(verdict.kind);
  return verdict.outlook ? `outlook: ${word}` : word;
}

function kindWords(kind: VerdictKind): string {
  return kind === "unknown" ? "no verdict" : kind;
}

/** `6 of 9`: dark hours usable; `–` when nobody has said. */
export function usableCount(verdict: NightVerdict): string {
  if (verdict.usableHours === null) return "–";
  return `${tenths(verdict.usableHours)} of ${tenths(verdict.darkHours)}`;
}

/** `6 of 9 dark hours usable`. */
function usableWords(verdict: NightVerdict): string {
  if (verdict.darkHours === 0) return "no darkness";
  return `${usableCount(verdict)} dark hours usable`;
}

/** `22:40 to 02:10`, in the night's zone; `–` without a window. */
export function windowWords(verdict: NightVerdict, times: NightTimes): string {
  return verdict.window === null ? "–" : clockSpan(verdict.window, times.night.timeZone);
}

/** What weighs most, in a few words: `cloud 54 %, limit 30 %`, `dew from 23:48`. */
export function worstWords(verdict: NightVerdict, times: NightTimes): string {
  if (verdict.kind === "unknown") return verdict.hours.length === 0 ? "no forecast" : "not known well enough";
  if (verdict.darkHours === 0) return "no darkness";
  const [worst] = verdict.objections;
  const [settled] = verdict.dew;
  const spoilt = verdict.kind !== "go" || settled === undefined;
  if (worst !== undefined && spoilt) return objectionWords(worst, verdict.darkHours);
  if (verdict.kind !== "go")
    return modelsAgree(verdict.votes) ? "steps too long for a go" : "models disagree";
  if (settled === undefined) return "nothing against it";
  return `${settled.kind} from ${clockTime(settled.start, times.night.timeZone)}`;
}

function modelsAgree(votes: readonly ModelVote[]): boolean {
  return votes.every(({ kind }) => kind === votes[0]?.kind);
}

function objectionWords({ objection, hours }: NightObjection, darkHours: number): string {
  const lost = durationWords(hours);
  const span = lost === durationWords(darkHours) ? "" : ` for ${lost}`;
  switch (objection.kind) {
    case "cloud":
      return `cloud ${Math.round(objection.percent)} %${span}, limit ${tenths(objection.limitPercent)} %`;
    case "cloud-unknown":
      return `cloud not known${span}`;
    case "rain":
      return `rain ${tenths(objection.millimetres)} mm${span}, limit ${tenths(objection.limitMillimetres)} mm`;
    case "rain-chance":
      return `chance of rain ${Math.round(objection.percent)} %${span}, limit under ${tenths(objection.underPercent)} %`;
    case "gusts":
      return `gusts ${kmh(objection.metresPerSecond)} km/h${span}, limit ${kmh(objection.limitMetresPerSecond)}`;
    case "wind":
      return `wind ${kmh(objection.metresPerSecond)} km/h${span}, limit ${kmh(objection.limitMetresPerSecond)}`;
    case "fog":
      return `fog ${Math.round(objection.percent)} %${span}, limit ${tenths(objection.limitPercent)} %`;
    case "visibility":
      return `visibility ${Math.round(objection.metres)} m${span}, fog under ${Math.round(objection.limitMetres)}`;
    case "fog-risk":
      return `fog may form${span}`;
  }
}

function kmh(metresPerSecond: number): number {
  return Math.round(metresPerSecond * 3.6);
}

/** `Go tonight from 22:40 to 02:10: 6 of 9 dark hours usable.` */
export function verdictSentence(verdict: NightVerdict, times: NightTimes): string {
  const when = verdict.leadNights === 0 ? "tonight" : `on ${dateWords(verdict.night)}`;
  const span = verdict.window === null ? "" : ` from ${windowWords(verdict, times)}`;
  const usable = usableWords(verdict);
  switch (verdict.kind) {
    case "unknown":
      return `No verdict ${when}. ${verdict.reasons[0] ?? ""}`.trim();
    case "go":
      return `${verdict.outlook ? "Outlook: go" : "Go"} ${when}${span}: ${usable}.`;
    case "marginal":
      return `${verdict.outlook ? "Outlook: marginal" : "Marginal"} ${when}${span}: ${usable}. ${verdict.reasons[0] ?? ""}`.trim();
    case "no-go":
      return `${verdict.outlook ? "Outlook: no-go" : "No-go"} ${when}: ${usable}. ${verdict.reasons[0] ?? ""}`.trim();
  }
}

export type CloudHour = { readonly at: Date; readonly oktas: number | null };

/** Cloud in eighths on every whole hour of a span. */
function cloudByHour(hours: readonly ForecastHour[], span: Interval): readonly CloudHour[] {
  const found: CloudHour[] = [];
  const firstMs = Math.ceil(span.start.getTime() / MS_PER_HOUR) * MS_PER_HOUR;
  for (let ms = firstMs; ms <= span.end.getTime(); ms += MS_PER_HOUR) {
    const percent = instantValue(hours, "cloudPercent", ms);
    found.push({ at: new Date(ms), oktas: percent === null ? null : oktas(percent) });
  }
  return found;
}

/** `Cloud in eighths on the hour from 20:00: 2 1 0 0 1 3.`; nothing when none is known. */
export function cloudLines(verdict: NightVerdict, times: NightTimes): readonly string[] {
  return times.workingWindows.flatMap((span) => {
    const cloud = cloudByHour(verdict.hours, span);
    const [first] = cloud;
    if (first === undefined || cloud.every((hour) => hour.oktas === null)) return [];
    const eighths = cloud.map((hour) => hour.oktas ?? "?").join(" ");
    return [`Cloud in eighths, on the hour from ${clockTime(first.at, times.night.timeZone)}: ${eighths}.`];
  });
}

/** Temperature, steadiness and transparency in the dark, each where it is known. */
export function airLines(verdict: NightVerdict, times: NightTimes): readonly string[] {
  const mean = (quantity: Parameters<typeof meanOver>[1]) =>
    meanOver(verdict.hours, quantity, times.workingWindows);
  const lines: string[] = [];
  const celsius = lowestCelsius(verdict, times);
  if (celsius !== null) lines.push(`Coldest in the dark: ${tenths(celsius)} °C.`);
  const wind = mean("upperWindMetresPerSecond");
  if (wind !== null) {
    lines.push(
      `Stars: ${steadinessOf(wind, STEADINESS)}, by ${Math.round(wind)} m/s of wind near 250 hPa (rough).`,
    );
  }
  const depth = mean("aerosolOpticalDepth");
  if (depth !== null) {
    lines.push(
      `Air between the clouds: ${transparencyOf(depth, TRANSPARENCY)}, aerosol depth ${depth.toFixed(2)}.`,
    );
  }
  return lines;
}

/** The lowest temperature between dusk and dawn; `null` when none is known. */
export function lowestCelsius(verdict: NightVerdict, times: NightTimes): number | null {
  const known = verdict.hours
    .filter((hour) => times.workingWindows.some(({ start, end }) => hour.at >= start && hour.at <= end))
    .flatMap((hour) => hour.temperatureCelsius ?? []);
  return known.length === 0 ? null : Math.min(...known);
}

/** `Say go: icon, gfs. Say no-go: ukmo.`; nothing without a vote. */
export function votesLine(votes: readonly ModelVote[]): readonly string[] {
  const said = (["go", "marginal", "no-go"] as const).flatMap((kind) => {
    const names = votes.filter((vote) => vote.kind === kind).map((vote) => `${vote.provider} ${vote.model}`);
    return names.length === 0 ? [] : [`${kind}: ${listWords(names)}`];
  });
  return said.length === 0 ? [] : [`Model by model, ${said.join("; ")}.`];
}

/** The limits a verdict stands on: defaults, unless the club set its own. */
export function limitsLine(limits: ObservingLimits): string {
  return (
    `Limits: cloud ${tenths(limits.cloudPercent)} %, high thin cloud ${tenths(limits.highCloudPercent)} %, ` +
    `gusts ${kmh(limits.gustMetresPerSecond)} km/h, rain ${tenths(limits.precipitationMm)} mm ` +
    `or a chance of ${tenths(limits.precipitationProbabilityPercent)} %, no fog; ` +
    `a go needs ${tenths(limits.goHours)} h or ${Math.round(limits.goDarknessShare * 100)} % of the darkness in one run.`
  );
}

/** `6`, `5.5`. */
function tenths(value: number): string {
  return withMinus(Math.round(value * 10) / 10);
}
