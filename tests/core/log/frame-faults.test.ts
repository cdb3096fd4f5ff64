import { describe, expect, it } from "vitest";
import { FRAME_LIMITS } from "../../../config/log-limits.ts";
import { frameFaults, libraryFaults } from "../../../core/log/frame-faults.ts";
import type { FrameSet, LibrarySet } from "../../../core/log/frame-set.ts";

const LATEST = "2026-10-03";

const subs: FrameSet = {
  night: LATEST,
  object: "M33",
  passband: "none",
  frames: 10,
  rejected: 0,
  subSeconds: 60,
  gain: null,
  iso: null,
  sensorCelsius: null,
  rotationDeg: null,
  rig: null,
  startedAt: null,
};

describe("frameFaults", () => {
  it("finds nothing wrong with a row at its limits", () => {
    const { frames, subSeconds, sensorCelsius } = FRAME_LIMITS;
    for (const end of ["min", "max"] as const) {
      const row = {
        ...subs,
        frames: frames[end],
        subSeconds: subSeconds[end],
        sensorCelsius: sensorCelsius[end],
      };
      expect(frameFaults(row, FRAME_LIMITS, LATEST)).toEqual([]);
    }
  });

  it("tells every fault with the value and the limit it broke", () => {
    const row = { ...subs, frames: 1e9, sensorCelsius: 400, night: "2026-10-04" };
    expect(frameFaults(row, FRAME_LIMITS, LATEST)).toEqual([
      { kind: "range", figure: "frames", value: 1e9, span: FRAME_LIMITS.frames },
      { kind: "range", figure: "sensor-temp", value: 400, span: FRAME_LIMITS.sensorCelsius },
      { kind: "future", night: "2026-10-04", latest: LATEST },
    ]);
  });

  it("wants whole frames, and no figure that is none", () => {
    expect(frameFaults({ ...subs, frames: 2.5 }, FRAME_LIMITS, LATEST)).toMatchObject([
      { kind: "not-whole" },
    ]);
    expect(frameFaults({ ...subs, subSeconds: Number.NaN }, FRAME_LIMITS, LATEST)).toMatchObject([
      { kind: "range", figure: "sub" },
    ]);
  });
});

describe("libraryFaults", () => {
  it("lets bias be without an exposure", () => {
    const bias: LibrarySet = {
      kind: "bias",
      night: LATEST,
      passband: null,
      frames: 50,
      subSeconds: null,
      gain: 100,
      iso: null,
      sensorCelsius: -10,
      rotationDeg: null,
      rig: null,
      startedAt: null,
    };
    expect(libraryFaults(bias, FRAME_LIMITS, LATEST)).toEqual([]);
    expect(libraryFaults({ ...bias, frames: 0 }, FRAME_LIMITS, LATEST)).toHaveLength(1);
  });
});
