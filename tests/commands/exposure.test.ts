import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CurveChart, SubLengthChart } from "../../commands/chart.ts";
import { exposure } from "../../commands/exposure.ts";
import { answerTo, describedRig, type Options, refusalOf, rigRoom, SITE } from "./rig-room.ts";

type Figures = Record<string, number> & {
  limitedBy: string;
  channel: string;
  signalToNoise: { perPixel: number; perPatch: number; hoursToWanted: number } | null;
  bands: (Record<string, number> & { name: string; channels: string[] })[];
  assumptions: string[];
};

const figuresOf = async (options: Options, room = rigRoom(), at?: string) =>
  (await answerTo(exposure, options, room, at)).figures as unknown as Figures;

/** All the words of an answer, for what they must name. */
const wordsOf = async (options: Options, room = rigRoom()) => {
  const answer = await answerTo(exposure, options, room);
  return [answer.summary, ...answer.sections.flatMap(({ lines }) => lines)].join("\n");
};

/** Vector A's rig, described; no target, so that the zenith without Moon is meant. */
const WORKED_EXAMPLE = {
  rig: "400mm f/5.6, 23.5x15.7mm, 3.76um colour modified guided",
  filter: "656.3/7",
  sky: "19.0",
  "sensor-temp": 35,
};

const within = (actual: number | undefined, expected: number, share: number) => {
  expect(Math.abs((actual ?? Number.NaN) / expected - 1)).toBeLessThan(share);
};

describe("/exposure", () => {
  // Worked by hand from the zero point of M. S. Bessell 1979 and the CCD equation; stated to 1 %.
  it("gives the worked example: 0.06079 e/s of sky, 0.9524 of dark current, 86.7 s, by sky alone 1444 s", async () => {
    const figures = await figuresOf(WORKED_EXAMPLE);
    within(figures.skyElectronsPerPixelPerSecond, 0.06079, 0.01);
    within(figures.darkElectronsPerPixelPerSecond, 0.9524, 0.01);
    within(figures.shortestSubSeconds, 86.7, 0.01);
    within(figures.shortestBySkySeconds, 1444, 0.01);
    expect(figures.subSeconds).toBe(90);
    expect(figures.limitedBy).toBe("dark");
  });

  it("lets the shortest sub follow from the printed figures and the share", async () => {
    for (const share of [2, 5, 10]) {
      const figures = await figuresOf({ target: "NGC 6888", filter: "Hα", share });
      const background =
        (figures.skyElectronsPerPixelPerSecond ?? 0) + (figures.darkElectronsPerPixelPerSecond ?? 0);
      const expected = (figures.readNoiseElectrons ?? 0) ** 2 / (background * ((1 + share / 100) ** 2 - 1));
      within(figures.shortestSubSeconds, expected, 1e-9);
    }
    expect((await figuresOf({ ...WORKED_EXAMPLE, share: 0.05 })).readNoiseShare).toBe(0.05);
  });

  // Common practice: download 2 s, dither every 3 subs, settling 15 s.
  it("assumes no temperature that was given, and names the read noise of the setting asked for", async () => {
    const { assumptions } = await figuresOf({ ...WORKED_EXAMPLE, gain: "ISO 200" });
    const said = assumptions.join(" ");
    expect(said).not.toMatch(/uncooled|ISO 800/);
    expect(said).toMatch(/Read noise is taken as 4.5 e \(ISO 200\)/);
    expect((await figuresOf({ rig: WORKED_EXAMPLE.rig })).assumptions.join(" ")).toMatch(
      /uncooled.*10 °C above/,
    );
  });

  it("counts subs into the hours at hand", async () => {
    const figures = await figuresOf({ ...WORKED_EXAMPLE, hours: 3, sub: 300 });
    expect(figures.subCount).toBe(Math.floor(10_800 / 307));
    expect(figures.totalSeconds).toBe(35 * 300);
    expect(figures.elapsedSeconds).toBe(35 * 307);
  });

  it("works for the target's own window and says when", async () => {
    const answer = await answerTo(exposure, { target: "NGC 6888", filter: "Hα" });
    expect(answer.summary).toMatch(/^Take \d+ subs of .* from \d\d:\d\d to \d\d:\d\d/);
    expect(answer.figures.windows).toHaveLength(1);
    expect(answer.figures.airmass).toBeGreaterThan(1);
  });

  it("gives plainly different limits to a cooled f/2 mono, an unmodified camera and an f/10", async () => {
    const limit = async (rig: string, filter: string) =>
      (await figuresOf({ rig, filter, sky: "20", "sensor-temp": rig.includes("mono") ? -10 : 25 })).limitedBy;
    expect(await limit("400mm f/2, 23.5x15.7mm, 3.76um mono rn 1.6e guided", "656.3/3")).toBe("sky");
    expect(await limit("400mm f/5.6, 23.5x15.7mm, 3.76um colour guided", "656.3/7")).toBe("dark");
    expect(await limit("2000mm f/10, 23.5x15.7mm, 3.76um mono rn 3e guided", "656.3/3")).toBe("tracking");
  });

  it("lowers saturation with ISO, and with it the longest sub", async () => {
    const at = (gain: string) => figuresOf({ ...WORKED_EXAMPLE, gain });
    const [low, high] = [await at("ISO 200"), await at("1600")];
    expect(high.saturationElectrons).toBeLessThan(low.saturationElectrons ?? 0);
    expect(high.longestSubSeconds).toBeLessThan(low.longestSubSeconds ?? 0);
  });

  it("shortens the sub only for a star the asker named", async () => {
    const unnamed = await figuresOf({ ...WORKED_EXAMPLE, filter: "none" });
    const named = await figuresOf({ ...WORKED_EXAMPLE, filter: "none", star: "4" });
    expect(unnamed.limitedBy).not.toBe("saturation");
    expect(named.limitedBy).toBe("saturation");
    expect(named.subSeconds).toBeLessThanOrEqual(named.longestSubSeconds ?? 0);
  });

  it("puts a measured sky in the estimate's place for that filter alone", async () => {
    const rig = describedRig("400mm f/5.6, 23.5x15.7mm, 3.76um mono -10C rn 1.6e guided");
    const room = rigRoom({
      rig: { ...rig, measuredSkies: [{ filterName: "Hα", electronsPerPixelPerSecond: 0.33 }] },
    });
    expect((await figuresOf({ filter: "Hα" }, room)).skyElectronsPerPixelPerSecond).toBeCloseTo(0.33, 9);
    expect((await figuresOf({ filter: "O III" }, room)).skyElectronsPerPixelPerSecond).not.toBeCloseTo(
      0.33,
      2,
    );
    expect(await wordsOf({ filter: "Hα" }, room)).toMatch(/your own measurement/);
  });

  // 2026-10-26 is a full Moon: common calendars.
  it("lets the Moon cost [O III] over twice what it costs Hα, and shows each line's", async () => {
    const answer = await figuresOf(
      { target: "NGC 6888", filter: "656.3/7+500.7/7" },
      rigRoom({
        rig: describedRig("400mm f/5.6, 23.5x15.7mm, 3.76um colour modified -10C rn 1.6e guided"),
      }),
      "2026-10-25T19:00:00Z",
    );
    const [hydrogen, oxygen] = answer.bands;
    expect(hydrogen?.name).toBe("Hα");
    expect(oxygen?.channels).toEqual(["green", "blue"]);
    expect((oxygen?.moonCost ?? 0) - 1).toBeGreaterThan(2 * ((hydrogen?.moonCost ?? 0) - 1));
    expect(answer.moonCost).toBe(oxygen?.moonCost);
  });

  it("leads with the band that asks for the longest sub", async () => {
    const figures = await figuresOf({ ...WORKED_EXAMPLE, filter: "656.3/7+500.7/7" });
    const shortest = figures.bands.map((band) => band.shortestSubSeconds ?? 0);
    expect(figures.shortestSubSeconds).toBe(Math.max(...shortest));
  });

  // Common practice, no source: an uncooled colour camera, its sensor near 25 °C, at f/5 to f/7 through
  // 6 to 15 nm of hydrogen-alpha under a city's sky.
  it("asks of a warm colour camera for subs of 1 to 10 minutes, names dark current and the red pixels", async () => {
    for (const ratio of [5, 6, 7]) {
      for (const width of [6, 10, 15]) {
        for (const modified of ["", " modified"]) {
          const options = {
            rig: `400mm f/${ratio}, 23.5x15.7mm, 3.76um colour${modified} guided`,
            filter: `656.3/${width}`,
            sky: "bortle 8",
            "sensor-temp": 25,
          };
          const figures = await figuresOf(options);
          expect(figures.subSeconds).toBeGreaterThanOrEqual(60);
          expect(figures.subSeconds).toBeLessThanOrEqual(600);
          const words = await wordsOf(options);
          expect(words).toMatch(/Dark current is a main limit/);
          expect(words).toMatch(/Only the red pixels count/);
        }
      }
    }
  });

  it("never lengthens the shortest sub with a wider filter, nor raises signal-to-noise with a brighter sky", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.double({ min: 3, max: 12, noNaN: true }),
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        fc.double({ min: 17.5, max: 21.5, noNaN: true }),
        async (width, more, sky) => {
          const at = (nm: number, mag: number) =>
            figuresOf({
              rig: WORKED_EXAMPLE.rig,
              filter: `656.3/${nm.toFixed(3)}`,
              sky: mag.toFixed(3),
              hours: 2,
              sub: 120,
              rayleigh: 50,
              "sensor-temp": 5,
            });
          const base = await at(width, sky);
          const wider = await at(width + more, sky);
          expect(wider.shortestSubSeconds).toBeLessThanOrEqual(base.shortestSubSeconds ?? 0);
          const brighter = await at(width, sky - 0.7);
          expect(brighter.signalToNoise?.perPatch).toBeLessThan(base.signalToNoise?.perPatch ?? 0);
        },
      ),
      { numRuns: 15 },
    );
  });

  it("sets two places side by side: a darker one is worth more hours", async () => {
    const answer = await answerTo(exposure, {
      target: "NGC 6888",
      filter: "none",
      sky: "18",
      "other-site": "54.5, -2.6",
    });
    const other = answer.figures.otherSite as unknown as { hourIsWorth: number };
    // The other place is taken as Bortle 5, two magnitudes darker.
    expect(other.hourIsWorth).toBeGreaterThan(3);
    expect(other.hourIsWorth).toBeLessThan(10 ** 0.8);
    expect(await wordsOf({ filter: "none", sky: "18", "other-site": "54.5, -2.6" })).toMatch(
      /An hour without a filter at/,
    );
  });

  it("sets two rigs side by side", async () => {
    const answer = await answerTo(exposure, {
      target: "NGC 6888",
      filter: "Hα",
      "other-rig": "400mm f/2.8, 23.5x15.7mm, 3.76um mono -10C rn 1.6e guided",
    });
    const other = answer.figures.otherRig as unknown as { hourIsWorth: number };
    // Four times the light: four times the worth were sky all the noise, sixteen were read noise all.
    expect(other.hourIsWorth).toBeGreaterThan(4);
    expect(other.hourIsWorth).toBeLessThan(16);
  });

  it("splits a total between filters, evenly and for equal signal-to-noise", async () => {
    const answer = await answerTo(exposure, { target: "NGC 6888", hours: 6, split: "Hα, O III" });
    const split = answer.figures.split as unknown as { filter: string; elapsedSeconds: number }[];
    expect(split.map(({ filter }) => filter)).toEqual(["Hα", "[O III]"]);
    for (const part of split) expect(part.elapsedSeconds).toBeLessThanOrEqual(3 * 3600);
    expect(answer.sections.some(({ heading }) => heading === "Split between filters")).toBe(true);
  });

  it("says that a target never clears the least altitude, as an answer", async () => {
    const answer = await answerTo(exposure, { target: "Southern", filter: "Hα" });
    expect(answer.summary).toMatch(/no window this night/);
    expect(answer.figures).toMatchObject({ subCount: 0, totalSeconds: 0, windows: [], limitedBy: "time" });
  });

  it("counts twilight with the sky in a northern June", async () => {
    const figures = await figuresOf(
      { target: "Overhead", filter: "none" },
      rigRoom(),
      "2026-06-20T21:00:00Z",
    );
    expect(figures.skyMagArcsec2).toBeLessThan(20.5);
    expect(figures.assumptions.join(" ")).toMatch(/no true darkness/);
  });

  it("gives both trail limits of a camera on a tripod", async () => {
    const words = await wordsOf({ target: "NGC 6888", rig: "24mm f/2.8, 36x24mm, 5.97um tripod" });
    expect(words).toMatch(/the 500 rule says 21 s, Michaud's rule/);
  });

  it("draws the cost of each sub, and signal-to-noise where the surface is known", async () => {
    const { charts } = await answerTo(exposure, { target: "NGC 6888", filter: "Hα" });
    expect(charts.map(({ kind }) => kind)).toEqual(["sub-length", "curve"]);
    const cost = charts[0] as SubLengthChart;
    expect(cost.choices.filter(({ chosen }) => chosen)).toHaveLength(1);
    const curve = charts[1] as CurveChart;
    const rising = curve.lines[0]?.points.map(({ y }) => y) ?? [];
    expect(rising).toEqual([...rising].sort((one, other) => one - other));
    const unknown = await answerTo(exposure, { filter: "Hα" });
    expect(unknown.charts.map(({ kind }) => kind)).toEqual(["sub-length"]);
  });

  it("names what it assumed", async () => {
    const { assumptions } = await figuresOf(
      { rig: "400mm f/5.6, 23.5x15.7mm, 3.76um", filter: "Hα" },
      rigRoom({ site: { ...SITE, sky: null, seeingArcsec: null } }),
    );
    for (const named of [
      /infrared block/,
      /above the air/,
      /10 °C/,
      /85 %/,
      /Bortle class 5/,
      /blur/,
      /rough/,
    ]) {
      expect(assumptions.some((assumption) => named.test(assumption))).toBe(true);
    }
  });

  it.each<[Options, string, RegExp]>([
    [{ hours: -2 }, "hours", /from 0.02 to 2000/],
    [{ sky: "30" }, "sky", /from 14 to 22.5/],
    [{ filter: "5/7" }, "filter", /from 300 to 1100/],
    [{ filter: "400/500" }, "filter", /width must be below the centre/],
    [{ share: 0 }, "share", /from 0.01 to 100/],
    [{ star: "bright" }, "star", /nothing is called/],
    [{ star: "99" }, "star", /from -2 to 20/],
    [{ gain: "gain 7" }, "gain", /ISO 800/],
    [{ star: "M31" }, "star", /name of a star/],
    [{ "sensor-temp": 400 }, "sensor-temp", /from -100 to 60/],
    [{ sub: 0 }, "sub", /7200/],
    [{ brightness: 40 }, "brightness", /from 10 to 30/],
    [{ rayleigh: -1 }, "rayleigh", /from 0.1/],
    [{ snr: 0 }, "snr", /from 0.5 to 1000/],
    [{ split: "Hα" }, "split", /2 to 8 filters/],
    [{ split: "Hα, nonsense" }, "split", /no filter/],
    [{ target: "Moon" }, "target", /deep sky/],
    [{ "other-site": "91, 0" }, "other-site", /from -90 to 90/],
    [{ rig: "400mm f/0.1, 23.5x15.7mm, 3.76um" }, "rig", /from 0.7 to 64/],
  ])("refuses %j, naming %s and what would be right", async (options, option, message) => {
    const refusal = await refusalOf(exposure, options);
    expect(refusal.option).toBe(option);
    expect(refusal.message).toMatch(message);
  });
});
