/**
 * Renews what the README shows of real answers: its pictures and its tables of first choices.
 *
 * Run by `npm run readme`. Everything is the demo club's, under the sample forecast.
 *
 * @packageDocumentation
 */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { drawChart } from "../../bot/charts/draw.ts";
import { parseQuestion } from "../../bot/console/command-line.ts";
import { NO_FLAGS } from "../../bot/console/flags.ts";
import { readSentFile } from "../../bot/console/sent-file.ts";
import { openConsoleWorld } from "../../bot/demo-club.ts";
import { NO_PLACES } from "../../bot/forecast/geocoding.ts";
import { sampleForecasts } from "../../bot/forecast/sample-forecasts.ts";
import { NO_FORECASTS } from "../../bot/forecast/saved-files.ts";
import { COMMANDS } from "../../commands/all.ts";
import type { Answer } from "../../commands/answer.ts";
import type { Forecasts } from "../../commands/context.ts";
import { DEMO_CLUB } from "../demo-club.ts";
import { readSettings } from "../settings.ts";

const README = join(import.meta.dirname, "../../README.md");
const PICTURES = join(import.meta.dirname, "../pictures");

/** A question, and which of its charts the README shows under which name. */
const PICTURED: readonly {
  readonly file: string;
  readonly at: string;
  readonly words: readonly string[];
  readonly chart: string;
}[] = [
  { file: "tonight", at: "2026-10-10T17:00:00Z", words: ["tonight"], chart: "night" },
  { file: "framing", at: "2026-12-10T19:00:00Z", words: ["framing", "--target", "IC 434"], chart: "framing" },
  { file: "mosaic", at: "2026-09-10T19:00:00Z", words: ["framing", "--target", "Veil"], chart: "framing" },
  {
    file: "exposure",
    at: "2026-10-10T17:00:00Z",
    words: ["exposure", "--target", "NGC 6888", "--filter", "656/7"],
    chart: "sub-length",
  },
  { file: "pole", at: "2026-10-10T20:00:00Z", words: ["align", "--target", "NGC 6888"], chart: "pole" },
  { file: "season", at: "2026-10-10T17:00:00Z", words: ["season", "--target", "M33"], chart: "season" },
  { file: "moon", at: "2026-10-18T19:00:00Z", words: ["moon"], chart: "moon" },
  { file: "jupiter", at: "2026-12-10T23:00:00Z", words: ["planets"], chart: "jupiter" },
  {
    file: "outreach",
    at: "2026-10-10T12:00:00Z",
    words: ["outreach", "dates", "--nights", "26"],
    chart: "outreach-strip",
  },
];

const RIGS = [
  ["135 mm f/2.8, colour", "135mm f/2.8, 23.5x15.7mm, 3.76um colour modified", "none"],
  ["800 mm f/4, mono, Hα 7 nm", "800mm f/4, 23.5x15.7mm, 3.76um mono -10C guided", "656/7"],
  ["250 mm reflector by eye", "250mm f/4.8 visual", "none"],
] as const;
const SITES = [
  ["54° north", "54.5, -2.6"],
  ["34° south", "-34, 19"],
] as const;
const SEASONS = [
  ["January", "2026-01-16"],
  ["April", "2026-04-15"],
  ["July", "2026-07-14"],
  ["October", "2026-10-11"],
] as const;

async function main(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "readme-"));
  const world = await openConsoleWorld(readSettings({ DUSKBELL_DATA: folder }));

  const ask = (words: readonly string[], at: string, forecasts: Forecasts): Promise<Answer> => {
    const asked = parseQuestion(words, { commands: COMMANDS, readFile: readSentFile }, NO_FLAGS);
    const { command, subcommand, options } = asked;
    const request = {
      command: command.definition.name,
      subcommand,
      options,
      member: { id: "me", name: "me", organiser: true },
      club: DEMO_CLUB.id,
      at: new Date(at),
    };
    return command.answer(request, world.context({ forecasts, places: NO_PLACES }));
  };

  mkdirSync(PICTURES, { recursive: true });
  for (const { file, at, words, chart: name } of PICTURED) {
    const { charts } = await ask(words, at, sampleForecasts());
    const chart = charts.find((each) => each.name === name || each.kind === name);
    if (chart === undefined) throw new Error(`${words.join(" ")} has no chart called ${name}`);
    writeFileSync(join(PICTURES, `${file}.png`), await drawChart(chart));
  }

  const tables: string[] = [];
  for (const [rigName, rig, filter] of RIGS) {
    tables.push(
      `**${rigName}**`,
      "",
      `| | ${SITES.map(([name]) => name).join(" | ")} |`,
      "| --- | --- | --- |",
    );
    for (const [season, date] of SEASONS) {
      const cells: string[] = [];
      for (const [, site] of SITES) {
        const words = [
          "tonight",
          "--site",
          site,
          "--night",
          date,
          "--rig",
          rig,
          "--filter",
          filter,
          "--sky",
          "20.8",
        ];
        const { figures } = await ask(words, `${date}T12:00:00Z`, NO_FORECASTS);
        const targets = figures.targets as readonly { readonly object: Named }[];
        cells.push(targets.map(({ object }) => shownName(object)).join(", "));
      }
      tables.push(`| ${season} | ${cells.join(" | ")} |`);
    }
    tables.push("");
  }
  const readme = readFileSync(README, "utf8");
  const [before, , after] = readme.split(/<!-- first choices: (?:begin|end) -->/);
  if (before === undefined || after === undefined) throw new Error("the README has lost its marks");
  const marked = `<!-- first choices: begin -->\n${tables.join("\n")}<!-- first choices: end -->`;
  writeFileSync(README, `${before}${marked}${after}`);
  await world.close();
  rmSync(folder, { recursive: true, force: true });
}

type Named = { readonly id: string; readonly name: string | null };

/** The name people use, with its designation where it is not in it. */
function shownName({ id, name }: Named): string {
  return name === null || name === id ? id : `${id} ${name}`;
}

await main();
