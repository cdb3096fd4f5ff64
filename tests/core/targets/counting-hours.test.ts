import { describe, expect, it } from "vitest";
import { PHOTOMETRY } from "../../../config/photometry.ts";
import { bandResponses } from "../../../core/rig/band-response.ts";
import type { Filter } from "../../../core/rig/rig.ts";
import { countedHours, countingWeight, leastCounted } from "../../../core/targets/counting-hours.ts";
import { fixedTrack } from "../../../core/targets/placer.ts";
import { middleOf } from "../../../core/targets/target-night.ts";
import { FELL, H_ALPHA, LONG_MONO, nightOf, OXYGEN } from "./night-of-a-rig.ts";

const DARK = { continuumMagArcsec2: null, rayleigh: {} };
const SUB_SECONDS = 300;

function workThrough(filter: Filter) {
  const [band] = bandResponses(LONG_MONO, filter, PHOTOMETRY);
  if (band === undefined) throw new Error("the camera sees nothing");
  return { rig: LONG_MONO, band, subSeconds: SUB_SECONDS };
}

/** New Moon on 2026 October 10, 15:50 UT: no Moon all night. */
const MOONLESS = nightOf(FELL, "2026-10-10");
const MIDNIGHT = Date.parse("2026-10-10T23:30:00Z");

describe("countingWeight", () => {
  it("is 1 at the zenith without Moon", () => {
    const zenith = { altitudeDeg: 90, azimuthDeg: 0 };
    const { weight } = countingWeight(workThrough(H_ALPHA), MOONLESS.conditions, DARK, zenith, MIDNIGHT);
    // The zenith's air mass by Kasten & Young is 0.9997, not 1.
    expect(weight).toBeCloseTo(1, 3);
  });

  it("follows the formula by hand 30° up: 0.51 in Hα", () => {
    // [T(X)/T(1)]² with k = 0.106(550/656.3)⁴ + 0.12(550/656.3)^1.3 + 0.03 and X = 1.9943 (Kasten & Young 1989);
    // glow of K&S 1991 with k_V = 0.256: Xs = (1 − 0.96 sin²60°)^−½ = 1.8898.
    const k = 0.106 * (550 / 656.3) ** 4 + 0.12 * (550 / 656.3) ** 1.3 + 0.03;
    const gain = 10 ** (-0.8 * k * (1.9943 - 1));
    const glow = 10 ** (-0.4 * 0.256 * (1.8898 - 1)) * 1.8898;
    // Electrons at the zenith: 10⁸·10^(−0.4·20.8) photons × 7 nm × 0.02801 m² × 0.9398 arcsec² × 0.8 × 0.85 × 0.6.
    const zenithSky =
      1e8 *
      10 ** (-0.4 * 20.8) *
      7 *
      Math.PI *
      0.1 ** 2 *
      (1 - 0.33 ** 2) *
      ((206.265 * 3.76) / 800) ** 2 *
      0.8 *
      0.85 *
      0.6;
    const own = 0.002 + 1.5 ** 2 / SUB_SECONDS;
    const byHand = (gain * (zenithSky + own)) / (zenithSky * glow + own);
    const place = { altitudeDeg: 30, azimuthDeg: 180 };
    const { weight } = countingWeight(workThrough(H_ALPHA), MOONLESS.conditions, DARK, place, MIDNIGHT);
    expect(byHand).toBeCloseTo(0.51, 2);
    expect(weight / byHand).toBeCloseTo(1, 3);
  });

  it("counts nothing below the horizon", () => {
    const { weight } = countingWeight(
      workThrough(H_ALPHA),
      MOONLESS.conditions,
      DARK,
      { altitudeDeg: -1, azimuthDeg: 0 },
      MIDNIGHT,
    );
    expect(weight).toBe(0);
  });
});

describe("countedHours", () => {
  /** Full Moon on 2026 October 26, 04:12 UT. */
  const moonlit = nightOf(FELL, "2026-10-25");
  const track = fixedTrack(FELL, { raDeg: 303.03, decDeg: 38.35 }, middleOf(moonlit.times.night));
  const windows = [{ start: new Date("2026-10-25T19:30:00Z"), end: new Date("2026-10-25T22:30:00Z") }];
  const cost = (filter: Filter) =>
    countedHours(workThrough(filter), moonlit.conditions, DARK, track, windows).moonCost ?? 0;

  it("makes the Moon cost more in [O III] than in Hα", () => {
    expect(cost(OXYGEN)).toBeGreaterThan(1.5 * cost(H_ALPHA));
    expect(cost(H_ALPHA)).toBeGreaterThan(1.3);
  });

  it("costs exactly nothing on a night without Moon", () => {
    const counted = countedHours(workThrough(OXYGEN), MOONLESS.conditions, DARK, track, [
      { start: new Date("2026-10-10T20:00:00Z"), end: new Date("2026-10-10T22:00:00Z") },
    ]);
    expect(counted.moonCost).toBe(1);
  });

  it("has no cost without a window", () => {
    const counted = countedHours(workThrough(H_ALPHA), moonlit.conditions, DARK, track, []);
    expect(counted).toEqual({ usableHours: 0, countingHours: 0, moonCost: null });
  });

  it("takes the hour before moonrise as moonless and the one after as moonlit", () => {
    // On 2026 October 30 the Moon's centre passes the airless horizon of this place at 19:32:30 UT (Swiss
    // Ephemeris, by swetest). Moonlight begins all at once, so that a step across it must be cut.
    const night = nightOf(FELL, "2026-10-30");
    const following = fixedTrack(FELL, { raDeg: 303.03, decDeg: 38.35 }, middleOf(night.times.night));
    const work = workThrough(OXYGEN);
    const worth = (utMs: number) =>
      countingWeight(work, night.conditions, DARK, following(utMs), utMs).weight;
    const start = Date.parse("2026-10-30T19:00:00Z");
    const end = Date.parse("2026-10-30T19:40:00Z");
    let sum = 0;
    for (let utMs = start + 500; utMs < end; utMs += 1000) sum += worth(utMs) / 3600;
    const window = { start: new Date(start), end: new Date(end) };
    const { countingHours } = countedHours(work, night.conditions, DARK, following, [window]);
    expect(countingHours / sum).toBeCloseTo(1, 3);
  });

  it("adds up over windows that touch", () => {
    const [whole] = windows;
    if (whole === undefined) throw new Error("no window");
    const middle = new Date("2026-10-25T21:00:00Z");
    const work = workThrough(H_ALPHA);
    const parts = [
      { start: whole.start, end: middle },
      { start: middle, end: whole.end },
    ];
    const sum = countedHours(work, moonlit.conditions, DARK, track, parts).countingHours;
    expect(sum).toBeCloseTo(countedHours(work, moonlit.conditions, DARK, track, windows).countingHours, 3);
  });
});

describe("leastCounted", () => {
  it("lets the band with the fewest hours stand, and the worst of the Moon's costs", () => {
    const hours = (countingHours: number, moonCost: number) => ({ usableHours: 4, countingHours, moonCost });
    expect(leastCounted([hours(3, 1.2), hours(2, 2.5)])).toEqual(hours(2, 2.5));
    expect(leastCounted([])).toBeNull();
  });
});
