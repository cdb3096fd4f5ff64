/**
 * What an owner says of a camera rig, before anything is assumed.
 *
 * @packageDocumentation
 */
import type { EfficiencyPoint, Filter, MeasuredSky, Mount, Optics } from "../../core/rig/rig.ts";

/** What an owner has said; `null` where nothing was. Focal length and ratio are the lens's own. */
export type CameraFacts = {
  readonly kind: "camera";
  readonly name: string;
  readonly focalLengthMm: number;
  readonly focalRatio: number;
  readonly reducerFactor: number | null;
  readonly optics: Optics | null;
  readonly obstruction: number | null;
  readonly throughput: number | null;
  /** A known chip's code or format, or `null` when size and pixel are given. */
  readonly chipCode: string | null;
  readonly widthMm: number | null;
  readonly heightMm: number | null;
  readonly pixelUm: number | null;
  readonly colour: boolean | null;
  readonly modified: boolean | null;
  readonly setting: string | null;
  readonly readNoiseElectrons: number | null;
  readonly electronsPerAdu: number | null;
  readonly saturationElectrons: number | null;
  readonly darkElectronsPerSecond: number | null;
  readonly darkReferenceCelsius: number | null;
  readonly efficiency: readonly EfficiencyPoint[] | null;
  readonly sensorCelsius: number | null;
  readonly mount: Mount | null;
  readonly guided: boolean | null;
  readonly guidingArcsec: number | null;
  readonly flipAfterMinutes: number | null;
  readonly filters: readonly Filter[];
  readonly subSeconds: Readonly<Record<string, number>>;
  readonly measuredSkies: readonly MeasuredSky[];
};

export const NO_CAMERA_FACTS: Omit<CameraFacts, "name" | "focalLengthMm" | "focalRatio"> = {
  kind: "camera",
  reducerFactor: null,
  optics: null,
  obstruction: null,
  throughput: null,
  chipCode: null,
  widthMm: null,
  heightMm: null,
  pixelUm: null,
  colour: null,
  modified: null,
  setting: null,
  readNoiseElectrons: null,
  electronsPerAdu: null,
  saturationElectrons: null,
  darkElectronsPerSecond: null,
  darkReferenceCelsius: null,
  efficiency: null,
  sensorCelsius: null,
  mount: null,
  guided: null,
  guidingArcsec: null,
  flipAfterMinutes: null,
  filters: [],
  subSeconds: {},
  measuredSkies: [],
};

/** Which option a figure came from; all one and the same for a description. */
export type OptionNames = (fact: keyof CameraFacts) => string;
