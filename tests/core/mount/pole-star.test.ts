import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { POLARIS, SIGMA_OCTANTIS, SOUTHERN_TRAPEZIUM } from "../../../config/pole-stars.ts";
import { dialOf, poleStarPlace, risenPole } from "../../../core/mount/pole-star.ts";
import { skyFrame } from "../../../core/sky/frame.ts";
import { placeOfDate, separationDeg } from "../../../core/sky/place.ts";

const TABLE = new URL("../../reference/erfa/pole-stars.txt", import.meta.url);
const STARS = [POLARIS, ...SOUTHERN_TRAPEZIUM];

const rows = readFileSync(TABLE, "utf8")
  .split("\n")
  .filter((line) => line !== "" && !line.startsWith("#"))
  .map((line) => line.split(";"));

const degreesAround = (one: number, other: number) => {
  const apart = Math.abs(one - other) % 360;
  return Math.min(apart, 360 - apart);
};

describe("poleStarPlace against the IAU SOFA routines", () => {
  it("reads 384 rows of five stars, 1990 to 2060", () => {
    expect(rows).toHaveLength(384);
    expect(new Set(rows.map(([name]) => name)).size).toBe(5);
  });

  // The table has diurnal aberration and parallax, we have not: 0.3″ and 0.01″. What
  // the Earth's rotation leaves over (ΔT of another year, 12 s of TT) is far below.
  it.each(STARS)("places $name within 1′ and 1 minute of hour angle", (star) => {
    let checked = 0;
    for (const [name, at, latitude, longitude, hourAngle, distance, altitude, azimuth] of rows) {
      if (name !== star.name) continue;
      const position = {
        latitudeDeg: Number(latitude),
        longitudeDeg: Number(longitude),
        elevationMetres: 0,
      };
      const place = poleStarPlace(star, skyFrame(position, new Date(at ?? "")));
      const hoursApart = degreesAround(place.hourAngleHours * 15, Number(hourAngle) * 15) / 15;
      expect(hoursApart * 60).toBeLessThan(1);
      expect(Math.abs(place.poleDistanceArcmin - Number(distance))).toBeLessThan(1);
      expect(Math.abs(place.altitudeDeg - Number(altitude)) * 60).toBeLessThan(1);
      const across = degreesAround(place.azimuthDeg, Number(azimuth));
      expect(across * Math.cos((Number(altitude) * Math.PI) / 180) * 60).toBeLessThan(1);
      checked++;
    }
    expect(checked).toBeGreaterThan(70);
  });

  it("moves the mean place of Polaris as Meeus prints it for 2050 and 2100", () => {
    // Meeus, Astronomical Algorithms, 2nd ed., chapter 21, exercise (from memory): mean
    // places. Ours are apparent: aberration up to 20.5″ and nutation up to 19″ apart.
    const printed = [
      {
        at: "2050-01-01T00:00Z",
        raDeg: (3 + 48 / 60 + 16.4 / 3600) * 15,
        decDeg: 89 + 27 / 60 + 15.4 / 3600,
      },
      {
        at: "2100-01-01T00:00Z",
        raDeg: (5 + 53 / 60 + 29.2 / 3600) * 15,
        decDeg: 89 + 32 / 60 + 22.2 / 3600,
      },
    ];
    for (const { at, raDeg, decDeg } of printed) {
      const ours = placeOfDate(POLARIS.raDeg, POLARIS.decDeg, new Date(at), POLARIS.properMotion);
      expect(separationDeg(ours, { raDeg, decDeg }) * 60).toBeLessThan(1);
    }
  });
});

describe("dialOf", () => {
  // Facing north, west is on the left; facing south, on the right. A star at hour
  // angle 6 h stands west of the pole, at its own height.
  it("puts hour angle 6 h at 9 o'clock facing north, 3 o'clock inverted", () => {
    expect(dialOf("north", 6)).toEqual({ correct: 9, inverted: 3 });
  });

  it("puts hour angle 6 h at 3 o'clock facing south, 9 o'clock inverted", () => {
    expect(dialOf("south", 6)).toEqual({ correct: 3, inverted: 9 });
  });

  it("puts hour angle 0 on top, and at the bottom inverted", () => {
    expect(dialOf("north", 0)).toEqual({ correct: 0, inverted: 6 });
    expect(dialOf("south", 24)).toEqual({ correct: 0, inverted: 6 });
  });

  it("stays within [0, 12), also for a hair before the turn", () => {
    for (const hours of [-1e-17, 1e-17, 23.999999999999996, 24, -48]) {
      for (const dial of [dialOf("north", hours), dialOf("south", hours)]) {
        expect(dial.correct).toBeGreaterThanOrEqual(0);
        expect(dial.correct).toBeLessThan(12);
        expect(dial.inverted).toBeLessThan(12);
      }
    }
  });
});

describe("four moments worked by hand", () => {
  // Hour angle = sidereal time at Greenwich + longitude/15 − right ascension, in hours:
  // sidereal time by the US Naval Observatory's approximate formula,
  // 18.697374558 + 24.06570982441908 D, D days from 2000-01-01T12:00; mean places from
  // the star's J2000 catalogue, or from Meeus's exercise for Polaris (see above).
  // Ours are apparent: aberration moves a star by up to 20.5″, nutation the pole by up
  // to 9.2″, and the hour angle by that over the cosine of the declination.
  const toleranceHours = (decDeg: number) => (20.5 + 9.2) / 3600 / 15 / Math.cos((decDeg * Math.PI) / 180);

  it.each([
    {
      // D = 0: 18.6974 − 2h31m49.1s (2.5303) = 16.1671; 12 − 8.0835 = 3.9165.
      what: "Polaris from Greenwich, 2000-01-01T12:00Z: five to four",
      star: POLARIS,
      at: "2000-01-01T12:00Z",
      position: { latitudeDeg: 51.48, longitudeDeg: 0 },
      decDeg: 89.264,
      hourAngleHours: 16.1671,
      dial: { correct: 3.9165, inverted: 9.9165 },
    },
    {
      // 18.6974 + 1.2280 − 21h08m46.9s (21.1464) = −1.2210; south: 12 + 11.3895 − 12.
      what: "sigma Octantis from 18.42° E, 2000-01-01T12:00Z: over twenty past eleven",
      star: SIGMA_OCTANTIS,
      at: "2000-01-01T12:00Z",
      position: { latitudeDeg: -33.93, longitudeDeg: 18.42 },
      decDeg: -88.9565,
      hourAngleHours: 22.779,
      dial: { correct: 11.3895, inverted: 5.3895 },
    },
    {
      // D = 18262.5: 6.7230 − 3h48m16.4s (3.8046) = 2.9184; 12 − 1.4592 = 10.5408.
      what: "Polaris from Greenwich, 2050-01-01T00:00Z: just after half past ten",
      star: POLARIS,
      at: "2050-01-01T00:00Z",
      position: { latitudeDeg: 51.48, longitudeDeg: 0 },
      decDeg: 89.4543,
      hourAngleHours: 2.9184,
      dial: { correct: 10.5408, inverted: 4.5408 },
    },
    {
      // D = 36524.5: 6.7159 + 7 − 5h53m29.2s (5.8914) = 7.8245; 12 − 3.9122 = 8.0878.
      what: "Polaris from 105° E, 2100-01-01T00:00Z: five past eight",
      star: POLARIS,
      at: "2100-01-01T00:00Z",
      position: { latitudeDeg: 20, longitudeDeg: 105 },
      decDeg: 89.5395,
      hourAngleHours: 7.8245,
      dial: { correct: 8.0878, inverted: 2.0878 },
    },
  ])("$what", ({ star, at, position, decDeg, hourAngleHours, dial }) => {
    const place = poleStarPlace(star, skyFrame({ ...position, elevationMetres: 0 }, new Date(at)));
    const tolerance = toleranceHours(decDeg);
    expect(Math.abs(place.hourAngleHours - hourAngleHours)).toBeLessThan(tolerance);
    expect(Math.abs(place.dial.correct - dial.correct)).toBeLessThan(tolerance / 2);
    expect(Math.abs(place.dial.inverted - dial.inverted)).toBeLessThan(tolerance / 2);
  });
});

describe("risenPole", () => {
  it("names the pole that stands above the horizon", () => {
    expect(risenPole(54.5)).toBe("north");
    expect(risenPole(-0.2)).toBe("south");
    expect(risenPole(0)).toBe("north");
  });
});
