/**
 * What each choice of sub costs: one bar a choice, as long as the hours it loses.
 *
 * @packageDocumentation
 */
import type { SubLengthChart } from "../../commands/chart.ts";
import { durationWords } from "../../commands/words/clock.ts";
import { PALETTE } from "../../config/palette.ts";
import { lettering, widthOf } from "./lettering.ts";
import { type Drawing, HATCH, MARGIN_PX, PAGE_WIDTH_PX } from "./page.ts";
import { join, line, NOTHING, rect } from "./svg.ts";

const ROW_PX = 26;
const BAR_PX = 15;
const LETTERING_PX = 14;

export function drawSubLength(chart: SubLengthChart): Drawing {
  const rows = chart.choices.map((choice) => ({
    ...choice,
    hoursLost: Math.max(0, choice.hoursLost),
    name: subWords(choice.subSeconds),
  }));
  const names = Math.max(30, ...rows.map(({ name }) => widthOf(name, LETTERING_PX, "bold")));
  const left = MARGIN_PX + names + 10;
  const costs = rows.map(({ hoursLost }) => durationWords(hoursLost));
  const ends = Math.max(0, ...costs.map((cost) => widthOf(cost, LETTERING_PX, "bold")));
  const room = PAGE_WIDTH_PX - MARGIN_PX - left - ends - 10;
  const most = Math.max(0.01, chart.hoursAtHand ?? 0, ...rows.map(({ hoursLost }) => hoursLost));
  const top = chart.hoursAtHand === undefined ? 0 : 24;
  const bottom = top + rows.length * ROW_PX;
  return {
    heightPx: bottom + 4,
    content: join([
      line({ x: left, y: top }, { x: left, y: bottom }, { stroke: PALETTE.boneQuiet, "stroke-width": 1.2 }),
      chart.hoursAtHand === undefined
        ? NOTHING
        : allHours(left + (room * chart.hoursAtHand) / most, chart.hoursAtHand, top, bottom),
      ...rows.map(({ name, hoursLost, chosen }, i) => {
        const middle = top + (i + 0.5) * ROW_PX;
        const width = Math.max(1.5, (room * hoursLost) / most);
        const weight = chosen ? "bold" : "regular";
        const ink = chosen ? PALETTE.copper : PALETTE.bone;
        const baseline = middle + LETTERING_PX * 0.34;
        return join([
          lettering({ x: left - 9, y: baseline }, [name], {
            sizePx: LETTERING_PX,
            anchor: "end",
            weight,
            ink,
          }),
          rect(left, middle - BAR_PX / 2, width, BAR_PX, { fill: chosen ? PALETTE.copper : HATCH }),
          rect(left, middle - BAR_PX / 2, width, BAR_PX, { fill: "none", stroke: ink, "stroke-width": 1.2 }),
          lettering({ x: left + width + 7, y: baseline }, [costs[i] ?? ""], {
            sizePx: LETTERING_PX,
            weight,
            ink,
            halo: PALETTE.umber,
          }),
        ]);
      }),
    ]),
  };
}

/** A mark where everything would be lost. */
function allHours(x: number, hours: number, top: number, bottom: number) {
  return join([
    line(
      { x, y: top - 2 },
      { x, y: bottom },
      { stroke: PALETTE.boneFaint, "stroke-width": 1.2, "stroke-dasharray": "2 4" },
    ),
    lettering({ x, y: top - 7 }, [`all ${durationWords(hours)}`], {
      anchor: x > PAGE_WIDTH_PX / 2 ? "end" : "start",
      ink: PALETTE.boneQuiet,
    }),
  ]);
}

/** `45 s`, `3 min`, `7 min 30 s`. */
export function subWords(seconds: number): string {
  const rounded = seconds < 10 ? Number(seconds.toPrecision(2)) : Math.round(seconds);
  if (rounded < 120) return `${rounded} s`;
  const rest = rounded % 60;
  return rest === 0 ? `${rounded / 60} min` : `${Math.floor(rounded / 60)} min ${rest} s`;
}
