/**
 * What a question about exposures asks for, read and checked.
 *
 * @packageDocumentation
 */
import { EXPOSURE_LIMITS, EXPOSURE_RULES } from "../config/exposure-rules.ts";
import { SEEING_ARCSEC, SENSOR_CELSIUS, SUB_SECONDS } from "../config/input-limits.ts";
import type { CameraRig, Filter, SensorMode } from "../core/rig/rig.ts";
import { AskError } from "./ask-error.ts";
import type { Context } from "./context.ts";
import { assumesTemperature, readNoiseAssumption } from "./read/camera-sensor.ts";
import { filterIfAny } from "./read/filter.ts";
import { matchKey } from "./read/names.ts";
import { numberOption, plainNumber, textOption, withinRange } from "./read/numbers.ts";
import { targetIfAny } from "./read/target.ts";
import type { Request } from "./request.ts";
import { listWords } from "./words/sky.ts";

export type ExposureAsked = {
  /** Clock time at hand, or `null` for tonight's window. */
  readonly hours: number | null;
  /** Noise that read noise may add, a ratio. */
  readonly share: number;
  /** The star not to burn out; `null` when none was named. */
  readonly star: { readonly name: string; readonly magnitude: number } | null;
  readonly subSeconds: number | null;
  readonly seeingArcsec: number | null;
  /** Continuum in V mag/arcsec²; a line in Rayleigh. */
  readonly brightness: number | null;
  readonly rayleigh: number | null;
  readonly wanted: number;
};

/**
 * Everything but places, rigs and filters.
 *
 * @throws AskError naming the option and its range
 */
export function exposureAsked(request: Request, context: Context): ExposureAsked {
  const share = numberOption(request, "share", { ...EXPOSURE_LIMITS.share, unit: "%" });
  return {
    hours: numberOption(request, "hours", { ...EXPOSURE_LIMITS.hours, unit: "hours" }),
    share: share === null ? EXPOSURE_RULES.readNoiseShare : share < 1 ? share : share / 100,
    star: starAsked(request, context),
    subSeconds: numberOption(request, "sub", { ...SUB_SECONDS, unit: "seconds" }),
    seeingArcsec: numberOption(request, "seeing", { ...SEEING_ARCSEC, unit: "arcseconds" }),
    brightness: numberOption(request, "brightness", {
      ...EXPOSURE_LIMITS.brightness,
      unit: "mag/arcsec²",
    }),
    rayleigh: numberOption(request, "rayleigh", { ...EXPOSURE_LIMITS.rayleigh, unit: "Rayleigh" }),
    wanted: numberOption(request, "snr", EXPOSURE_LIMITS.signalToNoise) ?? EXPOSURE_RULES.wantedSignalToNoise,
  };
}

/** A magnitude, or a star's name. */
function starAsked(request: Request, context: Context): ExposureAsked["star"] {
  const text = textOption(request, "star");
  if (text === null) return null;
  const figure = plainNumber(text);
  if (figure !== null) {
    const magnitude = withinRange("star", figure, { ...EXPOSURE_LIMITS.starMagnitude, unit: "mag" });
    return { name: `a star of magnitude ${magnitude}`, magnitude };
  }
  const named = context.catalogue.alignmentStars.find(({ name }) => matchKey(name) === matchKey(text));
  if (named) return { name: named.name, magnitude: named.magnitude };
  const target = targetIfAny(request, context, "star");
  const isStar =
    target?.kind === "object" && (target.object.kind === "star" || target.object.kind === "double-star");
  if (isStar && target.object.magnitude !== null) {
    return { name: target.object.name ?? target.object.id, magnitude: target.object.magnitude };
  }
  throw new AskError(
    "no-magnitude",
    "star",
    "“star” needs a magnitude, such as 4.5, or the name of a star whose magnitude is known.",
  );
}

/**
 * The rig with the gain and the sensor's temperature of the question, which are then no more assumed.
 *
 * @throws AskError listing the settings the sensor is known at
 */
export function asSet(request: Request, rig: CameraRig): CameraRig {
  const celsius = numberOption(request, "sensor-temp", { ...SENSOR_CELSIUS, unit: "°C" });
  const setting = textOption(request, "gain");
  const mode = setting === null ? rig.mode : modeCalled(rig, setting);
  const kept = rig.assumptions.filter((sentence) => celsius === null || !assumesTemperature(sentence));
  const usual = readNoiseAssumption(rig.mode);
  return {
    ...rig,
    mode,
    ...(celsius === null ? {} : { sensorTemperature: { kind: "set", celsius } }),
    assumptions:
      mode === rig.mode
        ? kept
        : [...kept.filter((sentence) => sentence !== usual), readNoiseAssumption(mode)],
  };
}

/** `gain 100`, `ISO 800`, or the figure alone. */
function modeCalled(rig: CameraRig, text: string): SensorMode {
  const { modes } = rig.sensor;
  const figure = /^\d+$/.test(text) ? text : null;
  const found = modes.find(
    ({ setting }) =>
      matchKey(setting) === matchKey(text) || (figure !== null && setting.endsWith(` ${figure}`)),
  );
  if (found) return found;
  throw new AskError(
    "unknown-setting",
    "gain",
    `“gain”: the sensor of ${rig.name} is known at ${listWords(modes.map(({ setting }) => setting))}.`,
  );
}

/**
 * The filters a total is to be split between, commas between them; empty when none was asked for.
 *
 * @throws AskError for a filter that cannot be read, or too few or many of them
 */
export function filtersToSplit(request: Request, rig: CameraRig): readonly Filter[] {
  const text = textOption(request, "split");
  if (text === null) return [];
  const names = text
    .split(/[,;]/)
    .map((name) => name.trim())
    .filter((name) => name !== "");
  const { min, max } = EXPOSURE_LIMITS.filtersInSplit;
  if (names.length < min || names.length > max) {
    throw new AskError(
      "not-a-set",
      "split",
      `“split” needs ${min} to ${max} filters with commas between them, such as Hα, [O III].`,
    );
  }
  return names.flatMap((name) => {
    const filter = filterIfAny({ ...request, options: { split: name } }, rig, "split");
    return filter === null ? [] : [filter];
  });
}
