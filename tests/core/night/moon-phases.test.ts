/** Phases of the Moon beside Swiss Ephemeris and Meeus. */
import { describe, expect, it } from "vitest";
import { moonElongationDeg, moonPhases } from "../../../core/night/moon-phases.ts";
import { referenceRows } from "../../reference/reference-rows.ts";

describe("moonPhases", () => {
  it("are those of Swiss Ephemeris from 2024 to 2032, each within 10 s", () => {
    const theirs = referenceRows("swiss-ephemeris/moon-phases.txt");
    const ours = moonPhases(new Date("2024-01-01T00:00Z"), new Date("2033-01-01T00:00Z"));
    expect(ours.map((phase) => phase.name)).toEqual(theirs.map((row) => row[0]));
    for (const [index, phase] of ours.entries()) {
      // The Moon gains an arcsecond on the Sun in 2 s; the engine's Moon is 3″ off at most.
      expect(Math.abs(phase.at.getTime() - Date.parse(theirs[index]?.[1] ?? ""))).toBeLessThan(10_000);
    }
  });

  it("have the new Moon of February 1977 at 3h37m42s TD, Meeus, Astronomical Algorithms, example 49.a", () => {
    const [phase] = moonPhases(new Date("1977-02-18T00:00Z"), new Date("1977-02-19T00:00Z"));
    expect(phase?.name).toBe("new");
    // TD was 48.18 s ahead of UTC. Meeus's series is good to 18 s at worst.
    const printed = Date.parse("1977-02-18T03:37:42Z") - 48_184;
    expect(Math.abs((phase?.at.getTime() ?? 0) - printed)).toBeLessThan(20_000);
  });

  it("leave out what lies outside the span, at either end", () => {
    const [full] = moonPhases(new Date("2026-11-24T00:00Z"), new Date("2026-11-25T00:00Z"));
    expect(full?.name).toBe("full");
    const at = full?.at ?? new Date(0);
    expect(moonPhases(at, new Date(at.getTime() + 1000))).toHaveLength(1);
    expect(moonPhases(new Date(at.getTime() - 1000), at)).toHaveLength(0);
    expect(moonPhases(new Date(at.getTime() + 1000), new Date(at.getTime() + 2000))).toHaveLength(0);
  });

  it("come round with the elongation that names them", () => {
    const degrees = { new: 0, "first-quarter": 90, full: 180, "last-quarter": 270 };
    for (const phase of moonPhases(new Date("2030-01-01T00:00Z"), new Date("2031-01-01T00:00Z"))) {
      const off = ((moonElongationDeg(phase.at) - degrees[phase.name] + 540) % 360) - 180;
      expect(Math.abs(off)).toBeLessThan(1e-5);
    }
  });
});
