/**
 * Where the pole star stands: a plain clock with one hand, once for each kind of finder,
 * and the time in words.
 *
 * @packageDocumentation
 */
import type { PoleChart } from "../../commands/chart.ts";
import { PALETTE } from "../../config/palette.ts";
import { leading, lettering, wrapped } from "./lettering.ts";
import { type Drawing, MARGIN_PX, ROOM_PX } from "./page.ts";
import { circle, join, line, type Point, type Svg } from "./svg.ts";

const WORDS_PX = 18;
const CAPTION_PX = 14;

/** A point on a clock face. */
export function onClock(centre: Point, hours: number, distance: number): Point {
  const angle = (hours / 12) * 2 * Math.PI;
  return { x: centre.x + Math.sin(angle) * distance, y: centre.y - Math.cos(angle) * distance };
}

export function drawPole(chart: PoleChart): Drawing {
  const columns = Math.min(2, Math.max(1, chart.dials.length));
  const width = ROOM_PX / columns;
  const radius = columns === 1 ? 108 : width / 2 - 10;
  const rows: (typeof chart.dials)[] = [];
  for (let i = 0; i < chart.dials.length; i += columns) rows.push(chart.dials.slice(i, i + columns));
  let y = 4;
  const drawn: Svg[] = [];
  for (const row of rows) {
    let tallest = 0;
    row.forEach((dial, i) => {
      const middle = MARGIN_PX + width * (i + 0.5);
      const words = wrapped(dial.words, width - 8, WORDS_PX, "bold");
      const caption = wrapped(dial.caption, width - 12, CAPTION_PX);
      const wordsY = y + 2 * radius + 26;
      const captionY = wordsY + words.length * leading(WORDS_PX) - 2;
      drawn.push(
        clock({ x: middle, y: y + radius }, radius, dial.hours),
        lettering({ x: middle, y: wordsY }, words, {
          sizePx: WORDS_PX,
          weight: "bold",
          anchor: "middle",
          ink: PALETTE.copper,
        }),
        lettering({ x: middle, y: captionY }, caption, {
          sizePx: CAPTION_PX,
          anchor: "middle",
          ink: PALETTE.boneQuiet,
        }),
      );
      tallest = Math.max(tallest, captionY + caption.length * leading(CAPTION_PX) - y);
    });
    y += tallest + 8;
  }
  return { heightPx: y - leading(CAPTION_PX), content: join(drawn) };
}

/** The face: twelve strokes, four figures, and the hand with the star at its tip. */
function clock(centre: Point, radius: number, hours: number): Svg {
  const strokes = Array.from({ length: 12 }, (_, hour) => {
    const quarter = hour % 3 === 0;
    return line(onClock(centre, hour, radius - 3), onClock(centre, hour, radius - (quarter ? 12 : 8)), {
      stroke: quarter ? PALETTE.bone : PALETTE.boneQuiet,
      "stroke-width": quarter ? 2.6 : 1.4,
    });
  });
  const figures = [12, 3, 6, 9].map((hour) => {
    const at = onClock(centre, hour, radius - 22);
    return lettering({ x: at.x, y: at.y + 5 }, [String(hour)], { sizePx: 15, anchor: "middle" });
  });
  const tip = onClock(centre, hours, radius - 38);
  return join([
    circle(centre, radius, { fill: PALETTE.umberRaised, stroke: PALETTE.bone, "stroke-width": 2 }),
    ...strokes,
    ...figures,
    line(onClock(centre, hours, -10), tip, {
      stroke: PALETTE.copper,
      "stroke-width": 4,
      "stroke-linecap": "round",
      "data-hand": "star",
    }),
    circle(tip, 8, { fill: PALETTE.copper }),
    circle(centre, 3.5, { fill: PALETTE.bone }),
  ]);
}
