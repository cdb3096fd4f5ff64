/**
 * `forecast record`: how often the verdicts were right at a site, and a member's word on a night.
 *
 * @packageDocumentation
 */
import { RECORD_NIGHTS_AT_LEAST } from "../config/log-limits.ts";
import { nightOfInstant } from "../core/log/night-of.ts";
import {
  type RecordLine,
  type TrackRecord,
  trackRecord,
  type VerdictNote,
} from "../core/log/track-record.ts";
import type { Site } from "../core/site.ts";
import type { NightVerdict } from "../core/weather/verdict.ts";
import type { Answer, FollowUp } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import type { Context } from "./context.ts";
import { parseDate } from "./read/night.ts";
import { flagOption, textOption } from "./read/numbers.ts";
import { defineFlag, defineSubcommand, defineText, SITE } from "./read/options.ts";
import { siteOf } from "./read/site.ts";
import type { Request } from "./request.ts";
import { dateWords } from "./words/clock.ts";

export const FORECAST_RECORD = defineSubcommand(
  "record",
  "How often the verdicts were right here; or your word on a night",
  [
    SITE,
    defineText("night", "The night you were out, YYYY-MM-DD; default: last night"),
    defineFlag("kept", "Whether the sky kept its word that night"),
  ],
);

/** A verdict as the record keeps it: that of all models together, then each one's own. */
export function verdictNotes(verdict: NightVerdict): readonly VerdictNote[] {
  if (verdict.kind === "unknown" || verdict.sample) return [];
  const { night, leadNights } = verdict;
  return [
    { night, leadNights, model: null, verdict: verdict.kind, agreement: verdict.agreement },
    ...verdict.votes.flatMap(({ provider, model, kind }) =>
      kind === "unknown"
        ? []
        : [{ night, leadNights, model: `${provider} ${model}`, verdict: kind, agreement: null }],
    ),
  ];
}

/** The two buttons under the question of the morning after. */
export function skyQuestionButtons(night: string, siteName: string): readonly FollowUp[] {
  const options = { subcommand: "record", night, site: siteName };
  return [
    { label: "The sky kept its word", command: "forecast", options: { ...options, kept: true } },
    { label: "It did not", command: "forecast", options: { ...options, kept: false } },
  ];
}

export async function recordAnswer(request: Request, context: Context): Promise<Answer> {
  const site = await siteOf(request, context);
  if (request.options.kept !== undefined) return takeWord(request, context, site);
  const { record } = context.books;
  const notes = await record.notes(request.club, site.name);
  const answers = await record.answers(request.club, site.name);
  return describeRecord(site, trackRecord(notes, answers, RECORD_NIGHTS_AT_LEAST), notes);
}

const HALF_DAY_MS = 12 * 3_600_000;

/** Keeps what a member says of a night. */
async function takeWord(request: Request, context: Context, site: Site): Promise<Answer> {
  const { record } = context.books;
  const now = nightOfInstant(request.at, site.timeZone);
  const text = textOption(request, "night");
  // Before noon the night just over is still the one that its evening began.
  const lastNight = nightOfInstant(new Date(request.at.getTime() - HALF_DAY_MS), site.timeZone);
  const night = text === null ? lastNight : parseDate("night", text);
  if (night > now) throw new AskError("future", "night", `“night”: ${night} has not come yet.`);
  const notes = await record.notes(request.club, site.name);
  const given = notes.find((note) => note.night === night && note.model === null && note.leadNights === 0);
  if (given === undefined || given.verdict === "marginal") {
    throw new AskError(
      "no-verdict",
      "night",
      `“night”: no go or no-go was given for ${night} at ${site.name}, so there is no word to keep.`,
    );
  }
  const kept = flagOption(request, "kept");
  const good = (given.verdict === "go") === kept;
  await record.answer(request.club, site.name, { night, member: request.member.id, good });
  return {
    title: "Noted",
    summary: `The verdict for ${dateWords(night)} at ${site.name} was ${given.verdict}, and ${kept ? "it was right" : "it was wrong"}.`,
    sections: [],
    charts: [],
    cautions: [],
    next: [{ label: "The record", command: "forecast", options: { subcommand: "record", site: site.name } }],
    figures: { site: site.name, night, verdict: given.verdict, kept, good },
    credits: [],
  };
}

function describeRecord(site: Site, record: TrackRecord, notes: readonly VerdictNote[]): Answer {
  const { lines, nightsKnown, score } = record;
  const [tonight] = lines.filter(({ model, leadNights }) => model === null && leadNights === 0);
  return {
    title: `How the verdicts did at ${site.name}`,
    summary:
      tonight === undefined
        ? `No night's verdict here has been answered for yet (${new Set(notes.map(({ night }) => night)).size} nights kept).`
        : `${rightWords(tonight)} on the day itself.`,
    sections: [
      {
        heading: "Verdicts",
        lines: [],
        table: {
          columns: [
            "Who said it",
            "Ahead",
            "Go: right",
            "Go: wrong",
            "No-go: right",
            "No-go: wrong",
            "Marginal",
          ],
          rows: lines.map((line) => [
            line.model ?? "all together",
            line.leadNights === 0 ? "same day" : `${line.leadNights} nights`,
            String(line.go.right),
            String(line.go.wrong),
            String(line.noGo.right),
            String(line.noGo.wrong),
            `${line.marginal.good} good, ${line.marginal.poor} poor`,
          ]),
        },
      },
      { heading: "Score", lines: scoreLines(record) },
    ].filter((section) => section.lines.length > 0 || (section.table?.rows.length ?? 0) > 0),
    charts: [],
    cautions: [],
    next: [
      { label: "The coming nights", command: "forecast", options: { subcommand: "nights", site: site.name } },
    ],
    figures: {
      site: site.name,
      nightsKnown,
      lines: lines.map((line) => ({ ...line })),
      brier: score?.brier ?? null,
      calibration: score === null ? null : score.bins.map((bin) => ({ ...bin })),
      nightsForScore: RECORD_NIGHTS_AT_LEAST,
    },
    credits: [],
  };
}

function rightWords({ go, noGo }: RecordLine): string {
  const told = (name: string, { right, wrong }: RecordLine["go"]) =>
    right + wrong === 0 ? [] : [`${name} was right ${right} of ${right + wrong} times`];
  const parts = [...told("go", go), ...told("no-go", noGo)];
  const words = parts.length === 0 ? "only marginal verdicts were answered for" : parts.join(", ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function scoreLines({ score, nightsKnown }: TrackRecord): string[] {
  if (score === null) {
    return nightsKnown === 0
      ? []
      : [
          `Counts alone until ${RECORD_NIGHTS_AT_LEAST} nights with a go or no-go of several models are answered for; then a Brier score.`,
        ];
  }
  const percent = (share: number) => `${Math.round(share * 100)} %`;
  return [
    `Brier score ${score.brier.toFixed(3)}: 0 would be perfect, 0.25 a coin (Brier 1950).`,
    ...score.bins.map(
      ({ nights, meanShare, goodShare }) =>
        `Where ${percent(meanShare)} of the models meant a good sky, it was good on ${percent(goodShare)} of ${nights} nights.`,
    ),
  ];
}
