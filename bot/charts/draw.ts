/**
 * From a chart's description to its picture.
 *
 * @packageDocumentation
 */
import type { Chart } from "../../commands/chart.ts";
import { drawNight } from "./night-chart.ts";
import { page } from "./page.ts";
import { pngOf } from "./raster.ts";

export function chartSvg(chart: Chart): string {
  return page(chart, drawNight(chart as never));
}

export function drawChart(chart: Chart): Promise<Uint8Array> {
  return pngOf(chartSvg(chart));
}
