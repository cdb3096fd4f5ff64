import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  directionOf,
  type GlobeAspect,
  globePoint,
  isOnLit,
  litPath,
  type Turning,
  UPRIGHT,
} from "../../../bot/charts/disc.ts";
import { chartSvg } from "../../../bot/charts/draw.ts";
import { path } from "../../../bot/charts/svg.ts";
import { onBlack, type Pixels, pixelsOf } from "./pixels.ts";
import { MOON, SUN } from "./sample-charts.ts";

const DEG = Math.PI / 180;
const SIDE = 400;
const RADIUS = 180;
const CENTRE = { x: SIDE / 2, y: SIDE / 2 };

/** The middle and the number of the lit pixels. */
function lit(pixels: Pixels) {
  let [sumX, sumY, count] = [0, 0, 0];
  for (let y = 0; y < pixels.height; y++) {
    for (let x = 0; x < pixels.width; x++) {
      const share = pixels.at(x, y)[0] / 255;
      sumX += share * (x + 0.5);
      sumY += share * (y + 0.5);
      count += share;
    }
  }
  return { x: sumX / count - CENTRE.x, y: sumY / count - CENTRE.y, count };
}

function drawn(brightLimbDeg: number, fraction: number, view: Turning) {
  return lit(
    pixelsOf(
      onBlack(SIDE, path(litPath(CENTRE, RADIUS, brightLimbDeg, fraction, view), { fill: "#ffffff" })),
    ),
  );
}

/** Degrees clockwise from straight down, as read off the page. */
function clockwiseFromDown(point: { readonly x: number; readonly y: number }): number {
  return Math.atan2(-point.x, point.y) / DEG;
}

/**
 * The parallactic angle, positive west of the meridian.
 * Source: J. Meeus, *Astronomical Algorithms*, formula 14.1.
 */
function parallacticDeg(latitudeDeg: number, hourAngleDeg: number, decDeg: number): number {
  const [phi, h, d] = [latitudeDeg * DEG, hourAngleDeg * DEG, decDeg * DEG];
  return Math.atan2(Math.sin(h), Math.tan(phi) * Math.cos(d) - Math.sin(d) * Math.cos(h)) / DEG;
}

describe("litPath", () => {
  // On the celestial equator, rising or setting, the sky's west points along the daily path, which
  // meets the horizon at 90° less the latitude: plain geometry of the sphere. The Moon's bright
  // limb at position angle 270° points west. Angles clockwise from straight down.
  it.each([
    ["50° north, setting", 50, 90, -50],
    ["the equator, setting", 0, 90, 0],
    ["35° south, setting", -35, 90, 35],
    ["50° north, rising", 50, -90, -130],
    ["the equator, rising", 0, -90, 180],
    ["35° south, rising", -35, -90, 145],
  ])("shows a waxing Moon's lit side as it stands at %s", (_, latitudeDeg, hourAngleDeg, expectedDeg) => {
    const turnDeg = -parallacticDeg(latitudeDeg, hourAngleDeg, 0);
    for (const fraction of [0.15, 0.5, 0.8]) {
      const found = clockwiseFromDown(drawn(270, fraction, { mirrored: false, turnDeg }));
      const difference = ((found - expectedDeg + 540) % 360) - 180;
      expect(Math.abs(difference)).toBeLessThan(0.5);
    }
  });

  it("swaps left and right when mirrored, and turns about when inverted", () => {
    const upright = drawn(300, 0.3, { mirrored: false, turnDeg: 20 });
    const mirrored = drawn(300, 0.3, { mirrored: true, turnDeg: 20 });
    const inverted = drawn(300, 0.3, { mirrored: false, turnDeg: 200 });
    expect(mirrored.x).toBeCloseTo(-upright.x, 0);
    expect(mirrored.y).toBeCloseTo(upright.y, 0);
    expect(inverted.x).toBeCloseTo(-upright.x, 0);
    expect(inverted.y).toBeCloseTo(-upright.y, 0);
  });

  it.each([0.02, 0.1, 0.25, 0.5, 0.6786, 0.9, 1])("lights %f of the disc's area", (fraction) => {
    for (const mirrored of [false, true]) {
      const { count } = drawn(123, fraction, { mirrored, turnDeg: 31 });
      // Pixels of 1/180 radius: a thousandth of the area.
      expect(count / (Math.PI * RADIUS ** 2)).toBeCloseTo(fraction, 2);
    }
  });

  it("draws nothing of a new Moon", () => {
    expect(litPath(CENTRE, RADIUS, 0, 0, UPRIGHT)).toBe("");
  });

  it("agrees with isOnLit all over the disc", () => {
    const view = { mirrored: true, turnDeg: 77 };
    const pixels = pixelsOf(
      onBlack(SIDE, path(litPath(CENTRE, RADIUS, 200, 0.37, view), { fill: "#ffffff" })),
    );
    let wrong = 0;
    for (let y = 40; y < SIDE - 40; y += 5) {
      for (let x = 40; x < SIDE - 40; x += 5) {
        if (Math.hypot(x - CENTRE.x, y - CENTRE.y) > RADIUS - 2) continue;
        const shade = pixels.at(x, y)[0];
        if (shade > 20 && shade < 235) continue;
        if (isOnLit({ x: x + 0.5, y: y + 0.5 }, CENTRE, RADIUS, 200, 0.37, view) !== shade > 128) wrong++;
      }
    }
    expect(wrong).toBe(0);
  });
});

describe("directionOf", () => {
  it("has north up and east left, as the sky is seen from the ground", () => {
    expect(directionOf(0, UPRIGHT).y).toBeCloseTo(-1);
    expect(directionOf(90, UPRIGHT).x).toBeCloseTo(-1);
  });
});

describe("globePoint", () => {
  const moon: GlobeAspect = { longitudeDeg: 0, latitudeDeg: 0, axisDeg: 0 };

  // IAU selenographic directions since 1961: east is the Moon's right as seen from the north.
  it("sets Mare Crisium (17° N, 59° E) up and right, Tycho (43° S, 11° W) down and left", () => {
    const crisium = globePoint(59.1, 17, moon, { x: 0, y: 0 }, 1, UPRIGHT);
    const tycho = globePoint(-11.2, -43.3, moon, { x: 0, y: 0 }, 1, UPRIGHT);
    expect([crisium.x > 0.7, crisium.y < 0]).toEqual([true, true]);
    expect([tycho.x < 0, tycho.y > 0.6]).toEqual([true, true]);
  });

  it("sets the place under us in the middle, whatever the libration", () => {
    const aspect = { longitudeDeg: -6.2, latitudeDeg: 4.2, axisDeg: 15 };
    const middle = globePoint(-6.2, 4.2, aspect, { x: 5, y: 7 }, 100, UPRIGHT);
    expect(middle.x).toBeCloseTo(5);
    expect(middle.y).toBeCloseTo(7);
    expect(middle.towardsUs).toBeCloseTo(1);
  });

  it("keeps every place on the globe's surface", () => {
    const angle = fc.double({ min: -180, max: 180, noNaN: true });
    fc.assert(
      fc.property(angle, angle, angle, angle, fc.boolean(), (longitude, half, axis, turn, mirrored) => {
        const aspect = { longitudeDeg: 20, latitudeDeg: -5, axisDeg: axis };
        const at = globePoint(longitude, half / 2, aspect, { x: 0, y: 0 }, 1, { mirrored, turnDeg: turn });
        expect(at.x ** 2 + at.y ** 2 + at.towardsUs ** 2).toBeCloseTo(1, 9);
      }),
    );
  });
});

/** Ends of a marked line in a chart's SVG. */
function lineEnds(svg: string, mark: string) {
  const tag = new RegExp(`<line[^>]*data-line="${mark}"[^>]*>`, "u").exec(svg)?.[0] ?? "";
  const [x1, y1, x2, y2] = ["x1", "y1", "x2", "y2"].map((name) =>
    Number(new RegExp(`${name}="([^"]+)"`, "u").exec(tag)?.[1]),
  );
  return { x1: x1 ?? Number.NaN, y1: y1 ?? Number.NaN, x2: x2 ?? Number.NaN, y2: y2 ?? Number.NaN };
}

describe("the Sun's chart", () => {
  // J. Meeus, Astronomical Algorithms, example 29.a: P = +26.27°, east of north.
  it.each([
    ["upright", { caption: "", mirrored: false, turnDeg: 0 }, 26.27],
    ["in a star diagonal", { caption: "", mirrored: true, turnDeg: 0 }, -26.27],
    ["inverted", { caption: "", mirrored: false, turnDeg: 180 }, -153.73],
    ["at 50° north, three hours before noon", { caption: "", mirrored: false, turnDeg: 34 }, 60.27],
  ])("leans its axis as it should %s", (_, view, anticlockwiseDeg) => {
    const { x1, y1, x2, y2 } = lineEnds(chartSvg({ ...SUN, views: [view] }), "axis");
    expect(Math.atan2(-(x1 - x2), -(y1 - y2)) / DEG).toBeCloseTo(anticlockwiseDeg, 1);
  });

  it("bows the equator towards the south when the north pole leans to us", () => {
    const svg = chartSvg({
      ...SUN,
      axisDeg: 0,
      b0Deg: 7,
      views: [{ caption: "", mirrored: false, turnDeg: 0 }],
    });
    const data = /<path d="([^"]+)"[^>]*data-line="equator"/u.exec(svg)?.[1] ?? "";
    const points = [...data.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/gu)].map(([, x, y]) => [
      Number(x),
      Number(y),
    ]);
    const middle = points.reduce((a, b) =>
      Math.abs((b[0] ?? 0) - 200) < Math.abs((a[0] ?? 0) - 200) ? b : a,
    );
    const end = points[0] ?? [];
    expect((middle[1] ?? 0) - (end[1] ?? 0)).toBeCloseTo(120 * Math.sin(7 * DEG), 0);
  });
});

describe("the Moon's chart", () => {
  it("names no feature that libration has turned away", () => {
    const features = [
      { name: "Mare Orientale", longitudeDeg: -93, latitudeDeg: -19, diameterKm: 294, onTerminator: false },
    ];
    const away = chartSvg({ ...MOON, features, librationLongitudeDeg: 7 });
    const turned = chartSvg({ ...MOON, features, librationLongitudeDeg: -7 });
    expect(away).not.toContain("Orientale");
    expect(turned).toContain("Orientale");
  });
});
