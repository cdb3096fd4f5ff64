import { cpSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type APIApplicationCommandBasicOption, ApplicationCommandOptionType } from "discord-api-types/v10";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isBasic, subcommandsOf } from "../../../bot/console/command-line.ts";
import { openConsoleWorld } from "../../../bot/demo-club.ts";
import type { World } from "../../../bot/world.ts";
import { COMMANDS } from "../../../commands/all.ts";
import { readSettings } from "../../../config/settings.ts";
import { temporaryFolder } from "../store/temporary-folder.ts";
import { askIn, EVENING } from "./asked.ts";

/** Tries of each option; more of them by hand: FUZZ_TRIES=200. */
const TRIES = Number(process.env.FUZZ_TRIES ?? 8);
const TIME_LIMIT_MS = 120_000 * Math.max(1, TRIES / 8);

/** Words that satisfy an option, so that another one beside it is what is tried. */
const FITTING: Readonly<Record<string, string>> = {
  site: "Fell End",
  rig: "Eight-inch",
  target: "M33",
  name: "Trial",
  filter: "Hα",
  night: "2026-10-03",
  latitude: "10",
  longitude: "20",
  "focal-length": "400",
  "f-ratio": "5.6",
  sensor: "IMX571",
  profile: "0:10, 180:20",
  confirm: "yes",
};

/** What people, telephones, spreadsheets and the ill-willed put into a field. */
const NASTY = [
  "",
  " ",
  "-",
  "--",
  "--json",
  "0",
  "-0",
  "-1",
  "1e308",
  "-1e309",
  "1e-320",
  "999999999999999999999",
  "NaN",
  "Infinity",
  "0x1F",
  "1,5",
  "1,2,3,4,5",
  "91, 0",
  "90,180",
  "-90,-180",
  "89.999 179.999 8000",
  "2026-02-30",
  "2026-10-03",
  "1900-01-01",
  "2100-12-31",
  "9999-12-31",
  "2026-10-03T22:40+01:00",
  "@everyone",
  "<@123456789012345678>",
  "../../../etc/passwd",
  "'; drop table sites; --",
  "__proto__",
  "constructor",
  "toString",
  "null",
  "undefined",
  "[]",
  '{"a":1}',
  "\u0000",
  "a\nb\rc",
  "\u202Eright to left",
  "👩‍🚀🔭",
  "𝕄𝟛𝟛",
  "M33",
  "Sun",
  "Moon",
  "01h34m +30d40m",
  "23.46 30.66",
  "none",
  "656/7+501/7",
  "656/7".repeat(300),
  "bortle 6",
  "19.8",
  "0:12, 90:30",
  "400mm f/5.6, 23.5x15.7mm, 3.76um",
  "250mm f/4.8 visual",
  "9".repeat(5000),
  "x".repeat(7000),
];

const anyWord = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...NASTY) },
  { weight: 1, arbitrary: fc.string({ unit: "binary", maxLength: 60 }) },
  { weight: 1, arbitrary: fc.double().map(String) },
  { weight: 1, arbitrary: fc.integer().map(String) },
  { weight: 1, arbitrary: fc.date({ noInvalidDate: true }).map((date) => date.toISOString().slice(0, 10)) },
);

type Trial = {
  readonly title: string;
  readonly words: readonly string[];
  readonly options: readonly APIApplicationCommandBasicOption[];
};

/** Every command, each of its subcommands apart, with its options as the definitions say. */
const TRIALS: readonly Trial[] = COMMANDS.flatMap((command) => {
  const { name, options } = command.definition;
  const subcommands = subcommandsOf(command);
  if (subcommands.length === 0)
    return [{ title: `/${name}`, words: [name], options: options.filter(isBasic) }];
  return subcommands.map((subcommand) => ({
    title: `/${name} ${subcommand.name}`,
    words: [name, subcommand.name],
    options: subcommand.options ?? [],
  }));
});

function fitting(option: APIApplicationCommandBasicOption): string {
  const [choice] = "choices" in option ? (option.choices ?? []) : [];
  if (choice !== undefined) return String(choice.value);
  return FITTING[option.name] ?? (option.type === ApplicationCommandOptionType.String ? "Trial" : "1");
}

/** A world on a copy of one store, so that no trial suffers from what another stored. */
async function freshWorld(template: string): Promise<World> {
  const folder = temporaryFolder();
  cpSync(template, folder, { recursive: true });
  return openConsoleWorld(readSettings({ DUSKBELL_DATA: folder }), { clock: () => new Date(EVENING) });
}

async function stored(world: World): Promise<string> {
  const tables = await world.store.db.introspection.getTables();
  const rows = [];
  for (const { name } of tables) {
    rows.push([
      name,
      await world.store.db
        .selectFrom(name as "sites")
        .selectAll()
        .execute(),
    ]);
  }
  return JSON.stringify(rows);
}

describe("every option of every command", () => {
  it.each(TRIALS.map((trial) => [trial.title, trial] as const))(
    "of %s is answered or refused by name, and a refusal stores nothing",
    { timeout: TIME_LIMIT_MS },
    async (_, { words, options }) => {
      const template = temporaryFolder();
      await (await openConsoleWorld(readSettings({ DUSKBELL_DATA: template }))).close();
      const file = join(template, "sent");
      const world = await freshWorld(template);
      try {
        for (const option of options) {
          const isFile = option.type === ApplicationCommandOptionType.Attachment;
          await fc.assert(
            fc.asyncProperty(isFile ? fc.uint8Array({ maxLength: 9000 }) : anyWord, async (value) => {
              if (typeof value !== "string") writeFileSync(file, value);
              const beside = options
                .filter((other) => other.required && other.name !== option.name)
                .flatMap((other) => [`--${other.name}`, fitting(other)]);
              const tried = [`--${option.name}`, typeof value === "string" ? value : file];
              const before = await stored(world);
              const outcome = await askIn(world, [...words, ...beside, ...tried]);
              if (outcome.kind === "failed") throw outcome.fault;
              if (outcome.kind === "answered") {
                expect(() => JSON.stringify(outcome.answer.figures)).not.toThrow();
                expect(outcome.answer.title).not.toBe("");
                return;
              }
              expect(outcome.message).toMatch(/\S.{8,}/);
              expect(outcome.message).not.toMatch(/\p{Cc}/u);
              expect(outcome.message.length).toBeLessThan(400);
              expect(await stored(world)).toBe(before);
            }),
            { numRuns: TRIES },
          );
        }
      } finally {
        await world.close();
      }
    },
  );
});

describe("the definitions", () => {
  it("give every command at least one trial", () => {
    expect(new Set(TRIALS.map(({ words }) => words[0]))).toEqual(
      new Set(COMMANDS.map(({ definition }) => definition.name)),
    );
  });
});
