import { describe, expect, it } from "vitest";
import { FILTER_TRANSMISSION } from "../../config/filters.ts";
import { PHOTOMETRY } from "../../config/photometry.ts";
import { CHIPS } from "../../config/sensors.ts";
import { bandResponses } from "../../core/rig/band-response.ts";
import { sensorOfChip } from "../../core/rig/chip.ts";
import { fakeRig } from "../core/rig/fake-rig.ts";

describe("the table of sensors", () => {
  it("names each chip once", () => {
    const codes = CHIPS.map((chip) => chip.code.toLowerCase());
    expect(new Set(codes).size).toBe(codes.length);
  });

  it.each(CHIPS)("$code: every figure lies in its range and says where it is from", (chip) => {
    expect(chip.source).not.toBe("");
    expect(chip.plain ?? chip.dyes).not.toBeNull();
    expect(chip.widthMm).toBeGreaterThanOrEqual(chip.heightMm);
    expect(chip.pixelUm).toBeGreaterThan(1);
    expect(chip.pixelUm).toBeLessThan(25);
    // R. Widenhorn et al. 2002, Proc. SPIE 4669, 193: doubling every 5–8 °C.
    expect(chip.darkDoublingCelsius).toBeGreaterThanOrEqual(5);
    expect(chip.darkDoublingCelsius).toBeLessThanOrEqual(8);
    expect(chip.modes.map((mode) => mode.setting)).toContain(chip.usualSetting);
    const curves = [chip.plain, ...Object.values(chip.dyes ?? {})].filter((curve) => curve !== null);
    for (const points of curves) {
      const wavelengths = points.map((point) => point.wavelengthNm);
      expect(wavelengths).toEqual([...wavelengths].sort((one, other) => one - other));
      for (const { efficiency } of points) {
        expect(efficiency).toBeGreaterThan(0);
        expect(efficiency).toBeLessThan(1);
      }
    }
  });

  it.each(CHIPS)(
    "$code: raising gain lowers saturation, and no row holds more than its converter",
    (chip) => {
      for (const [index, mode] of chip.modes.entries()) {
        expect(mode.saturationElectrons).toBeLessThanOrEqual(mode.electronsPerAdu * 2 ** chip.bitsPerPixel);
        const before = chip.modes[index - 1];
        if (before === undefined) continue;
        expect(mode.saturationElectrons).toBeLessThan(before.saturationElectrons);
        expect(mode.electronsPerAdu).toBeLessThan(before.electronsPerAdu);
      }
    },
  );

  // Common practice: the dyes that see each line.
  it.each(CHIPS.filter((chip) => chip.dyes !== null))("$code: its dyes see the lines they should", (chip) => {
    const sensor = sensorOfChip(chip, true);
    if (sensor === null) throw new Error("no dyes");
    const seeing = (centreNm: number) =>
      bandResponses(
        fakeRig({ sensor }),
        {
          name: "line",
          bands: [{ name: "line", centreNm, widthNm: 7 }],
          transmission: FILTER_TRANSMISSION,
        },
        PHOTOMETRY,
      )[0]?.channels.map((channel) => channel.channel);
    expect(seeing(656)).toEqual(["red"]);
    expect(seeing(672)).toEqual(["red"]);
    expect(seeing(501)).toEqual(["green", "blue"]);
    expect(seeing(486)).toEqual(["blue"]);
  });
});

describe("sensorOfChip", () => {
  it("makes nothing of a chip that is not sold with dyes", () => {
    const chip = CHIPS.find((each) => each.code === "KAF-8300");
    if (chip === undefined) throw new Error("no chip");
    expect(sensorOfChip(chip, true)).toBeNull();
    expect(sensorOfChip(chip, false)?.channels).toHaveLength(1);
  });
});
