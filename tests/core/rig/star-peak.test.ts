import { describe, expect, it } from "vitest";
import { PHOTOMETRY } from "../../../config/photometry.ts";
import { bandResponses } from "../../../core/rig/band-response.ts";
import { scaleArcsecPerPixel } from "../../../core/rig/optics.ts";
import {
  errorFunction,
  peakPixelShare,
  saturationSeconds,
  starBlurArcsec,
  starElectrons,
} from "../../../core/rig/star-peak.ts";
import { fakeFilter, fakeRig, MONO } from "./fake-rig.ts";

describe("errorFunction", () => {
  // Abramowitz & Stegun, Handbook of Mathematical Functions, table 7.1.
  it.each([
    [0, 0],
    [0.5, 0.5204999],
    [1, 0.8427008],
    [2, 0.9953223],
    [-1, -0.8427008],
  ])("of %d is %d", (x, expected) => {
    expect(errorFunction(x)).toBeCloseTo(expected, 6);
  });
});

describe("peakPixelShare", () => {
  // F·erf²(s/(2√2 σ)) by hand with tabled values of erf.
  it.each([
    [1.939, 3.3, "0.261"],
    [2.063, 3.0, "0.339"],
  ])("of %d″ pixels under %d″ of blur is %s", (pixelArcsec, fwhmArcsec, expected) => {
    expect(peakPixelShare(pixelArcsec, fwhmArcsec).toFixed(3)).toBe(expected);
  });
});

describe("starBlurArcsec", () => {
  it("adds seeing, diffraction and guiding in quadrature", () => {
    // By hand: diffraction 0.21·550/115.5 = 1″; 2² + 1² + 2² = 9.
    const blur = { seeingArcsec: 2, airmasses: 1, wavelengthNm: 550, apertureMm: 115.5, guidingArcsec: 2 };
    expect(starBlurArcsec(blur)).toBeCloseTo(3, 9);
  });

  it("lets seeing grow as the 0.6th power of the air mass", () => {
    const blur = { seeingArcsec: 2, airmasses: 2, wavelengthNm: 0, apertureMm: 100, guidingArcsec: 0 };
    expect(starBlurArcsec(blur)).toBeCloseTo(2 * 2 ** 0.6, 9);
  });
});

describe("starElectrons", () => {
  // M. S. Bessell 1979, PASP 91, 589: V = 23.90 gives 2.42 photons a second on 1 m² within Δλ/λ = 0.16.
  it("counts Bessell's star to 1 %: 2.42 × 0.3 on 1 m² with an efficiency of 0.3", () => {
    // An aperture of 1 m², 88 nm wide at 550 nm, nothing lost but in the sensor.
    const diameterMm = 2000 / Math.sqrt(Math.PI);
    const rig = fakeRig({
      focalLengthMm: diameterMm * 4,
      focalRatio: 4,
      throughput: 1,
      sensor: { ...fakeRig().sensor, channels: MONO },
    });
    const filter = { ...fakeFilter([550, 88]), transmission: 1 };
    const band = bandResponses(rig, filter, PHOTOMETRY)[0];
    if (band === undefined) throw new Error("no band");
    const pixel = scaleArcsecPerPixel(rig.sensor.pixelUm, rig.focalLengthMm);
    const ratio = starElectrons(band.leading, 23.9, pixel) / (2.42 * 0.3);
    expect(ratio).toBeGreaterThan(0.99);
    expect(ratio).toBeLessThan(1.01);
  });
});

describe("saturationSeconds", () => {
  it("fills 18,000 electrons in 100 s at 170 of the star and 10 of the background a second", () => {
    expect(saturationSeconds(18_000, 170, 10)).toBe(100);
  });
});
