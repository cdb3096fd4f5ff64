/**
 * A camera rig made of what its owner says; what is missing is assumed and named.
 *
 * @packageDocumentation
 */
import * as limits from "../../config/input-limits.ts";
import {
  DEFAULT_MOUNT,
  FLIP_AFTER_MINUTES,
  GUIDING_ARCSEC,
  OBSTRUCTION_OF,
  THROUGHPUT_OF,
} from "../../config/rig-defaults.ts";
import type { CameraRig } from "../../core/rig/rig.ts";
import type { CameraFacts, OptionNames } from "./camera-facts.ts";
import { modifiedOf, sensorOf, temperatureOf } from "./camera-sensor.ts";
import { withinRange } from "./numbers.ts";

/**
 * The rig, its assumptions named.
 *
 * @throws AskError naming the option and range that a figure broke
 */
export function cameraRigOf(facts: CameraFacts, optionOf: OptionNames): CameraRig {
  checkFigures(facts, optionOf);
  const assumptions: string[] = [];
  const assume = <Value>(given: Value | null, value: Value, sentence: string): Value => {
    if (given === null) assumptions.push(sentence);
    return given ?? value;
  };

  const reducerFactor = facts.reducerFactor ?? 1;
  const optics = assume(facts.optics, "refractor", "The optics are taken as a lens, not a mirror.");
  const usualObstruction = OBSTRUCTION_OF[optics];
  const obstruction = facts.obstruction ?? usualObstruction;
  if (facts.obstruction === null && usualObstruction > 0) {
    assumptions.push(
      `The central obstruction is taken as ${percent(usualObstruction)} of the aperture's diameter.`,
    );
  }
  const throughput = assume(
    facts.throughput,
    THROUGHPUT_OF[optics],
    `The optics are taken to pass ${percent(THROUGHPUT_OF[optics])} of the light.`,
  );

  const { sensor, mode, chip } = sensorOf(facts, optionOf, assumptions);
  const isColour = sensor.channels.length > 1;
  const mount = assume(facts.mount, DEFAULT_MOUNT, `The mount is taken as ${DEFAULT_MOUNT}.`);
  const guided = assume(facts.guided, false, "The mount is taken as unguided.");

  return {
    kind: "camera",
    name: facts.name,
    optics,
    focalLengthMm: facts.focalLengthMm * reducerFactor,
    focalRatio: facts.focalRatio * reducerFactor,
    reducerFactor,
    obstruction,
    throughput,
    sensor,
    modified: isColour && modifiedOf(facts, chip, assumptions),
    mode,
    sensorTemperature: temperatureOf(facts, chip, assumptions),
    guided,
    guidingArcsec: facts.guidingArcsec ?? (mount === "fixed" ? 0 : GUIDING_ARCSEC),
    mount,
    flipAfterMinutes: facts.flipAfterMinutes ?? FLIP_AFTER_MINUTES,
    filters: facts.filters,
    subSeconds: facts.subSeconds,
    measuredSkies: facts.measuredSkies,
    assumptions,
  };
}

function checkFigures(facts: CameraFacts, optionOf: OptionNames): void {
  const check = (fact: keyof CameraFacts, value: number | null, range: limits.Range, unit: string) => {
    if (value !== null) withinRange(optionOf(fact), value, { ...range, unit });
  };
  check("focalLengthMm", facts.focalLengthMm, limits.FOCAL_LENGTH_MM, "mm of focal length");
  check("focalRatio", facts.focalRatio, limits.FOCAL_RATIO, "as a focal ratio");
  check("reducerFactor", facts.reducerFactor, limits.REDUCER_FACTOR, "as a reducer's or Barlow's factor");
  check("focalLengthMm", facts.focalLengthMm / facts.focalRatio, limits.APERTURE_MM, "mm of aperture");
  check("obstruction", facts.obstruction, limits.OBSTRUCTION, "of the aperture's diameter");
  check("throughput", facts.throughput, limits.THROUGHPUT, "of the light");
  check("widthMm", facts.widthMm, limits.SENSOR_SIDE_MM, "mm of sensor width");
  check("heightMm", facts.heightMm, limits.SENSOR_SIDE_MM, "mm of sensor height");
  check("pixelUm", facts.pixelUm, limits.PIXEL_UM, "µm of pixel");
  check("readNoiseElectrons", facts.readNoiseElectrons, limits.READ_NOISE_ELECTRONS, "e of read noise");
  check("electronsPerAdu", facts.electronsPerAdu, limits.ELECTRONS_PER_ADU, "e/ADU");
  check("saturationElectrons", facts.saturationElectrons, limits.SATURATION_ELECTRONS, "e of saturation");
  check("darkElectronsPerSecond", facts.darkElectronsPerSecond, limits.DARK_ELECTRONS, "e/s of dark current");
  check("darkReferenceCelsius", facts.darkReferenceCelsius, limits.SENSOR_CELSIUS, "°C");
  check("sensorCelsius", facts.sensorCelsius, limits.SENSOR_CELSIUS, "°C of sensor temperature");
  check("guidingArcsec", facts.guidingArcsec, limits.GUIDING_ARCSEC, "arcsec");
  check("flipAfterMinutes", facts.flipAfterMinutes, limits.FLIP_AFTER_MINUTES, "minutes");
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
