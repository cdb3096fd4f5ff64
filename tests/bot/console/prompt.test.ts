import { PassThrough } from "node:stream";
import { describe, expect, it } from "vitest";
import { prompt } from "../../../bot/console/prompt.ts";
import { COMMANDS } from "../../../commands/all.ts";
import { temporaryFolder } from "../store/temporary-folder.ts";
import { worldIn } from "./asked.ts";

/** What a prompt prints when these lines are typed. */
async function typed(...lines: readonly string[]): Promise<string> {
  const folder = temporaryFolder();
  const world = await worldIn(folder);
  const input = new PassThrough();
  const output = new PassThrough();
  let printed = "";
  output.on("data", (chunk) => {
    printed += chunk;
  });
  const ended = prompt({ input, output }, { commands: COMMANDS, world: async () => world }, folder);
  input.end(lines.map((line) => `${line}\n`).join(""));
  await ended;
  return printed;
}

describe("prompt", () => {
  it("answers questions until quit, and nothing after it", async () => {
    const printed = await typed("site list", "quit", "rig list");
    expect(printed).toContain("Fell End, your default");
    expect(printed).not.toContain("Eight-inch");
  });

  it("goes on after a mistake", async () => {
    const printed = await typed("nihgt", "target --target", 'site add --name "x', "site list");
    expect(printed).toMatch(/no command “nihgt”/);
    expect(printed).toMatch(/“target” needs a value/);
    expect(printed).toContain("Fell End, your default");
  });

  it("suggests questions as they are typed here", async () => {
    const printed = await typed('site add --name "High Moor" --latitude 54.6 --longitude -2.5');
    expect(printed).toContain('The night there: night --site "High Moor"');
  });

  it("lists what can be asked, and a command's options", async () => {
    const printed = await typed("help", "help site", "help nihgt", "night --help");
    for (const { definition } of COMMANDS) expect(printed).toContain(definition.description.slice(0, 30));
    expect(printed).toContain("--latitude");
    expect(printed).toMatch(/“nihgt”. The nearest are: night/);
  });

  it("ends with its input", async () => {
    expect(await typed()).toContain("duskbell>");
  });
});
