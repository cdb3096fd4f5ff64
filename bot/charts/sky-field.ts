/**
 * The sky behind a frame: stars by magnitude, faintly tinted, and a survey picture in bone
 * ink where there is one.
 *
 * @packageDocumentation
 */
import type { ChartStar, FramingChart } from "../../commands/chart.ts";
import { PALETTE } from "../../config/palette.ts";
import { pictureSize } from "./picture-size.ts";
import { circle, element, join, NOTHING, type Point, type Svg } from "./svg.ts";

const MOST_STARS = 1200;
const MEDIA_TYPES: ReadonlySet<string> = new Set(["image/png", "image/jpeg"]);

/** Where a place of the tangent plane lies on the page. */
export type Placing = (xiDeg: number, etaDeg: number) => Point;

/** A star's radius in pixels: brighter than the faintest drawn by so many magnitudes. */
export function starRadius(magnitude: number, faintest: number): number {
  return Math.min(6, 1.1 + Math.max(0, faintest - magnitude) * 0.55);
}

function channels(colour: string): number[] {
  return [1, 3, 5].map((i) => Number.parseInt(colour.slice(i, i + 2), 16));
}

/** Bone, leaning to blue below a colour index of 0.4 and to red above 0.9. */
export function starTint(colourIndex: number | null): string {
  if (colourIndex === null || !Number.isFinite(colourIndex)) return PALETTE.bone;
  const red = Math.min(1, Math.max(0, (colourIndex - 0.9) / 0.8));
  const blue = Math.min(1, Math.max(0, (0.4 - colourIndex) / 0.6));
  const lean = channels(red > 0 ? PALETTE.starRed : PALETTE.starBlue);
  const share = Math.max(red, blue);
  const mixed = channels(PALETTE.bone).map((value, i) =>
    Math.round(value + share * ((lean[i] ?? value) - value)),
  );
  return `#${mixed.map((value) => value.toString(16).padStart(2, "0")).join("")}`;
}

/** The brightest stars that fall inside a circle of the page. */
export function starField(stars: readonly ChartStar[], place: Placing, centre: Point, radius: number): Svg {
  const inside = stars
    .filter(({ magnitude }) => Number.isFinite(magnitude))
    .map((star) => ({ star, at: place(star.xiDeg, star.etaDeg) }))
    .filter(({ at }) => Math.hypot(at.x - centre.x, at.y - centre.y) < radius)
    .sort((a, b) => a.star.magnitude - b.star.magnitude)
    .slice(0, MOST_STARS);
  const faintest = inside.at(-1)?.star.magnitude ?? 0;
  return join(
    inside.map(({ star, at }) =>
      circle(at, starRadius(star.magnitude, faintest), { fill: starTint(star.colourIndex) }),
    ),
  );
}

/** The picture, its middle at a point, in shades from umber to bone; nothing of an unknown kind. */
export function surveyPicture(picture: FramingChart["picture"], middle: Point, pixelsPerDeg: number): Svg {
  if (picture === null || !MEDIA_TYPES.has(picture.mediaType)) return NOTHING;
  const size = pictureSize(picture.bytes);
  if (size === null || !(picture.spanDeg > 0)) return NOTHING;
  const width = picture.spanDeg * pixelsPerDeg;
  const height = (width * size.height) / size.width;
  return element("image", {
    x: middle.x - width / 2,
    y: middle.y - height / 2,
    width,
    height,
    filter: "url(#bone-ink)",
    href: `data:${picture.mediaType};base64,${Buffer.from(picture.bytes).toString("base64")}`,
  });
}

/** Lightness alone, mapped from the ground to the ink. Weights: ITU-R BT.709. */
export function boneInk(): Svg {
  const ground = channels(PALETTE.umber);
  const rows = channels(PALETTE.bone).map((ink, i) => {
    const from = (ground[i] ?? 0) / 255;
    const span = ink / 255 - from;
    return [0.2126, 0.7152, 0.0722].map((weight) => (weight * span).toFixed(4)).concat("0", from.toFixed(4));
  });
  return element(
    "filter",
    { id: "bone-ink", "color-interpolation-filters": "sRGB", x: "0", y: "0", width: "1", height: "1" },
    [
      element("feColorMatrix", {
        type: "matrix",
        values: [...rows, ["0", "0", "0", "1", "0"]].flat().join(" "),
      }),
    ],
  );
}
