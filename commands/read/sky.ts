/**
 * How dark the sky is, as people say it.
 *
 * @packageDocumentation
 */
import { BORTLE_CLASS, NAKED_EYE_LIMIT_MAG, SKY_MAG_ARCSEC2 } from "../../config/input-limits.ts";
import { DEFAULT_SKY } from "../../config/site-defaults.ts";
import type { Site, SkyQuality } from "../../core/site.ts";
import { AskError } from "../ask-error.ts";
import type { Request } from "../request.ts";
import { plainNumber, textOption, withinRange } from "./numbers.ts";

/** The sky a question is about; `assumption` is a sentence when nobody has said how dark it is. */
export type SkyRead = { readonly quality: SkyQuality; readonly assumption: string | null };

/**
 * The sky option, else the site's own, else the default, which is named as an assumption.
 *
 * @throws AskError when the option cannot be read or lies out of range
 */
export function skyOf(request: Request, site: Site): SkyRead {
  const text = textOption(request, "sky");
  if (text !== null) return { quality: parseSky("sky", text), assumption: null };
  if (site.sky !== null) return { quality: site.sky, assumption: null };
  return {
    quality: DEFAULT_SKY,
    assumption: `The sky of ${site.name} is taken as ${skyWords(DEFAULT_SKY)}: nobody has said how dark it is.`,
  };
}

/**
 * A sky from words: `bortle 6`, `19.8`, `19.8 mag/arcsec2`, `naked-eye 5.5`.
 *
 * @param option - the option it came from, for the message
 */
export function parseSky(option: string, text: string): SkyQuality {
  const tidy = text.trim().toLowerCase();
  const bortle = /^bortle\s*(?:class\s*)?(.+)$/.exec(tidy);
  if (bortle) {
    const figure = numberIn(option, bortle[1]);
    if (!Number.isInteger(figure)) throw unreadable(option);
    return {
      kind: "bortle",
      class: withinRange(option, figure, { ...BORTLE_CLASS, unit: "(Bortle class)" }),
    };
  }
  const nakedEye = /^(?:naked[\s-]?eye|nelm)\s*(.+)$/.exec(tidy);
  if (nakedEye) {
    const figure = numberIn(option, nakedEye[1]);
    return {
      kind: "naked-eye",
      limitMag: withinRange(option, figure, { ...NAKED_EYE_LIMIT_MAG, unit: "mag (naked-eye limit)" }),
    };
  }
  const reading = numberIn(
    option,
    tidy.replace(/\s*mag(nitudes?)?(\s*(\/|per)\s*(sq\w*\s*)?arcsec(onds?)?[²2]?)?$/, ""),
  );
  return {
    kind: "reading",
    magArcsec2: withinRange(option, reading, { ...SKY_MAG_ARCSEC2, unit: "mag/arcsec²" }),
  };
}

/** `Bortle class 5`, `19.8 mag/arcsec²`, `a naked-eye limit of 5.5 mag`. */
export function skyWords(quality: SkyQuality): string {
  switch (quality.kind) {
    case "bortle":
      return `Bortle class ${quality.class}`;
    case "reading":
      return `${quality.magArcsec2} mag/arcsec²`;
    case "naked-eye":
      return `a naked-eye limit of ${quality.limitMag} mag`;
  }
}

function numberIn(option: string, text: string | undefined): number {
  const number = plainNumber(text ?? "");
  if (number === null) throw unreadable(option);
  return number;
}

function unreadable(option: string): AskError {
  return new AskError(
    "unreadable-sky",
    option,
    `“${option}” needs a Bortle class (bortle 6), a reading in mag/arcsec² (19.8) or a naked-eye limit (naked-eye 5.5).`,
  );
}
