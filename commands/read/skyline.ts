/**
 * The obstruction profile around a site, and brighter directions, from what people type.
 *
 * @packageDocumentation
 */
import {
  BRIGHT_DIRECTION_MAG,
  BRIGHT_DIRECTIONS_AT_MOST,
  SKYLINE_ALTITUDE_DEG,
  SKYLINE_POINTS,
  SKYLINE_TEXT_LENGTH,
} from "../../config/input-limits.ts";
import type { BrightDirection, SkylinePoint } from "../../core/site.ts";
import { AskError } from "../ask-error.ts";
import { plainNumber, withinRange } from "./numbers.ts";

/** A turn to either side of north. */
const AZIMUTH_DEG = { min: -360, max: 360, unit: "° of azimuth" };

/**
 * A skyline from `azimuth:altitude` pairs, `0:12, 90:30`, or lines of two numbers.
 *
 * Azimuths beyond a turn are brought into it, so `360:5` closes the circle.
 *
 * @param option - the option it came from, for the message
 * @returns points sorted by azimuth; empty for `level` and `none`
 * @throws AskError for binary, too many points, an altitude out of range, or two heights in one direction
 */
export function parseSkyline(option: string, text: string): readonly SkylinePoint[] {
  if (/^\s*(level|none)\s*$/i.test(text)) return [];
  const points = new Map<number, number>();
  for (const [azimuth, altitude] of pairs(option, text, SKYLINE_POINTS.max)) {
    const azimuthDeg = wrapped(withinRange(option, azimuth, AZIMUTH_DEG));
    const altitudeDeg = withinRange(option, altitude, { ...SKYLINE_ALTITUDE_DEG, unit: "° of altitude" });
    const before = points.get(azimuthDeg);
    if (before !== undefined && before !== altitudeDeg) {
      throw new AskError(
        "two-heights",
        option,
        `“${option}” gives two heights at azimuth ${azimuthDeg}° (${before}° and ${altitudeDeg}°): one is enough.`,
      );
    }
    points.set(azimuthDeg, altitudeDeg);
  }
  return [...points]
    .map(([azimuthDeg, altitudeDeg]) => ({ azimuthDeg, altitudeDeg }))
    .sort((one, other) => one.azimuthDeg - other.azimuthDeg);
}

/**
 * Directions brighter than the rest from `azimuth:magnitudes` pairs, such as `120:0.8`.
 *
 * @param option - the option it came from, for the message
 * @returns sorted by azimuth; empty for `none`
 */
export function parseBrightDirections(option: string, text: string): readonly BrightDirection[] {
  if (/^\s*none\s*$/i.test(text)) return [];
  return pairs(option, text, BRIGHT_DIRECTIONS_AT_MOST)
    .map(([azimuth, magnitudes]) => ({
      azimuthDeg: wrapped(withinRange(option, azimuth, AZIMUTH_DEG)),
      brighterMag: withinRange(option, magnitudes, { ...BRIGHT_DIRECTION_MAG, unit: "magnitudes brighter" }),
    }))
    .sort((one, other) => one.azimuthDeg - other.azimuthDeg);
}

/**
 * The text of a sent profile.
 *
 * @throws AskError when the bytes are no text
 */
export function textOfFile(option: string, bytes: Uint8Array): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw unreadable(option, 1);
  }
}

function pairs(option: string, text: string, most: number): readonly (readonly [number, number])[] {
  const parts = text
    .replaceAll("°", "")
    .replaceAll("−", "-")
    .split(/[,;\r\n]+/, most + 2)
    .map((part) => part.trim())
    .filter((part) => part !== "");
  if (parts.length > most || text.length > SKYLINE_TEXT_LENGTH) {
    throw new AskError(
      "too-many-points",
      option,
      `“${option}” takes at most ${most} points, azimuth:height each.`,
    );
  }
  if (parts.length === 0) throw unreadable(option, 1);
  return parts.map((part, index) => {
    const [azimuth, height, more] = part.split(/\s*:\s*|\s+/).map((figure) => plainNumber(figure));
    if (typeof azimuth !== "number" || typeof height !== "number" || more !== undefined) {
      throw unreadable(option, index + 1);
    }
    return [azimuth, height] as const;
  });
}

function wrapped(azimuthDeg: number): number {
  return ((azimuthDeg % 360) + 360) % 360;
}

function unreadable(option: string, point: number): AskError {
  return new AskError(
    "unreadable-profile",
    option,
    `“${option}” cannot be read at point ${point}: write azimuth:height in degrees, parted by commas, such as 0:12, 90:30.`,
  );
}
