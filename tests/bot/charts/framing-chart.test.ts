import { describe, expect, it } from "vitest";
import { chartSvg, drawChart } from "../../../bot/charts/draw.ts";
import { asFramed, panelCorners, scaleBar, sharedArea } from "../../../bot/charts/frame-geometry.ts";
import { pictureSize } from "../../../bot/charts/picture-size.ts";
import { starRadius, starTint } from "../../../bot/charts/sky-field.ts";
import { pixelsOf, textOf } from "./pixels.ts";
import { FRAMING } from "./sample-charts.ts";

const [SINGLE, MOSAIC] = FRAMING;
if (SINGLE === undefined || MOSAIC === undefined) throw new Error("samples missing");

/** A plain red PNG of 8 by 8, written by Python's zlib and struct. */
const RED = Uint8Array.from(
  Buffer.from(
    "iVBORw0KGgoAAAANSUhEUgAAAAgAAAAICAIAAABLbSncAAAAEklEQVR4nGP4z8CAFWEXHbQSACj/P8Fu7N9hAAAAAElFTkSuQmCC",
    "base64",
  ),
);

const area = (corners: readonly { readonly right: number; readonly up: number }[]) =>
  corners.reduce((sum, a, i) => {
    const b = corners[(i + 1) % corners.length] ?? a;
    return sum + (a.right * b.up - b.right * a.up) / 2;
  }, 0);

describe("asFramed", () => {
  it("has north up and east left in an unturned frame", () => {
    expect(asFramed(1, 0, 0).right).toBeCloseTo(-1);
    expect(asFramed(0, 1, 0).up).toBeCloseTo(1);
  });

  it("has east up, and north to the right, when the frame's up lies at position angle 90°", () => {
    expect(asFramed(1, 0, 90).up).toBeCloseTo(1);
    expect(asFramed(0, 1, 90).right).toBeCloseTo(1);
  });
});

describe("panelCorners", () => {
  it("runs anticlockwise and keeps its area however it is turned", () => {
    for (const turnDeg of [0, 5.4, -40]) {
      const panel = { order: 1, xiDeg: 0.4, etaDeg: -0.2, widthDeg: 2, heightDeg: 1, turnDeg };
      expect(area(panelCorners(panel, 33))).toBeCloseTo(2);
    }
  });

  it("turns from north through east: the upper edge's middle moves to the left", () => {
    const panel = { order: 1, xiDeg: 0, etaDeg: 0, widthDeg: 2, heightDeg: 2, turnDeg: 10 };
    const [upperLeft, , , upperRight] = panelCorners(panel, 0);
    expect(((upperLeft?.right ?? 0) + (upperRight?.right ?? 0)) / 2).toBeCloseTo(
      -Math.sin((10 * Math.PI) / 180),
    );
  });
});

describe("sharedArea", () => {
  const square = (right: number, up: number, side: number) => [
    { right, up: up + side },
    { right, up },
    { right: right + side, up },
    { right: right + side, up: up + side },
  ];

  it("is the overlap of two squares", () => {
    expect(area(sharedArea(square(0, 0, 2), square(1.5, 1, 2)))).toBeCloseTo(0.5);
  });

  it("is nothing of squares apart and the whole of a square in another", () => {
    expect(sharedArea(square(0, 0, 1), square(3, 3, 1))).toEqual([]);
    expect(area(sharedArea(square(0, 0, 4), square(1, 1, 1)))).toBeCloseTo(1);
  });
});

describe("scaleBar", () => {
  it.each([
    [1.3, "1°"],
    [0.6, "30′"],
    [0.2, "10′"],
    [0.01, "30″"],
    [95, "90°"],
  ])("is the roundest length within %d degrees", (most, words) => {
    expect(scaleBar(most).words).toBe(words);
    expect(scaleBar(most).lengthDeg).toBeLessThanOrEqual(most);
  });
});

describe("the framing chart", () => {
  it.each([
    [0, "north 0°"],
    [35, "north 35°"],
    [90, "north 90°"],
    [213.4, "north 213.4°"],
    [-60, "north 300°"],
  ])("points its north hand %d° clockwise from the frame's up", (angle, words) => {
    const svg = chartSvg({ ...SINGLE, positionAngleDeg: angle });
    const data = /<path d="([^"]+)"[^>]*data-hand="north"/u.exec(svg)?.[1] ?? "";
    const tip = /L(-?[\d.]+) (-?[\d.]+)L/u.exec(data) ?? [];
    const found = (Math.atan2(Number(tip[1]) - 200, 182 - Number(tip[2])) * 180) / Math.PI;
    expect(Math.abs(((found - angle + 540) % 360) - 180)).toBeLessThan(0.1);
    expect(textOf(svg)).toContain(words);
  });

  it("stands the sensor upright whatever the angle: brackets of the same shape", () => {
    const brackets = (angle: number) =>
      chartSvg({ ...SINGLE, target: null, positionAngleDeg: angle }).match(
        /<path d="[^"]+"[^>]*data-part="bracket"/gu,
      );
    expect(brackets(0)).toHaveLength(4);
    expect(brackets(77)).toEqual(brackets(0));
  });

  it("draws a star north-east of the middle up and left", () => {
    const star = { xiDeg: 0.3, etaDeg: 0.2, magnitude: 3, colourIndex: null };
    const svg = chartSvg({ ...SINGLE, positionAngleDeg: 0, target: null, neighbours: [], stars: [star] });
    const inside = svg.slice(svg.indexOf('data-part="inside"'));
    const [, x, y] = /<circle cx="([\d.]+)" cy="([\d.]+)"/u.exec(inside) ?? [];
    expect([Number(x) < 200, Number(y) < 182]).toEqual([true, true]);
    // 0.3° and 0.2° at the same scale.
    expect((200 - Number(x)) / (182 - Number(y))).toBeCloseTo(1.5, 1);
  });

  it("numbers a mosaic in shooting order and hatches its seams", () => {
    const svg = chartSvg(MOSAIC);
    for (const order of [1, 2, 3, 4, 5, 6]) expect(svg).toContain(`>${order}</text>`);
    // Two by three panels: seven shared edges and four corners that only diagonal pairs share.
    expect(svg.match(/fill="url\(#hatch\)"/gu)).toHaveLength(11);
    expect(chartSvg(SINGLE)).not.toContain('fill="url(#hatch)"');
  });

  it("shows neighbours with their kind in words", () => {
    expect(textOf(chartSvg(SINGLE))).toContain("NGC 6883 open cluster");
  });

  it("draws a point without an extent", () => {
    const target = { ...(SINGLE.target ?? MOSAIC.target), majorDeg: 0, minorDeg: 0 };
    expect(() => chartSvg({ ...SINGLE, target: target as NonNullable<typeof SINGLE.target> })).not.toThrow();
  });
});

describe("a survey picture", () => {
  it("is drawn in shades from umber to bone", async () => {
    const chart = {
      ...SINGLE,
      target: null,
      neighbours: [],
      picture: { bytes: RED, mediaType: "image/png", spanDeg: 3 },
    };
    const svg = chartSvg(chart);
    const pixels = pixelsOf(svg);
    const [red, green, blue] = pixels.at(200, Math.round(pixels.height - 34 - 14 - 178));
    // A red of 255, 0, 0 has a lightness of 0.2126: so far from #1b1410 towards #efe5d2.
    expect(Math.abs(red - (27 + 0.2126 * (239 - 27)))).toBeLessThan(4);
    expect(Math.abs(green - (20 + 0.2126 * (229 - 20)))).toBeLessThan(4);
    expect(Math.abs(blue - (16 + 0.2126 * (210 - 16)))).toBeLessThan(4);
  });

  it.each([
    ["of an unknown kind", RED, "text/html"],
    ["broken off", RED.slice(0, 20), "image/png"],
    ["made of noise", new Uint8Array([1, 2, 3]), "image/jpeg"],
    ["empty", new Uint8Array(), "image/png"],
    ["with a true head and nothing behind it", RED.slice(0, 40), "image/png"],
  ])("leaves the catalogue's sky standing when it is %s", async (_, bytes, mediaType) => {
    const png = await drawChart({ ...SINGLE, picture: { bytes, mediaType, spanDeg: 2 } });
    expect(png.length).toBeGreaterThan(1000);
  });
});

describe("pictureSize", () => {
  it("reads a JPEG's frame header past other segments", () => {
    const head = [0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 0xff, 0xc2, 0, 11, 8, 1, 44, 2, 88, 3, 0, 0, 0];
    expect(pictureSize(new Uint8Array(head))).toEqual({ width: 600, height: 300 });
  });
});

describe("stars", () => {
  it("are larger when brighter, and never vanish", () => {
    expect(starRadius(2, 8)).toBeGreaterThan(starRadius(5, 8));
    expect(starRadius(9, 8)).toBeGreaterThan(0.5);
  });

  it("lean to blue when hot and to red when cool, and stay bone when unknown", () => {
    const red = (colour: string) => Number.parseInt(colour.slice(1, 3), 16);
    const blue = (colour: string) => Number.parseInt(colour.slice(5, 7), 16);
    expect(blue(starTint(-0.2))).toBeGreaterThan(red(starTint(-0.2)));
    expect(red(starTint(1.6))).toBeGreaterThan(blue(starTint(1.6)) + 60);
    expect(starTint(null)).toBe(starTint(0.6));
  });
});
