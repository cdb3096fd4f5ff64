/**
 * Panels of a mosaic: on one tangent plane at the target, all parallel.
 *
 * Columns run along the frame's width, towards east at angle 0; rows along its
 * height, towards the frame's up.
 *
 * @packageDocumentation
 */
import { type EquatorialPlace, halfTurnDeg, RAD_PER_DEG } from "../sky/angles.ts";
import { type Ellipse, type Frame, halfExtents } from "./frame-area.ts";
import { type FrameSize, spareOf } from "./framing.ts";
import { fromPlane, type PlanePoint, positionAngleAt } from "./tangent-plane.ts";

export type Grid = { readonly columns: number; readonly rows: number };

export type Panel = {
  /** From 1, as they are to be shot: columns by turns, the westernmost first at angle 0. */
  readonly order: number;
  /** From 1. */
  readonly row: number;
  readonly column: number;
  /** Centre, J2000. */
  readonly raDeg: number;
  readonly decDeg: number;
  /** Camera angle there that keeps the panel parallel to the rest, degrees in [0, 360). */
  readonly positionAngleDeg: number;
  /** Centre on the plane. */
  readonly plane: PlanePoint;
};

/** How far a row of frames reaches: the first whole, each further one less its overlap. */
export function mosaicReachDeg(sideDeg: number, count: number, overlap: number): number {
  return sideDeg * (1 + (count - 1) * (1 - overlap));
}

/**
 * The least grid that holds an ellipse with room to spare, at a camera angle.
 *
 * @param overlap - of each side, a ratio in [0, 1)
 */
export function leastGrid(ellipse: Ellipse, frame: Frame, overlap: number): Grid {
  const spareDeg = spareOf(frame);
  const { acrossDeg, upDeg } = halfExtents(ellipse, frame.positionAngleDeg);
  const panelsOver = (sideDeg: number, halfDeg: number) => {
    const beyond = 2 * (halfDeg + spareDeg) - sideDeg;
    return beyond <= 0 ? 1 : 1 + Math.ceil(beyond / (sideDeg * (1 - overlap)) - 1e-9);
  };
  return { columns: panelsOver(frame.widthDeg, acrossDeg), rows: panelsOver(frame.heightDeg, upDeg) };
}

/**
 * The camera angle that needs fewest panels; among equals, the nearest to a preferred one.
 *
 * @param preferredDeg - such as the angle along the object
 */
export function leastPanelAngle(
  ellipse: Ellipse,
  frame: FrameSize,
  overlap: number,
  preferredDeg: number,
): number {
  let best = { angle: preferredDeg, panels: Number.POSITIVE_INFINITY };
  for (let turn = 0; turn <= 90; turn++) {
    for (const angle of [preferredDeg + turn, preferredDeg - turn]) {
      const grid = leastGrid(ellipse, { ...frame, positionAngleDeg: angle }, overlap);
      const panels = grid.columns * grid.rows;
      if (panels < best.panels) best = { angle, panels };
    }
  }
  return ((best.angle % 180) + 180) % 180;
}

/** Panels of a grid around a target. */
export function mosaicPanels(
  target: EquatorialPlace,
  frame: Frame,
  grid: Grid,
  overlap: number,
): readonly Panel[] {
  const angle = frame.positionAngleDeg * RAD_PER_DEG;
  const panels: Panel[] = [];
  for (let column = 1; column <= grid.columns; column++) {
    for (let step = 1; step <= grid.rows; step++) {
      const row = column % 2 === 1 ? step : grid.rows + 1 - step;
      const across = (column - (grid.columns + 1) / 2) * (1 - overlap) * frame.widthDeg;
      const up = (row - (grid.rows + 1) / 2) * (1 - overlap) * frame.heightDeg;
      const plane = {
        xiDeg: across * Math.cos(angle) + up * Math.sin(angle),
        etaDeg: up * Math.cos(angle) - across * Math.sin(angle),
      };
      panels.push({
        order: panels.length + 1,
        row,
        column,
        ...fromPlane(target, plane),
        positionAngleDeg: positionAngleAt(target, plane, frame.positionAngleDeg),
        plane,
      });
    }
  }
  return panels;
}

export type FixedCameraGap = {
  /** Largest turn of a panel against the first angle, degrees. */
  readonly turnDeg: number;
  /** Whether a camera kept at one angle to local north would leave sky between two panels. */
  readonly opens: boolean;
};

/**
 * What happens to a mosaic when the camera stays at one angle to local north.
 *
 * Neighbours then lie turned against each other, and a wedge opens once the turn takes more at the
 * corners than the overlap gives.
 */
export function fixedCameraGap(panels: readonly Panel[], frame: Frame, overlap: number): FixedCameraGap {
  let turn = 0;
  let opens = false;
  for (const panel of panels) {
    turn = Math.max(turn, Math.abs(halfTurnDeg(panel.positionAngleDeg - frame.positionAngleDeg)));
    for (const other of panels) {
      const columns = other.column - panel.column;
      const rows = other.row - panel.row;
      if (!((columns === 1 && rows === 0) || (columns === 0 && rows === 1))) continue;
      const between = Math.abs(halfTurnDeg(other.positionAngleDeg - panel.positionAngleDeg)) * RAD_PER_DEG;
      const [along, side] =
        columns === 1 ? [frame.heightDeg, frame.widthDeg] : [frame.widthDeg, frame.heightDeg];
      if ((along / 2) * Math.sin(between) > overlap * side) opens = true;
    }
  }
  return { turnDeg: turn, opens };
}
