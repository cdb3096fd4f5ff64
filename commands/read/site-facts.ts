/**
 * What the options say of a site: where it is, how dark, what stands in the way.
 *
 * @packageDocumentation
 */
import { ELEVATION_METRES, LATITUDE_DEG, LONGITUDE_DEG, SEEING_ARCSEC } from "../../config/input-limits.ts";
import { DEFAULT_ELEVATION_METRES } from "../../config/site-defaults.ts";
import type { Site } from "../../core/site.ts";
import { AskError } from "../ask-error.ts";
import type { Context } from "../context.ts";
import type { Request } from "../request.ts";
import { numberOption, textOption } from "./numbers.ts";
import { parseSky } from "./sky.ts";
import { parseBrightDirections, parseSkyline, textOfFile } from "./skyline.ts";

/** Where the options say the site is, or `null` when they say nothing of it. */
export async function placeOf(
  request: Request,
  context: Context,
): Promise<Pick<Site, "latitudeDeg" | "longitudeDeg" | "elevationMetres"> | null> {
  const name = textOption(request, "place");
  const latitudeDeg = numberOption(request, "latitude", { ...LATITUDE_DEG, unit: "°" });
  const longitudeDeg = numberOption(request, "longitude", { ...LONGITUDE_DEG, unit: "°" });
  const elevation = numberOption(request, "elevation", { ...ELEVATION_METRES, unit: "metres" });
  if (name !== null) {
    if (latitudeDeg !== null || longitudeDeg !== null) {
      throw new AskError("two-places", "place", "Give “place” or latitude and longitude, not both.");
    }
    const [found] = await context.places.find(name);
    if (found === undefined) {
      throw new AskError(
        "unknown-place",
        "place",
        "“place”: nothing was found under that name; check it, or give latitude and longitude.",
      );
    }
    return { ...found, elevationMetres: elevation ?? found.elevationMetres };
  }
  if (latitudeDeg === null && longitudeDeg === null) return null;
  if (latitudeDeg === null || longitudeDeg === null) {
    const missing = latitudeDeg === null ? "latitude" : "longitude";
    throw new AskError(
      "half-a-place",
      missing,
      `“${missing}” is missing: latitude and longitude go together.`,
    );
  }
  return { latitudeDeg, longitudeDeg, elevationMetres: elevation ?? DEFAULT_ELEVATION_METRES };
}

/** The site with the sky, brighter directions and seeing that the options give. */
export function withDetails(before: Site, request: Request): Site {
  const sky = textOption(request, "sky");
  const bright = textOption(request, "bright");
  const seeing = numberOption(request, "seeing", { ...SEEING_ARCSEC, unit: "arcseconds" });
  return {
    ...before,
    ...(sky === null ? {} : { sky: /^unknown$/i.test(sky) ? null : parseSky("sky", sky) }),
    ...(bright === null ? {} : { brightDirections: parseBrightDirections("bright", bright) }),
    ...(seeing === null ? {} : { seeingArcsec: seeing }),
  };
}

/** The skyline the options give, typed or as a file, or `null` when they give none. */
export function profileOf(request: Request): Site["skyline"] | null {
  const text = textOption(request, "profile");
  const file = request.options.file;
  if (text !== null && file !== undefined) {
    throw new AskError("two-profiles", "file", "Give “profile” or “file”, not both.");
  }
  if (text !== null) return parseSkyline("profile", text);
  return typeof file === "object" ? parseSkyline("file", textOfFile("file", file.bytes)) : null;
}
