import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SkyObject } from "../../../core/targets/sky-object.ts";
import {
  OBJECT_KINDS,
  readAmounts,
  readSkyObject,
  writeSkyObject,
} from "../../../core/targets/sky-object-row.ts";

const word = fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9 '+-]{0,10}[A-Za-z0-9]$/);
const amount = fc.integer({ min: 1, max: 99_999 }).map((value) => value / 10);
const orNull = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null });

const object: fc.Arbitrary<SkyObject> = fc.record({
  id: word,
  name: orNull(word),
  kind: fc.constantFrom(...OBJECT_KINDS),
  raDeg: fc.integer({ min: 0, max: 3_599_999 }).map((value) => value / 10_000),
  decDeg: fc.integer({ min: -900_000, max: 900_000 }).map((value) => value / 10_000 + 0),
  properMotion: fc.constant(null),
  magnitude: orNull(amount),
  majorArcmin: orNull(amount),
  minorArcmin: orNull(amount),
  positionAngleDeg: orNull(fc.integer({ min: 0, max: 179 })),
  surfaceBrightness: fc.record({
    continuumMagArcsec2: orNull(amount),
    rayleigh: fc.record({ "h-alpha": amount, "o-iii": amount }, { requiredKeys: [] }),
  }),
  suits: fc.record({ continuum: amount, "s-ii": amount, "h-beta": amount }, { requiredKeys: [] }),
  aliases: fc.array(word, { maxLength: 4 }),
  ranked: fc.boolean(),
  showpiece: fc.boolean(),
});

describe("a row of the catalogue", () => {
  it("is read back as it was written", () => {
    fc.assert(
      fc.property(object, (one) => {
        expect(readSkyObject(writeSkyObject(one))).toEqual(one);
        expect(readSkyObject(writeSkyObject({ ...one, partOf: "M31" }))).toEqual({ ...one, partOf: "M31" });
      }),
    );
  });

  it("is refused without an id or with an unknown kind", () => {
    expect(() => readSkyObject("\tgalaxy\t1\t2")).toThrow("not a row");
    expect(() => readSkyObject("M31\tgalaxie\t1\t2")).toThrow("not a row");
  });
});

describe("readAmounts", () => {
  it("reads lines by their short names", () => {
    expect(readAmounts("Ha 300, OIII 0.9, cont 1")).toEqual({ "h-alpha": 300, "o-iii": 0.9, continuum: 1 });
  });

  it.each(["Hx 1", "Ha", "Ha x", "Ha 1;"])("refuses “%s”", (text) => {
    expect(() => readAmounts(text)).toThrow("not an amount of light");
  });
});
