/**
 * A chart as pixels, to measure what was really drawn.
 *
 * @packageDocumentation
 */
import { Resvg } from "@resvg/resvg-js";
import { FONT_FAMILY, FONT_FILES } from "../../../bot/charts/font.ts";
import { element, type Svg } from "../../../bot/charts/svg.ts";

export type Pixels = {
  readonly width: number;
  readonly height: number;
  /** Red, green and blue of a pixel, 0–255. */
  at(x: number, y: number): readonly [number, number, number];
};

const OPTIONS = {
  font: {
    loadSystemFonts: false,
    fontFiles: Object.values(FONT_FILES),
    defaultFontFamily: FONT_FAMILY,
  },
};

export function pixelsOf(svg: string): Pixels {
  const image = new Resvg(svg, OPTIONS).render();
  const { width, height, pixels } = image;
  return {
    width,
    height,
    at: (x, y) => {
      const i = 4 * (y * width + x);
      return [pixels[i] ?? 0, pixels[i + 1] ?? 0, pixels[i + 2] ?? 0];
    },
  };
}

/** A piece on a black square of so many pixels. */
export function onBlack(side: number, piece: Svg): string {
  return element("svg", { xmlns: "http://www.w3.org/2000/svg", width: side, height: side }, [
    element("rect", { width: side, height: side, fill: "#000000" }),
    piece,
  ]).markup;
}

/** Extent of what a piece of SVG draws, as the renderer finds it. */
export function extentOf(svg: string): { readonly x: number; readonly width: number } {
  const box = new Resvg(svg, OPTIONS).getBBox();
  if (box === undefined) throw new Error("nothing drawn");
  return box;
}

/** Tags out, entities back: what a reader of the text alone finds, spaces single. */
export function textOf(svg: string): string {
  return svg
    .replace(/<[^>]*>/gu, "")
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&#39;", "'")
    .replaceAll("&amp;", "&")
    .replace(/\s+/gu, " ");
}
