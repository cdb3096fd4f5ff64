import { createRequire } from "node:module";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ALIGNMENT_RULES, FOCUS_STAR_LIMITS, MOON_CLEARANCE_DEG } from "../../../config/mount-rules.ts";
import { alignmentStars } from "../../../core/mount/alignment-stars.ts";
import { focusStar } from "../../../core/mount/focus-star.ts";
import type { StarField, StarInSky } from "../../../core/mount/visible-stars.ts";
import type { SkylinePoint } from "../../../core/site.ts";
import { bodyPlace } from "../../../core/sky/bodies.ts";
import { skyFrame } from "../../../core/sky/frame.ts";
import { separationDeg } from "../../../core/sky/place.ts";
import type { NamedStar } from "../../../core/targets/catalogue.ts";
import { skylineAltitudeDeg } from "../../../core/targets/skyline.ts";

type Named = Record<string, { name: string }>;
type Collection = {
  features: { id: number; properties: { mag: number }; geometry: { coordinates: [number, number] } }[];
};

/** The named stars of the d3-celestial package (BSD licence), J2000; motions left out. */
const read = createRequire(import.meta.url);
const names = read("d3-celestial/data/starnames.json") as Named;
const stars: readonly NamedStar[] = (read("d3-celestial/data/stars.6.json") as Collection).features.flatMap(
  ({ id, properties, geometry }) => {
    const name = names[String(id)]?.name;
    if (!name || properties.mag > 3.5) return [];
    const [ra, dec] = geometry.coordinates;
    return [
      {
        name,
        raDeg: (ra + 360) % 360,
        decDeg: dec,
        properMotion: { raArcsec: 0, decArcsec: 0 },
        magnitude: Number(properties.mag),
      },
    ];
  },
);

function fieldOver(
  latitudeDeg: number,
  longitudeDeg: number,
  at: Date,
  skyline: readonly SkylinePoint[] = [],
): StarField {
  const position = { latitudeDeg, longitudeDeg, elevationMetres: 0 };
  const moon = bodyPlace("Moon", position, at);
  return {
    frame: skyFrame(position, at),
    skyline,
    avoided: [{ raDeg: moon.raDeg, decDeg: moon.decDeg, radiusDeg: MOON_CLEARANCE_DEG }],
  };
}

/** 2026-09-05 from 43° north at a local sidereal time of 20.9 h. */
function septemberEvening(): StarField {
  const start = new Date("2026-09-05T19:00Z");
  const field = fieldOver(43, 0, start);
  const hours = (((20.9 - field.frame.siderealDeg / 15) % 24) + 24) % 24;
  return fieldOver(43, 0, new Date(start.getTime() + (hours / 1.0027379) * 3_600_000));
}

const isWest = (star: StarInSky) => Math.sin((star.azimuthDeg * Math.PI) / 180) < 0;

const raHoursApart = (one: StarInSky, other: StarInSky) => {
  const apart = Math.abs(one.raDeg - other.raDeg) / 15;
  return Math.min(apart, 24 - apart);
};

describe("alignmentStars", () => {
  it("knows more than a hundred named stars to magnitude 3.5", () => {
    expect(stars.length).toBeGreaterThan(100);
  });

  it("has Altair and Vega among its choices from 43° north at sidereal time 20.9 h", () => {
    // Common practice: the evening of late summer is aligned on the two.
    const field = septemberEvening();
    expect(field.frame.siderealDeg / 15).toBeCloseTo(20.9, 2);
    const choice = alignmentStars(stars, field, ALIGNMENT_RULES);
    expect(choice.kind).toBe("full");
    const chosen = choice.stars.map((star) => star.name);
    expect(chosen).toContain("Altair");
    expect(chosen).toContain("Vega");
  });

  it("keeps every rule over random sites, instants and skylines", () => {
    let full = 0;
    const place = fc.record({
      latitudeDeg: fc.double({ min: -70, max: 70, noNaN: true }),
      longitudeDeg: fc.double({ min: -180, max: 180, noNaN: true }),
      atMs: fc.integer({ min: Date.UTC(2024, 0), max: Date.UTC(2034, 0) }),
      wallDeg: fc.integer({ min: 0, max: 45 }),
      wallAt: fc.integer({ min: 0, max: 300 }),
    });
    fc.assert(
      fc.property(place, ({ latitudeDeg, longitudeDeg, atMs, wallDeg, wallAt }) => {
        const skyline = [
          { azimuthDeg: wallAt, altitudeDeg: wallDeg },
          { azimuthDeg: wallAt + 50, altitudeDeg: wallDeg },
          { azimuthDeg: wallAt + 59, altitudeDeg: 0 },
        ];
        const field = fieldOver(latitudeDeg, longitudeDeg, new Date(atMs), skyline);
        const choice = alignmentStars(stars, field, ALIGNMENT_RULES);
        for (const star of choice.stars) {
          expect(star.altitudeDeg).toBeGreaterThanOrEqual(25);
          expect(star.altitudeDeg).toBeLessThanOrEqual(70);
          expect(Math.abs(star.decDeg)).toBeLessThanOrEqual(70);
          expect(star.magnitude).toBeLessThanOrEqual(choice.faintestMag);
          expect(star.altitudeDeg).toBeGreaterThan(skylineAltitudeDeg(skyline, star.azimuthDeg));
          for (const circle of field.avoided) expect(separationDeg(star, circle)).toBeGreaterThanOrEqual(15);
          for (const other of choice.stars) {
            if (other !== star) expect(separationDeg(star, other)).toBeGreaterThanOrEqual(30);
          }
        }
        const [first, second, third] = choice.stars;
        if (choice.kind === "short" || !first || !second || !third) {
          expect(choice.kind).toBe("short");
          expect(choice.stars.length).toBeLessThan(3);
          return;
        }
        expect(isWest(first)).toBe(isWest(second));
        expect(isWest(third)).not.toBe(isWest(first));
        if (choice.kind !== "full") return;
        full++;
        for (const one of [first, second]) {
          expect(raHoursApart(one, third)).toBeGreaterThanOrEqual(3);
          expect(raHoursApart(one, third)).toBeLessThanOrEqual(9);
        }
      }),
      { numRuns: 150, seed: 5 },
    );
    expect(full).toBeGreaterThan(75);
  });

  it("goes to magnitude 3.5 only when 2.5 gives no three", () => {
    const field = septemberEvening();
    const bright = alignmentStars(stars, field, ALIGNMENT_RULES);
    expect(bright.faintestMag).toBe(2.5);
    const faint = alignmentStars(
      stars.filter(({ magnitude }) => magnitude > 2.5),
      field,
      ALIGNMENT_RULES,
    );
    expect(faint.faintestMag).toBe(3.5);
    expect(faint.stars).toHaveLength(3);
  });

  it("says that it falls short behind a wall all around", () => {
    const wall = [{ azimuthDeg: 0, altitudeDeg: 69 }];
    const field = { ...septemberEvening(), skyline: wall };
    const choice = alignmentStars(stars, field, ALIGNMENT_RULES);
    expect(choice.kind).toBe("short");
  });

  it("keeps out of a circle around the Sun", () => {
    const field = septemberEvening();
    const vega = alignmentStars(stars, field, ALIGNMENT_RULES).stars.find(({ name }) => name === "Vega");
    if (!vega) throw new Error("Vega was not chosen");
    const guarded = { ...field, avoided: [{ raDeg: vega.raDeg, decDeg: vega.decDeg, radiusDeg: 30 }] };
    const choice = alignmentStars(stars, guarded, ALIGNMENT_RULES);
    expect(choice.stars.map(({ name }) => name)).not.toContain("Vega");
  });
});

describe("focusStar", () => {
  it("takes Sadr for NGC 6888", () => {
    // By the small-angle formula: 10.1m of time at 39.3° is 1.95°, and 1.90° in declination: 2.7°.
    const found = focusStar(stars, septemberEvening(), { raDeg: 303.3, decDeg: 38.43 }, FOCUS_STAR_LIMITS);
    expect(found?.star.name).toBe("Sadr");
    expect(found?.separationDeg).toBeCloseTo(2.7, 0);
  });

  it("takes the highest star without a target", () => {
    const found = focusStar(stars, septemberEvening(), null, FOCUS_STAR_LIMITS);
    expect(found?.separationDeg).toBeNull();
    expect(found?.star.altitudeDeg).toBeGreaterThan(75);
  });

  it("finds none behind a roof", () => {
    const roofed = { ...septemberEvening(), skyline: [{ azimuthDeg: 0, altitudeDeg: 90 }] };
    expect(focusStar(stars, roofed, null, FOCUS_STAR_LIMITS)).toBeNull();
  });
});
