import { describe, expect, it } from "vitest";
import { openCatalogue } from "../../../bot/library/open-catalogue.ts";
import { nameKey } from "../../../core/targets/designation.ts";
import { referenceRows } from "../../reference/reference-rows.ts";

const { alignmentStars } = openCatalogue();
const byName = new Map(alignmentStars.map((star) => [nameKey(star.name), star]));

const POLE_STARS = ["Polaris Australis", "tau Octantis", "chi Octantis", "upsilon Octantis"];

describe("the alignment stars", () => {
  it("are at least 60 to magnitude 3.5, in both hemispheres, and the four of Octans", () => {
    const bright = alignmentStars.filter((star) => star.magnitude <= 3.5);
    expect(bright.length).toBeGreaterThanOrEqual(60);
    expect(bright.filter((star) => star.decDeg > 20).length).toBeGreaterThanOrEqual(20);
    expect(bright.filter((star) => star.decDeg < -20).length).toBeGreaterThanOrEqual(20);
    const faint = alignmentStars.filter((star) => star.magnitude > 3.5).map((star) => star.name);
    expect(faint.sort()).toEqual([...POLE_STARS].sort());
  });

  it("have names of their own", () => {
    expect(byName.size).toBe(alignmentStars.length);
  });

  // SIMBAD gives the new Hipparcos reduction (2007), PyEphem the first (1997), which took the orbital motion of
  // close pairs and the curved path of Rigil Kentaurus for a straight one: those may differ by more.
  const PLACE_TOLERANCE_ARCSEC = 0.3;
  const MOTION_TOLERANCE_MAS = 25;
  const shared = referenceRows("hipparcos/bright-stars.txt").filter(
    ([name = ""]) => byName.has(nameKey(name)) && name !== "Rigil_Kentaurus",
  );

  it("share at least 70 names with the Hipparcos table of PyEphem", () => {
    expect(shared.length).toBeGreaterThanOrEqual(70);
  });

  it.each(shared)(
    "%s stands and moves as in the Hipparcos catalogue",
    (name = "", ra, dec, pmRa, pmDec, mag) => {
      const star = byName.get(nameKey(name));
      if (star === undefined) throw new Error(`${name} is missing`);
      const cosDec = Math.cos((star.decDeg * Math.PI) / 180);
      expect(Math.abs(star.raDeg - Number(ra)) * cosDec * 3600).toBeLessThan(PLACE_TOLERANCE_ARCSEC);
      expect(Math.abs(star.decDeg - Number(dec)) * 3600).toBeLessThan(PLACE_TOLERANCE_ARCSEC);
      expect(Math.abs(star.properMotion.raArcsec * 1000 - Number(pmRa))).toBeLessThan(MOTION_TOLERANCE_MAS);
      expect(Math.abs(star.properMotion.decArcsec * 1000 - Number(pmDec))).toBeLessThan(MOTION_TOLERANCE_MAS);
      expect(Math.abs(star.magnitude - Number(mag))).toBeLessThan(0.2);
    },
  );

  // Hipparcos, van Leeuwen 2007, from memory: 44.48 and −11.85 mas a year. Over sixty years that is 2.8″.
  it("give Polaris a proper motion good to 2″ from 1990 to 2060", () => {
    const polaris = byName.get("polaris");
    if (polaris === undefined) throw new Error("Polaris is missing");
    const years = 60;
    expect(Math.abs(polaris.properMotion.raArcsec - 0.04448) * years).toBeLessThan(0.5);
    expect(Math.abs(polaris.properMotion.decArcsec + 0.01185) * years).toBeLessThan(0.5);
  });
});
