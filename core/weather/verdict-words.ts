/**
 * A verdict in sentences: the quantity, its value, its limit.
 *
 * @packageDocumentation
 */
import { DateTime } from "luxon";
import { type Interval, longestInterval } from "../interval.ts";
import type { NightTimes } from "../night/night.ts";
import { MS_PER_HOUR, MS_PER_MINUTE } from "../sky/time.ts";
import type { DewSpan } from "./dew.ts";
import type { ModelForecast } from "./forecast-hour.ts";
import type { NightJudgement, VerdictKind } from "./night-judgement.ts";
import type { NightObjection } from "./night-objections.ts";
import type { Objection } from "./objections.ts";
import type { ObservingLimits } from "./observing-limits.ts";

/** What the sentences are made from. */
export type VerdictFacts = {
  readonly times: NightTimes;
  readonly kind: VerdictKind;
  readonly lead: number;
  readonly judgement: NightJudgement;
  readonly votes: readonly { readonly kind: VerdictKind }[];
  readonly limits: ObservingLimits;
  readonly objections: readonly NightObjection[];
  readonly dew: readonly DewSpan[];
  readonly meanCloudPercent: number | null;
  readonly at: Date;
  readonly models: readonly ModelForecast[];
};

/** Why the verdict is what it is, the weightiest reason first. */
export function reasonsOf(facts: VerdictFacts): readonly string[] {
  const { kind, judgement, objections, limits } = facts;
  if (kind === "unknown") return [unknownReason(facts)];
  if (judgement.darkHours === 0) return ["The Sun stays above −6° all night: there is no darkness to use."];
  const run = runReason(facts);
  const cloud = cloudReason(facts);
  const against = objections.map((found) => objectionReason(found, facts));
  const agreement = agreementReason(facts);
  const coarse = judgement.coarse
    ? ["The forecast goes by steps of over 1 h here: too coarse for a go."]
    : [];
  const ordinary = kind === "go" ? [run, ...cloud] : [...against, run, ...coarse];
  const split = kind !== judgement.kind;
  const known =
    judgement.knownHours < judgement.darkHours * limits.knownShare
      ? [`The forecast covers ${hoursWords(judgement.knownHours)} of ${hoursWords(judgement.darkHours)}.`]
      : [];
  return [
    ...(split ? [...agreement, ...ordinary] : [...ordinary, ...agreement]),
    ...outlookReason(facts),
    ...known,
  ];
}

/** What to mind although it does not forbid the night. */
export function warningsOf(facts: VerdictFacts): readonly string[] {
  const against = facts.kind === "go" ? facts.objections.map((found) => objectionReason(found, facts)) : [];
  return [...against, ...dewWarnings(facts), ...twilightWarning(facts), ...ageWarning(facts)];
}

function unknownReason({ lead, limits, judgement, models }: VerdictFacts): string {
  if (lead > limits.outlookNights) {
    return `${lead} nights ahead: past ${limits.outlookNights} nights no forecast is worth a verdict.`;
  }
  if (models.length === 0 || judgement.knownHours === 0) return "No forecast is at hand for this night.";
  return `The forecast covers only ${hoursWords(judgement.knownHours)} of ${hoursWords(judgement.darkHours)} of darkness.`;
}

function runReason({ judgement, times }: VerdictFacts): string {
  const needed = `a go needs ${hoursWords(judgement.neededHours)}`;
  const run = longestInterval(judgement.usable);
  if (run === null) return `No run of the darkness is usable; ${needed}.`;
  const length = clockMinutes(run.end) - clockMinutes(run.start);
  return `The longest usable run is ${hoursWords(length / 60)}, ${clockSpan(run, times)}; ${needed}.`;
}

function cloudReason({ meanCloudPercent, limits }: VerdictFacts): string[] {
  if (meanCloudPercent === null) return [];
  return [
    `Cloud averages ${percentWords(meanCloudPercent)} in the dark; the limit is ${percentWords(limits.cloudPercent)}.`,
  ];
}

function agreementReason({ votes, kind, limits }: VerdictFacts): string[] {
  if (votes.length < 2) return [];
  const count = (wanted: VerdictKind) => votes.filter((vote) => vote.kind === wanted).length;
  const needed = percentWords(limits.agreementShare * 100);
  if (kind === "marginal") {
    return [
      `Of ${votes.length} models ${count("go")} say go and ${count("no-go")} no-go; ${needed} must say the same.`,
    ];
  }
  return [`${count(kind)} of ${votes.length} models say ${kind}; ${needed} must.`];
}

function outlookReason({ lead, limits }: VerdictFacts): string[] {
  if (lead <= limits.verdictNights) return [];
  return [`${lead} nights ahead: an outlook; a verdict is given up to ${limits.verdictNights} nights ahead.`];
}

function objectionReason(found: NightObjection, { judgement }: VerdictFacts): string {
  const [lost, dark] = [hoursWords(found.hours), hoursWords(judgement.darkHours)];
  const span = lost === dark ? `through all ${dark} of darkness` : `for ${lost} of ${dark} of darkness`;
  return `${valueWords(found.objection, span)}.`;
}

function valueWords(objection: Objection, span: string): string {
  switch (objection.kind) {
    case "cloud": {
      const [value, limit] = apart(objection.percent, objection.limitPercent);
      return `Cloud averages ${value} % ${span}; the limit is ${limit} %`;
    }
    case "cloud-unknown":
      return `Cloud is not known ${span}`;
    case "rain": {
      const [value, limit] = apart(objection.millimetres, objection.limitMillimetres, 1);
      return `Rain or snow of up to ${value} mm at a time ${span}; the limit is ${limit} mm`;
    }
    case "rain-chance": {
      const [value, limit] = [Math.round(objection.percent), objection.underPercent];
      return `The chance of rain reaches ${value} % ${span}; it must stay under ${limit} %`;
    }
    case "gusts": {
      const [value, limit] = speeds(objection.metresPerSecond, objection.limitMetresPerSecond);
      return `Gusts reach ${value} km/h ${span}; the limit is ${limit} km/h`;
    }
    case "wind": {
      const [value, limit] = speeds(objection.metresPerSecond, objection.limitMetresPerSecond);
      return `Wind alone reaches ${value} km/h ${span}; the limit for gusts is ${limit} km/h`;
    }
    case "fog": {
      const [value, limit] = apart(objection.percent, objection.limitPercent);
      return `Fog covers ${value} % of the area ${span}; the limit is ${limit} %`;
    }
    case "visibility": {
      const [value, limit] = apart(objection.metres, objection.limitMetres);
      return `Visibility falls to ${value} m ${span}; under ${limit} m is fog`;
    }
    case "fog-risk": {
      const { spreadCelsius, limitSpreadCelsius, limitWindMetresPerSecond } = objection;
      return (
        `Fog may form ${span}: the air comes within ${tenths(spreadCelsius)} °C of its dew point in a calm; ` +
        `the limits are ${tenths(limitSpreadCelsius)} °C and ${tenths(limitWindMetresPerSecond)} m/s`
      );
    }
  }
}

/** Value and limit with as few decimals as tell them apart. */
function apart(value: number, limit: number, decimals = 0): readonly [string, string] {
  const written = [value, limit].map((number) => String(Number(number.toFixed(decimals))));
  const [first = "", second = ""] = written;
  return first === second && decimals < 3 && value !== limit
    ? apart(value, limit, decimals + 1)
    : [first, second];
}

function speeds(metresPerSecond: number, limitMetresPerSecond: number): readonly [string, string] {
  return apart(metresPerSecond * 3.6, limitMetresPerSecond * 3.6);
}

function dewWarnings({ dew, times, limits }: VerdictFacts): string[] {
  const { coolingCelsius } = limits.optics;
  return (["dew", "frost"] as const).flatMap((kind) => {
    const spans = dew.filter((span) => span.kind === kind);
    const first = spans[0];
    const last = spans.at(-1);
    if (first === undefined || last === undefined) return [];
    const name = kind === "dew" ? "Dew" : "Frost";
    const until = clockSpan({ start: first.start, end: last.end }, times);
    return [
      `${name} on bare optics, ${until}: they cool up to ${tenths(coolingCelsius)} °C below the air, to its ${kind} point.`,
    ];
  });
}

function twilightWarning({ times }: VerdictFacts): string[] {
  if (times.deepestTwilight === "astronomical" || times.deepestTwilight === "none") return [];
  return [`It does not get astronomically dark: judged by the ${times.deepestTwilight} twilight.`];
}

function ageWarning({ models, at, limits }: VerdictFacts): string[] {
  const issued = models.flatMap((model) => (model.issuedAt ?? model.fetchedAt)?.getTime() ?? []);
  if (issued.length === 0) return [];
  const ageHours = (at.getTime() - Math.max(...issued)) / MS_PER_HOUR;
  if (ageHours <= limits.oldAfterHours) return [];
  return [`The newest forecast is ${Math.round(ageHours)} h old; over ${limits.oldAfterHours} h is old.`];
}

/** To the minute, as the clock shows it. */
function clockMinutes(at: Date): number {
  return Math.round(at.getTime() / MS_PER_MINUTE);
}

function clockSpan(span: Interval, times: NightTimes): string {
  const clock = (at: Date) =>
    DateTime.fromMillis(clockMinutes(at) * MS_PER_MINUTE, { zone: times.night.timeZone }).toFormat("HH:mm");
  return `${clock(span.start)} to ${clock(span.end)}`;
}

function hoursWords(hours: number): string {
  const minutes = Math.round(hours * 60);
  const whole = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (whole === 0) return `${rest} min`;
  return rest === 0 ? `${whole} h` : `${whole} h ${rest} min`;
}

function percentWords(percent: number): string {
  return `${Math.round(percent)} %`;
}

function tenths(value: number): string {
  return String(Math.round(value * 10) / 10);
}
