/**
 * An exposure in words: the subs, what limits the picture, what would help.
 *
 * @packageDocumentation
 */
import { EXPOSURE_RULES, TRIPOD_LENS_MM, WASTEFUL_SHARE } from "../../config/exposure-rules.ts";
import { totalHours } from "../../core/interval.ts";
import type { Filter } from "../../core/rig/rig.ts";
import { largestNoise } from "../../core/rig/signal-to-noise.ts";
import { hoursLost } from "../../core/rig/sub-cost.ts";
import type { SubCap } from "../../core/rig/sub-length.ts";
import { fiveHundredRuleSeconds, michaudSeconds } from "../../core/rig/trail-limits.ts";
import type { Section } from "../answer.ts";
import type { ExposureSum } from "../exposure-sum.ts";
import { clockSpan, clockTime, durationWords } from "./clock.ts";
import { electronWords } from "./noise-words.ts";
import { listWords } from "./sky.ts";

/** `0.4 s`, `90 s`, `3 min`, `7 min 30 s`, `2 h 24 min`. */
export function secondsWords(seconds: number): string {
  if (!Number.isFinite(seconds)) return "any length";
  if (seconds < 10) return `${Number(seconds.toPrecision(2))} s`;
  const rounded = Math.round(seconds);
  if (rounded < 120) return `${rounded} s`;
  if (rounded >= 3600) return durationWords(rounded / 3600);
  const rest = rounded % 60;
  return rest === 0 ? `${rounded / 60} min` : `${Math.floor(rounded / 60)} min ${rest} s`;
}

const NOISE_LIMIT_WORDS = {
  "read-noise": "read noise limits the picture",
  dark: "the sensor's dark current limits the picture",
  sky: "the sky limits the picture",
} as const;

const CAP_WORDS: Readonly<Record<SubCap, string>> = {
  saturation: "the star you named limits the sub",
  tracking: "tracking limits the sub",
  time: "time limits the sub",
};

/** `without a filter`, `through Hα`. */
export function filterWords(filter: Filter): string {
  return filter.bands.length === 0 ? "without a filter" : `through ${filter.name}`;
}

/** `2 h 33 min`, `under a minute`: a time of light. */
export function lightWords(hours: number): string {
  return hours * 60 < 1 ? "under a minute" : durationWords(hours);
}

/** What bounds the sub, if anything does, and what the picture's noise is mostly made of. */
function limitWords({ plan }: ExposureSum): string {
  const noise = NOISE_LIMIT_WORDS[largestNoise(plan.leading.shares)];
  return plan.cap === null ? noise : `${CAP_WORDS[plan.cap]}, ${noise}`;
}

/** One sentence to act on. */
export function exposureSummary(sum: ExposureSum): string {
  const { plan, sumsFor, question } = sum;
  const zone = question.situation.site.timeZone;
  if (sumsFor === "no-window" && question.asked.hours === null) {
    return `It has no window this night; overhead without Moon it would take subs of ${secondsWords(plan.subSeconds)}.`;
  }
  if (plan.subCount === 0) {
    return `There is no time for a single sub of ${secondsWords(plan.subSeconds)}.`;
  }
  const span = sum.used.length === 1 ? sum.used[0] : undefined;
  const hours = question.asked.hours;
  const when =
    hours !== null && Math.abs(hours - totalHours(sum.used)) > 1 / 60
      ? `in ${durationWords(hours)}`
      : span === undefined
        ? `in ${durationWords(totalHours(sum.used))}`
        : `from ${clockSpan(span, zone)}`;
  const count = `${plan.subCount} sub${plan.subCount === 1 ? "" : "s"} of ${secondsWords(plan.subSeconds)}`;
  const light = lightWords(plan.totalSeconds / 3600);
  return `Take ${count} ${when}, ${light} of light; ${limitWords(sum)}.`;
}

/** What to set at the camera. */
export function subsSection(sum: ExposureSum): Section {
  const { plan, question } = sum;
  const { rig, asked } = question;
  const { leading } = plan;
  const percent = Number((asked.share * 100).toPrecision(3));
  const own = asked.subSeconds === null ? "Recommended" : "As you asked";
  const lines = [
    `${own}: ${secondsWords(plan.subSeconds)} at ${rig.mode.setting}${plan.subCount > 0 ? `, ${plan.subCount} of them` : ""}${capWords(sum)}.`,
    `Shortest: ${secondsWords(leading.shortestSubSeconds)}, where read noise adds ${percent} % to the noise; by the sky alone ${secondsWords(leading.shortestBySkySeconds)}.`,
    longestWords(sum),
  ];
  if (plan.subCount > 0) {
    lines.push(
      `In all ${lightWords(plan.totalSeconds / 3600)} of light in ${lightWords(plan.elapsedSeconds / 3600)} by the clock, ${storageWords(sum.storageBytes)}.`,
    );
    if (plan.totalSeconds < WASTEFUL_SHARE * plan.elapsedSeconds) lines.push(wasteWords(sum));
  }
  const saved = rig.subSeconds[question.filter.name];
  if (saved !== undefined && saved !== plan.subSeconds) {
    lines.push(`Your usual sub through this filter is ${secondsWords(saved)}.`);
  }
  if (rig.mount === "fixed" || (rig.mount === "tracker" && rig.focalLengthMm <= TRIPOD_LENS_MM)) {
    lines.push(trailWords(sum));
  }
  return { heading: "Subs", lines };
}

/** What short subs give away, and what longer ones would. */
function wasteWords({ plan, question }: ExposureSum): string {
  const hours = plan.elapsedSeconds / 3600;
  const given = (plan.elapsedSeconds - plan.totalSeconds) / 3600;
  const said = `Downloads and dithering take ${lightWords(given)} of it`;
  const rates = plan.leading.rates.leading;
  const lost = (subSeconds: number) => hoursLost(rates, subSeconds, hours, EXPOSURE_RULES);
  const better = EXPOSURE_RULES.subSteps.find(
    (step) =>
      step > plan.subSeconds && step <= plan.trackingCapSeconds && lost(step) < (1 - WASTEFUL_SHARE) * hours,
  );
  if (better === undefined || (question.asked.star !== null && plan.cap === "saturation")) return `${said}.`;
  return `${said}: subs of ${secondsWords(better)} would lose ${lightWords(lost(better))} in all, at the price of more burnt-out stars.`;
}

function capWords({ plan }: ExposureSum): string {
  switch (plan.cap) {
    case null:
      return "";
    case "tracking":
      return `; longer than ${secondsWords(plan.trackingCapSeconds)} the mount does not follow`;
    case "saturation":
      return "; longer ones burn out the star you named";
    case "time":
      return "; there is no time for longer ones";
  }
}

function longestWords({ plan, question, starMagnitude }: ExposureSum): string {
  const longest = Math.min(...plan.bands.map((band) => band.longestSubSeconds));
  const star = question.asked.star?.name ?? `a star of magnitude ${starMagnitude}`;
  const limit = `Longest: ${secondsWords(longest)}, after which ${star} burns out`;
  return question.asked.star === null && longest < plan.subSeconds
    ? `${limit}; it will in these subs: name a “star” to keep it, or add a few short ones.`
    : `${limit}.`;
}

/** Both rules for a camera that does not follow the sky. */
function trailWords({ question }: ExposureSum): string {
  const { rig, target } = question;
  const { widthMm, heightMm, pixelUm } = rig.sensor;
  const fiveHundred = fiveHundredRuleSeconds({ ...rig, sensorDiagonalMm: Math.hypot(widthMm, heightMm) });
  const decDeg = target === null ? 0 : target.kind === "object" ? target.object.decDeg : target.decDeg;
  const michaud = michaudSeconds({ ...rig, pixelUm }, decDeg);
  return `Without tracking, the 500 rule says ${secondsWords(fiveHundred)}, Michaud's rule ${secondsWords(michaud)} at this declination.`;
}

/** `1.9 GB`, `640 MB`. */
function storageWords(bytes: number): string {
  return bytes >= 1e9 ? `${(bytes / 1e9).toFixed(1)} GB` : `${Math.round(bytes / 1e6)} MB`;
}

/** Signal-to-noise, and the hours to what is wanted. */
export function signalSection(sum: ExposureSum): Section | null {
  const { signalToNoise, known, question, plan } = sum;
  if (signalToNoise === null) return null;
  const { perPixel, perPatch, hoursToWanted } = signalToNoise;
  const { patchArcsec } = EXPOSURE_RULES;
  const patch = `a patch of ${patchArcsec}″ × ${patchArcsec}″`;
  const reach =
    hoursToWanted > 10_000
      ? `${question.asked.wanted} is out of reach`
      : `${question.asked.wanted} takes ${lightWords(hoursToWanted)} of light`;
  return {
    heading: "Signal-to-noise",
    lines: [
      plan.subCount === 0
        ? `In ${patch}, ${reach}.`
        : `${figure(perPatch)} in ${patch}, ${figure(perPixel)} a pixel; ${reach}.`,
      surfaceWords(sum),
      ...(known.basis === "given" ? [] : ["Rough: surfaces differ from part to part of an object."]),
    ],
  };
}

function figure(value: number): string {
  return value >= 100 ? String(Math.round(value)) : String(Number(value.toPrecision(3)));
}

function surfaceWords({ known, plan }: ExposureSum): string {
  const { line } = plan.leading.rates.band;
  const rayleigh = line === null ? undefined : known.brightness.rayleigh[line];
  const { continuumMagArcsec2 } = known.brightness;
  const bright =
    rayleigh !== undefined
      ? `${figure(rayleigh)} Rayleigh`
      : continuumMagArcsec2 === null
        ? "known lines and unknown continuum"
        : `${continuumMagArcsec2.toFixed(1)} mag/arcsec²`;
  switch (known.basis) {
    case "given":
      return `For a surface of ${bright}, as you gave it.`;
    case "known":
      return `For a surface of ${bright}, from the catalogue.`;
    case "mean":
      return `For its mean surface brightness, ${bright}; the core is brighter, the rim fainter.`;
    case "assumed":
    case "none":
      return `For ${bright}: its own is not known, so a faint one of its kind is taken.`;
  }
}

/** One row a pass band, where there are several. */
export function bandSection(sum: ExposureSum): Section | null {
  const { plan, moonCosts } = sum;
  if (plan.bands.length < 2) return null;
  return {
    heading: "Line by line",
    lines: [],
    table: {
      columns: ["", "pixels", "sky e/s", "shortest sub", "Moon's cost"],
      rows: plan.bands.map(({ rates, shortestSubSeconds }, index) => [
        rates.band.name,
        rates.channels.map(({ channel }) => channel.channel).join(", "),
        electronWords(rates.leading.glow + rates.leading.moon),
        secondsWords(shortestSubSeconds),
        `× ${(moonCosts[index] ?? 1).toFixed(2)}`,
      ]),
    },
  };
}

/** When, and what the Moon takes of it. */
export function windowLines(sum: ExposureSum): string[] {
  const { question, used, windows, sumsFor, moonCost } = sum;
  const zone = question.situation.site.timeZone;
  if (sumsFor === "zenith") return ["For the zenith, without Moon; name a “target” for its own window."];
  if (sumsFor === "no-window") {
    return [
      "It does not clear the skyline and the least altitude in the dark: sums for the zenith, without Moon.",
    ];
  }
  const spans = listWords(used.map((span) => clockSpan(span, zone)));
  const part = totalHours(used) < totalHours(windows) - 1 / 60 ? ", the best part of its window" : "";
  const lines = [`${spans}${part}, at ${sum.airmasses.toFixed(2)} air masses on the mean.`];
  if (sum.cutByCloud) lines.push("Cut to the hours the forecast calls clear.");
  lines.push(
    moonCost < 1.005
      ? "The Moon costs nothing."
      : `The Moon costs a factor of ${moonCost.toFixed(2)} in time${sum.plan.bands.length > 1 ? ", in the line it costs most" : ""}.`,
  );
  const flip = flipWords(sum, zone);
  return flip === null ? lines : [...lines, flip];
}

function flipWords(sum: ExposureSum, zone: string): string | null {
  return sum.flipAt === null ? null : `Meridian flip at ${clockTime(sum.flipAt, zone)}.`;
}
