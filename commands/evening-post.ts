/**
 * The club's evening post: is it worth it, from when to when, and what fits.
 *
 * @packageDocumentation
 */
import type { Interval } from "../core/interval.ts";
import type { Answer } from "./answer.ts";
import type { Context } from "./context.ts";
import { type Evening, evening } from "./evening.ts";
import { spanFigure } from "./object-figures.ts";
import type { Request } from "./request.ts";
import { cardLines, eveningCautions, eveningPicture, targetLine } from "./tonight.ts";
import { dateWords } from "./words/clock.ts";
import { moonWords } from "./words/night-words.ts";
import { shortName } from "./words/target-words.ts";
import { verdictSentence } from "./words/weather-words.ts";

export type EveningPost = {
  readonly answer: Answer;
  readonly verdict: "go" | "marginal" | "no-go" | null;
  readonly window: Interval | null;
  /** The local date on which the night begins. */
  readonly night: string;
  readonly usableHours: number | null;
};

/** A post is read at a glance. */
const TARGETS_SHOWN = 5;

/**
 * Writes the post for a night.
 *
 * @param request - `site`, `night` and `rig` options as for `tonight`
 */
export async function eveningPost(request: Request, context: Context): Promise<EveningPost> {
  const found = await evening({ ...request, options: { ...request.options, limit: TARGETS_SHOWN } }, context);
  const { verdict } = found.situation;
  return {
    answer: describePost(found),
    verdict: verdict.kind === "unknown" ? null : verdict.kind,
    window: verdict.window,
    night: found.situation.times.night.date,
    usableHours: verdict.usableHours,
  };
}

function describePost(found: Evening): Answer {
  const { situation, rig, fits } = found;
  const { site, times, verdict, report } = situation;
  const zone = site.timeZone;
  return {
    title: `${postTitle(found)}${verdict.sample ? " (sample forecast)" : ""}`,
    summary: verdictSentence(verdict, times),
    sections: [
      { heading: "Why", lines: [...verdict.reasons, ...verdict.warnings] },
      { heading: "Moon", lines: [moonWords(times)] },
      {
        heading: found.ifItClears ? `If it clears, with ${rig.name}` : `Fits tonight, with ${rig.name}`,
        lines: fits.targets.map((fit) => targetLine(fit, zone, null)),
      },
      { heading: "The evening by the clock", lines: cardLines(found) },
      { heading: "", lines: report.problems },
    ].filter(({ lines }) => lines.length > 0),
    charts: fits.targets.length === 0 ? [] : [eveningPicture(found)],
    cautions: eveningCautions(found),
    next: [
      { label: "What fits my rig", command: "tonight", options: { night: times.night.date } },
      ...fits.targets.slice(0, 2).map(({ target }) => ({
        label: shortName(target),
        command: "target",
        options: { target: shortName(target), night: times.night.date },
      })),
    ],
    figures: {
      night: times.night.date,
      verdict: verdict.kind === "unknown" ? null : verdict.kind,
      window: verdict.window === null ? null : spanFigure(verdict.window),
      usableHours: verdict.usableHours,
      agreement: verdict.agreement,
    },
    credits: report.credits,
  };
}

function postTitle({ situation }: Evening): string {
  const { site, times, verdict } = situation;
  const when = `${site.name}, ${dateWords(times.night.date)}`;
  switch (verdict.kind) {
    case "go":
      return `Go tonight: ${when}`;
    case "marginal":
      return `Marginal tonight: ${when}`;
    case "no-go":
      return `Not tonight: ${when}`;
    case "unknown":
      return `No forecast for ${when}`;
  }
}
