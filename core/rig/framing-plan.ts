/**
 * A framing: the field, how the object sits in it, and the panels it takes.
 *
 * @packageDocumentation
 */
import { type EquatorialPlace, turnDeg } from "../sky/angles.ts";
import type { Ellipse, Frame } from "./frame-area.ts";
import {
  type AngleSpan,
  bestAngleDeg,
  type Fit,
  fitOf,
  fittingAngles,
  sideOnPlaneDeg,
  spareOf,
} from "./framing.ts";
import {
  type FixedCameraGap,
  fixedCameraGap,
  type Grid,
  leastGrid,
  leastPanelAngle,
  mosaicPanels,
  mosaicReachDeg,
  type Panel,
} from "./mosaic.ts";
import { fieldDeg, scaleArcsecPerPixel } from "./optics.ts";
import type { CameraRig } from "./rig.ts";

export type FramingQuestion = {
  readonly rig: Pick<CameraRig, "focalLengthMm" | "sensor">;
  /** The target, J2000. */
  readonly target: EquatorialPlace;
  /** `null` of a point. */
  readonly ellipse: Ellipse | null;
  /** The camera angle asked for, or `null` for the best. */
  readonly angleDeg: number | null;
  /** The grid asked for; `null` for as many as it takes. */
  readonly columns: number | null;
  readonly rows: number | null;
  /** Of each side, a ratio. */
  readonly overlap: number;
  /** Along either side of a mosaic nobody asked for. */
  readonly panelsAlongAtMost: number;
};

export type FramingPlan = {
  /** One panel's field, exact. */
  readonly fieldWidthDeg: number;
  readonly fieldHeightDeg: number;
  readonly scaleArcsecPerPixel: number;
  /** One panel on the tangent plane. */
  readonly frame: Frame;
  /** The angle that would suit a single frame best. */
  readonly bestAngleDeg: number;
  /** How the object sits in one frame; `null` of a point. */
  readonly fit: Fit | null;
  readonly fittingAngles: readonly AngleSpan[];
  readonly grid: Grid;
  readonly panels: readonly Panel[];
  /** How it sits in the whole mosaic; `null` of one panel, and of a point. */
  readonly mosaicFit: Fit | null;
  readonly gap: FixedCameraGap;
  /** The grid it would take, when that is more than anybody would shoot; `null` otherwise. */
  readonly beyond: Grid | null;
};

/** The least grid, with the angle it is least at. */
function neededGrid(question: FramingQuestion, frame: Frame): { angleDeg: number; grid: Grid } {
  const { ellipse, overlap } = question;
  if (ellipse === null) return { angleDeg: frame.positionAngleDeg, grid: { columns: 1, rows: 1 } };
  const fits = fitOf(ellipse, frame).fits;
  const angleDeg =
    question.angleDeg !== null || fits
      ? frame.positionAngleDeg
      : leastPanelAngle(ellipse, frame, overlap, frame.positionAngleDeg);
  return { angleDeg, grid: leastGrid(ellipse, { ...frame, positionAngleDeg: angleDeg }, overlap) };
}

/** Lays a target out on a rig's field. */
export function framingPlan(question: FramingQuestion): FramingPlan {
  const { rig, target, ellipse, overlap } = question;
  const size = {
    widthDeg: sideOnPlaneDeg(rig.sensor.widthMm, rig.focalLengthMm),
    heightDeg: sideOnPlaneDeg(rig.sensor.heightMm, rig.focalLengthMm),
  };
  const best = bestAngleDeg(ellipse, size);
  const first: Frame = { ...size, positionAngleDeg: turnDeg(question.angleDeg ?? best) };
  const asked = question.columns !== null || question.rows !== null;
  const needed = neededGrid(question, first);
  const { panelsAlongAtMost } = question;
  const tooMany = !asked && (needed.grid.columns > panelsAlongAtMost || needed.grid.rows > panelsAlongAtMost);
  const grid = asked
    ? { columns: question.columns ?? 1, rows: question.rows ?? 1 }
    : tooMany
      ? { columns: 1, rows: 1 }
      : needed.grid;
  const frame = asked || tooMany ? first : { ...size, positionAngleDeg: needed.angleDeg };
  const panels = mosaicPanels(target, frame, grid, overlap);
  const whole: Frame = {
    widthDeg: mosaicReachDeg(size.widthDeg, grid.columns, overlap),
    heightDeg: mosaicReachDeg(size.heightDeg, grid.rows, overlap),
    positionAngleDeg: frame.positionAngleDeg,
  };
  return {
    fieldWidthDeg: fieldDeg(rig.sensor.widthMm, rig.focalLengthMm),
    fieldHeightDeg: fieldDeg(rig.sensor.heightMm, rig.focalLengthMm),
    scaleArcsecPerPixel: scaleArcsecPerPixel(rig.sensor.pixelUm, rig.focalLengthMm),
    frame,
    bestAngleDeg: best,
    fit: ellipse === null ? null : fitOf(ellipse, frame),
    fittingAngles: ellipse === null ? [] : fittingAngles(ellipse, size),
    grid,
    panels,
    mosaicFit: ellipse === null || panels.length === 1 ? null : fitOf(ellipse, whole, spareOf(frame) - 1e-9),
    gap: fixedCameraGap(panels, frame, overlap),
    beyond: tooMany ? needed.grid : null,
  };
}
