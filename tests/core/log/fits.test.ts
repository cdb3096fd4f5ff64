import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { frameOfFits, isPlainWords } from "../../../core/log/fits-frame.ts";
import { FITS_BLOCK_BYTES, looksLikeFits, readFitsHeader } from "../../../core/log/fits-header.ts";

/** Files written by astropy; the script that made them stands beside them. */
const sample = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../../reference/astropy/${name}.fits`, import.meta.url)));

function cardsOf(name: string) {
  const read = readFitsHeader(sample(name));
  if (read.kind !== "read") throw new Error(`${name}: ${read.fault}`);
  return read.cards;
}

/** A header by hand, for what no writer would produce. */
function header(...cards: readonly string[]): Uint8Array {
  const text = ["SIMPLE  =                    T", ...cards].map((card) => card.padEnd(80)).join("");
  return new TextEncoder().encode(text.padEnd(Math.ceil(text.length / FITS_BLOCK_BYTES) * FITS_BLOCK_BYTES));
}

describe("readFitsHeader", () => {
  it("reads what astropy wrote", () => {
    const cards = cardsOf("light");
    expect(cards.get("OBJECT")).toBe("NGC 6888");
    expect(cards.get("EXPTIME")).toBe(180);
    expect(cards.get("CCD-TEMP")).toBe(-10.1);
    expect(cards.get("SIMPLE")).toBe(true);
    expect(cards.get("NAXIS1")).toBe(3);
  });

  it("reads an apostrophe in a string", () => {
    expect(cardsOf("quoted").get("OBJECT")).toBe("Barnard's Loop");
  });

  it("reads a header of several blocks", () => {
    expect(sample("long").length).toBeGreaterThan(10 * FITS_BLOCK_BYTES);
    expect(cardsOf("long").get("FILTER")).toBe("OIII");
  });

  it("needs no more than the header's own blocks", () => {
    const head = sample("light").subarray(0, FITS_BLOCK_BYTES);
    expect(readFitsHeader(head).kind).toBe("read");
  });

  it("refuses a header without END in 36 blocks", () => {
    expect(sample("endless").length).toBeGreaterThan(36 * FITS_BLOCK_BYTES);
    expect(readFitsHeader(sample("endless"))).toMatchObject({ kind: "refused", fault: "too-long" });
    // A door hands over the first 36 blocks alone.
    const head = sample("endless").subarray(0, 36 * FITS_BLOCK_BYTES);
    expect(readFitsHeader(head)).toMatchObject({ kind: "refused", fault: "too-long" });
  });

  it("refuses a file cut short, at whatever byte", () => {
    const whole = sample("light");
    for (const length of [10, 79, 80, 200, 1000, FITS_BLOCK_BYTES - 1]) {
      expect(readFitsHeader(whole.subarray(0, length))).toMatchObject({
        kind: "refused",
        fault: "truncated",
      });
    }
    const long = sample("long");
    expect(readFitsHeader(long.subarray(0, 5 * FITS_BLOCK_BYTES))).toMatchObject({ fault: "truncated" });
  });

  it("refuses what is no FITS file", () => {
    for (const text of ["", "#!/bin/sh\nrm -rf /\n", "<script>", "SIMPLE  =F", "\u0000".repeat(3000)]) {
      expect(readFitsHeader(new TextEncoder().encode(text))).toMatchObject({
        kind: "refused",
        fault: "no-fits",
      });
    }
    expect(looksLikeFits(sample("light"))).toBe(true);
  });

  it("refuses bytes outside printable ASCII, and a value that follows no rule", () => {
    expect(readFitsHeader(header("OBJECT  = 'M\u0007 33'", "END"))).toMatchObject({
      fault: "bad-characters",
    });
    expect(readFitsHeader(header("EXPTIME = $(reboot)", "END"))).toMatchObject({
      fault: "bad-value",
      card: "EXPTIME",
    });
    expect(readFitsHeader(header("OBJECT  = 'never closed", "END"))).toMatchObject({ fault: "bad-value" });
  });

  it("reads double-precision exponents, blanks and complex values", () => {
    const read = readFitsHeader(
      header("EXPTIME = 1.8D2 / seconds", "GAIN    =", "Z       = (1.0, 2.0)", "END"),
    );
    expect(read.kind === "read" && [...read.cards].slice(1)).toEqual([
      ["EXPTIME", 180],
      ["GAIN", null],
      ["Z", null],
    ]);
  });

  it("survives any bytes", () => {
    const bytes = fc.uint8Array({ maxLength: 9000 });
    fc.assert(
      fc.property(bytes, fc.boolean(), (noise, real) => {
        const file = real ? sample("light") : new Uint8Array(0);
        const mixed = new Uint8Array([...file.subarray(0, 400), ...noise]);
        expect(["read", "refused"]).toContain(readFitsHeader(mixed).kind);
      }),
      { numRuns: 100, seed: 7 },
    );
  });
});

describe("frameOfFits", () => {
  it("takes a light frame's figures", () => {
    expect(frameOfFits(cardsOf("light"))).toEqual({
      kind: "read",
      frame: {
        sort: "light",
        object: "NGC 6888",
        filter: "OIII",
        subSeconds: 180,
        gain: 100,
        iso: null,
        sensorCelsius: -10.1,
        rotationDeg: 45.5,
        startedAt: new Date("2026-10-03T21:40:00.250Z"),
      },
    });
  });

  it("knows darks and flats, and EXPOSURE for EXPTIME", () => {
    expect(frameOfFits(cardsOf("dark"))).toMatchObject({ frame: { sort: "dark", object: null } });
    expect(frameOfFits(cardsOf("flat"))).toMatchObject({ frame: { sort: "flat", subSeconds: 0.8 } });
    expect(frameOfFits(cardsOf("quoted"))).toMatchObject({ frame: { sort: "light", subSeconds: 150 } });
  });

  it("refuses a header without an exposure", () => {
    expect(frameOfFits(cardsOf("no-exposure"))).toEqual({
      kind: "refused",
      fault: { kind: "missing", key: "EXPTIME" },
    });
  });

  it("refuses a script for a name", () => {
    expect(frameOfFits(cardsOf("script"))).toMatchObject({
      kind: "refused",
      fault: { kind: "unreadable", key: "OBJECT" },
    });
  });

  it.each(["2026-13-03T21:40:00", "2026-02-30T21:40:00", "03/10/26", "yesterday", "2026-10-03"])(
    "refuses the date %s",
    (date) => {
      const read = frameOfFits(
        new Map<string, string | number>([
          ["EXPTIME", 60],
          ["DATE-OBS", date],
        ]),
      );
      expect(read).toMatchObject({ kind: "refused", fault: { kind: "unreadable", key: "DATE-OBS" } });
    },
  );

  it("lets designations through and machine talk not", () => {
    for (const name of [
      "NGC 6888",
      "Barnard's Loop",
      "Sh2-101",
      "C/2023 A3",
      "M 31 (core)",
      "NGC 869 & 884",
    ]) {
      expect(isPlainWords(name)).toBe(true);
    }
    for (const name of [
      "<b>",
      "@everyone",
      "`ls`",
      "$(ls)",
      "../../x",
      "http://x.y",
      "a;b",
      "x".repeat(69),
    ]) {
      expect(isPlainWords(name)).toBe(false);
    }
  });
});
