import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { designationKey, lookupKey, nameKey } from "../../../core/targets/designation.ts";

describe("designationKey", () => {
  it.each([
    ["m/31", ["m31", "M 31", "M-31", "Messier 31", "messier031", " M31 "]],
    ["ngc/7000", ["ngc7000", "NGC 7000", "NGC-7000", "ngc 7000"]],
    ["ngc/224", ["NGC 0224", "ngc224"]],
    ["ngc/5194a", ["NGC 5194A", "ngc5194a"]],
    ["c/20", ["C20", "c 20", "Caldwell 20", "CALDWELL20"]],
    ["b/33", ["B33", "b 33", "Barnard 33", "barnard33"]],
    ["sh2/240", ["Sh2-240", "sh 2 240", "SH2 240", "Sh 2-240", "sh2240", "Sharpless 240", "Sharpless 2-240"]],
    ["sh2/25", ["Sh2-25", "sh 25", "sh2 25"]],
    ["vdb/142", ["vdB 142", "VdB142", "van den Bergh 142"]],
    ["cr/399", ["Cr 399", "Collinder 399"]],
    ["mel/15", ["Mel 15", "Melotte 15"]],
    ["pk/120+9.1", ["PK 120+09.1", "pk120+9.1", "PK 120 + 09.1"]],
    ["png/120.0+9.8", ["PN G120.0+09.8", "png 120.0+09.8"]],
    ["snr/189.1+3.0", ["SNR G189.1+03.0", "G189.1+3.0", "snr g 189.1 +03.0"]],
    ["eso/56-115", ["ESO 56-115", "ESO 056-115", "eso 056-G115"]],
    ["simeis/147", ["Simeis 147", "simeis147"]],
  ])("gives %s for every way to write it", (key, writings) => {
    for (const text of writings) expect(designationKey(text), text).toBe(key);
  });

  it.each(["Orion Nebula", "47 Tuc", "alpha Cen", "", "31", "the 7 Sisters", "Barnard's Loop"])(
    "takes “%s” for a name",
    (text) => expect(designationKey(text)).toBeNull(),
  );

  it("does not mind case, zeros in front, spaces or hyphens", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("M", "NGC", "IC", "LDN", "LBN", "UGC", "PGC", "B", "C", "Arp", "HCG"),
        fc.integer({ min: 1, max: 99_999 }),
        fc.constantFrom("", " ", "  ", "-", ". "),
        fc.constantFrom("", "0", "000"),
        fc.boolean(),
        (catalogue, number, between, zeros, lower) => {
          const written = `${catalogue}${between}${zeros}${number}`;
          expect(designationKey(lower ? written.toLowerCase() : written)).toBe(
            designationKey(`${catalogue} ${number}`),
          );
        },
      ),
    );
  });
});

describe("nameKey", () => {
  it.each([
    ["barnardsloop", ["Barnard's Loop", "barnards loop", "BARNARD’S-LOOP", "the Barnards Loop"]],
    ["bootes", ["Boötes", "bootes", "BOÖTES"]],
    ["alphacen", ["α Cen", "alpha cen", "Alpha-Cen"]],
    ["alpha1cen", ["α¹ Cen", "alpha1 Cen"]],
    ["veilnebula", ["The Veil Nebula", "veil  nebula"]],
    ["handchipersei", ["h & chi Persei", "h and chi persei"]],
  ])("gives %s for every way to write it", (key, writings) => {
    for (const text of writings) expect(nameKey(text), text).toBe(key);
  });

  it("is its own key, and never looks like a designation's", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        const key = nameKey(text);
        expect(key).toMatch(/^[a-z0-9]*$/);
        if (!key.startsWith("the")) expect(nameKey(key)).toBe(key);
      }),
    );
  });
});

describe("lookupKey", () => {
  it("keeps designations and names apart", () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const key = lookupKey(text);
        expect(key.includes("/")).toBe(designationKey(text) !== null);
      }),
    );
  });
});
