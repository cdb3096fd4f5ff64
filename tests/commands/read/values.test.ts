import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { AskError } from "../../../commands/ask-error.ts";
import { filterOf, parseFilter } from "../../../commands/read/filter.ts";
import { cleanName, matchKey, nearestNames } from "../../../commands/read/names.ts";
import { parseDate } from "../../../commands/read/night.ts";
import { numberOption, parseInstant, plainNumber } from "../../../commands/read/numbers.ts";
import { parseRigDescription } from "../../../commands/read/rig-description.ts";
import { parseSky } from "../../../commands/read/sky.ts";
import type { OptionValue, Request } from "../../../commands/request.ts";

function request(options: Record<string, OptionValue>): Request {
  return {
    command: "night",
    subcommand: null,
    options,
    member: { id: "me", name: "me", organiser: true },
    club: "fell-end",
    at: new Date("2026-10-03T20:00:00Z"),
  };
}

describe("plainNumber", () => {
  it.each([
    ["12", 12],
    ["-2.6", -2.6],
    ["−2.6", -2.6],
    ["5,6", 5.6],
    [".5", 0.5],
    ["1e3", 1000],
  ])("reads %s", (text, value) => {
    expect(plainNumber(text)).toBe(value);
  });

  it.each(["", "ten", "NaN", "Infinity", "0x10", "1 2", "1,2,3", "--1"])("gives nothing for %j", (text) => {
    expect(plainNumber(text)).toBeNull();
  });
});

describe("numberOption", () => {
  const limits = { min: 1, max: 10, unit: "mm" };

  it("takes both ends of its range and refuses what lies beyond, naming it", () => {
    expect(numberOption(request({ size: 1 }), "size", limits)).toBe(1);
    expect(numberOption(request({ size: 10 }), "size", limits)).toBe(10);
    expect(() => numberOption(request({ size: 10.001 }), "size", limits)).toThrow(
      "10.001 is out of range: “size” must be from 1 to 10 mm.",
    );
    expect(() => numberOption(request({ size: Number.NaN }), "size", limits)).toThrow(/“size”/);
  });

  it("is null when the option was not given", () => {
    expect(numberOption(request({}), "size", limits)).toBeNull();
  });
});

describe("parseInstant", () => {
  it("reads an instant with its offset", () => {
    expect(parseInstant("at", "2026-10-03T22:40+01:00").toISOString()).toBe("2026-10-03T21:40:00.000Z");
    expect(parseInstant("at", "2026-10-03T21:40:05.5Z").toISOString()).toBe("2026-10-03T21:40:05.500Z");
  });

  it.each([
    "2026-10-03",
    "2026-10-03T22:40",
    "2026-02-30T22:40Z",
    "tonight",
    "1850-01-01T00:00Z",
    "2026-10-03T25:00Z",
  ])("refuses %s and names the option", (text) => {
    expect(() => parseInstant("at", text)).toThrow(/“at”/);
  });
});

describe("parseDate", () => {
  it("takes a leap day in a leap year alone", () => {
    expect(parseDate("night", "2028-02-29")).toBe("2028-02-29");
    expect(() => parseDate("night", "2026-02-29")).toThrow(/2026-02-29 does not exist: “night”/);
  });

  it.each(["2026-2-3", "03.10.2026", "today", "2026-10-03T00:00", "20261003"])("refuses %s", (text) => {
    expect(() => parseDate("night", text)).toThrow(/YYYY-MM-DD/);
  });
});

describe("cleanName", () => {
  it("keeps plain words in any script", () => {
    for (const name of ["Fell End", "Wren’s garden", "Ciel étoilé", "天文台", "8-inch f/4"]) {
      expect(cleanName("name", name)).toBe(name.normalize("NFC"));
    }
  });

  it.each([
    "@everyone",
    "<@123456789012345678>",
    "<#1>",
    "a\u0000b",
    "a\nb",
    "a\u202eb",
    "`code`",
    "",
    "   ",
    "12.5, 3",
    "x".repeat(41),
  ])("refuses %j and names the option", (name) => {
    expect(() => cleanName("name", name)).toThrow(/“name” must/);
  });

  it("gives a name that is found again however it is typed", () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[A-Za-z]{1,12}( [A-Za-z]{1,12})?$/), (typed) => {
        const name = cleanName("name", typed);
        for (const other of [name.toUpperCase(), name.replace(" ", "-"), ` ${name} `]) {
          expect(matchKey(other)).toBe(matchKey(name));
        }
      }),
    );
  });
});

describe("nearestNames", () => {
  it("puts the least changed first", () => {
    expect(nearestNames("fel end", ["Garden", "Fell End", "Moor"], 2)[0]).toBe("Fell End");
  });

  it("counts two neighbours swapped as one slip", () => {
    expect(nearestNames("nihgt", ["light", "night"])[0]).toBe("night");
  });
});

describe("parseSky", () => {
  it.each([
    ["bortle 6", { kind: "bortle", class: 6 }],
    ["Bortle6", { kind: "bortle", class: 6 }],
    ["19.8", { kind: "reading", magArcsec2: 19.8 }],
    ["19.8 mag/arcsec²", { kind: "reading", magArcsec2: 19.8 }],
    ["naked-eye 5.5", { kind: "naked-eye", limitMag: 5.5 }],
    ["NELM 5.5", { kind: "naked-eye", limitMag: 5.5 }],
  ])("reads %s", (text, quality) => {
    expect(parseSky("sky", text)).toEqual(quality);
  });

  it.each([
    ["30", /from 14 to 22.5 mag\/arcsec²/],
    ["bortle 10", /from 1 to 9/],
    ["bortle 4.5", /“sky” needs a Bortle class/],
    ["dark", /“sky” needs a Bortle class/],
    ["naked-eye 12", /from 1 to 7 mag/],
    // Schaefer 1990: 7.93 is the limit under no sky at all, and the formula has none beyond it.
    ["naked-eye 7.95", /from 1 to 7 mag/],
  ])("refuses %s", (text, message) => {
    expect(() => parseSky("sky", text)).toThrow(message);
  });
});

describe("parseFilter", () => {
  it.each(["none", "h-alpha", "Ha", "Hα", "H alpha", "[O III]", "oiii", "S2", "h-beta", "luminance", "R"])(
    "knows %s by name",
    (name) => {
      expect(parseFilter(name).bands.length).toBe(name === "none" ? 0 : 1);
    },
  );

  it("reads several bands, each by its line", () => {
    expect(parseFilter("656/7+501/7nm").bands).toEqual([
      { name: "Hα", centreNm: 656, widthNm: 7 },
      { name: "[O III]", centreNm: 501, widthNm: 7 },
    ]);
  });

  it.each([
    ["500/600", /wider|wide/],
    ["656/0", /from 0.1 to 800 nm of width/],
    ["10/3", /from 300 to 1100 nm at the centre/],
    ["656", /centre\/width in nm/],
    ["656/7+", /centre\/width in nm/],
    ["zebra", /The nearest are/],
  ])("refuses %s", (text, message) => {
    expect(() => parseFilter(text)).toThrow(message);
  });

  it("prefers the rig's own filter of that name", () => {
    const rig = parseRigDescription("rig", "400mm f/5.6, 23.5x15.7mm, 3.76um mono");
    if (rig.kind !== "camera") throw new Error("a camera was described");
    const own = { name: "H-alpha", bands: [{ name: "Hα", centreNm: 656.3, widthNm: 3 }], transmission: 0.9 };
    expect(filterOf(request({ filter: "halpha" }), { ...rig, filters: [own] })).toBe(own);
    expect(filterOf(request({ filter: "halpha" }), rig).bands[0]?.widthNm).toBe(7);
  });
});

describe("parseRigDescription", () => {
  it("reads the figures of the reference rig, with the defaults of an unmodified, uncooled colour camera", () => {
    const rig = parseRigDescription("rig", "400mm f/5.6, 23.5x15.7mm, 3.76um");
    expect(rig).toMatchObject({
      kind: "camera",
      focalLengthMm: 400,
      focalRatio: 5.6,
      obstruction: 0,
      throughput: 0.9,
      modified: false,
      guided: false,
      mode: { readNoiseElectrons: 3 },
      sensor: { widthMm: 23.5, heightMm: 15.7, pixelUm: 3.76, darkElectronsPerSecond: 0.3 },
      sensorTemperature: { kind: "above-air", celsius: 10 },
    });
    const assumed = rig.assumptions.join(" ");
    for (const word of ["colour", "unmodified", "uncooled", "Read noise", "Dark current", "unguided"]) {
      expect(assumed).toContain(word);
    }
  });

  it("reads the same in any order and without spaces after commas", () => {
    const { name: _, ...spaced } = parseRigDescription(
      "rig",
      "400mm f/5.6, 23.5x15.7mm, 3.76um, mono, -10C, rn 1.6e, guided",
    );
    const { name: __, ...packed } = parseRigDescription(
      "rig",
      "guided,rn 1.6e,-10C,mono,3.76µm,23.5 × 15.7 mm,f5.6,400 mm",
    );
    expect(packed).toEqual(spaced);
    expect(spaced).toMatchObject({
      guided: true,
      sensorTemperature: { kind: "set", celsius: -10 },
      mode: { readNoiseElectrons: 1.6 },
    });
    expect(spaced.kind === "camera" && spaced.sensor.channels.map(({ name }) => name)).toEqual(["mono"]);
  });

  it("knows a chip by its code", () => {
    expect(parseRigDescription("rig", "800mm f/4 imx 571 mono reflector")).toMatchObject({
      optics: "mirror",
      sensor: { name: "IMX571", pixelUm: 3.76 },
    });
  });

  it("folds a reducer into focal length and ratio", () => {
    expect(parseRigDescription("rig", "500mm f/7 reducer 0.8x APS-C")).toMatchObject({
      focalLengthMm: 400,
      focalRatio: expect.closeTo(5.6, 9),
      reducerFactor: 0.8,
    });
  });

  it("reads a visual rig by its aperture", () => {
    expect(parseRigDescription("rig", "250mm f/4.8 visual 30/68, 12mm/82°")).toEqual({
      kind: "visual",
      name: "250mm f/4.8 visual 30/68, 12mm/82°",
      apertureMm: 250,
      focalLengthMm: 1200,
      mount: "altazimuth",
      eyepieces: [
        { focalLengthMm: 30, apparentFieldDeg: 68 },
        { focalLengthMm: 12, apparentFieldDeg: 82 },
      ],
      assumptions: [],
    });
  });

  it.each([
    ["400mm f/0.1, 23.5x15.7mm, 3.76um", /from 0.7 to 64 as a focal ratio/],
    ["0mm f/5, 23.5x15.7mm, 3.76um", /mm of focal length/],
    ["400mm f/5.6, 23.5x15.7mm, 0um", /from 0.5 to 50 µm/],
    ["400mm f/5.6, 23.5x15.7mm, 1000000um", /from 0.5 to 50 µm/],
    ["400mm f/5.6, 600x500mm, 3.76um", /from 1 to 254 mm of sensor width/],
    ["400mm f/5.6, 23.5x15.7mm, 3.76um, 400C", /from -100 to 60 °C/],
    ["400mm f/5.6, 23.5x15.7mm", /lacks the pixel/],
    ["400mm f/5.6", /lacks the sensor/],
    ["400mm, 23.5x15.7mm, 3.76um", /focal length and ratio/],
    ["400mm f/5.6 IMX571 gain 50", /gain 0, gain 100/],
    ["400mm f/5.6 KAF-8300 colour", /mono sensor alone/],
    ["400mm f/5.6 IMX571 zebra", /“zebra” was not understood/],
  ])("refuses %s", (text, message) => {
    expect(() => parseRigDescription("rig", text)).toThrow(message);
  });

  it("gives a rig or refuses by name, whatever is typed", () => {
    const part = fc.constantFrom(
      "400mm",
      "f/5.6",
      "23.5x15.7mm",
      "3.76um",
      "mono",
      "-10C",
      "visual",
      "IMX571",
      "x",
      "9/9",
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.array(part).map((parts) => parts.join(" ")),
          fc.string(),
        ),
        (text) => {
          try {
            parseRigDescription("rig", text);
          } catch (fault) {
            expect(fault).toBeInstanceOf(AskError);
            expect((fault as AskError).option).toBe("rig");
          }
        },
      ),
    );
  });
});
