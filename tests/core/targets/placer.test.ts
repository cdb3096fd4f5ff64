/** Upper transits of fixed places beside SOFA, and where a span ends. */
import { describe, expect, it } from "vitest";
import { fixedTrack, upperTransit } from "../../../core/targets/placer.ts";
import { referenceRows } from "../../reference/reference-rows.ts";

const DAY_MS = 86_400_000;
const BOSTON = { latitudeDeg: 42.3333, longitudeDeg: -71.0833, elevationMetres: 0 };

describe("upperTransit", () => {
  it("agrees with SOFA within 0.1 s of time, 2 s five degrees from a pole", () => {
    for (const [ra, dec, latitude, longitude, from, transit] of referenceRows("erfa/transits.txt")) {
      const position = { latitudeDeg: Number(latitude), longitudeDeg: Number(longitude), elevationMetres: 0 };
      const startMs = Date.parse(from ?? "");
      const place = { raDeg: Number(ra), decDeg: Number(dec) };
      const track = fixedTrack(position, place, new Date(startMs + DAY_MS / 2));
      const ours = upperTransit(track, startMs, startMs + DAY_MS);
      const off = Math.abs((ours?.getTime() ?? 0) - Date.parse(transit ?? ""));
      // 0.5″ in the place, diurnal aberration left out (0.3″): 0.06 s at the equator, more by 1/cos(dec).
      expect(off).toBeLessThan(Math.abs(Number(dec)) > 80 ? 2000 : 100);
    }
  });

  it("is null when the span ends before the place comes to the meridian", () => {
    const fromMs = Date.parse("2026-11-25T18:00Z");
    const track = fixedTrack(BOSTON, { raDeg: 83.82, decDeg: -5.39 }, new Date(fromMs + DAY_MS / 2));
    const atMs = upperTransit(track, fromMs, fromMs + DAY_MS)?.getTime() ?? Number.NaN;
    expect(atMs).toBeGreaterThan(fromMs);
    // Its bisection stops within 10 ms.
    expect(upperTransit(track, fromMs, atMs - 10)).toBeNull();
    expect(Math.abs((upperTransit(track, fromMs, atMs + 10)?.getTime() ?? 0) - atMs)).toBeLessThanOrEqual(10);
  });
});
