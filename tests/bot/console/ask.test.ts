import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import { join } from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import { bytesOf, temporaryFolder } from "../store/temporary-folder.ts";
import { askProcess, EVENING, startProcess } from "./asked.ts";

const NIGHT = ["night", "--site", "54.5, -2.6", "--at", EVENING, "--forecast", "none"];

describe("ask", { timeout: 60_000 }, () => {
  it("prints one JSON object and nothing else, and ends with 0", async () => {
    const { code, stdout, stderr } = await askProcess(temporaryFolder(), [...NIGHT, "--json"]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect(stdout.endsWith("\n")).toBe(true);
    expect(stdout.trimEnd()).not.toContain("\n");
    const answer = JSON.parse(stdout);
    expect(Object.keys(answer)).toEqual(
      expect.arrayContaining(["command", "title", "summary", "cautions", "charts", "next", "figures"]),
    );
    expect(answer).toMatchObject({
      command: "night",
      charts: [{ name: "night", path: null }],
      figures: { night: "2026-10-03", site: { latitudeDeg: 54.5, longitudeDeg: -2.6 } },
    });
    for (const { command, options } of answer.next) {
      expect(typeof command).toBe("string");
      expect(typeof options).toBe("object");
    }
  });

  it("draws charts into the folder named, and names their paths", async () => {
    const folder = temporaryFolder();
    const charts = join(folder, "pictures");
    const { stdout } = await askProcess(join(folder, "data"), [...NIGHT, "--json", "--charts", charts]);
    const [chart] = JSON.parse(stdout).charts;
    expect(chart.path).toBe(join(charts, "night.png"));
    // The PNG specification, section 5.2: the eight bytes every file begins with.
    expect(readFileSync(chart.path).subarray(0, 8)).toEqual(Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]));
  });

  it("prints text and says where the chart is, without --json", async () => {
    const folder = temporaryFolder();
    const { code, stdout } = await askProcess(folder, NIGHT);
    expect(code).toBe(0);
    expect(stdout).toContain(join(folder, "charts", "night.png"));
    expect(readdirSync(join(folder, "charts"))).toEqual(["night.png"]);
  });

  it("ends with 2 and one line on standard error for the asker's mistake, and makes no store", async () => {
    const folder = temporaryFolder();
    const { code, stdout, stderr } = await askProcess(folder, ["nihgt", "--json"]);
    expect(code).toBe(2);
    expect(stderr.trimEnd().split("\n")).toHaveLength(1);
    expect(JSON.parse(stdout)).toEqual({ error: { option: null, message: stderr.trim() } });
    expect(readdirSync(folder)).toEqual([]);
  });

  it.each([["help"], ["--help"], ["night", "--help"], ["help", "night"]])(
    "tells how to ask for %s",
    async (...words) => {
      const folder = temporaryFolder();
      const { code, stdout, stderr } = await askProcess(folder, words);
      expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
      expect(stdout).toContain(words.includes("night") ? "--site" : "tonight");
      expect(readdirSync(folder)).toEqual([]);
    },
  );

  it("answers a misplaced --lines in JSON, which it implies", async () => {
    const { code, stdout } = await askProcess(temporaryFolder(), ["night", "--lines"]);
    expect(code).toBe(2);
    expect(JSON.parse(stdout)).toMatchObject({ error: { option: "lines" } });
  });

  it("prints nothing on standard output for a mistake without --json", async () => {
    const { code, stdout, stderr } = await askProcess(temporaryFolder(), ["night", "--site", "91, 0"]);
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).toMatch(/“site” must be from -90 to 90/);
  });

  it("ends with 3 for a store that is no database, and leaves it as it was", async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "duskbell.sqlite"), "words, not a database. ".repeat(300));
    const before = bytesOf(folder);
    const { code, stdout, stderr } = await askProcess(folder, ["site", "list", "--json"]);
    expect(code).toBe(3);
    expect(stderr.trimEnd().split("\n")).toHaveLength(1);
    expect(JSON.parse(stdout)).toEqual({ error: { option: null, message: stderr.trim() } });
    expect(bytesOf(folder)).toEqual(before);
  });

  it("looks up no place with --forecast none", async () => {
    const { code, stderr } = await askProcess(temporaryFolder(), [
      "night",
      "--site",
      "Alston",
      "--forecast",
      "none",
    ]);
    expect(code).toBe(2);
    expect(stderr).toMatch(/no site or place called “Alston”/);
  });

  it("keeps what one process stored for the next", async () => {
    const folder = temporaryFolder();
    const add = ["site", "add", "--name", "High Moor", "--latitude", "54.4962", "--longitude", "-2.6049"];
    expect((await askProcess(folder, add)).code).toBe(0);
    const { stdout } = await askProcess(folder, ["site", "list", "--json"]);
    expect(JSON.parse(stdout).figures.sites).toMatchObject([
      { name: "Fell End", default: true, shared: true },
      { name: "High Moor", latitudeDeg: 54.5, longitudeDeg: -2.6, default: false, shared: false },
    ]);
  });

  it("sets the demo club up once when two processes start on an empty folder", async () => {
    const folder = temporaryFolder();
    const both = await Promise.all([1, 2].map(() => askProcess(folder, ["rig", "list", "--json"])));
    for (const { code, stdout, stderr } of both) {
      expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
      expect(JSON.parse(stdout).figures.rigs).toHaveLength(1);
    }
  });
});

describe("ask --lines", { timeout: 60_000 }, () => {
  const lines = (...questions: readonly unknown[]) =>
    questions.map((one) => (typeof one === "string" ? one : JSON.stringify(one))).join("\n");

  it("answers in order, one object a line, in one process, and ends with 0", async () => {
    const folder = temporaryFolder();
    const input = lines(
      ["site", "list"],
      "",
      ["nihgt"],
      [],
      "not json",
      '{"night": 1}',
      ["night", 3],
      "   ",
      ["night", "--site", "-33.93,18.42"],
      ["site", "add", "--name", "Second", "--latitude", "10", "--longitude", "20"],
      ["site", "list"],
    );
    const { code, stdout, stderr } = await askProcess(
      folder,
      ["--lines", "--at", EVENING, "--forecast", "none"],
      input,
    );
    expect(code).toBe(0);
    const answers = stdout
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line));
    expect(answers.map((answer) => answer.command ?? "error")).toEqual([
      "site",
      "error",
      "error",
      "error",
      "error",
      "error",
      "night",
      "site",
      "site",
    ]);
    expect(answers[6].figures.site.latitudeDeg).toBe(-33.93);
    expect(answers[8].figures.sites).toHaveLength(2);
    for (const { error } of answers.slice(1, 6)) {
      expect(error.option).toBeNull();
      expect(error.message.length).toBeGreaterThan(10);
    }
    expect(stderr.trimEnd().split("\n")).toHaveLength(5);
  });

  it("takes the flags beside it as defaults that a line may override", async () => {
    const input = lines(
      ["night", "--site", "0,0"],
      ["night", "--site", "0,0", "--night", "2026-12-24", "--json"],
      ["site", "list"],
      ["site", "list", "--as", "me"],
    );
    const words = ["--lines", "--night", "2026-11-01", "--as", "wren", "--forecast", "none"];
    const { stdout } = await askProcess(temporaryFolder(), words, input);
    const [first, second, wrens, mine] = stdout
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line).figures);
    expect(first.night).toBe("2026-11-01");
    expect(second.night).toBe("2026-12-24");
    expect(wrens.sites).toMatchObject([{ name: "Fell End", shared: true }]);
    expect(mine.sites).toHaveLength(1);
  });

  it("gives each line's chart a file of its own", async () => {
    const folder = temporaryFolder();
    const charts = join(folder, "charts");
    mkdirSync(charts);
    const input = lines(["night", "--site", "0,0"], ["night", "--site", "10,10"]);
    const words = ["--lines", "--charts", charts, "--at", EVENING, "--forecast", "none"];
    const { stdout } = await askProcess(join(folder, "data"), words, input);
    const paths = stdout
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line).charts[0].path);
    expect(new Set(paths).size).toBe(2);
    expect(readdirSync(charts).sort()).toEqual(["night-2.png", "night.png"]);
  });

  it("refuses a command beside it with 2", async () => {
    const { code, stdout } = await askProcess(temporaryFolder(), ["--lines", "night"], "");
    expect(code).toBe(2);
    expect(JSON.parse(stdout).error.message).toMatch(/beside --lines/);
  });

  it("prints nothing for no input and ends with 0", async () => {
    expect(await askProcess(temporaryFolder(), ["--lines"], "")).toEqual({ code: 0, stdout: "", stderr: "" });
  });
});

describe("the bot without a token", { timeout: 60_000 }, () => {
  it("prints the evening's post without a terminal, says whether it would have gone out, and ends with 0", async () => {
    const { code, stdout, stderr } = await startProcess(temporaryFolder());
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect(stdout).toMatch(/Fell End/);
    expect(stdout).toMatch(/sample/);
    expect(stdout).toMatch(/it would (not )?have been sent/);
  });

  it("waits four seconds in all for services that never answer, then shows the sample", async () => {
    const silent = createServer(() => undefined);
    await new Promise<void>((resolve) => silent.listen(0, "127.0.0.1", resolve));
    onTestFinished(() => {
      silent.closeAllConnections();
      silent.close();
    });
    const address = silent.address();
    const port = typeof address === "object" && address !== null ? address.port : 0;
    const began = performance.now();
    const { code, stdout } = await startProcess(temporaryFolder(), `http://127.0.0.1:${port}`);
    expect(code).toBe(0);
    expect(stdout).toMatch(/sample/);
    expect(performance.now() - began).toBeGreaterThan(4000);
    // One try alone would wait 20 s; starting the program takes the rest.
    expect(performance.now() - began).toBeLessThan(15_000);
  });
});
