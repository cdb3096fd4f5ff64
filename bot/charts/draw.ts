/**
 * From a chart's description to its picture: one drawing a kind, all on the same page.
 *
 * @packageDocumentation
 */
import type { Chart } from "../../commands/chart.ts";
import { drawCurve } from "./curve-chart.ts";
import { drawFraming } from "./framing-chart.ts";
import { drawJupiter } from "./jupiter-chart.ts";
import { drawMoon } from "./moon-chart.ts";
import { drawNight } from "./night-chart.ts";
import { drawOutreachStrip } from "./outreach-strip.ts";
import { PAGE_WIDTH_PX, page } from "./page.ts";
import { drawPole } from "./pole-chart.ts";
import { drawProgress } from "./progress-chart.ts";
import { pngOf } from "./raster.ts";
import { drawSeason } from "./season-chart.ts";
import { drawSheet } from "./sheet-chart.ts";
import { drawSubLength } from "./sub-length-chart.ts";
import { drawSun } from "./sun-chart.ts";

/**
 * A chart as SVG text. Cautions stand whole in it, above the drawing, and can be read by
 * taking the tags out.
 *
 * @throws RangeError when the chart carries a figure that is not finite where one is needed
 */
export function chartSvg(chart: Chart): string {
  switch (chart.kind) {
    case "night":
      return page(chart, drawNight(chart));
    case "season":
      return page(chart, drawSeason(chart));
    case "framing":
      return page(chart, drawFraming(chart));
    case "sub-length":
      return page(chart, drawSubLength(chart));
    case "curve":
      return page(chart, drawCurve(chart));
    case "pole":
      return page(chart, drawPole(chart));
    case "progress":
      return page(chart, drawProgress(chart));
    case "outreach-strip":
      return page(chart, drawOutreachStrip(chart));
    case "moon":
      return page(chart, drawMoon(chart));
    case "sun":
      return page(chart, drawSun(chart));
    case "jupiter":
      return page(chart, drawJupiter(chart));
    case "sheet":
      return drawSheet(chart).svg;
  }
}

/**
 * A chart as a PNG, 800 px wide; a sheet of two columns 1000 px.
 *
 * @throws RangeError as {@link chartSvg} does
 */
export async function drawChart(chart: Chart): Promise<Uint8Array> {
  if (chart.kind !== "sheet") return pngOf(chartSvg(chart));
  const { svg, widthPx } = drawSheet(chart);
  return pngOf(svg, widthPx > PAGE_WIDTH_PX ? "wide" : "page");
}
