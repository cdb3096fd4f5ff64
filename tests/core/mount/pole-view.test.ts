import { describe, expect, it } from "vitest";
import { poleView } from "../../../core/mount/pole-view.ts";

const star = { altitudeDeg: 30, azimuthDeg: 0.5 };

describe("poleView", () => {
  it("sees the star over a level horizon, and at either limit exactly", () => {
    expect(poleView(star, [], 5)).toEqual({ kind: "seen" });
    expect(poleView(star, [{ azimuthDeg: 0, altitudeDeg: 30 }], 30)).toEqual({ kind: "seen" });
  });

  it("says that the house stands before it on a balcony facing south", () => {
    const walled = [
      { azimuthDeg: 0, altitudeDeg: 90 },
      { azimuthDeg: 90, altitudeDeg: 90 },
      { azimuthDeg: 91, altitudeDeg: 0 },
      { azimuthDeg: 269, altitudeDeg: 0 },
      { azimuthDeg: 270, altitudeDeg: 90 },
    ];
    expect(poleView(star, walled, 5)).toEqual({ kind: "hidden", altitudeDeg: 30, skylineDeg: 90 });
  });

  it("says that it is too low near the equator, and below the horizon", () => {
    const low = { altitudeDeg: 0.3, azimuthDeg: 0 };
    expect(poleView(low, [], 5)).toEqual({ kind: "low", altitudeDeg: 0.3, leastAltitudeDeg: 5 });
    expect(poleView({ altitudeDeg: -0.5, azimuthDeg: 180 }, [], 5).kind).toBe("low");
  });
});
