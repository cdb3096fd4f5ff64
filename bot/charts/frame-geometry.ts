/**
 * Sensors on the tangent plane: panels' corners as the upright frame sees them, what two
 * of them share, and the circle that holds them all.
 *
 * @packageDocumentation
 */
import type { ChartEllipse, FramingChart } from "../../commands/chart.ts";
import { RAD_PER_DEG } from "../../core/sky/angles.ts";

/** A place as the frame sees it: degrees to its right and up. */
export type FramePlace = { readonly right: number; readonly up: number };

/** A place of the tangent plane turned so that the frame stands upright; east lies left of north. */
export function asFramed(xiDeg: number, etaDeg: number, positionAngleDeg: number): FramePlace {
  const turn = positionAngleDeg * RAD_PER_DEG;
  return {
    right: -xiDeg * Math.cos(turn) + etaDeg * Math.sin(turn),
    up: xiDeg * Math.sin(turn) + etaDeg * Math.cos(turn),
  };
}

/** A panel's corners, anticlockwise from the upper left. */
export function panelCorners(panel: FramingChart["panels"][number], positionAngleDeg: number): FramePlace[] {
  const middle = asFramed(panel.xiDeg, panel.etaDeg, positionAngleDeg);
  // North through east is anticlockwise as the frame sees it.
  const turn = panel.turnDeg * RAD_PER_DEG;
  return (
    [
      [-1, 1],
      [-1, -1],
      [1, -1],
      [1, 1],
    ] as const
  ).map(([side, height]) => {
    const right = (side * panel.widthDeg) / 2;
    const up = (height * panel.heightDeg) / 2;
    return {
      right: middle.right + right * Math.cos(turn) - up * Math.sin(turn),
      up: middle.up + right * Math.sin(turn) + up * Math.cos(turn),
    };
  });
}

/**
 * What two convex shapes share; empty when they do not overlap.
 *
 * @param first - corners anticlockwise (right and up)
 * @param second - likewise
 *
 * @remarks Source: I. E. Sutherland and G. W. Hodgman 1974, *Comm. ACM* 17, 32.
 */
export function sharedArea(first: readonly FramePlace[], second: readonly FramePlace[]): FramePlace[] {
  let shape = [...first];
  second.forEach((from, i) => {
    const to = second[(i + 1) % second.length] ?? from;
    const side = (place: FramePlace) =>
      (to.right - from.right) * (place.up - from.up) - (to.up - from.up) * (place.right - from.right);
    const kept: FramePlace[] = [];
    shape.forEach((place, k) => {
      const before = shape[(k + shape.length - 1) % shape.length] ?? place;
      const [a, b] = [side(before), side(place)];
      if (a >= 0 !== b >= 0) {
        const share = a / (a - b);
        kept.push({
          right: before.right + share * (place.right - before.right),
          up: before.up + share * (place.up - before.up),
        });
      }
      if (b >= 0) kept.push(place);
    });
    shape = kept;
  });
  return shape.length < 3 ? [] : shape;
}

/** Middle and radius of a circle that holds every corner: about the middle of their extent. */
export function enclosing(corners: readonly FramePlace[]): { middle: FramePlace; radiusDeg: number } {
  const rights = corners.map(({ right }) => right);
  const ups = corners.map(({ up }) => up);
  const middle = {
    right: (Math.min(...rights) + Math.max(...rights)) / 2,
    up: (Math.min(...ups) + Math.max(...ups)) / 2,
  };
  const reach = corners.map(({ right, up }) => Math.hypot(right - middle.right, up - middle.up));
  return { middle, radiusDeg: Math.max(...reach) };
}

/** Angle of an ellipse's major axis from the frame's up, anticlockwise. */
export function ellipseTurnDeg(ellipse: ChartEllipse, positionAngleDeg: number): number {
  return ellipse.positionAngleDeg - positionAngleDeg;
}

/**
 * Length of a scale bar: the roundest of degrees, arcminutes or arcseconds that is at most
 * `mostDeg`.
 */
export function scaleBar(mostDeg: number): { readonly lengthDeg: number; readonly words: string } {
  const units = [
    { sizeDeg: 1, sign: "°", steps: [1, 2, 5, 10, 20, 30, 45, 60, 90] },
    { sizeDeg: 1 / 60, sign: "′", steps: [1, 2, 5, 10, 15, 20, 30] },
    { sizeDeg: 1 / 3600, sign: "″", steps: [1, 2, 5, 10, 15, 20, 30] },
  ];
  for (const { sizeDeg, sign, steps } of units) {
    const step = [...steps].reverse().find((each) => each * sizeDeg <= mostDeg);
    if (step !== undefined) return { lengthDeg: step * sizeDeg, words: `${step}${sign}` };
  }
  return { lengthDeg: mostDeg, words: "" };
}
