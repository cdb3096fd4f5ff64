/**
 * The bot without Discord: tonight's evening post of the demo club, then questions.
 *
 * @packageDocumentation
 */
import { join } from "node:path";
import { COMMANDS } from "../../commands/all.ts";
import type { Answer } from "../../commands/answer.ts";
import type { PostOn } from "../../commands/books.ts";
import type { Forecasts } from "../../commands/context.ts";
import { type EveningPost, eveningPost } from "../../commands/evening-post.ts";
import { DEMO_CLUB } from "../../config/demo-club.ts";
import type { Settings } from "../../config/settings.ts";
import { openConsoleWorld } from "../demo-club.ts";
import type { World } from "../world.ts";
import { textWidth } from "./answer-text.ts";
import { prompt } from "./prompt.ts";
import { OutputFolder } from "./saved-files.ts";
import { shownAnswer } from "./show.ts";
import { wrap } from "./wrap.ts";

/** How long the first post waits for live weather, milliseconds in all. */
const LIVE_WEATHER_MS = 4000;

/** Which verdicts a club's setting lets through. */
const POSTED: Readonly<Record<PostOn, readonly EveningPost["verdict"][]>> = {
  go: ["go"],
  marginal: ["go", "marginal"],
  "every-night": ["go", "marginal", "no-go"],
};

/** Prints the post, and on a terminal answers questions until `quit`. */
export async function startConsole(settings: Settings): Promise<void> {
  const world = await openConsoleWorld(settings, { weatherBudgetMs: LIVE_WEATHER_MS });
  try {
    const charts = join(settings.dataFolder, "charts");
    const columns = textWidth(process.stdout.columns);
    const { answer, sending } = await firstPost(world);
    const style = { columns, before: process.stdin.isTTY ? "" : "npm run --silent ask -- " };
    process.stdout.write(await shownAnswer(answer, new OutputFolder(charts, new Set()), style));
    process.stdout.write(`\n${wrap(sending, columns).join("\n")}\n`);
    if (!process.stdin.isTTY) return;
    process.stdout.write(
      `\n${wrap("Ask on, such as “tonight --limit 5” or “target --target M33”; “help” lists what can be asked, “quit” ends.", columns).join("\n")}\n`,
    );
    const door = { commands: COMMANDS, world: async () => world };
    await prompt({ input: process.stdin, output: process.stdout }, door, charts);
  } finally {
    await world.close();
  }
}

/** Tonight's post of the demo club, and a sentence on whether it would have gone out. */
async function firstPost(world: World): Promise<{ readonly answer: Answer; readonly sending: string }> {
  const { liveOrSample, sampleForecasts } = await import("../forecast/sample-forecasts.ts");
  const live = world.context();
  const forecasts = liveOrSample(withinMs(live.forecasts, LIVE_WEATHER_MS), sampleForecasts());
  const context = world.context({ forecasts, places: live.places });
  const request = {
    command: "tonight",
    subcommand: null,
    options: {},
    member: { id: "me", name: "me", organiser: true },
    club: DEMO_CLUB.id,
    at: world.clock(),
  };
  const { answer, verdict } = await eveningPost(request, context);
  const { postOn } = await context.books.clubs.settings(DEMO_CLUB.id);
  const sent = verdict !== null && POSTED[postOn].includes(verdict);
  const what = verdict === null ? "there is no verdict" : `tonight is ${verdict}`;
  return {
    answer,
    sending: sent
      ? `The club's evening post: it would have been sent, as ${what}.`
      : `The club's evening post: it would not have been sent, as ${what}; it is shown all the same.`,
  };
}

/** The forecasts as they are until so many milliseconds from now; nothing known afterwards. */
function withinMs(forecasts: Forecasts, budgetMs: number): Forecasts {
  const late = new Promise<{ models: []; credits: []; problems: [string] }>((resolve) => {
    setTimeout(
      () => resolve({ models: [], credits: [], problems: ["The weather services did not answer in time."] }),
      budgetMs,
    ).unref();
  });
  return { at: (place, from) => Promise.race([forecasts.at(place, from), late]) };
}
