/**
 * A rig in one line: `400mm f/5.6, 23.5x15.7mm, 3.76um mono -10C guided`, or `250mm f/4.8 visual 25/52 10/70`.
 *
 * Figures carry their units, so their order does not matter; commas and spaces part them.
 *
 * @packageDocumentation
 */
import { CHIPS } from "../../config/sensors.ts";
import type { Mount, Optics, Rig } from "../../core/rig/rig.ts";
import { AskError } from "../ask-error.ts";
import { type CameraFacts, NO_CAMERA_FACTS } from "./camera-facts.ts";
import { type RigFacts, rigFromFacts } from "./rig-facts.ts";
import { said } from "./said.ts";

/** A figure: digits with a decimal point (a comma parts figures). */
const FIGURE = String.raw`(\d+(?:\.\d+)?|\.\d+)`;
/** Neither in the middle of a word nor of a figure. */
const BEFORE = String.raw`(?<![\p{L}\d.])`;
const AFTER = String.raw`(?![\p{L}\d])`;

const MOUNTS: Readonly<Record<string, Mount>> = {
  german: "german",
  fork: "fork",
  tracker: "tracker",
  altazimuth: "altazimuth",
  "alt-az": "altazimuth",
  fixed: "fixed",
  tripod: "fixed",
};

const OPTICS: Readonly<Record<string, Optics>> = {
  refractor: "refractor",
  lens: "refractor",
  reflector: "mirror",
  mirror: "mirror",
};

/** Whether a line reads as a description: it names a focal length and a focal ratio. */
export function isRigDescription(text: string): boolean {
  return /\d\s*mm/i.test(text) && /f\s*\/?\s*\d/i.test(text);
}

/**
 * The rig described.
 *
 * @param option - the option it came from, for the message
 * @throws AskError naming what could not be read, what is missing or which range was broken
 */
export function parseRigDescription(option: string, text: string): Rig {
  return rigFromFacts(parseRigFacts(option, text), () => option);
}

/** What a description says, before anything is assumed. */
export function parseRigFacts(option: string, text: string): RigFacts {
  const line = new Line(text);
  return line.takeWord("visual") ? visualFrom(option, line) : cameraFrom(option, line);
}

function visualFrom(option: string, line: Line): RigFacts {
  const [ratio] = line.take(String.raw`f\s*\/?\s*${FIGURE}`) ?? [];
  const eyepieces = line
    .takeAll(String.raw`${FIGURE}\s*(?:mm)?\s*\/\s*${FIGURE}\s*°?`)
    .map(([focal, field]) => ({
      focalLengthMm: Number(focal),
      apparentFieldDeg: Number(field),
    }));
  const [aperture] = line.take(String.raw`${FIGURE}\s*mm`) ?? [];
  const mount = line.takeOneOf(MOUNTS);
  line.takeOneOf(OPTICS);
  line.takeWord("eyepieces");
  line.refuseRest(option);
  if (aperture === undefined || ratio === undefined) throw incomplete(option, "250mm f/4.8 visual");
  return {
    kind: "visual",
    name: line.whole,
    apertureMm: Number(aperture),
    focalRatio: Number(ratio),
    mount,
    eyepieces,
  };
}

function cameraFrom(option: string, line: Line): RigFacts {
  const number = (pattern: string): number | null => {
    const [figure] = line.take(pattern) ?? [];
    return figure === undefined ? null : Number(figure.replace("−", "-"));
  };
  const chipCode = line.takeChip();
  const [width, height] = line.take(String.raw`${FIGURE}\s*(?:mm)?\s*[x×*]\s*${FIGURE}\s*mm`) ?? [];
  const pixelUm = number(String.raw`${FIGURE}\s*(?:[uµμ]m|microns?)`);
  const readNoiseElectrons = number(String.raw`(?:rn|read[\s-]?noise)\s*${FIGURE}\s*e?-?`);
  const reducer = number(String.raw`(?:reducer|barlow)\s*${FIGURE}\s*x?`);
  const setting = line.take(String.raw`(gain|iso)\s*(\d+)`);
  const sensorCelsius = number(String.raw`([-+−]?\d+(?:\.\d+)?)\s*°?\s*c`);
  const focalRatio = number(String.raw`f\s*\/?\s*${FIGURE}`);
  const focalLengthMm = number(String.raw`${FIGURE}\s*mm`);
  const facts: Omit<CameraFacts, "name" | "focalLengthMm" | "focalRatio"> = {
    ...NO_CAMERA_FACTS,
    chipCode,
    widthMm: width === undefined ? null : Number(width),
    heightMm: height === undefined ? null : Number(height),
    pixelUm,
    readNoiseElectrons,
    reducerFactor: reducer,
    setting: setting === null ? null : setting.join(" "),
    sensorCelsius,
    colour: line.takeOneOf({ mono: false, monochrome: false, colour: true, color: true }),
    modified: line.takeOneOf({ unmodified: false, modified: true }),
    guided: line.takeOneOf({ unguided: false, guided: true }),
    mount: line.takeOneOf(MOUNTS),
    optics: line.takeOneOf(OPTICS),
  };
  line.refuseRest(option);
  if (focalLengthMm === null || focalRatio === null) {
    throw incomplete(option, "400mm f/5.6, 23.5x15.7mm, 3.76um");
  }
  return { ...facts, name: line.whole, focalLengthMm, focalRatio };
}

function incomplete(option: string, example: string): AskError {
  return new AskError(
    "incomplete-rig",
    option,
    `“${option}” needs a saved rig's name, or a description with a focal length and ratio, such as ${example}.`,
  );
}

/** A line from which figures and words are taken one by one until nothing is left. */
class Line {
  readonly whole: string;
  #left: string;

  constructor(text: string) {
    this.whole = text.trim().replace(/\s+/g, " ");
    this.#left = text;
  }

  /** The groups of the first match, taken out of the line; `null` when there is none. */
  take(pattern: string): readonly string[] | null {
    const match = new RegExp(`${BEFORE}${pattern}${AFTER}`, "iu").exec(this.#left);
    if (!match) return null;
    this.#left = `${this.#left.slice(0, match.index)} , ${this.#left.slice(match.index + match[0].length)}`;
    return match.slice(1);
  }

  takeAll(pattern: string): (readonly string[])[] {
    const all: (readonly string[])[] = [];
    for (let groups = this.take(pattern); groups !== null; groups = this.take(pattern)) all.push(groups);
    return all;
  }

  takeWord(word: string): boolean {
    return this.take(word) !== null;
  }

  /** The value of the first word that stands in the line, or `null`. */
  takeOneOf<Value>(words: Readonly<Record<string, Value>>): Value | null {
    const found = Object.keys(words).find((word) => this.takeWord(word));
    return found === undefined ? null : (words[found] ?? null);
  }

  /** A chip's code or a format's name, however it is spaced. */
  takeChip(): string | null {
    const found = CHIPS.find(({ code }) => {
      const spaced = code.split(/[\s-]+|(?<=\p{L})(?=\d)/u).join(String.raw`[\s-]*`);
      return this.takeWord(spaced);
    });
    return found?.code ?? null;
  }

  /** @throws AskError quoting what was not understood */
  refuseRest(option: string): void {
    const rest = this.#left
      .split(/[,;\s]+/)
      .filter((word) => word !== "")
      .join(" ");
    if (rest === "") return;
    throw new AskError(
      "unreadable-rig",
      option,
      `“${option}”: “${said(rest)}” was not understood; a description reads 400mm f/5.6, 23.5x15.7mm, 3.76um mono -10C guided.`,
    );
  }
}
