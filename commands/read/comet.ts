/**
 * A comet from the elements of its orbit, as somebody types them.
 *
 * @packageDocumentation
 */
import { YEARS } from "../../config/input-limits.ts";
import type { CometElements } from "../../core/outreach/comet-orbit.ts";
import { AskError } from "../ask-error.ts";
import type { Request } from "../request.ts";
import { plainNumber, textOption, withinRange } from "./numbers.ts";
import { defineText } from "./options.ts";
import { said } from "./said.ts";

const EXAMPLE =
  "C/2023 A3, q 0.3914, e 1.0001, i 139.11, peri 308.49, node 21.56, T 2024-09-27.74, H 4.5, n 4";

export const COMET = defineText(
  "comet",
  "A comet's elements: name, q 0.39, e 1.0, i 139.1, peri 308.5, node 21.6, T 2024-09-27.7",
  { maxLength: 300 },
);

/** What each element goes by, in lower case; ω and Ω by their Greek too. */
const KEYS: readonly { readonly key: keyof typeof RANGES | "T"; readonly names: readonly string[] }[] = [
  { key: "q", names: ["q"] },
  { key: "e", names: ["e"] },
  { key: "i", names: ["i", "incl"] },
  { key: "peri", names: ["peri", "w", "omega", "arg"] },
  { key: "node", names: ["node", "om"] },
  { key: "T", names: ["t", "tp"] },
  { key: "H", names: ["h", "m1"] },
  { key: "n", names: ["n", "k1"] },
];

const RANGES = {
  q: { min: 0.001, max: 30, unit: "AU" },
  e: { min: 0, max: 5 },
  i: { min: 0, max: 180, unit: "°" },
  peri: { min: 0, max: 360, unit: "°" },
  node: { min: 0, max: 360, unit: "°" },
  H: { min: -5, max: 30, unit: "mag" },
  n: { min: 0, max: 20 },
} as const;

const NEEDED = ["q", "e", "i", "peri", "node", "T"] as const;

/**
 * The comet typed; `null` when none was.
 *
 * @throws AskError for a bare name (orbits are not kept: they go stale), for elements that are
 * missing, doubled, out of range or not known
 */
export function cometOption(request: Request): CometElements | null {
  const text = textOption(request, "comet");
  return text === null ? null : parseComet(text);
}

function parseComet(text: string): CometElements {
  const { name, values } = splitElements(text);
  if (values.size === 0) {
    throw new AskError(
      "no-orbit",
      "comet",
      `“comet”: no comet's orbit is kept here, for orbits go stale: I cannot say where “${said(text)}” is. Type its elements as published, such as ${EXAMPLE}.`,
    );
  }
  const missing = NEEDED.filter((key) => !values.has(key));
  if (missing.length > 0) {
    throw new AskError(
      "missing-element",
      "comet",
      `“comet” lacks ${missing.join(", ")}: it needs q, e, i, peri (ω), node (Ω) and T, such as ${EXAMPLE}.`,
    );
  }
  const number = (key: keyof typeof RANGES): number => {
    const word = values.get(key) ?? "";
    const value = plainNumber(word.replace(/[°]$/, ""));
    if (value === null) {
      throw new AskError("not-a-number", "comet", `“comet”: ${key} needs a number, not “${said(word)}”.`);
    }
    return withinRange("comet", value, RANGES[key]);
  };
  return {
    name: name === "" ? "The comet" : name,
    perihelionAu: number("q"),
    eccentricity: number("e"),
    inclinationDeg: number("i"),
    perihelionArgumentDeg: number("peri"),
    nodeDeg: number("node"),
    perihelionAt: perihelionInstant(values.get("T") ?? ""),
    brightness: values.has("H")
      ? { absoluteMag: number("H"), slope: values.has("n") ? number("n") : 4 }
      : null,
  };
}

/** The name before the first element, and the elements by their key. */
function splitElements(text: string): {
  readonly name: string;
  readonly values: ReadonlyMap<string, string>;
} {
  const tidy = text.replaceAll("ω", " peri ").replaceAll("Ω", " node ");
  const pattern = /(?:^|[\s,;])([A-Za-z]+\d?)\s*[=:]?\s*([+−-]?[\d.][\d.\-/]*°?)(?=$|[\s,;])/g;
  const values = new Map<string, string>();
  let nameEnd = tidy.length;
  for (const match of tidy.matchAll(pattern)) {
    const [, word = "", value = ""] = match;
    const known = KEYS.find(({ names }) => names.includes(word.toLowerCase()));
    // Before the first element it may be part of the name, such as the A3 of C/2023 A3.
    if (known === undefined) {
      if (values.size === 0) continue;
      throw new AskError(
        "unknown-element",
        "comet",
        `“comet”: “${said(word)}” is no element; give ${NEEDED.join(", ")}, H, n.`,
      );
    }
    if (values.has(known.key)) {
      throw new AskError("doubled-element", "comet", `“comet” gives ${known.key} twice: once is enough.`);
    }
    if (values.size === 0) nameEnd = match.index;
    values.set(known.key, value);
  }
  const name = tidy
    .slice(0, nameEnd)
    .replace(/[\p{C}<>@`]/gu, "")
    .replace(/[\s,;]+$/, "")
    .trim();
  return { name: [...name].slice(0, 40).join(""), values };
}

/** `2024-09-27.74`, dynamical time, as elements are published. */
function perihelionInstant(word: string): Date {
  const read = /^(\d{4})-(\d{1,2})-(\d{1,2}(?:\.\d+)?)$/.exec(word);
  const [, year = "", month = "", day = ""] = read ?? [];
  const wholeDay = Math.floor(Number(day));
  const midnight = Date.UTC(Number(year), Number(month) - 1, wholeDay);
  const date = new Date(midnight);
  const isReal = read !== null && date.getUTCMonth() === Number(month) - 1 && date.getUTCDate() === wholeDay;
  if (!isReal || Number(year) < YEARS.min || Number(year) > YEARS.max) {
    throw new AskError(
      "not-a-date",
      "comet",
      `“comet”: T needs a date with its part of a day, YYYY-MM-DD.dd between ${YEARS.min} and ${YEARS.max}, such as 2024-09-27.74.`,
    );
  }
  return new Date(midnight + (Number(day) - wholeDay) * 86_400_000 - TT_MINUS_UTC_MS);
}

/** Since 2017; a minute does not matter here. */
const TT_MINUS_UTC_MS = 69_184;
