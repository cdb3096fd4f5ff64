/**
 * SVG to PNG, twice the page's size so that it is crisp on a phone. The renderer is
 * loaded with the first picture and works off the main thread.
 *
 * @packageDocumentation
 */
import { FONT_FAMILY, FONT_FILES } from "./font.ts";

const PIXELS_PER_PAGE_PIXEL = 2;

let renderer: Promise<typeof import("@resvg/resvg-js")> | null = null;

/**
 * A picture of SVG text as PNG.
 *
 * @throws Error when the text is not well-formed SVG (a bug in a chart)
 */
export async function pngOf(svg: string): Promise<Uint8Array> {
  renderer ??= import("@resvg/resvg-js");
  const { renderAsync } = await renderer;
  const image = await renderAsync(svg, {
    fitTo: { mode: "zoom", value: PIXELS_PER_PAGE_PIXEL },
    font: {
      loadSystemFonts: false,
      fontFiles: Object.values(FONT_FILES),
      defaultFontFamily: FONT_FAMILY,
    },
    logLevel: "off",
  });
  return image.asPng();
}
