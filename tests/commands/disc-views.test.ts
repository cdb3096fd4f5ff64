/** Discs drawn as one sees them: which way is up, which side is lit, on the drawing's own geometry. */
import { describe, expect, it } from "vitest";
import { directionOf, globePoint, isOnLit } from "../../bot/charts/disc.ts";
import { nightViews, sunViews } from "../../commands/disc-views.ts";
import { bareSite } from "../../commands/read/site.ts";
import { moonDisc } from "../../core/outreach/moon-disc.ts";
import { sunDisc } from "../../core/outreach/sun-disc.ts";
import { referenceRows } from "../reference/reference-rows.ts";

const DEG = 180 / Math.PI;
const CENTRE = { x: 0, y: 0 };

/** Degrees anticlockwise from the top of the page. */
const fromTop = ({ x, y }: { x: number; y: number }) => Math.atan2(-x, -y) * DEG;
const apart = (a: number, b: number) => Math.abs(((((a - b + 180) % 360) + 360) % 360) - 180);

describe("nightViews", () => {
  it("draws bright limb and north as Swiss Ephemeris's altitudes lay them, rising and setting, at 50° north, the equator and 35° south", () => {
    for (const [, latitude, longitude, metres, instant, , , limb, north] of referenceRows(
      "swiss-ephemeris/limb-angles.txt",
    )) {
      const site = bareSite({
        name: "",
        latitudeDeg: Number(latitude),
        longitudeDeg: Number(longitude),
        elevationMetres: Number(metres),
        timeZone: "UTC",
      });
      const disc = moonDisc(site, new Date(instant ?? ""));
      const [eye, inverted, mirrored] = nightViews(disc.parallacticDeg);
      if (eye === undefined || inverted === undefined || mirrored === undefined)
        throw new Error("a view is missing");
      const limbOn = (view: typeof eye) => fromTop(directionOf(disc.brightLimbDeg, view));
      expect(apart(limbOn(eye), Number(limb))).toBeLessThan(0.1);
      expect(apart(fromTop(directionOf(0, eye)), Number(north))).toBeLessThan(0.01);
      // Turned by half a turn, not mirrored; and left and right exchanged, the zenith still up.
      expect(apart(limbOn(inverted), Number(limb) + 180)).toBeLessThan(0.1);
      expect(apart(limbOn(mirrored), -Number(limb))).toBeLessThan(0.1);
    }
  });

  it("lights a waxing Moon on the right in the evening at 50° north, on the left at 35° south", () => {
    // First quarter of 2026 September 18 (Swiss Ephemeris's table of phases), an hour after sunset.
    const lit = (latitudeDeg: number, longitudeDeg: number, instant: string) => {
      const site = bareSite({ name: "", latitudeDeg, longitudeDeg, elevationMetres: 0, timeZone: "UTC" });
      const disc = moonDisc(site, new Date(instant));
      const [eye] = nightViews(disc.parallacticDeg);
      if (eye === undefined) throw new Error("no view");
      return directionOf(disc.brightLimbDeg, eye).x;
    };
    expect(lit(50, 8, "2026-09-18T18:30:00Z")).toBeGreaterThan(0.5);
    // Higher there, it leans more: the lit side lies to the lower left.
    expect(lit(-35, 149, "2026-09-18T09:00:00Z")).toBeLessThan(-0.3);
  });

  it("lights the morning side of the drawn globe where the Sun stands over it", () => {
    const site = bareSite({
      name: "",
      latitudeDeg: 50,
      longitudeDeg: 8,
      elevationMetres: 0,
      timeZone: "UTC",
    });
    for (const day of [12, 15, 18, 21, 25, 29]) {
      const disc = moonDisc(site, new Date(Date.UTC(2026, 8, day, 20)));
      const [eye] = nightViews(disc.parallacticDeg);
      if (eye === undefined) throw new Error("no view");
      const aspect = {
        longitudeDeg: disc.libration.longitudeDeg,
        latitudeDeg: disc.libration.latitudeDeg,
        axisDeg: disc.axisDeg,
      };
      for (let longitude = -80; longitude <= 80; longitude += 10) {
        for (const latitude of [-50, -20, 20, 50]) {
          const sine =
            Math.sin(disc.sunLatitudeDeg / DEG) * Math.sin(latitude / DEG) +
            Math.cos(disc.sunLatitudeDeg / DEG) *
              Math.cos(latitude / DEG) *
              Math.sin((disc.colongitudeDeg + longitude) / DEG);
          // Beside the terminator and the limb a degree decides.
          const point = globePoint(longitude, latitude, aspect, CENTRE, 100, eye);
          if (Math.abs(sine) < 0.05 || point.towardsUs < 0.1) continue;
          const drawn = isOnLit(point, CENTRE, 100, disc.brightLimbDeg, disc.illuminatedFraction, eye);
          expect(`${day} ${longitude} ${latitude} ${drawn}`).toBe(
            `${day} ${longitude} ${latitude} ${sine > 0}`,
          );
        }
      }
    }
  });
});

describe("sunViews", () => {
  const site = bareSite({ name: "", latitudeDeg: 50, longitudeDeg: 0, elevationMetres: 0, timeZone: "UTC" });
  const noon = sunDisc(site, new Date("2026-04-15T12:00:00Z"));

  it("never shows the Sun as a finder does", () => {
    for (const { caption } of sunViews(0)) expect(caption.toLowerCase()).not.toContain("finder");
  });

  it("has the zenith up by eye, behind a diagonal and on the card, and down without a diagonal", () => {
    const views = sunViews(noon.parallacticDeg);
    const zenith = views.map((view) => Math.round(directionOf(noon.parallacticDeg, view).y));
    expect(zenith).toEqual([-1, 1, -1, -1]);
  });

  it("has east on the left by eye, on the right otherwise, at noon in the north", () => {
    const east = sunViews(noon.parallacticDeg).map((view) => Math.sign(directionOf(90, view).x));
    expect(east).toEqual([-1, 1, 1, 1]);
  });

  it("leans the axis to the left of the zenith by eye when P is east and the Sun on the meridian", () => {
    // 1992 October 13: P +26.27° (Meeus 29.a, from memory).
    const autumn = sunDisc(site, new Date("1992-10-13T11:46:00Z"));
    const [eye] = sunViews(autumn.parallacticDeg);
    if (eye === undefined) throw new Error("no view");
    expect(Math.abs(fromTop(directionOf(autumn.axisDeg, eye)) - 26.2)).toBeLessThan(0.5);
  });
});
