/**
 * The sensor of a camera rig: its chip, its setting, its temperature.
 *
 * @packageDocumentation
 */
import { FEWEST_PIXELS_ACROSS } from "../../config/input-limits.ts";
import { UNCOOLED_ABOVE_AIR_CELSIUS } from "../../config/rig-defaults.ts";
import { onCurve } from "../../core/rig/band-response.ts";
import { type Chip, sensorOfChip } from "../../core/rig/chip.ts";
import type {
  EfficiencyPoint,
  Sensor,
  SensorChannel,
  SensorMode,
  SensorTemperature,
} from "../../core/rig/rig.ts";
import { AskError } from "../ask-error.ts";
import { listWords } from "../words/sky.ts";
import type { CameraFacts, OptionNames } from "./camera-facts.ts";
import { chipCalled, unknownChip } from "./chip.ts";
import { matchKey } from "./names.ts";

export type SensorChosen = { readonly sensor: Sensor; readonly mode: SensorMode; readonly chip: Chip };

/**
 * The sensor, the row of it in use and the chip it was made of.
 *
 * @param assumptions - takes a sentence for everything that was not said
 * @throws AskError naming the option that does not fit the chip
 */
export function sensorOf(facts: CameraFacts, optionOf: OptionNames, assumptions: string[]): SensorChosen {
  const chip = chipOf(facts, optionOf);
  const colour = facts.colour ?? chip.dyes !== null;
  if (facts.colour === null && chip.plain !== null && chip.dyes !== null) {
    assumptions.push("The sensor is taken as a colour one.");
  }
  const plain = sensorOfChip(chip, colour);
  if (plain === null) {
    const sold = colour ? "mono" : "colour";
    throw new AskError(
      "not-sold-so",
      optionOf("colour"),
      `“${optionOf("colour")}”: the ${chip.code} is sold as a ${sold} sensor alone.`,
    );
  }
  const usual = modeCalled(chip, facts.setting, optionOf);
  const mode: SensorMode = {
    setting: usual.setting,
    electronsPerAdu: facts.electronsPerAdu ?? usual.electronsPerAdu,
    readNoiseElectrons: facts.readNoiseElectrons ?? usual.readNoiseElectrons,
    saturationElectrons: facts.saturationElectrons ?? usual.saturationElectrons,
  };
  if (facts.readNoiseElectrons === null) {
    assumptions.push(readNoiseAssumption(usual));
  }
  if (facts.darkElectronsPerSecond === null) {
    assumptions.push(
      `Dark current is taken as ${chip.darkElectronsPerSecond} e/s at ${chip.darkReferenceCelsius} °C, typical of such a sensor.`,
    );
  }
  if (facts.efficiency === null) {
    assumptions.push("Quantum efficiency is typical of such a sensor.");
  }
  const sensor: Sensor = {
    ...plain,
    channels: facts.efficiency === null ? plain.channels : withEfficiency(plain.channels, facts.efficiency),
    modes: plain.modes.map((row) => (row.setting === mode.setting ? mode : row)),
    darkElectronsPerSecond: facts.darkElectronsPerSecond ?? chip.darkElectronsPerSecond,
    darkReferenceCelsius: facts.darkReferenceCelsius ?? chip.darkReferenceCelsius,
  };
  return { sensor, mode, chip };
}

/** What is said of a typical row in use. */
export function readNoiseAssumption({ setting, readNoiseElectrons }: SensorMode): string {
  return `Read noise is taken as ${readNoiseElectrons} e (${setting}), typical of such a sensor.`;
}

/** Whether a sentence assumes the sensor's temperature, as {@link temperatureOf} does. */
export function assumesTemperature(sentence: string): boolean {
  return /^The sensor is taken as (un)?cooled/.test(sentence);
}

/** Whether a colour camera sees hydrogen-alpha in full. */
export function modifiedOf(facts: CameraFacts, chip: Chip, assumptions: string[]): boolean {
  if (facts.modified !== null) return facts.modified;
  if (!chip.infraredBlock) return true;
  assumptions.push(
    "The camera is taken as unmodified: its infrared block passes a quarter of hydrogen-alpha.",
  );
  return false;
}

/** How warm the sensor is: as said, as its chip is usually cooled, or above the air. */
export function temperatureOf(facts: CameraFacts, chip: Chip, assumptions: string[]): SensorTemperature {
  if (facts.sensorCelsius !== null) return { kind: "set", celsius: facts.sensorCelsius };
  if (chip.usualCelsius !== null) {
    assumptions.push(
      `The sensor is taken as cooled to ${chip.usualCelsius} °C, as usual for the ${chip.code}.`,
    );
    return { kind: "set", celsius: chip.usualCelsius };
  }
  assumptions.push(
    `The sensor is taken as uncooled, ${UNCOOLED_ABOVE_AIR_CELSIUS} °C above the air of the hour.`,
  );
  return { kind: "above-air", celsius: UNCOOLED_ABOVE_AIR_CELSIUS };
}

function chipOf(facts: CameraFacts, optionOf: OptionNames): Chip {
  const { widthMm, heightMm, pixelUm } = facts;
  if (facts.chipCode !== null) {
    const chip = chipCalled(optionOf("chipCode"), facts.chipCode);
    return {
      ...chip,
      widthMm: widthMm ?? chip.widthMm,
      heightMm: heightMm ?? chip.heightMm,
      pixelUm: pixelUm ?? chip.pixelUm,
    };
  }
  const [missing, example] =
    widthMm === null || heightMm === null
      ? (["widthMm", "23.5x15.7mm"] as const)
      : (["pixelUm", "3.76um"] as const);
  if (widthMm === null || heightMm === null || pixelUm === null) {
    const option = optionOf(missing);
    throw new AskError(
      "no-sensor",
      option,
      `“${option}” lacks the ${missing === "pixelUm" ? "pixel" : "sensor"}: give ${example}, or a chip's code such as IMX571.`,
    );
  }
  if (Math.min(widthMm, heightMm) * 1000 < pixelUm * FEWEST_PIXELS_ACROSS) {
    const option = optionOf("pixelUm");
    throw new AskError(
      "pixel-too-large",
      option,
      `“${option}”: pixels of ${pixelUm} µm leave fewer than ${FEWEST_PIXELS_ACROSS} across a sensor of ${widthMm} × ${heightMm} mm.`,
    );
  }
  return unknownChip(widthMm, heightMm, pixelUm);
}

function modeCalled(chip: Chip, setting: string | null, optionOf: OptionNames): SensorMode {
  const called = setting ?? chip.usualSetting;
  const found = chip.modes.find((mode) => matchKey(mode.setting) === matchKey(called));
  if (found) return found;
  const option = optionOf("setting");
  const known = listWords(chip.modes.map((mode) => mode.setting));
  throw new AskError("unknown-setting", option, `“${option}”: the ${chip.code} is known at ${known}.`);
}

/**
 * Channels brought to measured efficiencies.
 *
 * At each point the channel that sees it best takes the given value; the rest, and
 * what lies between and beyond the points, follow in proportion.
 */
function withEfficiency(
  channels: readonly SensorChannel[],
  points: readonly EfficiencyPoint[],
): readonly SensorChannel[] {
  const factors = points.map(({ wavelengthNm, efficiency }) => ({
    wavelengthNm,
    efficiency:
      efficiency / Math.max(...channels.map((channel) => onCurve(channel.efficiency, wavelengthNm))),
  }));
  return channels.map((channel) => {
    const wavelengths = [...channel.efficiency, ...points].map((point) => point.wavelengthNm);
    return {
      ...channel,
      efficiency: [...new Set(wavelengths)]
        .sort((one, other) => one - other)
        .map((wavelengthNm) => ({
          wavelengthNm,
          efficiency: Math.min(1, onCurve(channel.efficiency, wavelengthNm) * onCurve(factors, wavelengthNm)),
        })),
    };
  });
}
