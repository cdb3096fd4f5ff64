/**
 * From the tangent plane to the page: how large a degree is drawn, and where the panels lie.
 *
 * @packageDocumentation
 */
import type { FramingChart } from "../../commands/chart.ts";
import { enclosing, type FramePlace, panelCorners } from "./frame-geometry.ts";
import { PAGE_WIDTH_PX } from "./page.ts";
import type { Point } from "./svg.ts";

export const RADIUS_PX = 178;
export const CENTRE: Point = { x: PAGE_WIDTH_PX / 2, y: RADIUS_PX + 4 };
/** How far towards the rim the frame's corners reach. */
const FRAME_SHARE = 0.84;

export type View = {
  readonly chart: FramingChart;
  readonly panels: readonly (readonly FramePlace[])[];
  readonly pixelsPerDeg: number;
  readonly onPage: (place: FramePlace) => Point;
};

export function viewOf(chart: FramingChart): View {
  const alone = {
    order: 1,
    xiDeg: 0,
    etaDeg: 0,
    widthDeg: chart.fieldWidthDeg,
    heightDeg: chart.fieldHeightDeg,
    turnDeg: 0,
  };
  const given = chart.panels.length === 0 ? [alone] : chart.panels;
  const panels = given.map((panel) => panelCorners(panel, chart.positionAngleDeg));
  const { middle, radiusDeg } = enclosing(panels.flat());
  const wanted = (chart.target?.majorDeg ?? 0) * 0.55 * FRAME_SHARE;
  const pixelsPerDeg =
    (RADIUS_PX * FRAME_SHARE) / Math.max(radiusDeg, Math.min(wanted, radiusDeg * 1.8), 1e-6);
  return {
    chart,
    panels,
    pixelsPerDeg,
    onPage: ({ right, up }) => ({
      x: CENTRE.x + (right - middle.right) * pixelsPerDeg,
      y: CENTRE.y - (up - middle.up) * pixelsPerDeg,
    }),
  };
}

/** Half an axis in pixels, large enough to be seen. */
export function halfPx(axisDeg: number, view: View): number {
  return Math.max(5, (axisDeg / 2) * view.pixelsPerDeg);
}
