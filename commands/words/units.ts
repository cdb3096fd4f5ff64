/**
 * Weather in the units a club reads: km/h and °C as computed, or miles an hour and °F.
 *
 * Works on finished sentences, so that every figure is computed and judged in one unit;
 * optics and sensors keep millimetres and °C, as their makers print them.
 *
 * @packageDocumentation
 */
import type { Answer } from "../answer.ts";
import type { Units } from "../books.ts";
import { withMinus } from "./minus.ts";

const MILES_PER_KILOMETRE = 0.621371;
const KILOMETRES_AN_HOUR_PER_METRE_A_SECOND = 3.6;
const MILLIMETRES_PER_INCH = 25.4;

/** What speaks of a sensor keeps its units. */
const OF_A_SENSOR = /sensor|dark current/i;

/** Figures such as `40 km/h`; minus signs as typed or as printed. */
const SPEED = /(\d+(?:\.\d+)?) (km\/h|m\/s)/g;
const DIFFERENCE =
  /(up to|within|limits are|spread of) (\d+(?:\.\d+)?) °C|(\d+(?:\.\d+)?) °C (?=above|below)/g;
const TEMPERATURE = /([−-]?\d+(?:\.\d+)?) °C/g;
const OF_RAIN = /\brain\b/i;
const DEPTH = /(\d+(?:\.\d+)?) mm\b/g;

/** The answer with its weather in the club's units. */
export function inUnits(answer: Answer, units: Units): Answer {
  if (units === "metric") return answer;
  return {
    ...answer,
    title: imperial(answer.title),
    summary: imperial(answer.summary),
    sections: answer.sections.map((section) => ({
      ...section,
      lines: section.lines.map(imperial),
      ...(section.table === undefined
        ? {}
        : {
            table: {
              columns: section.table.columns.map(imperial),
              rows: section.table.rows.map((row) => row.map(imperial)),
            },
          }),
    })),
  };
}

/** A sentence with its speeds in miles an hour, its temperatures in °F and its rain in inches. */
export function imperial(sentence: string): string {
  if (OF_A_SENSOR.test(sentence)) return sentence;
  const turned = sentence
    .replace(SPEED, (_, figure: string, unit: string) => {
      const kilometres = Number(figure) * (unit === "m/s" ? KILOMETRES_AN_HOUR_PER_METRE_A_SECOND : 1);
      return `${Math.round(kilometres * MILES_PER_KILOMETRE)} mph`;
    })
    .replace(
      DIFFERENCE,
      (_, words: string | undefined, after: string | undefined, before: string | undefined) => {
        const fahrenheit = (Number(after ?? before) * 9) / 5;
        return `${words === undefined ? "" : `${words} `}${shortFigure(fahrenheit)} °F`;
      },
    )
    .replace(TEMPERATURE, (_, figure: string) => {
      const fahrenheit = (Number(figure.replace("−", "-")) * 9) / 5 + 32;
      return `${withMinus(Math.round(fahrenheit))} °F`;
    });
  if (!OF_RAIN.test(sentence)) return turned;
  return turned.replace(
    DEPTH,
    (_, figure: string) => `${(Number(figure) / MILLIMETRES_PER_INCH).toPrecision(1)} in`,
  );
}

/** `6.3`, `2`. */
function shortFigure(value: number): string {
  return String(Math.round(value * 10) / 10);
}
