/** The table of lunar features: sound, and in the places where a second table has them. */
import { selenographic } from "astronomia/moon";
import { describe, expect, it } from "vitest";
import { MOON_FEATURES } from "../../config/moon-features.ts";
import { MOON_NAMES } from "../../config/moon-names.ts";
import { DEG_PER_RAD, halfTurnDeg } from "../../core/sky/angles.ts";

const letters = (name: string) =>
  name
    .normalize("NFKD")
    .replace(/[^a-z]/gi, "")
    .toLowerCase();

/** How that table spells what the IAU spells otherwise. */
const SPELT: Readonly<Record<string, string>> = {
  walter: "walther",
  tauruntius: "taruntius",
  pico: "monspico",
  piton: "monspiton",
};

describe("MOON_FEATURES", () => {
  it("holds well over a hundred, each named once, in range, with one plain sentence", () => {
    expect(MOON_FEATURES.length).toBeGreaterThan(150);
    expect(new Set(MOON_FEATURES.map(({ name }) => letters(name))).size).toBe(MOON_FEATURES.length);
    for (const { name, latitudeDeg, longitudeDeg, diameterKm, line } of MOON_FEATURES) {
      expect(name).toMatch(/^[A-Z]/);
      expect(Math.abs(latitudeDeg)).toBeLessThanOrEqual(90);
      expect(Math.abs(longitudeDeg)).toBeLessThanOrEqual(100);
      expect(diameterKm).toBeGreaterThan(0);
      expect(diameterKm).toBeLessThan(2600);
      expect(line).toMatch(/^\S.{15,140}\.$/);
    }
  });

  it("agrees within a degree with Meeus's table 53.A as astronomia has it, feature by feature", () => {
    let compared = 0;
    for (const [key, place] of Object.entries(selenographic)) {
      const spelt = SPELT[key] ?? letters(key);
      const ours = MOON_FEATURES.find(({ name }) => letters(name) === spelt);
      if (ours === undefined) continue;
      compared++;
      const apart = Math.hypot(
        ours.latitudeDeg - place.lat * DEG_PER_RAD,
        halfTurnDeg(ours.longitudeDeg - place.lon * DEG_PER_RAD) * Math.cos(place.lat),
      );
      expect(`${ours.name} ${apart < 1}`).toBe(`${ours.name} true`);
    }
    expect(compared).toBeGreaterThan(40);
  });
});

describe("MOON_NAMES", () => {
  it("leads every common name to a feature of the table, and is no IAU name itself", () => {
    for (const [common, name] of Object.entries(MOON_NAMES)) {
      expect(MOON_FEATURES.some((feature) => feature.name === name)).toBe(true);
      expect(MOON_FEATURES.some((feature) => feature.name === common)).toBe(false);
    }
  });
});
