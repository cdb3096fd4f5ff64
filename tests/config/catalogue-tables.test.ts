import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { SHOWPIECE_COLUMNS } from "../../config/build/overlay.ts";
import { DATA_FOLDER, readCatalogueSources } from "../../config/build/sources.ts";
import { catalogueTables } from "../../config/build/tables.ts";
import { readTable } from "../../config/build/tsv.ts";
import { CONSTELLATIONS } from "../../config/constellations.ts";
import { OBJECT_KINDS, readAmounts } from "../../core/targets/sky-object-row.ts";

const sources = readCatalogueSources();
const { showpieces } = sources;

const shipped = (name: string) => readFileSync(new URL(name, DATA_FOLDER), "utf8");

describe("npm run catalogue", () => {
  const tables = catalogueTables(sources);

  it.each(["deep-sky.tsv", "stars.tsv", "named-stars.tsv"] as const)(
    "builds %s as it is shipped, byte for byte",
    (name) => expect(tables[name] === shipped(name), `${name} differs: run npm run catalogue`).toBe(true),
  );
});

/** Rows that break a rule, as sentences that name the row and the fault. */
function faults(fault: (row: (typeof showpieces)[number]) => string | null): readonly string[] {
  return showpieces.flatMap((row) => {
    const found = fault(row);
    return found === null ? [] : [`${row.id}: ${found}`];
  });
}

describe("the overlay of showpieces", () => {
  it("has at least 250 rows, each with an id of its own", () => {
    expect(showpieces.length).toBeGreaterThanOrEqual(250);
    expect(new Set(showpieces.map((row) => row.id)).size).toBe(showpieces.length);
  });

  it("has the same columns in every table", () => {
    for (const row of showpieces) expect(Object.keys(row)).toEqual([...SHOWPIECE_COLUMNS]);
  });

  it("says of every row where it is from", () => {
    expect(faults((row) => ((row.source ?? "").length < 5 ? "no source" : null))).toEqual([]);
  });

  it("names no source that its tables' headers do not explain", () => {
    const known = /from memory|Steinicke \(SSCore\)|OpenNGC|d3-celestial|SIMBAD|NED|WHAM|the sources/;
    expect(faults((row) => (known.test(row.source ?? "") ? null : `source “${row.source}”`))).toEqual([]);
  });

  it("gives every row a kind and an extent, no wider than long", () => {
    expect(
      faults((row) => {
        if (!OBJECT_KINDS.some((kind) => kind === row.kind)) return `kind “${row.kind}”`;
        if (!(Number(row.major) > 0)) return "no extent";
        if (Number(row.minor) > Number(row.major)) return "wider than long";
        return null;
      }),
    ).toEqual([]);
  });

  it("gives line brightnesses and suits that can be", () => {
    expect(
      faults((row) => {
        const rayleigh = Object.values(readAmounts(row.rayleigh ?? ""));
        const suits = Object.values(readAmounts(row.suits ?? ""));
        if (rayleigh.some((value) => value < 1 || value > 1e6)) return "Rayleigh outside 1 to 1,000,000";
        if (suits.some((value) => value < 0 || value > 1)) return "suits outside 0 to 1";
        return null;
      }),
    ).toEqual([]);
  });

  it("gives emission nebulae a brightness, so that a picture of them can be reckoned", () => {
    const glowing = new Set(["emission-nebula", "supernova-remnant"]);
    expect(
      faults((row) => (glowing.has(row.kind ?? "") && row.rayleigh === "" ? "no brightness" : null)),
    ).toEqual([]);
  });
});

describe("the corrections of places", () => {
  it("are on the sky and each far enough off to matter", () => {
    for (const row of sources.corrections) {
      expect(Number(row.raDeg) >= 0 && Number(row.raDeg) < 360, row.id).toBe(true);
      expect(Math.abs(Number(row.decDeg)) <= 90, row.id).toBe(true);
      expect(Number(row.offArcmin), row.id).toBeGreaterThanOrEqual(2);
    }
  });
});

describe("readTable", () => {
  it("skips comments and blank lines and fills what is missing", () => {
    expect(readTable("# about\na\tb\n\n1\t2\n3\n")).toEqual([
      { a: "1", b: "2" },
      { a: "3", b: "" },
    ]);
  });

  it("refuses a row that is longer than its columns", () => {
    expect(() => readTable("a\tb\n1\t2\t3\n")).toThrow("more fields than columns");
  });
});

describe("the constellations", () => {
  it("are 88, each with an abbreviation of three letters of its own", () => {
    expect(CONSTELLATIONS).toHaveLength(88);
    expect(new Set(CONSTELLATIONS.map((one) => one.abbreviation)).size).toBe(88);
    for (const one of CONSTELLATIONS) expect(one.abbreviation, one.name).toMatch(/^[A-Z][A-Za-z]{2}$/);
  });
});
