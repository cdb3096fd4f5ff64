/**
 * Chips and formats as `config/sensors.ts` lists them, and the sensors made of them.
 *
 * @packageDocumentation
 */
import type { EfficiencyPoint, Sensor, SensorChannel, SensorMode } from "./rig.ts";

/** Efficiencies of the three dyes of a colour array. */
export type Dyes = Readonly<Record<"red" | "green" | "blue", readonly EfficiencyPoint[]>>;

/** A chip by its maker's code, or a format; it may be sold plain, with dyes, or both. */
export type Chip = {
  readonly code: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly pixelUm: number;
  /** Without dyes; `null` when it is not sold so. */
  readonly plain: readonly EfficiencyPoint[] | null;
  /** With dyes; `null` when it is not sold so. */
  readonly dyes: Dyes | null;
  /** In order of gain or ISO, the lowest first. */
  readonly modes: readonly SensorMode[];
  /** The row that most people use. */
  readonly usualSetting: string;
  readonly darkElectronsPerSecond: number;
  readonly darkReferenceCelsius: number;
  readonly darkDoublingCelsius: number;
  readonly bitsPerPixel: number;
  /** What its cooled cameras are usually set to; `null` when they are not cooled. */
  readonly usualCelsius: number | null;
  /** Its colour cameras carry an infrared block unless modified. */
  readonly infraredBlock: boolean;
  /** Where the figures are from. */
  readonly source: string;
};

/** A colour array has one red, two green and one blue pixel in four. */
const DYE_SHARE = { red: 0.25, green: 0.5, blue: 0.25 } as const;

function channelsOf(chip: Chip, colour: boolean): readonly SensorChannel[] | null {
  if (!colour) return chip.plain && [{ name: "mono", pixelShare: 1, efficiency: chip.plain }];
  const dyes = chip.dyes;
  if (dyes === null) return null;
  return (["red", "green", "blue"] as const).map((name) => ({
    name,
    pixelShare: DYE_SHARE[name],
    efficiency: dyes[name],
  }));
}

/**
 * The sensor made of a chip, plain or with dyes.
 *
 * @returns `null` when the chip is not sold so
 */
export function sensorOfChip(chip: Chip, colour: boolean): Sensor | null {
  const channels = channelsOf(chip, colour);
  if (channels === null) return null;
  return {
    name: chip.code,
    widthMm: chip.widthMm,
    heightMm: chip.heightMm,
    pixelUm: chip.pixelUm,
    channels,
    modes: chip.modes,
    darkElectronsPerSecond: chip.darkElectronsPerSecond,
    darkReferenceCelsius: chip.darkReferenceCelsius,
    darkDoublingCelsius: chip.darkDoublingCelsius,
    bitsPerPixel: chip.bitsPerPixel,
  };
}
