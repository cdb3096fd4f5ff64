/**
 * The skyline: how high what stands around a site reaches, in every direction.
 *
 * Points are joined by straight lines in azimuth and altitude, around the circle.
 *
 * @packageDocumentation
 */
import type { SkylinePoint } from "../site.ts";

/**
 * Height of the skyline in one direction.
 *
 * @param skyline - points sorted by azimuth; none means a level horizon
 * @param azimuthDeg - from north through east, any turn
 * @returns degrees above the level horizon; 0 for a level horizon
 */
export function skylineAltitudeDeg(skyline: readonly SkylinePoint[], azimuthDeg: number): number {
  const last = skyline[skyline.length - 1];
  const first = skyline[0];
  if (first === undefined || last === undefined) return 0;
  const azimuth = ((azimuthDeg % 360) + 360) % 360;
  // The point before the first is the last, one turn back.
  let before = { azimuthDeg: last.azimuthDeg - 360, altitudeDeg: last.altitudeDeg };
  for (const point of skyline) {
    if (azimuth <= point.azimuthDeg) return between(before, point, azimuth);
    before = point;
  }
  return between(before, { azimuthDeg: first.azimuthDeg + 360, altitudeDeg: first.altitudeDeg }, azimuth);
}

function between(before: SkylinePoint, after: SkylinePoint, azimuthDeg: number): number {
  const width = after.azimuthDeg - before.azimuthDeg;
  if (width === 0) return Math.max(before.altitudeDeg, after.altitudeDeg);
  const share = (azimuthDeg - before.azimuthDeg) / width;
  return before.altitudeDeg + share * (after.altitudeDeg - before.altitudeDeg);
}

/**
 * The lowest and the highest altitude a skyline reaches anywhere.
 *
 * @returns degrees; both 0 for a level horizon
 */
export function skylineRangeDeg(skyline: readonly SkylinePoint[]): {
  readonly lowestDeg: number;
  readonly highestDeg: number;
} {
  if (skyline.length === 0) return { lowestDeg: 0, highestDeg: 0 };
  const altitudes = skyline.map((point) => point.altitudeDeg);
  return { lowestDeg: Math.min(...altitudes), highestDeg: Math.max(...altitudes) };
}
