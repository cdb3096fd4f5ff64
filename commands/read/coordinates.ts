/**
 * `latitude, longitude[, elevation]` from text made of numbers alone.
 *
 * @packageDocumentation
 */
import { ELEVATION_METRES, LATITUDE_DEG, LONGITUDE_DEG } from "../../config/input-limits.ts";
import { AskError } from "../ask-error.ts";
import { plainNumber, withinRange } from "./numbers.ts";

export type Coordinates = {
  /** Degrees, north positive. */
  readonly latitudeDeg: number;
  /** Degrees, east positive, in [-180, 180]. */
  readonly longitudeDeg: number;
  /** `null` when it was not given. */
  readonly elevationMetres: number | null;
};

/** Whether text is made of numbers alone, and so is never looked up as a name. */
export function isNumbersAlone(text: string): boolean {
  return /\d/.test(text) && /^[\s\d.,;+\-−–°]+$/.test(text);
}

/**
 * Coordinates, parted by commas or spaces.
 *
 * @param option - the option it came from, for the message
 * @throws AskError when there are not two or three numbers, or one is out of its range
 */
export function parseCoordinates(option: string, text: string): Coordinates {
  const tidy = text.replaceAll("°", " ").trim();
  const parts = /[,;]/.test(tidy) ? tidy.split(/[,;]/) : tidy.split(/\s+/);
  const [latitude, longitude, elevation] = parts.map((part) => plainNumber(part));
  const readable = parts.length === 2 || (parts.length === 3 && typeof elevation === "number");
  if (!readable || typeof latitude !== "number" || typeof longitude !== "number") {
    throw new AskError(
      "unreadable-coordinates",
      option,
      `“${option}” reads numbers as latitude, longitude[, elevation] in degrees and metres, such as 54.5, -2.6, 310.`,
    );
  }
  return {
    latitudeDeg: withinRange(option, latitude, { ...LATITUDE_DEG, unit: "° of latitude" }),
    longitudeDeg: withinRange(option, longitude, { ...LONGITUDE_DEG, unit: "° of longitude" }),
    elevationMetres:
      typeof elevation === "number"
        ? withinRange(option, elevation, { ...ELEVATION_METRES, unit: "metres of elevation" })
        : null,
  };
}

/** `54.5° N, 2.6° W`, to a hundredth of a degree. */
export function coordinateWords(latitudeDeg: number, longitudeDeg: number): string {
  const degrees = (value: number) => String(Number(Math.abs(value).toFixed(2)));
  return `${degrees(latitudeDeg)}° ${latitudeDeg < 0 ? "S" : "N"}, ${degrees(longitudeDeg)}° ${longitudeDeg < 0 ? "W" : "E"}`;
}

/** Steps a degree that is kept is rounded to. */
const KEPT_STEPS_PER_DEGREE = 100;

/** A coordinate as it is kept: to 0.01°, good to a kilometre. */
export function keptDegrees(degrees: number): number {
  // Adding zero turns −0 into 0.
  return Math.round(degrees * KEPT_STEPS_PER_DEGREE) / KEPT_STEPS_PER_DEGREE + 0;
}
