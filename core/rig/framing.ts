/**
 * How an object sits in a frame, and how the camera is best turned for it.
 *
 * @packageDocumentation
 */
import { DEG_PER_RAD, RAD_PER_DEG, turnDeg } from "../sky/angles.ts";
import type { SkyObject } from "../targets/sky-object.ts";
import { type Ellipse, ellipseAreaInFrame, type Frame, halfExtents } from "./frame-area.ts";

/** Part of the short side that stays free on every side of an object that fits. */
const SPARE_SHARE = 0.03;

/** Rounder than this, an object has no side to turn the camera along. */
const ROUND_FROM = 0.9;

/** Sides of a frame on the plane, degrees. */
export type FrameSize = Pick<Frame, "widthDeg" | "heightDeg">;

export type Fit = {
  /** Part of the frame that the object covers, in [0, 1]. */
  readonly fillFraction: number;
  /** Part of the object that the frame holds, in [0, 1]. */
  readonly objectInField: number;
  /** Whether the whole object stands inside with 3 % of the short side to spare. */
  readonly fits: boolean;
};

/** A length on the sky as the tangent plane shows it, centred on the contact; degrees. */
export function onPlaneDeg(lengthDeg: number): number {
  return 2 * Math.tan((lengthDeg * RAD_PER_DEG) / 2) * DEG_PER_RAD;
}

/** One side of the sensor on the plane, degrees: 57.3·d/f, a little more than the field. */
export function sideOnPlaneDeg(sideMm: number, focalLengthMm: number): number {
  return (sideMm / focalLengthMm) * DEG_PER_RAD;
}

/**
 * An object's ellipse on the plane.
 *
 * @returns `null` for a point: an object of unknown size, or one too large for any plane
 */
export function ellipseOf(
  object: Pick<SkyObject, "majorArcmin" | "minorArcmin" | "positionAngleDeg">,
): Ellipse | null {
  if (object.majorArcmin === null || object.majorArcmin <= 0 || object.majorArcmin > 160 * 60) return null;
  const minorArcmin = object.minorArcmin ?? object.majorArcmin;
  return {
    majorDeg: onPlaneDeg(object.majorArcmin / 60),
    minorDeg: onPlaneDeg(Math.max(minorArcmin, object.majorArcmin / 1000) / 60),
    positionAngleDeg: object.positionAngleDeg ?? 0,
  };
}

/** Whether an ellipse stands in a frame with room to spare. */
export function fitsFrame(ellipse: Ellipse, frame: Frame, spareDeg: number): boolean {
  const { acrossDeg, upDeg } = halfExtents(ellipse, frame.positionAngleDeg);
  return acrossDeg + spareDeg <= frame.widthDeg / 2 && upDeg + spareDeg <= frame.heightDeg / 2;
}

/** The room that must stay free on each side, degrees. */
export function spareOf(frame: FrameSize): number {
  return SPARE_SHARE * Math.min(frame.widthDeg, frame.heightDeg);
}

/**
 * How an ellipse at the centre of a frame sits in it.
 *
 * @param spareDeg - room to leave on each side; of a mosaic, that of one panel
 */
export function fitOf(ellipse: Ellipse, frame: Frame, spareDeg: number = spareOf(frame)): Fit {
  const inside = ellipseAreaInFrame(ellipse, frame);
  const whole = (Math.PI / 4) * ellipse.majorDeg * ellipse.minorDeg;
  return {
    fillFraction: inside / (frame.widthDeg * frame.heightDeg),
    objectInField: Math.min(1, inside / whole),
    fits: fitsFrame(ellipse, frame, spareDeg),
  };
}

/** The camera angle that lays the frame's long side along the object, degrees in [0, 180). */
function angleAlong(ellipse: Ellipse, size: FrameSize): number {
  return turnDeg(ellipse.positionAngleDeg + (size.widthDeg >= size.heightDeg ? 90 : 0)) % 180;
}

/**
 * The camera angle that suits an object best: the long side along it, if it fits so; else any at which
 * it fits; else the one that takes most of it in.
 *
 * @returns degrees in [0, 180); 0, north up, for a point and for a round object
 */
export function bestAngleDeg(ellipse: Ellipse | null, size: FrameSize): number {
  if (ellipse === null || ellipse.minorDeg / ellipse.majorDeg > ROUND_FROM) return 0;
  const along = angleAlong(ellipse, size);
  const fitAt = (angle: number) => fitOf(ellipse, { ...size, positionAngleDeg: angle });
  if (fitAt(along).fits) return along;
  const [span] = fittingAngles(ellipse, size);
  if (span !== undefined) return Math.round((span.fromDeg + span.toDeg) / 2) % 180;
  let best = { angle: along, inField: fitAt(along).objectInField };
  for (let angle = 0; angle < 180; angle++) {
    const inField = fitAt(angle).objectInField;
    if (inField > best.inField + 1e-9) best = { angle, inField };
  }
  return best.angle;
}

/** Camera angles from one to another, degrees, at which an object fits. */
export type AngleSpan = { readonly fromDeg: number; readonly toDeg: number };

/**
 * The camera angles at which the whole object fits.
 *
 * @returns spans in whole degrees; `toDeg` may pass 180 where a span runs across north; a span from
 *   0 to 180 when any angle will do; none when no angle does
 */
export function fittingAngles(ellipse: Ellipse, frame: FrameSize): readonly AngleSpan[] {
  const spareDeg = spareOf(frame);
  const fitting = Array.from({ length: 180 }, (_, angle) =>
    fitsFrame(ellipse, { ...frame, positionAngleDeg: angle }, spareDeg),
  );
  if (fitting.every(Boolean)) return [{ fromDeg: 0, toDeg: 180 }];
  const spans: AngleSpan[] = [];
  for (let angle = 0; angle < 180; angle++) {
    if (!fitting[angle] || fitting[(angle + 179) % 180]) continue;
    let toDeg = angle;
    while (fitting[(toDeg + 1) % 180]) toDeg++;
    spans.push({ fromDeg: angle, toDeg });
  }
  return spans;
}
