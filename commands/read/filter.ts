/**
 * Which filter a question is about.
 *
 * @packageDocumentation
 */
import {
  BROAD_FILTERS,
  FILTER_TRANSMISSION,
  LINE_FILTER_WIDTH_NM,
  LINE_SPELLINGS,
  NO_FILTER,
} from "../../config/filters.ts";
import { FILTER_BANDS_AT_MOST, FILTER_WIDTH_NM, WAVELENGTH_NM } from "../../config/input-limits.ts";
import { EMISSION_LINES, LINE_NAME, LINE_WAVELENGTH_NM, linesWithin } from "../../core/rig/emission-lines.ts";
import type { Band, Filter, Rig } from "../../core/rig/rig.ts";
import { AskError } from "../ask-error.ts";
import type { Request } from "../request.ts";
import { listWords } from "../words/sky.ts";
import { matchKey, nearestNames } from "./names.ts";
import { plainNumber, textOption, withinRange } from "./numbers.ts";
import { said } from "./said.ts";

/**
 * The filter named: one of the rig's own, `none`, a line, a broad band, or centre/width.
 *
 * @returns no filter when the option was not given
 * @throws AskError naming the nearest filters, or the range that a figure broke
 */
export function filterOf(request: Request, rig: Rig, option = "filter"): Filter {
  return filterIfAny(request, rig, option) ?? NO_FILTER;
}

/** As {@link filterOf}, or `null` when the option was not given. */
export function filterIfAny(request: Request, rig: Rig, option = "filter"): Filter | null {
  const text = textOption(request, option);
  if (text === null) return null;
  const saved = rig.kind === "camera" ? rig.filters : [];
  return saved.find(({ name }) => matchKey(name) === matchKey(text)) ?? parseFilter(text, option, saved);
}

/**
 * A filter from words: `none`, a line's name, a broad band's name, or `656/7+501/7` in nm.
 *
 * @param option - the option it came from, for the message
 * @param saved - the rig's own filters, offered when nothing fits
 */
export function parseFilter(text: string, option = "filter", saved: readonly Filter[] = []): Filter {
  const key = filterKey(text);
  if (key === "none") return NO_FILTER;
  const line = EMISSION_LINES.find((name) => key === filterKey(name) || LINE_SPELLINGS[name].includes(key));
  if (line) {
    const band = { name: LINE_NAME[line], centreNm: LINE_WAVELENGTH_NM[line], widthNm: LINE_FILTER_WIDTH_NM };
    return { name: LINE_NAME[line], bands: [band], transmission: FILTER_TRANSMISSION };
  }
  const broad = BROAD_FILTERS.find(({ name }) => filterKey(name) === key || name[0] === key);
  if (broad) return broad;
  if (/\d/.test(text)) {
    const bands = parseBands(option, text);
    return { name: bands.map(bandWords).join("+"), bands, transmission: FILTER_TRANSMISSION };
  }
  const names = [...saved, ...BROAD_FILTERS].map(({ name }) => name).concat(EMISSION_LINES, "none");
  throw new AskError(
    "unknown-filter",
    option,
    `“${option}”: there is no filter “${said(text)}”. The nearest are ${listWords(nearestNames(text, names))}; or give centre/width in nm, such as 656/7.`,
  );
}

/**
 * Pass bands from `centre/width` in nm, several joined by `+`.
 *
 * @throws AskError when a figure cannot be read, lies out of range, or the band is wider than its centre
 */
export function parseBands(option: string, text: string): readonly Band[] {
  const parts = text.split("+").map((part) => part.replace(/nm/gi, "").trim());
  if (parts.length > FILTER_BANDS_AT_MOST) {
    throw new AskError(
      "too-many-bands",
      option,
      `“${option}” takes at most ${FILTER_BANDS_AT_MOST} pass bands.`,
    );
  }
  return parts.map((part) => {
    const [centre, width, more] = part.split("/").map((figure) => plainNumber(figure));
    if (typeof centre !== "number" || typeof width !== "number" || more !== undefined) {
      throw new AskError(
        "unreadable-filter",
        option,
        `“${option}” needs centre/width in nm, such as 656/7, or 656/7+501/7 for several bands.`,
      );
    }
    const centreNm = withinRange(option, centre, { ...WAVELENGTH_NM, unit: "nm at the centre" });
    const widthNm = withinRange(option, width, { ...FILTER_WIDTH_NM, unit: "nm of width" });
    if (widthNm > centreNm) {
      throw new AskError(
        "wider-than-centre",
        option,
        `“${option}”: a filter ${widthNm} nm wide cannot be centred on ${centreNm} nm; the width must be below the centre.`,
      );
    }
    return named({ name: `${centreNm} nm`, centreNm, widthNm });
  });
}

/** `656/7`. */
export function bandWords({ centreNm, widthNm }: Band): string {
  return `${centreNm}/${widthNm}`;
}

/** A band that holds a line is called by it. */
function named(band: Band): Band {
  const [line] = linesWithin(band);
  return line && band.widthNm <= 50 ? { ...band, name: LINE_NAME[line] } : band;
}

function filterKey(text: string): string {
  return matchKey(
    text
      .replace(/[[\]()]/g, "")
      .replace(/α/g, "alpha")
      .replace(/β/g, "beta"),
  );
}
