import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CALIBRATION_RULES } from "../../../config/log-limits.ts";
import { owedFrames } from "../../../core/log/calibration-owed.ts";
import { calibrationSets } from "../../../core/log/calibration-sets.ts";
import { clusters } from "../../../core/log/clusters.ts";
import type { FrameSet, LibrarySet } from "../../../core/log/frame-set.ts";

const FIRST = "2026-10-03";
const SECOND = "2026-10-09";

const lights = (over: Partial<FrameSet> = {}): FrameSet => ({
  night: FIRST,
  object: "NGC 6888",
  passband: "o-iii",
  frames: 24,
  rejected: 0,
  subSeconds: 180,
  gain: 100,
  iso: null,
  sensorCelsius: -10,
  rotationDeg: 45,
  rig: "reflector",
  startedAt: null,
  ...over,
});

const library = (kind: LibrarySet["kind"], over: Partial<LibrarySet> = {}): LibrarySet => ({
  kind,
  night: FIRST,
  passband: kind === "flat" ? "o-iii" : null,
  frames: 20,
  subSeconds: kind === "dark" ? 180 : kind === "flat" ? 1 : null,
  gain: 100,
  iso: null,
  sensorCelsius: -10,
  rotationDeg: kind === "flat" ? 45 : null,
  rig: "reflector",
  startedAt: null,
  ...over,
});

const setsOf = (rows: readonly FrameSet[], frames: readonly LibrarySet[] = []) =>
  calibrationSets(rows, frames, CALIBRATION_RULES);

/** Owed darks, flats and bias of each set. */
const owed = (rows: readonly FrameSet[], frames: readonly LibrarySet[] = []) =>
  setsOf(rows, frames).map(({ needs }) => [needs.dark.owed, needs.flat.owed, needs.bias.owed]);

describe("calibrationSets: six cases worked by hand, wanting 20 darks, 20 flats, 50 bias", () => {
  it("1: two nights alike make one set, and everything is owed once", () => {
    const rows = [lights(), lights({ night: SECOND, sensorCelsius: -10.3, rotationDeg: 45.4 })];
    const sets = setsOf(rows);
    expect(sets).toHaveLength(1);
    expect(sets[0]).toMatchObject({ nights: [FIRST, SECOND], frames: 48 });
    expect(sets[0]?.sensorCelsius).toBeCloseTo(-10.15, 10);
    expect(owed(rows)).toEqual([[20, 20, 50]]);
  });

  it("2: a turned camera parts the nights; the flats of the first do not serve the second", () => {
    const rows = [lights(), lights({ night: SECOND, rotationDeg: 90 })];
    const frames = [library("dark"), library("flat", { frames: 25 }), library("bias", { frames: 30 })];
    expect(owed(rows, frames)).toEqual([
      [0, 0, 20],
      [0, 20, 20],
    ]);
  });

  it("3: each night's own flats part the nights, without anything changed", () => {
    const rows = [lights(), lights({ night: SECOND })];
    const frames = [library("flat"), library("flat", { night: SECOND })];
    expect(setsOf(rows, frames)).toHaveLength(2);
    expect(owed(rows, frames)).toEqual([
      [20, 0, 50],
      [20, 0, 50],
    ]);
    // With the first night's flats alone, the second uses them: one set.
    expect(owed(rows, [library("flat")])).toEqual([[20, 0, 50]]);
  });

  it("4: temperatures apart by more than the tolerance part the nights and their darks", () => {
    const rows = [lights(), lights({ night: SECOND, sensorCelsius: -15 })];
    const frames = [library("dark", { night: "2026-06-01", frames: 15 })];
    expect(owed(rows, frames)).toEqual([
      [5, 20, 50],
      [20, 20, 50],
    ]);
  });

  it("5: a cooled library dark of another night matches; another exposure, gain or rig does not", () => {
    const kept = library("dark", { night: "2025-12-24" });
    expect(owed([lights()], [kept])[0]?.[0]).toBe(0);
    for (const other of [{ subSeconds: 300 }, { gain: 0 }, { rig: "lens" }, { iso: 800 }]) {
      expect(owed([lights()], [{ ...kept, ...other }])[0]?.[0]).toBe(20);
    }
  });

  it("6: an uncooled camera without temperatures needs darks of each night; filters need flats each", () => {
    const warm = { gain: null, iso: 1600, sensorCelsius: null, rotationDeg: null };
    const rows = [
      lights({ ...warm, passband: "none" }),
      lights({ ...warm, passband: "luminance" }),
      lights({ ...warm, passband: "none", night: SECOND }),
    ];
    const frames = [library("dark", { ...warm, frames: 20 })];
    expect(setsOf(rows, frames)).toHaveLength(3);
    expect(owed(rows, frames)).toEqual([
      [0, 20, 50],
      [0, 20, 50],
      [20, 20, 50],
    ]);
    // One dark run for the second night, flats for two filters, bias once.
    const list = owedFrames(setsOf(rows, frames)).map(({ kind, passband, frames: count, nights }) => ({
      kind,
      passband,
      count,
      nights,
    }));
    expect(list).toEqual([
      { kind: "dark", passband: null, count: 20, nights: [SECOND] },
      { kind: "flat", passband: "none", count: 20, nights: [FIRST, SECOND] },
      { kind: "flat", passband: "luminance", count: 20, nights: [FIRST] },
      { kind: "bias", passband: null, count: 50, nights: [FIRST, SECOND] },
    ]);
  });
});

describe("calibrationSets", () => {
  it("matches at the tolerance itself, and around north", () => {
    expect(owed([lights()], [library("dark", { sensorCelsius: -8 })])[0]?.[0]).toBe(0);
    expect(owed([lights()], [library("dark", { sensorCelsius: -7.9 })])[0]?.[0]).toBe(20);
    const north = lights({ rotationDeg: 359.5 });
    expect(owed([north], [library("flat", { rotationDeg: 0.5 })])[0]?.[1]).toBe(0);
  });

  it("never uses flats across a changed filter", () => {
    expect(owed([lights({ passband: "h-alpha" })], [library("flat")])[0]?.[1]).toBe(20);
  });

  it("owes shared darks once for two filters", () => {
    const sets = setsOf([lights(), lights({ passband: "h-alpha" })]);
    const darks = owedFrames(sets).filter(({ kind }) => kind === "dark");
    expect(darks).toEqual([expect.objectContaining({ frames: 20, sets: 2 })]);
  });

  it("puts every sub into exactly one set", () => {
    const row = fc
      .record({
        night: fc.constantFrom(FIRST, SECOND, "2026-11-01"),
        passband: fc.constantFrom("o-iii", "h-alpha"),
        sensorCelsius: fc.option(fc.integer({ min: -20, max: 20 })),
        rotationDeg: fc.option(fc.integer({ min: 0, max: 359 })),
        frames: fc.integer({ min: 1, max: 100 }),
      })
      .map((over) => lights(over));
    fc.assert(
      fc.property(fc.array(row, { maxLength: 30 }), (rows) => {
        const shot = rows.reduce((sum, { frames }) => sum + frames, 0);
        const inSets = setsOf(rows, [library("flat")]).reduce((sum, { frames }) => sum + frames, 0);
        expect(inSets).toBe(shot);
      }),
      { numRuns: 100, seed: 2 },
    );
  });
});

describe("clusters", () => {
  it("parts where the span exceeds the tolerance, and keeps unknown apart", () => {
    const grouped = clusters([3, null, 1, 2.5, 9], (figure) => figure, 2);
    expect(grouped).toEqual([[1, 2.5, 3], [9], [null]]);
  });

  it("joins the ends of the circle", () => {
    expect(clusters([359.5, 0.5, 180, -0.2], (figure) => figure, 2, 360)).toEqual([
      [359.5, -0.2, 0.5],
      [180],
    ]);
  });
});
