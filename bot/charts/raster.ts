/**
 * SVG to PNG, larger than the page so that it is crisp on a phone. The renderer is
 * loaded with the first picture and works off the main thread.
 *
 * @packageDocumentation
 */
import { FONT_FAMILY, FONT_FILES } from "./font.ts";

/** A page as wide as every chart; a wide sheet, to print, has its words large enough already. */
const PIXELS_PER_PAGE_PIXEL = { page: 2, wide: 1.25 } as const;

let renderer: Promise<typeof import("@resvg/resvg-js")> | null = null;

/**
 * A picture of SVG text as PNG.
 *
 * @throws Error when the text is not well-formed SVG (a bug in a chart)
 */
export async function pngOf(
  svg: string,
  size: keyof typeof PIXELS_PER_PAGE_PIXEL = "page",
): Promise<Uint8Array> {
  renderer ??= import("@resvg/resvg-js");
  const { renderAsync } = await renderer;
  const image = await renderAsync(svg, {
    fitTo: { mode: "zoom", value: PIXELS_PER_PAGE_PIXEL[size] },
    font: {
      loadSystemFonts: false,
      fontFiles: Object.values(FONT_FILES),
      defaultFontFamily: FONT_FAMILY,
    },
    logLevel: "off",
  });
  return image.asPng();
}
