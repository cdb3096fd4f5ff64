/**
 * What a lens and a sensor make of the sky by plain geometry: field, scale, aperture.
 *
 * @packageDocumentation
 */
import { DEG_PER_RAD } from "../sky/angles.ts";
import type { CameraRig } from "./rig.ts";

/** Arcseconds in a radian, in thousands: micrometres over millimetres come out right. */
const KILO_ARCSEC_PER_RADIAN = 206.264806;

type Lens = Pick<CameraRig, "focalLengthMm" | "focalRatio">;

/**
 * Field across one side of the sensor.
 *
 * @param sideMm - length of the side
 * @returns degrees, exactly 2·atan(side/2f): 36 mm at 50 mm is 39.598°
 */
export function fieldDeg(sideMm: number, focalLengthMm: number): number {
  return 2 * Math.atan(sideMm / (2 * focalLengthMm)) * DEG_PER_RAD;
}

/** Sky across one pixel at the field's centre, arcseconds: 3.76 µm at 250 mm is 3.102″. */
export function scaleArcsecPerPixel(pixelUm: number, focalLengthMm: number): number {
  return (KILO_ARCSEC_PER_RADIAN * pixelUm) / focalLengthMm;
}

/** Clear diameter of the aperture, millimetres. */
export function apertureMm(lens: Lens): number {
  return lens.focalLengthMm / lens.focalRatio;
}

/** Light-gathering area, square metres, the central obstruction taken off. */
export function apertureAreaM2(lens: Lens & Pick<CameraRig, "obstruction">): number {
  const radiusM = apertureMm(lens) / 2000;
  return Math.PI * radiusM * radiusM * (1 - lens.obstruction * lens.obstruction);
}

/** Pixels along one side of the sensor. */
export function pixelsAcross(sideMm: number, pixelUm: number): number {
  return Math.round((sideMm * 1000) / pixelUm);
}
