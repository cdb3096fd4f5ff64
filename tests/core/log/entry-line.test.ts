import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { PASSBANDS } from "../../../config/passbands.ts";
import { type LineEntry, readEntryLine } from "../../../core/log/entry-line.ts";
import { processorClock } from "../../processor-clock.ts";

const read = (line: string, filters: readonly string[] = []) => readEntryLine(line, filters, PASSBANDS);

const BLANK: LineEntry = {
  object: null,
  passband: null,
  frames: 0,
  rejected: 0,
  subSeconds: 0,
  gain: null,
  iso: null,
  sensorCelsius: null,
  rotationDeg: null,
  night: null,
  clock: null,
  ignored: [],
};

/** Fifty lines as people type them, each with what its writer meant. */
const LINES: readonly (readonly [string, Partial<LineEntry>])[] = [
  [
    "NGC 6888 24x180 oiii gain100 -10C",
    { object: "NGC 6888", frames: 24, subSeconds: 180, passband: "o-iii", gain: 100, sensorCelsius: -10 },
  ],
  ["M 31 20 x 3min", { object: "M 31", frames: 20, subSeconds: 180 }],
  [
    "IC1396 30x5min Ha ISO800",
    { object: "IC1396", frames: 30, subSeconds: 300, passband: "h-alpha", iso: 800 },
  ],
  [
    "ngc6888 24 × 180s O3 gain 100 −10 °C",
    { object: "ngc6888", frames: 24, subSeconds: 180, passband: "o-iii", gain: 100, sensorCelsius: -10 },
  ],
  ["M42 1,5min x 40 subs L", { object: "M42", frames: 40, subSeconds: 90, passband: "luminance" }],
  ["24x180 of NGC 6888 in OIII", { object: "NGC 6888", frames: 24, subSeconds: 180, passband: "o-iii" }],
  ["M33: 40 subs of 120 sec, iso 1600", { object: "M33", frames: 40, subSeconds: 120, iso: 1600 }],
  [
    "M27 20x300s Ha bin 1x1 offset 50",
    { object: "M27", frames: 20, subSeconds: 300, passband: "h-alpha", ignored: ["bin 1x1", "offset 50"] },
  ],
  [
    "last night M27 2h in 300s subs Hα",
    {
      object: "M27",
      frames: 24,
      subSeconds: 300,
      passband: "h-alpha",
      night: { kind: "nights-ago", count: 1 },
    },
  ],
  [
    "2026-10-03 M27 30x60",
    { object: "M27", frames: 30, subSeconds: 60, night: { kind: "date", date: "2026-10-03" } },
  ],
  [
    "3.10.2026 M27 30x60s",
    { object: "M27", frames: 30, subSeconds: 60, night: { kind: "date", date: "2026-10-03" } },
  ],
  [
    "kept 20 of 24, NGC 6888 300s ha",
    { object: "NGC 6888", frames: 20, rejected: 4, subSeconds: 300, passband: "h-alpha" },
  ],
  ["20/24x180 M33 R", { object: "M33", frames: 20, rejected: 4, subSeconds: 180, passband: "red" }],
  ["M33 24 frames, 3 rejected, 180s each", { object: "M33", frames: 21, rejected: 3, subSeconds: 180 }],
  ["M31,20x60,L", { object: "M31", frames: 20, subSeconds: 60, passband: "luminance" }],
  [
    "NGC 6888,24x180,oiii,gain100,-10C",
    { object: "NGC 6888", frames: 24, subSeconds: 180, passband: "o-iii", gain: 100, sensorCelsius: -10 },
  ],
  ["Blue Snowball 24x180 oiii", { object: "Blue Snowball", frames: 24, subSeconds: 180, passband: "o-iii" }],
  ["B 33 20x120 Ha", { object: "B 33", frames: 20, subSeconds: 120, passband: "h-alpha" }],
  ["M33 G 20x60", { object: "M33", frames: 20, subSeconds: 60, passband: "green" }],
  ["M33 20x60 g120 G", { object: "M33", frames: 20, subSeconds: 60, gain: 120, passband: "green" }],
  ["180s x 24 m33 lum", { object: "m33", frames: 24, subSeconds: 180, passband: "luminance" }],
  ["20x180 m 31", { object: "m 31", frames: 20, subSeconds: 180 }],
  ["20x5m 3 rejected M31", { object: "M31", frames: 17, rejected: 3, subSeconds: 300 }],
  ["Moon 100x1/60s no filter", { object: "Moon", frames: 100, subSeconds: 1 / 60, passband: "none" }],
  ["24x180 m33 -10", { object: "m33", frames: 24, subSeconds: 180, sensorCelsius: -10 }],
  ["24x180 M33 -10°", { object: "M33", frames: 24, subSeconds: 180, sensorCelsius: -10 }],
  [
    "Veil 12x10min [O III] 7nm rot 45° 22:40-00:40",
    {
      object: "Veil",
      frames: 12,
      subSeconds: 600,
      passband: "o-iii",
      rotationDeg: 45,
      clock: "22:40",
      ignored: ["7nm"],
    },
  ],
  ["m31 36x1m30s iso800 at 18C", { object: "m31", frames: 36, subSeconds: 90, iso: 800, sensorCelsius: 18 }],
  [
    "NGC 7000 24x180,3 rejected Ha",
    { object: "NGC 7000", frames: 21, rejected: 3, subSeconds: 180, passband: "h-alpha" },
  ],
  ["M33 10 of 12 x 300s", { object: "M33", frames: 10, rejected: 2, subSeconds: 300 }],
  ["24 of 180s M33 B", { object: "M33", frames: 24, subSeconds: 180, passband: "blue" }],
  [
    "NGC 281 2,5 min x 30 H-alpha G100 −9,8 °C",
    { object: "NGC 281", frames: 30, subSeconds: 150, passband: "h-alpha", gain: 100, sensorCelsius: -9.8 },
  ],
  [
    "Abell 39 20 frames of 300 s OIII",
    { object: "Abell 39", frames: 20, subSeconds: 300, passband: "o-iii" },
  ],
  [
    "24X180 SII gain=200 temp -5",
    { frames: 24, subSeconds: 180, passband: "s-ii", gain: 200, sensorCelsius: -5 },
  ],
  ["30 lights 2 minutes M13", { object: "M13", frames: 30, subSeconds: 120 }],
  ["M13 30 pics of 30s unfiltered", { object: "M13", frames: 30, subSeconds: 30, passband: "none" }],
  [
    "IC 434 40x240s S-II gain:100 at -10 deg c 2 thrown out",
    {
      object: "IC 434",
      frames: 38,
      rejected: 2,
      subSeconds: 240,
      passband: "s-ii",
      gain: 100,
      sensorCelsius: -10,
    },
  ],
  ['M45 60x60" ISO-1600 18 °C', { object: "M45", frames: 60, subSeconds: 60, iso: 1600, sensorCelsius: 18 }],
  [
    "heart nebula 12x5' h alpha",
    { object: "heart nebula", frames: 12, subSeconds: 300, passband: "h-alpha" },
  ],
  [
    "Sh2-101 18 * 300 s, Ha, gain 100, cooled to -15",
    { object: "Sh2-101", frames: 18, subSeconds: 300, passband: "h-alpha", gain: 100, sensorCelsius: -15 },
  ],
  ["vdB 14 40x120 RGB", { object: "vdB 14", frames: 40, subSeconds: 120, passband: "none" }],
  [
    "NGC 891 5min subs, 22 frames, lum, minus 20C",
    { object: "NGC 891", frames: 22, subSeconds: 300, passband: "luminance", sensorCelsius: -20 },
  ],
  [
    "m101 45x180 (2.25h) L",
    { object: "m101", frames: 45, subSeconds: 180, passband: "luminance", ignored: ["(2.25h)"] },
  ],
  [
    "m101 45x180 = 2h15m total, none rejected",
    { object: "m101", frames: 45, rejected: 0, subSeconds: 180, ignored: ["= 2h15m total"] },
  ],
  [
    "today m57 30x20s iso 3200 pa 12",
    {
      object: "m57",
      frames: 30,
      subSeconds: 20,
      iso: 3200,
      rotationDeg: 12,
      night: { kind: "nights-ago", count: 0 },
    },
  ],
  [
    "NGC 2244 24x300 Ha 7 nm rejected 5 subs",
    { object: "NGC 2244", frames: 19, rejected: 5, subSeconds: 300, passband: "h-alpha", ignored: ["7 nm"] },
  ],
  [
    "M81 with the red filter 20x120s gain 0 0C",
    { object: "M81", frames: 20, subSeconds: 120, passband: "red", gain: 0, sensorCelsius: 0 },
  ],
  ["01h34m +30d40m 20x120", { object: "01h34m +30d40m", frames: 20, subSeconds: 120 }],
  ["C/2023 A3 90x30s iso 1600", { object: "C/2023 A3", frames: 90, subSeconds: 30, iso: 1600 }],
  [
    "M 16 21 good 24x180 sho-ha",
    { object: "M 16", frames: 21, rejected: 3, subSeconds: 180, passband: "sho ha" },
  ],
];

describe("readEntryLine", () => {
  it("is asked about fifty lines", () => {
    expect(LINES).toHaveLength(50);
  });

  it.each(LINES)("reads “%s”", (line, meant) => {
    expect(read(line, ["sho ha"])).toEqual({ kind: "read", entry: { ...BLANK, ...meant } });
  });

  it("takes the rig's own filter before a common name", () => {
    const line = read("M27 20x60 Ha 3", ["Ha 3", "h-alpha"]);
    expect(line).toEqual({
      kind: "read",
      entry: { ...BLANK, object: "M27", frames: 20, subSeconds: 60, passband: "Ha 3" },
    });
  });

  it("keeps impossible figures for the limits to refuse", () => {
    expect(read("24x180 m33 400C")).toMatchObject({ kind: "read", entry: { sensorCelsius: 400 } });
    expect(read("m33 1000000000x180")).toMatchObject({ kind: "read", entry: { frames: 1e9 } });
  });

  it.each([
    ["m33", "no-frames", "m33"],
    ["hello there", "no-frames", "hello there"],
    ["M33 24x180 20x60", "left-over", "M33 … 20x60"],
    ["M33 24x180 first light", "left-over", "M33 … first light"],
    ["M33 24x180 10°", "left-over", "M33 … 10°"],
    ["M33 14F 24x180 and clouds later", "left-over", "M33 14F … and clouds later"],
    ["M31 24x180 kept 30", "kept-exceeds-shot", "M31"],
  ] as const)("gives back “%s” unread", (line, problem, left) => {
    expect(read(line)).toMatchObject({ kind: "unread", problem, left });
  });

  it("says what it understood of a line it cannot read", () => {
    expect(read("M33 24x180 oiii first light")).toMatchObject({
      kind: "unread",
      understood: ["24x180", "oiii"],
    });
  });

  it("survives any line within a second", () => {
    const pieces = fc.array(
      fc.oneof(
        fc.constantFrom(
          "24x180",
          "x",
          "1/",
          "kept",
          "of",
          "rejected",
          "-",
          "°",
          "C",
          "gain",
          "iso",
          "m",
          "|",
        ),
        fc.constantFrom(
          "O III",
          "[",
          "]",
          "(",
          "subs",
          "1e9",
          "99999999999",
          "=",
          ",",
          "2026-10-03",
          "22:40",
        ),
        fc.string({ maxLength: 12 }),
        fc.integer({ min: 0, max: 99_999 }).map(String),
      ),
      { maxLength: 40 },
    );
    fc.assert(
      fc.property(pieces, (words) => {
        const processorMs = processorClock();
        const reading = read(words.join(" ").slice(0, 200));
        expect(processorMs()).toBeLessThan(1000);
        if (reading.kind === "read") {
          expect(reading.entry.frames).toBeGreaterThanOrEqual(0);
          expect(reading.entry.rejected).toBeGreaterThanOrEqual(0);
        }
      }),
      { numRuns: 400, seed: 11 },
    );
  });
});
