/**
 * `mydata`: everything kept of a member, to take away or to erase.
 *
 * @packageDocumentation
 */
import type { Answer, Figure } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import type { Command } from "./command.ts";
import type { Context } from "./context.ts";
import { flagOption } from "./read/numbers.ts";
import { defineFlag, defineSubcommand } from "./read/options.ts";
import type { Request } from "./request.ts";

export const mydata: Command = {
  definition: {
    name: "mydata",
    description: "Everything kept of you: take it away, or erase it",
    options: [
      defineSubcommand("export", "All of it as one file"),
      defineSubcommand("erase", "Forget all of it, for good", [
        defineFlag("confirm", "Yes: it cannot be brought back", { required: true }),
      ]),
    ],
    defaultSubcommand: "export",
  },
  audience: "member",

  async answer(request, context) {
    return request.subcommand === "erase" ? erase(request, context) : exported(request, context);
  },
};

async function exported(request: Request, context: Context): Promise<Answer> {
  const everything = await context.books.members.exportAll(request.club, request.member.id);
  const kept = counts(everything);
  return {
    title: "Everything kept of you",
    summary:
      kept.length === 0
        ? "Nothing is kept of you in this club."
        : "The file holds every row kept of you in this club, and nothing is kept elsewhere.",
    sections: kept.length === 0 ? [] : [{ heading: "In it", lines: kept }],
    charts: [],
    cautions: [],
    next: [],
    figures: { data: JSON.parse(JSON.stringify(everything)) as Figure },
    credits: [],
    attachments: [
      {
        name: "mydata.json",
        mediaType: "application/json",
        bytes: new TextEncoder().encode(`${JSON.stringify(everything, null, 2)}\n`),
      },
    ],
  };
}

async function erase(request: Request, context: Context): Promise<Answer> {
  if (!flagOption(request, "confirm")) {
    throw new AskError(
      "not-confirmed",
      "confirm",
      "“confirm” must be yes: erasing forgets your sites, rigs and everything else, and cannot be undone.",
    );
  }
  const before = counts(await context.books.members.exportAll(request.club, request.member.id));
  await context.books.members.eraseAll(request.club, request.member.id);
  return {
    title: "You are forgotten",
    summary:
      before.length === 0
        ? "Nothing was kept of you in this club."
        : "Everything kept of you in this club is erased; copies you took away are yours.",
    sections: before.length === 0 ? [] : [{ heading: "Erased", lines: before }],
    charts: [],
    cautions: [],
    next: [],
    figures: { erased: before },
    credits: [],
  };
}

/** `sites: 2`, a line for each table that holds something. */
function counts(everything: Readonly<Record<string, unknown>>): readonly string[] {
  return Object.entries(everything).flatMap(([name, rows]) => {
    const count = Array.isArray(rows) ? rows.length : 1;
    return count === 0 ? [] : [`${name.replaceAll("_", " ")}: ${count}`];
  });
}
