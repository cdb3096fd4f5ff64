/**
 * A night at the demo club's site for looking at and testing charts: made-up curves,
 * true in shape only.
 *
 * @packageDocumentation
 */
import type { NightChart, PathState } from "../../../commands/chart.ts";

const START_MS = Date.UTC(2026, 9, 10, 16, 30);
const END_MS = Date.UTC(2026, 9, 11, 7, 0);

const at = (hour: number, minute = 0): Date => new Date(Date.UTC(2026, 9, 10, hour, minute));

function arc(peakMs: number, heightDeg: number, lengthHours: number): { at: Date; altitudeDeg: number }[] {
  const points = [];
  for (let ms = START_MS; ms <= END_MS; ms += 600_000) {
    const hours = (ms - peakMs) / 3_600_000;
    points.push({ at: new Date(ms), altitudeDeg: heightDeg * Math.cos((Math.PI * hours) / lengthHours) });
  }
  return points;
}

function path(name: string, peakMs: number, heightDeg: number, lengthHours: number, least: number) {
  return {
    name,
    points: arc(peakMs, heightDeg, lengthHours).map((point) => {
      const dark = point.at >= at(19, 10) && point.at <= at(28, 20);
      const state: PathState =
        point.altitudeDeg < least ? "hidden" : dark && point.altitudeDeg > 32 ? "usable" : "poor";
      return { ...point, state };
    }),
  };
}

export const SAMPLE_NIGHT: NightChart = {
  kind: "night",
  name: "night",
  title: "Good from 22:40 to 02:10: start with the Crescent",
  alt: "Three objects, the dark window from 22:40 to 02:10, cloud by the hour and the Moon's height.",
  cautions: [],
  caption: "Saturday 10 October, Fell End field",
  timeZone: "Europe/London",
  span: { start: new Date(START_MS), end: new Date(END_MS) },
  twilights: [
    { at: at(17, 22), label: "sunset", depth: 1 },
    { at: at(17, 58), label: "nautical dusk", depth: 2 },
    { at: at(18, 38), label: "astronomical dusk", depth: 3 },
    { at: at(19, 18), label: "dark", depth: 4 },
    { at: at(28, 28), label: "astronomical dawn", depth: 3 },
    { at: at(29, 9), label: "nautical dawn", depth: 2 },
    { at: at(29, 49), label: "civil dawn", depth: 1 },
    { at: at(30, 24), label: "sunrise", depth: 0 },
  ],
  paths: [
    path("NGC 6888 Crescent", at(19, 20).getTime(), 73, 19, 18),
    path("M33", at(24, 40).getTime(), 66, 17, 12),
    path("IC 434", at(28, 50).getTime(), 33, 12, 9),
  ],
  window: { start: at(21, 40), end: at(25, 10), label: "3 h 30 min" },
  cloud: [7, 7, 6, 5, 3, 2, 1, 1, 0, 0, 2, 4, 6, 8, null].map((oktas, i) => ({ at: at(17 + i), oktas })),
  moon: { points: arc(at(31).getTime(), 48, 15), illuminatedFraction: 0.14, waxing: false },
};
