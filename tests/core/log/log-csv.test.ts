import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FrameSet, LibrarySet } from "../../../core/log/frame-set.ts";
import { readLogCsv, writeLogCsv } from "../../../core/log/log-csv.ts";
import { processorClock } from "../../processor-clock.ts";

const SUBS: FrameSet = {
  night: "2026-10-03",
  object: "NGC 6888",
  passband: "o-iii",
  frames: 21,
  rejected: 3,
  subSeconds: 180,
  gain: 100,
  iso: null,
  sensorCelsius: -10,
  rotationDeg: 45.5,
  rig: "reflector, 200 mm",
  startedAt: new Date("2026-10-03T21:40:00.250Z"),
};

const name = fc
  .oneof(
    fc.constantFrom(
      "NGC 6888",
      "IC 434",
      '=cmd|"calc"',
      "+1",
      "-x",
      "@sum",
      "'quoted'",
      'a "b" c',
      "a;b,c",
      "−",
    ),
    fc.string({ minLength: 1, maxLength: 20, unit: "grapheme" }),
  )
  // Names in the log are one plain line without spaces at their ends.
  .filter((text) => text === text.trim() && text !== "" && !/[\r\n]/.test(text));
const night = fc.date({ min: new Date("1990-01-01"), max: new Date("2060-01-01"), noInvalidDate: true });
const figure = fc.option(fc.double({ min: -400, max: 400, noNaN: true, noDefaultInfinity: true }));
const settings = { gain: figure, iso: figure, sensorCelsius: figure, rotationDeg: figure };

const frameSet: fc.Arbitrary<FrameSet> = fc.record({
  night: night.map((at) => at.toISOString().slice(0, 10)),
  object: name,
  passband: name,
  frames: fc.integer({ min: 0, max: 20_000 }),
  rejected: fc.integer({ min: 0, max: 20_000 }),
  subSeconds: fc.double({ min: 0.0001, max: 7200, noNaN: true }),
  ...settings,
  rig: fc.option(name),
  startedAt: fc.option(night),
});

const librarySet: fc.Arbitrary<LibrarySet> = fc.record({
  kind: fc.constantFrom("dark" as const, "flat" as const),
  night: night.map((at) => at.toISOString().slice(0, 10)),
  passband: fc.option(name),
  frames: fc.integer({ min: 1, max: 500 }),
  subSeconds: fc.double({ min: 0.0001, max: 7200, noNaN: true }),
  ...settings,
  rig: fc.option(name),
  startedAt: fc.option(night),
});

describe("writeLogCsv", () => {
  it("writes the log's own columns first", () => {
    const [heading, row] = writeLogCsv({ frames: [SUBS], library: [] }).split("\r\n");
    expect(heading).toBe(
      "night,object,passband,frames,sub_seconds,gain,iso,sensor_celsius,rotation_deg,rejected,rig,started,kind",
    );
    expect(row).toBe(
      '2026-10-03,NGC 6888,o-iii,21,180,100,,-10,45.5,3,"reflector, 200 mm",2026-10-03T21:40:00.250Z,light',
    );
  });

  it("leaves nothing that a spreadsheet would run", () => {
    const text = writeLogCsv({ frames: [{ ...SUBS, rig: "=1+1" }], library: [] });
    expect(text).toContain(",'=1+1,");
  });
});

describe("readLogCsv", () => {
  it("gives back every row that was written, to the last digit", () => {
    fc.assert(
      fc.property(
        fc.array(frameSet, { maxLength: 6 }),
        fc.array(librarySet, { maxLength: 4 }),
        (frames, library) => {
          const read = readLogCsv(writeLogCsv({ frames, library }));
          // CSV has one zero.
          const plain = (value: unknown) => JSON.parse(JSON.stringify(value));
          expect(plain(read)).toEqual(
            plain({ kind: "read", table: { frames, library }, unknownColumns: [] }),
          );
        },
      ),
      { numRuns: 300, seed: 3 },
    );
  });

  it("reads the nine columns alone, in any order, also with semicolons and decimal commas", () => {
    const text = "sub_seconds;frames;night;object;passband;sensor_celsius\n90,5;40;2026-10-03;M33;;−9,8\n";
    const read = readLogCsv(`﻿${text}`);
    expect(read).toMatchObject({
      kind: "read",
      table: {
        frames: [
          {
            night: "2026-10-03",
            object: "M33",
            passband: "none",
            frames: 40,
            rejected: 0,
            subSeconds: 90.5,
            sensorCelsius: -9.8,
            gain: null,
            startedAt: null,
          },
        ],
      },
    });
  });

  it("names the columns that it left aside", () => {
    const read = readLogCsv("night,object,frames,sub_seconds,seeing\n2026-10-03,M33,4,60,2.1\n");
    expect(read).toMatchObject({ kind: "read", unknownColumns: ["seeing"] });
  });

  it("keeps a bias set without an exposure", () => {
    const read = readLogCsv("night,frames,gain,kind\n2026-10-03,50,100,bias\n");
    expect(read).toMatchObject({
      kind: "read",
      table: { frames: [], library: [{ kind: "bias", frames: 50, subSeconds: null, gain: 100 }] },
    });
  });

  it("says which columns are missing from what is no log", () => {
    expect(readLogCsv("<script>alert(1)</script>")).toEqual({
      kind: "no-table",
      missingColumns: ["night", "frames"],
    });
    expect(readLogCsv("")).toMatchObject({ kind: "no-table" });
  });

  it.each([
    ["2026-10-03,M33,many,60", 2, "frames", "many"],
    ["yesterday,M33,4,60", 2, "night", "yesterday"],
    ["2025-02-30,M33,4,60", 2, "night", "2025-02-30"],
    ["2025-13-45,M33,4,60", 2, "night", "2025-13-45"],
    ["2026-10-03,,4,60", 2, "object", ""],
    ["2026-10-03,M33,4,", 2, "sub_seconds", ""],
    ["2026-10-03,M33,4,60\n\n2026-10-03,M33,4,1e999x", 4, "sub_seconds", "1e999x"],
  ] as const)("points at the row and column of “%s”", (rows, line, column, text) => {
    const read = readLogCsv(`night,object,frames,sub_seconds\n${rows}\n`);
    expect(read).toEqual({ kind: "bad-row", line, column, text });
  });

  it("reads 20,000 rows in well under a second", () => {
    const text = writeLogCsv({ frames: Array.from({ length: 20_000 }, () => SUBS), library: [] });
    const processorMs = processorClock();
    expect(readLogCsv(text)).toMatchObject({ kind: "read" });
    expect(processorMs()).toBeLessThan(1000);
  });
});
