/**
 * What stands ready for a public session, from words: `eyes, 2x binoculars 10x50, 1x 80mm`.
 *
 * @packageDocumentation
 */
import {
  BINOCULARS_MM,
  BINOCULARS_POWER,
  INSTRUMENT_KINDS_AT_MOST,
  INSTRUMENTS_OF_A_KIND,
  TELESCOPE_MM,
} from "../../config/outreach-evenings.ts";
import type { Instrument } from "../../core/outreach/instruments.ts";
import { AskError } from "../ask-error.ts";
import { withinRange } from "./numbers.ts";
import { said } from "./said.ts";

const MM_PER_INCH = 25.4;

/**
 * Instruments from a list with commas.
 *
 * @param option - the option it came from, for the message
 * @throws AskError for a part that cannot be read, a size or a number out of range
 */
export function parseInstruments(option: string, text: string): readonly Instrument[] {
  const parts = text
    .split(/[,;+]/)
    .map((part) => part.trim())
    .filter((part) => part !== "");
  if (parts.length === 0 || parts.length > INSTRUMENT_KINDS_AT_MOST) {
    throw new AskError(
      "unreadable-instruments",
      option,
      `“${option}” needs 1 to ${INSTRUMENT_KINDS_AT_MOST} kinds with commas between, such as eyes, 2x binoculars 10x50, 1x 80mm.`,
    );
  }
  return parts.map((part) => parseInstrument(option, part)).sort(bySize);
}

function parseInstrument(option: string, text: string): Instrument {
  const tidy = text.toLowerCase().replace(/×/g, "x").replace(/\s+/g, " ");
  if (/^(?:\d+ ?x )?(?:bare|naked|unaided)?[ -]?eyes?$/.test(tidy)) return { kind: "eyes" };
  const pair =
    /^(?:(\d+)(?: ?x ?| ))?(?:binoculars?|pairs? of binoculars|field glass(?:es)?)? ?(\d+(?:\.\d+)?) ?x ?(\d+)(?: ?mm)?(?: binoculars?)?$/.exec(
      tidy,
    );
  if (pair !== null && /x\s?\d+(?: ?mm)?(?: binoculars?)?$/.test(tidy) && !isTelescope(tidy)) {
    return {
      kind: "binoculars",
      count: countOf(option, pair[1]),
      power: withinRange(option, Number(pair[2]), { ...BINOCULARS_POWER, unit: "times (binoculars)" }),
      apertureMm: withinRange(option, Number(pair[3]), { ...BINOCULARS_MM, unit: "mm (binoculars)" }),
    };
  }
  const scope =
    /^(?:(\d+) ?x ?)?(solar |sun )?(?:(?:tele)?scopes? )?(\d+(?:\.\d+)?) ?-?(mm|cm|in|inch|inches|")(?: (solar|sun))?(?: (?:tele)?scopes?| refractors?| reflectors?)?$/.exec(
      tidy,
    );
  if (scope === null) throw unreadable(option, text);
  const [, count, solarBefore, figure, unit, solarAfter] = scope;
  const apertureMm = withinRange(option, Number(figure) * mmPer(unit), {
    ...TELESCOPE_MM,
    unit: "mm of aperture",
  });
  const isSolar = solarBefore !== undefined || solarAfter !== undefined;
  return {
    kind: isSolar ? "solar-telescope" : "telescope",
    count: countOf(option, count),
    apertureMm,
  };
}

/** `2x 80mm` is two telescopes, `2x80` a pair of binoculars. */
function isTelescope(tidy: string): boolean {
  return /^\d+ ?x ?\d+(?:\.\d+)? ?mm(?: (?:tele)?scopes?)?$/.test(tidy);
}

function mmPer(unit: string | undefined): number {
  if (unit === "mm") return 1;
  return unit === "cm" ? 10 : MM_PER_INCH;
}

function countOf(option: string, text: string | undefined): number {
  if (text === undefined) return 1;
  return withinRange(option, Number(text), { ...INSTRUMENTS_OF_A_KIND, unit: "of a kind" });
}

function unreadable(option: string, text: string): AskError {
  return new AskError(
    "unreadable-instruments",
    option,
    `“${option}”: “${said(text)}” is none I know; write eyes, binoculars 10x50, 80mm or solar 60mm, with 2x before it for two.`,
  );
}

/** The bare eye, binoculars, then telescopes by size. */
function bySize(one: Instrument, other: Instrument): number {
  const kinds = ["eyes", "binoculars", "telescope", "solar-telescope"];
  const kind = kinds.indexOf(one.kind) - kinds.indexOf(other.kind);
  if (kind !== 0 || one.kind === "eyes" || other.kind === "eyes") return kind;
  return one.apertureMm - other.apertureMm;
}

/** `2 × 80 mm telescopes`, `binoculars 10×50`, `bare eyes`. */
export function instrumentWords(instrument: Instrument): string {
  const size = (mm: number) => `${Number(mm.toFixed(0))} mm`;
  switch (instrument.kind) {
    case "eyes":
      return "bare eyes";
    case "binoculars": {
      const { count, power, apertureMm } = instrument;
      return `${count > 1 ? `${count} × ` : ""}binoculars ${power}×${apertureMm}`;
    }
    case "telescope":
      return instrument.count > 1
        ? `${instrument.count} × ${size(instrument.apertureMm)} telescopes`
        : `${size(instrument.apertureMm)} telescope`;
    case "solar-telescope":
      return instrument.count > 1
        ? `${instrument.count} × ${size(instrument.apertureMm)} solar telescopes`
        : `${size(instrument.apertureMm)} solar telescope`;
  }
}
