/**
 * The options that describe a rig figure by figure, and reading them.
 *
 * @packageDocumentation
 */
import type { APIApplicationCommandBasicOption } from "discord-api-types/v10";
import * as limits from "../../config/input-limits.ts";
import type { EfficiencyPoint, Mount, Optics } from "../../core/rig/rig.ts";
import { AskError } from "../ask-error.ts";
import type { Request } from "../request.ts";
import type { CameraFacts } from "./camera-facts.ts";
import { numberOption, plainNumber, textOption, withinRange } from "./numbers.ts";
import { defineChoice, defineFlag, defineNumber, defineText } from "./options.ts";
import type { RigFact } from "./rig-facts.ts";
import { parseEyepieces } from "./visual-rig.ts";

const MOUNTS: readonly Mount[] = ["german", "fork", "tracker", "altazimuth", "fixed"];
const OPTICS: readonly Optics[] = ["refractor", "mirror"];

/** Twenty-two: with `name`, `default` and one more a command stays within Discord's twenty-five. */
export const RIG_FIGURES: readonly APIApplicationCommandBasicOption[] = [
  defineNumber("focal-length", "The lens's own, mm"),
  defineNumber("f-ratio", "The lens's own focal ratio"),
  defineNumber("aperture", "Clear diameter, mm: in place of either, or for a visual rig"),
  defineNumber("reducer", "Factor of a reducer (0.8) or Barlow (2)"),
  defineChoice("optics", "A lens or mirrors", OPTICS),
  defineNumber("obstruction", "Secondary mirror, as a share of the aperture's diameter (0.33)"),
  defineNumber("throughput", "Share of the light that the optics pass (0.9)"),
  defineText("sensor", "Width x height, 23.5x15.7mm, or a chip's code or format"),
  defineNumber("pixel", "Pixel, µm"),
  defineFlag("mono", "A monochrome sensor (no: a colour one)"),
  defineFlag("modified", "The infrared block of a colour camera is removed"),
  defineNumber("sensor-temp", "What the sensor is cooled to, °C"),
  defineText("gain", "The setting you use: gain 100, ISO 800"),
  defineNumber("read-noise", "Electrons, at that setting"),
  defineNumber("e-per-adu", "Electrons per ADU, at that setting"),
  defineNumber("saturation", "Electrons at which a pixel is full, at that setting"),
  defineText("dark", "Dark current, e/s a pixel at a temperature: 0.003 at 0C"),
  defineText("efficiency", "Quantum efficiency by wavelength: 656:0.6, 501:0.8"),
  defineChoice("mount", "How it is carried", MOUNTS),
  defineFlag("guided", "A guide camera corrects the mount"),
  defineNumber("flip-after", "Minutes the mount may follow past the meridian"),
  defineText("eyepieces", "For a visual rig: 25/52, 10/70 (mm/apparent field)"),
];

/** Which option a fact came from. */
const OPTION_OF: Partial<Record<RigFact, string>> = {
  focalLengthMm: "focal-length",
  focalRatio: "f-ratio",
  apertureMm: "aperture",
  reducerFactor: "reducer",
  chipCode: "sensor",
  widthMm: "sensor",
  heightMm: "sensor",
  pixelUm: "pixel",
  colour: "mono",
  setting: "gain",
  readNoiseElectrons: "read-noise",
  electronsPerAdu: "e-per-adu",
  saturationElectrons: "saturation",
  darkElectronsPerSecond: "dark",
  darkReferenceCelsius: "dark",
  sensorCelsius: "sensor-temp",
  flipAfterMinutes: "flip-after",
};

/** The option that names a fact, for messages. */
export function rigOptionOf(fact: RigFact): string {
  return OPTION_OF[fact] ?? fact;
}

/** The camera's facts that the options give; what they leave out is left out. */
export function cameraFactsOf(request: Request): Partial<CameraFacts> {
  const facts: Partial<Record<keyof CameraFacts, unknown>> = {};
  const number = (fact: keyof CameraFacts, range: limits.Range, unit?: string) => {
    const limitsOfFact = unit === undefined ? range : { ...range, unit };
    const value = numberOption(request, rigOptionOf(fact), limitsOfFact);
    if (value !== null) facts[fact] = value;
  };
  number("focalLengthMm", limits.FOCAL_LENGTH_MM, "mm");
  number("focalRatio", limits.FOCAL_RATIO);
  number("reducerFactor", limits.REDUCER_FACTOR);
  number("obstruction", limits.OBSTRUCTION, "of the aperture's diameter");
  number("throughput", limits.THROUGHPUT, "of the light");
  number("pixelUm", limits.PIXEL_UM, "µm");
  number("sensorCelsius", limits.SENSOR_CELSIUS, "°C");
  number("readNoiseElectrons", limits.READ_NOISE_ELECTRONS, "electrons");
  number("electronsPerAdu", limits.ELECTRONS_PER_ADU, "e/ADU");
  number("saturationElectrons", limits.SATURATION_ELECTRONS, "electrons");
  number("flipAfterMinutes", limits.FLIP_AFTER_MINUTES, "minutes");
  const { options } = request;
  if (typeof options.mono === "boolean") facts.colour = !options.mono;
  if (typeof options.modified === "boolean") facts.modified = options.modified;
  if (typeof options.guided === "boolean") facts.guided = options.guided;
  const mount = oneOf(request, "mount", MOUNTS);
  if (mount !== null) facts.mount = mount;
  const optics = oneOf(request, "optics", OPTICS);
  if (optics !== null) facts.optics = optics;
  const setting = textOption(request, "gain");
  if (setting !== null) {
    // Figures of another setting do not hold for this one.
    const given = { readNoiseElectrons: null, electronsPerAdu: null, saturationElectrons: null, ...facts };
    Object.assign(facts, given, { setting: /^\d+$/.test(setting) ? `gain ${setting}` : setting });
  }
  const sensor = textOption(request, "sensor");
  if (sensor !== null) Object.assign(facts, sensorFacts(sensor));
  const dark = textOption(request, "dark");
  if (dark !== null) Object.assign(facts, darkFacts(dark));
  const efficiency = textOption(request, "efficiency");
  if (efficiency !== null) facts.efficiency = efficiencyPoints(efficiency);
  return withLens(request, facts as Partial<CameraFacts>);
}

/** Eyepieces as given, or `null`. */
export function eyepiecesOf(request: Request) {
  const text = textOption(request, "eyepieces");
  return text === null ? null : parseEyepieces("eyepieces", text);
}

/** The aperture as given, millimetres, or `null`. */
export function apertureOf(request: Request): number | null {
  return numberOption(request, "aperture", { ...limits.APERTURE_MM, unit: "mm" });
}

/** The mount as given, or `null`. */
export function mountOf(request: Request): Mount | null {
  return oneOf(request, "mount", MOUNTS);
}

/** Aperture, focal length and ratio: two of them give the third. */
function withLens(request: Request, facts: Partial<CameraFacts>): Partial<CameraFacts> {
  const aperture = apertureOf(request);
  if (aperture === null) return facts;
  const { focalLengthMm, focalRatio } = facts;
  if (focalLengthMm !== undefined && focalRatio !== undefined) {
    throw new AskError(
      "one-too-many",
      "aperture",
      "Give two of “aperture”, focal length and f-ratio: they settle the third.",
    );
  }
  if (focalLengthMm !== undefined) return { ...facts, focalRatio: focalLengthMm / aperture };
  if (focalRatio !== undefined) return { ...facts, focalLengthMm: focalRatio * aperture };
  throw new AskError(
    "no-lens",
    "f-ratio",
    "“f-ratio” is missing: beside an aperture give a focal length or an f-ratio.",
  );
}

function sensorFacts(text: string): Partial<CameraFacts> {
  const size = /^(\d+(?:\.\d+)?)\s*(?:mm)?\s*[x×*]\s*(\d+(?:\.\d+)?)\s*(?:mm)?$/i.exec(text);
  if (!size) return { chipCode: text, widthMm: null, heightMm: null };
  return { chipCode: null, widthMm: Number(size[1]), heightMm: Number(size[2]) };
}

function darkFacts(text: string): Partial<CameraFacts> {
  const [current, celsius] = text
    .split(/\s*(?:at|@)\s*/i)
    .map((part) => plainNumber(part.replace(/°?\s*C$|e\/s$/i, "")));
  if (typeof current !== "number" || celsius === null) {
    throw new AskError(
      "unreadable-dark",
      "dark",
      "“dark” needs electrons a second at a temperature, such as 0.003 at 0C.",
    );
  }
  return {
    darkElectronsPerSecond: withinRange("dark", current, { ...limits.DARK_ELECTRONS, unit: "e/s" }),
    ...(celsius === undefined ? {} : { darkReferenceCelsius: celsius }),
  };
}

function efficiencyPoints(text: string): readonly EfficiencyPoint[] {
  const parts = text.split(/[,;]/).filter((part) => part.trim() !== "");
  const { min, max } = limits.EFFICIENCY_POINTS;
  if (parts.length < min || parts.length > max) {
    throw new AskError("unreadable-efficiency", "efficiency", `“efficiency” takes ${min} to ${max} points.`);
  }
  const points = parts.map((part) => {
    const [wavelength, efficiency, more] = part.split(":").map((figure) => plainNumber(figure));
    if (typeof wavelength !== "number" || typeof efficiency !== "number" || more !== undefined) {
      throw new AskError(
        "unreadable-efficiency",
        "efficiency",
        "“efficiency” needs wavelength:efficiency, such as 656:0.6, 501:0.8.",
      );
    }
    return {
      wavelengthNm: withinRange("efficiency", wavelength, { ...limits.WAVELENGTH_NM, unit: "nm" }),
      efficiency: withinRange("efficiency", efficiency, limits.EFFICIENCY),
    };
  });
  return points.sort((one, other) => one.wavelengthNm - other.wavelengthNm);
}

function oneOf<Word extends string>(request: Request, option: string, words: readonly Word[]): Word | null {
  const text = textOption(request, option);
  if (text === null) return null;
  const found = words.find((word) => word === text.toLowerCase());
  if (found) return found;
  throw new AskError("not-a-choice", option, `“${option}” must be one of: ${words.join(", ")}.`);
}
