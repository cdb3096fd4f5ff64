import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { PHOTOMETRY } from "../../../config/photometry.ts";
import { moonlightNanolamberts } from "../../../core/night/moonlight.ts";
import { nanolamberts } from "../../../core/night/sky-brightness.ts";
import { bandResponses, onCurve, photonsOfMagnitude } from "../../../core/rig/band-response.ts";
import {
  darkElectronsPerSecond,
  glowElectrons,
  moonElectrons,
  signalElectrons,
  variancePerSecond,
} from "../../../core/rig/electrons.ts";
import { BAYER, fakeFilter, fakeRig, MONO, NO_FILTER } from "./fake-rig.ts";

const only = (rig = fakeRig(), filter = fakeFilter([656, 7])) => {
  const band = bandResponses(rig, filter, PHOTOMETRY)[0];
  if (band === undefined) throw new Error("no band");
  return band;
};

/** Ratio of two figures within 1 %, the tolerance that the vectors state. */
const expectWithinOnePercent = (actual: number, expected: number) => {
  expect(actual / expected).toBeGreaterThan(0.99);
  expect(actual / expected).toBeLessThan(1.01);
};

describe("photonsOfMagnitude", () => {
  // M. S. Bessell 1979, PASP 91, 589, the worked example: V = 23.90 gives 2.42 photons s⁻¹ on 1 m²
  // with Δλ/λ = 0.16, which is 88 nm at 550 nm. The convention rounds his zero point up by 0.1 %.
  it("gives Bessell's 2.42 photons for a V = 23.90 star to 1 %", () => {
    expectWithinOnePercent(photonsOfMagnitude(23.9) * 0.16 * 550, 2.42);
  });
});

describe("the electron budget of the worked example", () => {
  // Worked by hand: 1e8·10^(−0.4·19.0) × 7 nm × 4.0072e-3 m² × 3.7593 arcsec² × 0.90 × 0.85 × 0.30.
  it("has 0.06079 e/s of sky", () => {
    expectWithinOnePercent(glowElectrons(only().leading, nanolamberts(19), 0), 0.06079);
  });

  // By hand: 0.3 × 2^(10/6).
  it("has 0.9524 e/s of dark current at 35 °C", () => {
    expect(darkElectronsPerSecond(fakeRig(), 10)).toBeCloseTo(0.9524, 4);
  });

  it("follows the air when the sensor is not cooled", () => {
    const rig = fakeRig({ sensorTemperature: { kind: "above-air", celsius: 10 } });
    expect(darkElectronsPerSecond(rig, 15)).toBeCloseTo(0.3, 12);
    expect(darkElectronsPerSecond(rig, 21)).toBeCloseTo(0.6, 12);
  });

  // Vector B: 100 R at hydrogen-alpha, 100 × 0.018704 × 4.0072e-3 × 3.7593 × 0.2295.
  it("has 0.006466 e/s of 100 Rayleigh", () => {
    const band = only();
    const signal = signalElectrons(band.leading, band.line, {
      continuumMagArcsec2: null,
      rayleigh: { "h-alpha": 100 },
    });
    expectWithinOnePercent(signal ?? 0, 0.006466);
  });
});

describe("bandResponses", () => {
  it("counts only red pixels at hydrogen-alpha and [S II], one in four", () => {
    for (const centre of [656, 672]) {
      const band = only(fakeRig(), fakeFilter([centre, 7]));
      expect(band.channels.map((channel) => channel.channel)).toEqual(["red"]);
      expect(band.leading.pixelShare).toBe(0.25);
    }
  });

  it("counts green and blue pixels at [O III], green leading, and blue alone at hydrogen-beta", () => {
    const oxygen = only(fakeRig(), fakeFilter([501, 7]));
    expect(oxygen.channels.map((channel) => channel.channel)).toEqual(["green", "blue"]);
    const beta = only(fakeRig(), fakeFilter([486, 7]));
    expect(beta.channels.map((channel) => channel.channel)).toEqual(["blue"]);
  });

  it("passes a quarter at hydrogen-alpha through an unmodified camera's infrared block", () => {
    const modified = only(fakeRig({ modified: true })).leading;
    const stock = only(fakeRig({ modified: false })).leading;
    expect(stock.electronsPerNanolambert / modified.electronsPerNanolambert).toBeCloseTo(0.25, 9);
  });

  it("divides the visible range among three dyes of 90 nm without a filter", () => {
    const band = only(fakeRig(), NO_FILTER);
    expect(band.line).toBeNull();
    expect(band.leading.channel).toBe("green");
    const at = Object.fromEntries(band.channels.map((channel) => [channel.channel, channel.wavelengthNm]));
    expect(at).toEqual({ red: 610, green: 535, blue: 465 });
  });

  it("gives a monochrome sensor 300 nm without a filter", () => {
    const rig = fakeRig({ sensor: { ...fakeRig().sensor, channels: MONO } });
    const open = glowElectrons(only(rig, NO_FILTER).leading, nanolamberts(20), 0);
    const narrow = glowElectrons(only(rig, fakeFilter([550, 3])).leading, nanolamberts(20), 0);
    expect(open / narrow).toBeCloseTo(100 / 0.85, 6);
  });

  it("takes each line of a two-band filter on its own on a colour array", () => {
    const bands = bandResponses(fakeRig(), fakeFilter([656, 7], [501, 7]), PHOTOMETRY);
    expect(bands.map((band) => band.name)).toEqual(["Hα", "[O III]"]);
    expect(bands[0]?.leading).toEqual(only().leading);
  });

  it("lets a monochrome pixel take the sky of both bands", () => {
    const rig = fakeRig({ sensor: { ...fakeRig().sensor, channels: MONO } });
    const both = bandResponses(rig, fakeFilter([656, 7], [501, 7]), PHOTOMETRY)[0];
    if (both === undefined) throw new Error("no band");
    const one = glowElectrons(only(rig).leading, 100, 0);
    expect(glowElectrons(both.leading, 100, 0)).toBeCloseTo(2 * one, 9);
  });

  it("puts a measured sky in the estimate's place, dyes in proportion", () => {
    const filter = fakeFilter([501, 7]);
    const rig = fakeRig({ measuredSkies: [{ filterName: filter.name, electronsPerPixelPerSecond: 0.5 }] });
    const band = only(rig, filter);
    expect(glowElectrons(band.leading, 1e6, 0)).toBeCloseTo(0.5, 12);
    const blue = band.channels[1];
    if (blue === undefined) throw new Error("no blue");
    expect(glowElectrons(blue, 1e6, 0)).toBeCloseTo((0.5 * 0.2) / 0.3, 9);
  });
});

describe("signalElectrons", () => {
  it("is null when nothing that passes is known", () => {
    const band = only();
    const unknown = { continuumMagArcsec2: null, rayleigh: { "o-iii": 50 } };
    expect(signalElectrons(band.leading, band.line, unknown)).toBeNull();
  });

  it("gives a surface as bright as the sky as many electrons as the sky", () => {
    const band = only(fakeRig(), NO_FILTER);
    const signal = signalElectrons(band.leading, band.line, { continuumMagArcsec2: 21, rayleigh: {} });
    expect(signal).toBeCloseTo(glowElectrons(band.leading, nanolamberts(21), 0), 12);
  });
});

describe("moonElectrons", () => {
  const light = (wavelengthNm: number) =>
    moonlightNanolamberts({
      moonAltitudeDeg: 40,
      targetAltitudeDeg: 60,
      separationDeg: 60,
      phaseAngleDeg: 10,
      extinctionV: 0.256,
      extinction: wavelengthNm > 600 ? 0.178 : 0.32,
      wavelengthNm,
      litShare: 1,
    });

  it("costs [O III] more than hydrogen-alpha on the same monochrome pixels", () => {
    const rig = fakeRig({ sensor: { ...fakeRig().sensor, channels: MONO } });
    const cost = (centre: number) => {
      const { leading } = only(rig, fakeFilter([centre, 7]));
      const budget = {
        signal: 0,
        glow: glowElectrons(leading, nanolamberts(20), 0),
        moon: moonElectrons(leading, light),
        dark: 0.01,
        readNoiseElectrons: 1.6,
        subSeconds: 300,
      };
      return variancePerSecond(budget) / variancePerSecond({ ...budget, moon: 0 });
    };
    expect(cost(501)).toBeGreaterThan(cost(656));
    expect(cost(656)).toBeGreaterThan(1);
  });
});

describe("variancePerSecond", () => {
  // By hand: 0.006466 + 0.06079 + 0.9524 + 9/300.
  it("adds signal, sky, dark current and the read noise's share", () => {
    const budget = {
      signal: 0.006466,
      glow: 0.06079,
      moon: 0,
      dark: 0.9524,
      readNoiseElectrons: 3,
      subSeconds: 300,
    };
    expect(variancePerSecond(budget)).toBeCloseTo(1.049656, 9);
  });
});

describe("onCurve", () => {
  const red = BAYER[0]?.efficiency ?? [];

  it("passes through its points and keeps its ends", () => {
    expect(onCurve(red, 656.3)).toBeCloseTo(0.3, 12);
    expect(onCurve(red, 580)).toBeCloseTo(0.2, 12);
    expect(onCurve(red, 400)).toBe(0);
    expect(onCurve(red, 900)).toBe(0.28);
  });

  it("stays between its neighbours everywhere", () => {
    fc.assert(
      fc.property(fc.double({ min: 300, max: 1000, noNaN: true }), (wavelengthNm) => {
        const value = onCurve(red, wavelengthNm);
        expect(value).toBeGreaterThanOrEqual(0);
        expect(value).toBeLessThanOrEqual(0.4);
      }),
    );
  });
});
