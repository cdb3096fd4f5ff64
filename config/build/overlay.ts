/**
 * The overlay of showpieces: what a picture shows of an object, laid over the base rows.
 *
 * @packageDocumentation
 */
import { readCoordinates } from "../../core/targets/coordinates.ts";
import { lookupKey } from "../../core/targets/designation.ts";
import type { SkyObject } from "../../core/targets/sky-object.ts";
import { OBJECT_KINDS, readAmounts } from "../../core/targets/sky-object-row.ts";
import { PLACE_DECIMALS, rounded } from "./d3-celestial.ts";
import type { TableRow } from "./tsv.ts";

/** The columns of a table of showpieces; an empty field leaves the base row's value. */
export const SHOWPIECE_COLUMNS = [
  "id",
  "name",
  "kind",
  "place",
  "major",
  "minor",
  "pa",
  "mag",
  "continuum",
  "rayleigh",
  "suits",
  "aliases",
  "partOf",
  "source",
] as const;

function fail(row: TableRow, fault: string): never {
  throw new Error(`showpiece “${row.id}”: ${fault}`);
}

function numberIn(row: TableRow, column: string, least: number, most: number): number | null {
  const text = row[column] ?? "";
  if (text === "") return null;
  const value = Number(text);
  if (!(value >= least && value <= most)) fail(row, `${column} is “${text}”, not in [${least}, ${most}]`);
  return value;
}

function kindOf(row: TableRow, base: SkyObject | null): SkyObject["kind"] {
  const kind = OBJECT_KINDS.find((one) => one === row.kind);
  if (kind !== undefined) return kind;
  if (row.kind !== "" || base === null) fail(row, `“${row.kind}” is no kind of object`);
  return base.kind;
}

function placeOf(row: TableRow, base: SkyObject | null): { raDeg: number; decDeg: number } {
  if (row.place === "") return base ?? fail(row, "it is not in the base catalogue and has no place");
  const place = readCoordinates(row.place ?? "");
  if (place.kind !== "place") fail(row, `“${row.place}” is no place`);
  return {
    raDeg: rounded(place.raDeg, PLACE_DECIMALS) % 360,
    decDeg: rounded(place.decDeg, PLACE_DECIMALS),
  };
}

function extentOf(row: TableRow, base: SkyObject | null): { major: number | null; minor: number | null } {
  const major = numberIn(row, "major", 0.005, 3600);
  if (major === null) return { major: base?.majorArcmin ?? null, minor: base?.minorArcmin ?? null };
  const minor = numberIn(row, "minor", 0.005, major) ?? major;
  return { major, minor };
}

/** Names without repetition, none of them the object's own id or name. */
function aliasesOf(row: TableRow, absorbed: readonly SkyObject[], id: string, name: string | null): string[] {
  const written = (row.aliases ?? "").split("|").map((alias) => alias.trim());
  const inherited = absorbed.flatMap((base) => [base.id, ...base.aliases]);
  const seen = new Set([lookupKey(id), ...(name === null ? [] : [lookupKey(name)])]);
  return [...written, ...inherited].filter((alias) => {
    const key = lookupKey(alias);
    if (key === "" || seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function showpiece(row: TableRow, absorbed: readonly SkyObject[]): SkyObject {
  const id = row.id ?? "";
  const base = absorbed.find((one) => lookupKey(one.id) === lookupKey(id)) ?? absorbed[0] ?? null;
  const name = row.name || null;
  const extent = extentOf(row, base);
  const { continuum, ...rayleigh } = readAmounts(row.rayleigh ?? "");
  if (continuum !== undefined) fail(row, "a continuum has no Rayleigh");
  const partOf = row.partOf ?? "";
  const kind = kindOf(row, base);
  return {
    id,
    name,
    kind,
    ...placeOnly(placeOf(row, base)),
    properMotion: null,
    magnitude: numberIn(row, "mag", -3, 20) ?? base?.magnitude ?? null,
    majorArcmin: extent.major,
    minorArcmin: extent.minor,
    positionAngleDeg: numberIn(row, "pa", 0, 179.9),
    surfaceBrightness: { continuumMagArcsec2: numberIn(row, "continuum", 8, 30), rayleigh },
    suits: readAmounts(row.suits ?? ""),
    aliases: aliasesOf(row, absorbed, id, name),
    ranked: true,
    showpiece: true,
    ...(partOf === "" ? {} : { partOf }),
  };
}

function placeOnly({ raDeg, decDeg }: { raDeg: number; decDeg: number }) {
  return { raDeg, decDeg };
}

/**
 * Lays showpieces over base rows: each absorbs the base rows it names, by designation.
 *
 * @returns the showpieces in their order, then the base rows that none absorbed
 * @throws Error when two showpieces claim one base row or name, or a row's values are out of range
 */
export function overlaid(base: readonly SkyObject[], rows: readonly TableRow[]): readonly SkyObject[] {
  const byKey = new Map<string, SkyObject[]>();
  for (const object of base) {
    for (const key of new Set([object.id, ...object.aliases].map(lookupKey))) {
      const others = byKey.get(key);
      if (others === undefined) byKey.set(key, [object]);
      else others.push(object);
    }
  }
  const absorbedBy = new Map<SkyObject, string>();
  const showpieces = rows.map((row) => {
    const names = [row.id ?? "", ...(row.aliases ?? "").split("|")];
    const absorbed = new Set(names.flatMap((name) => byKey.get(lookupKey(name)) ?? []));
    for (const object of absorbed) {
      const other = absorbedBy.get(object);
      if (other !== undefined) fail(row, `${object.id} belongs to ${other} already`);
      absorbedBy.set(object, row.id ?? "");
    }
    return showpiece(row, [...absorbed]);
  });
  for (const one of showpieces) {
    if (one.partOf !== undefined && !showpieces.some((other) => other.id === one.partOf)) {
      throw new Error(`showpiece “${one.id}”: part of “${one.partOf}”, which is not there`);
    }
  }
  return [...showpieces, ...base.filter((object) => !absorbedBy.has(object))];
}
