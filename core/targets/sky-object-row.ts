/**
 * An object as one line of a tab-separated table, and back.
 *
 * Both ways stand here so that the builder and the reader of the table cannot
 * drift apart. An empty field is an unknown value.
 *
 * @packageDocumentation
 */
import type { EmissionLine, ObjectKind, SkyObject } from "./sky-object.ts";

export const SKY_OBJECT_COLUMNS = [
  "id",
  "kind",
  "raDeg",
  "decDeg",
  "magnitude",
  "majorArcmin",
  "minorArcmin",
  "positionAngleDeg",
  "flags",
  "name",
  "continuumMagArcsec2",
  "rayleigh",
  "suits",
  "aliases",
  "partOf",
] as const;

/** Short names of what an object may shine in, as the tables write them. */
const LIGHT_NAMES: ReadonlyMap<string, EmissionLine | "continuum"> = new Map([
  ["Ha", "h-alpha"],
  ["OIII", "o-iii"],
  ["SII", "s-ii"],
  ["Hb", "h-beta"],
  ["cont", "continuum"],
]);

export const OBJECT_KINDS: readonly ObjectKind[] = [
  "galaxy",
  "galaxy-group",
  "open-cluster",
  "globular-cluster",
  "emission-nebula",
  "reflection-nebula",
  "dark-nebula",
  "planetary-nebula",
  "supernova-remnant",
  "star-cloud",
  "asterism",
  "double-star",
  "star",
];

const KIND_BY_NAME: ReadonlyMap<string, ObjectKind> = new Map(OBJECT_KINDS.map((kind) => [kind, kind]));

type Amounts = Partial<Record<EmissionLine | "continuum", number>>;

const NO_AMOUNTS: Amounts = {};
const NO_ALIASES: readonly string[] = [];
const UNKNOWN_BRIGHTNESS: SkyObject["surfaceBrightness"] = { continuumMagArcsec2: null, rayleigh: {} };

/** Reads `Ha 1, OIII 0.9`. @throws Error on a name or number it does not know (a fault of the table) */
export function readAmounts(text: string): Amounts {
  if (text === "") return NO_AMOUNTS;
  const amounts: Amounts = {};
  for (const part of text.split(",")) {
    const [name = "", amount = ""] = part.trim().split(" ");
    const light = LIGHT_NAMES.get(name);
    if (light === undefined || amount === "" || !Number.isFinite(Number(amount))) {
      throw new Error(`not an amount of light: “${part.trim()}”`);
    }
    amounts[light] = Number(amount);
  }
  return amounts;
}

function writeAmounts(amounts: Amounts): string {
  return [...LIGHT_NAMES]
    .filter(([, light]) => amounts[light] !== undefined)
    .map(([name, light]) => `${name} ${amounts[light]}`)
    .join(", ");
}

const numberOrNull = (text: string | undefined) => (text === undefined || text === "" ? null : Number(text));

function brightnessOf(
  continuum: string | undefined,
  rayleigh: string | undefined,
): SkyObject["surfaceBrightness"] {
  if (!continuum && !rayleigh) return UNKNOWN_BRIGHTNESS;
  return { continuumMagArcsec2: numberOrNull(continuum), rayleigh: readAmounts(rayleigh ?? "") };
}

/**
 * The object of one line.
 *
 * @throws Error when the line has no id or an unknown kind (a fault of the table)
 */
export function readSkyObject(line: string): SkyObject {
  const fields = line.split("\t");
  const id = fields[0] ?? "";
  const kind = KIND_BY_NAME.get(fields[1] ?? "");
  if (id === "" || kind === undefined) throw new Error(`not a row of the catalogue: “${line}”`);
  const flags = fields[8] ?? "";
  const partOf = fields[14] ?? "";
  return {
    id,
    name: fields[9] || null,
    kind,
    raDeg: Number(fields[2]),
    decDeg: Number(fields[3]),
    properMotion: null,
    magnitude: numberOrNull(fields[4]),
    majorArcmin: numberOrNull(fields[5]),
    minorArcmin: numberOrNull(fields[6]),
    positionAngleDeg: numberOrNull(fields[7]),
    surfaceBrightness: brightnessOf(fields[10], fields[11]),
    suits: readAmounts(fields[12] ?? ""),
    aliases: fields[13] ? fields[13].split("|") : NO_ALIASES,
    ranked: flags.includes("r"),
    showpiece: flags.includes("s"),
    ...(partOf === "" ? {} : { partOf }),
  };
}

/** The line of an object, without empty fields at its end. */
export function writeSkyObject(object: SkyObject): string {
  return [
    object.id,
    object.kind,
    object.raDeg,
    object.decDeg,
    object.magnitude ?? "",
    object.majorArcmin ?? "",
    object.minorArcmin ?? "",
    object.positionAngleDeg ?? "",
    `${object.ranked ? "r" : ""}${object.showpiece ? "s" : ""}`,
    object.name ?? "",
    object.surfaceBrightness.continuumMagArcsec2 ?? "",
    writeAmounts(object.surfaceBrightness.rayleigh),
    writeAmounts(object.suits),
    object.aliases.join("|"),
    object.partOf ?? "",
  ]
    .join("\t")
    .trimEnd();
}
