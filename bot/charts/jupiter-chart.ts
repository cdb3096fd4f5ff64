/**
 * Jupiter and its four great moons on their line, and, when something happens on the
 * disc, the disc once more and larger.
 *
 * @packageDocumentation
 */
import type { JupiterChart } from "../../commands/chart.ts";
import { listWords } from "../../commands/words/sky.ts";
import { PALETTE } from "../../config/palette.ts";
import { directionOf } from "./disc.ts";
import { leading, lettering, SMALL_PX, widthOf, wrapped } from "./lettering.ts";
import { type Drawing, MARGIN_PX, PAGE_WIDTH_PX, ROOM_PX } from "./page.ts";
import { spread } from "./scale.ts";
import { circle, element, group, join, line, NOTHING, type Point, path, type Svg, through } from "./svg.ts";

/** Polar over equatorial radius: J. Meeus, *Astronomical Algorithms*, chapter 43 (from memory). */
const FLATTENING = 0.935;
const DISC_RADIUS_PX = 66;

type Moon = JupiterChart["moons"][number];
type Place = { readonly x: number; readonly y: number };

export function drawJupiter(chart: JupiterChart): Drawing {
  const reach = Math.max(10, ...chart.moons.map(({ x, y }) => Math.hypot(x, y))) + 1;
  const scale = ROOM_PX / 2 / reach;
  const west = directionOf(270, chart);
  const north = directionOf(0, chart);
  const step = ({ x, y }: Place): Point => ({ x: x * west.x + y * north.x, y: x * west.y + y * north.y });
  const tallest = Math.max(...chart.moons.map((moon) => Math.abs(step(moon).y)), 1) * scale;
  const middleY = tallest + 40;
  const centre = { x: PAGE_WIDTH_PX / 2, y: middleY };
  const place = (moon: Place): Point => {
    const by = step(moon);
    return { x: centre.x + by.x * scale, y: centre.y + by.y * scale };
  };
  const lineHeight = 2 * (tallest + 40);
  const close = closeUp(chart, step, lineHeight + 6);
  const said = wrapped(hiddenWords(chart.moons), ROOM_PX, 14);
  const wordsY = lineHeight + close.heightPx + 8;
  return {
    heightPx: wordsY + said.length * leading(14),
    content: join([
      path(through([place({ x: -reach, y: 0 }), place({ x: reach, y: 0 })]), {
        stroke: PALETTE.boneFaint,
        "stroke-width": 0.8,
      }),
      globe(chart, centre, scale, 1.4),
      ...chart.moons.filter(isSeen).map((moon) => moonDot(moon, place(moon))),
      numerals(chart.moons.filter(isSeen), place),
      compass(chart),
      close.content,
      lettering({ x: MARGIN_PX, y: wordsY + 14 }, said, { sizePx: 14 }),
    ]),
  };
}

function isSeen(moon: Moon): boolean {
  return moon.state === "clear" || moon.state === "transit";
}

/** The disc with its two belts, turned as the view is. */
function globe(chart: JupiterChart, centre: Point, radius: number, width: number): Svg {
  const turn = chart.mirrored ? chart.turnDeg : -chart.turnDeg;
  const ink = { stroke: PALETTE.bone, "stroke-width": width };
  const belts = [-0.3, 0.3].map((latitude) => {
    const half = Math.sqrt(1 - latitude ** 2) * radius;
    const y = latitude * radius * FLATTENING;
    return line({ x: -half, y }, { x: half, y }, { ...ink, "stroke-width": width * 0.8 });
  });
  return group({ transform: `translate(${centre.x} ${centre.y}) rotate(${turn})` }, [
    element("ellipse", { rx: radius, ry: radius * FLATTENING, fill: PALETTE.umberRaised, ...ink }),
    ...belts,
  ]);
}

function moonDot(moon: Moon, at: Point): Svg {
  return circle(at, 4.5, {
    fill: PALETTE.bone,
    stroke: PALETTE.umber,
    "stroke-width": 1.4,
    "data-moon": moon.numeral,
  });
}

/** Numerals over the moons, apart from one another. */
function numerals(moons: readonly Moon[], place: (moon: Place) => Point): Svg {
  const placed = moons.map((moon) => ({ moon, at: place(moon) }));
  const centres = spread(
    placed.map(({ moon, at }) => ({ centre: at.x, extent: widthOf(moon.numeral, 15, "bold") + 8 })),
    MARGIN_PX - 4,
    PAGE_WIDTH_PX - MARGIN_PX + 4,
  );
  return join(
    placed.map(({ moon, at }, i) => {
      const x = centres[i] ?? at.x;
      const foot = { x, y: at.y - 15 };
      return join([
        Math.abs(x - at.x) > 4
          ? line(foot, { x: at.x, y: at.y - 5 }, { stroke: PALETTE.boneFaint, "stroke-width": 1 })
          : NOTHING,
        lettering({ x, y: at.y - 16 }, [moon.numeral], {
          sizePx: 15,
          weight: "bold",
          anchor: "middle",
          halo: PALETTE.umber,
        }),
      ]);
    }),
  );
}

/** Which way west and north lie, as a small corner in the picture's own turn. */
function compass(chart: JupiterChart): Svg {
  // Away from the end of the line that points up.
  const west = directionOf(270, chart);
  const upperEndIsLeft = west.x * west.y > 0;
  const corner = { x: upperEndIsLeft ? PAGE_WIDTH_PX - MARGIN_PX - 26 : MARGIN_PX + 26, y: 26 };
  return join(
    (
      [
        [0, "N"],
        [270, "W"],
      ] as const
    ).map(([angle, letter]) => {
      const by = directionOf(angle, chart);
      return join([
        line(
          corner,
          { x: corner.x + by.x * 12, y: corner.y + by.y * 12 },
          { stroke: PALETTE.boneQuiet, "stroke-width": 1.4 },
        ),
        lettering({ x: corner.x + by.x * 20, y: corner.y + by.y * 20 + 4.5 }, [letter], {
          anchor: "middle",
          ink: PALETTE.boneQuiet,
        }),
      ]);
    }),
  );
}

/** The disc enlarged, with the moons before it and the shadows on it; nothing when it is bare. */
function closeUp(chart: JupiterChart, step: (place: Place) => Point, top: number): Drawing {
  const before = chart.moons.filter(({ state }) => state === "transit");
  if (before.length === 0 && chart.shadows.length === 0) return { heightPx: 0, content: NOTHING };
  const centre = { x: PAGE_WIDTH_PX / 2, y: top + DISC_RADIUS_PX + 4 };
  const at = (place: Place): Point => {
    const by = step(place);
    return { x: centre.x + by.x * DISC_RADIUS_PX, y: centre.y + by.y * DISC_RADIUS_PX };
  };
  const spots = [
    ...before.map((moon) => ({ at: at(moon), text: `${moon.numeral} in front`, shadow: false })),
    ...chart.shadows.map((shadow) => ({
      at: at(shadow),
      text: `shadow of ${shadow.numeral}`,
      shadow: true,
    })),
  ];
  const left = centre.x + DISC_RADIUS_PX + 18;
  const heights = spread(
    spots.map((spot) => ({ centre: spot.at.y, extent: leading(SMALL_PX) + 3 })),
    top,
    top + 2 * DISC_RADIUS_PX + 8,
  );
  return {
    heightPx: 2 * DISC_RADIUS_PX + 16,
    content: join([
      globe(chart, centre, DISC_RADIUS_PX, 1.8),
      ...spots.map((spot, i) => {
        const y = heights[i] ?? spot.at.y;
        return join([
          line(spot.at, { x: left - 4, y }, { stroke: PALETTE.boneFaint, "stroke-width": 1 }),
          circle(spot.at, 5, {
            fill: spot.shadow ? PALETTE.umber : PALETTE.bone,
            stroke: spot.shadow ? PALETTE.bone : PALETTE.umber,
            "stroke-width": 1.6,
          }),
          lettering({ x: left, y: y + 4.5 }, [spot.text]),
        ]);
      }),
    ]),
  };
}

/** `II is behind Jupiter; IV is in its shadow.`, or empty. */
export function hiddenWords(moons: readonly Moon[]): string {
  const of = (state: Moon["state"]) => moons.filter((moon) => moon.state === state).map((m) => m.numeral);
  const be = (names: readonly string[]) => `${listWords(names)} ${names.length === 1 ? "is" : "are"}`;
  const [behind, dark] = [of("occulted"), of("eclipsed")];
  const parts = [
    ...(behind.length === 0 ? [] : [`${be(behind)} behind Jupiter`]),
    ...(dark.length === 0 ? [] : [`${be(dark)} in its shadow`]),
  ];
  return parts.length === 0 ? "" : `${parts.join("; ")}.`;
}
