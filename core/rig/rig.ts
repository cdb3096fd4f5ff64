/**
 * What a member looks or photographs with: optics, sensor, filters, mount.
 *
 * Figures here are effective ones: a reducer or Barlow is already in the focal
 * length and ratio. What was assumed for want of the member's own data stands in
 * `assumptions`, one sentence each, and every answer that leans on it repeats it.
 *
 * @packageDocumentation
 */

/** `german` must flip at the meridian; `altazimuth` turns the field; `fixed` is a tripod. */
export type Mount = "german" | "fork" | "tracker" | "altazimuth" | "fixed";

export type Optics = "refractor" | "mirror";

/** Efficiency at one wavelength, a ratio in [0, 1]; between points it runs linearly. */
export type EfficiencyPoint = { readonly wavelengthNm: number; readonly efficiency: number };

/** Pixels of one dye; a monochrome sensor has a single channel of share 1. */
export type SensorChannel = {
  readonly name: "mono" | "red" | "green" | "blue";
  /** Share of all pixels, in (0, 1]. */
  readonly pixelShare: number;
  readonly efficiency: readonly EfficiencyPoint[];
};

/** One row of a sensor's table: a gain setting or an ISO speed. */
export type SensorMode = {
  /** As the maker writes it: `gain 100`, `ISO 800`. */
  readonly setting: string;
  readonly electronsPerAdu: number;
  readonly readNoiseElectrons: number;
  /** The lesser of the full well and what the converter holds, electrons. */
  readonly saturationElectrons: number;
};

export type Sensor = {
  /** A format or a maker's chip code; never a camera's brand. */
  readonly name: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly pixelUm: number;
  readonly channels: readonly SensorChannel[];
  readonly modes: readonly SensorMode[];
  /** Electrons per second and pixel at `darkReferenceCelsius`. */
  readonly darkElectronsPerSecond: number;
  readonly darkReferenceCelsius: number;
  /** Warming by so many °C doubles the dark current. */
  readonly darkDoublingCelsius: number;
  readonly bitsPerPixel: number;
};

export type SensorTemperature =
  | { readonly kind: "set"; readonly celsius: number }
  /** Uncooled: so many °C above the air of the hour. */
  | { readonly kind: "above-air"; readonly celsius: number };

/** One pass band of a filter. */
export type Band = {
  readonly name: string;
  readonly centreNm: number;
  readonly widthNm: number;
};

/** A filter; `none` passes 400–700 nm, as the sensor's own channels divide it. */
export type Filter = {
  readonly name: string;
  /** Empty for `none`. */
  readonly bands: readonly Band[];
  /** Peak transmission, a ratio in (0, 1]; 1 for `none`. */
  readonly transmission: number;
};

/** Sky electrons measured on one of the member's own subs, through one filter. */
export type MeasuredSky = {
  readonly filterName: string;
  readonly electronsPerPixelPerSecond: number;
};

export type CameraRig = {
  readonly kind: "camera";
  readonly name: string;
  readonly optics: Optics;
  /** Effective, reducer included. */
  readonly focalLengthMm: number;
  /** Effective, reducer included; the aperture is focal length over ratio. */
  readonly focalRatio: number;
  /** 1 without, under 1 for a reducer, over 1 for a Barlow. */
  readonly reducerFactor: number;
  /** Central obstruction as a share of the aperture's diameter, in [0, 0.7]. */
  readonly obstruction: number;
  /** Optics alone, without filter and sensor, a ratio in (0, 1]. */
  readonly throughput: number;
  readonly sensor: Sensor;
  /** Infrared block of a colour camera removed: full efficiency at hydrogen-alpha. */
  readonly modified: boolean;
  /** The row of `sensor.modes` in use. */
  readonly mode: SensorMode;
  readonly sensorTemperature: SensorTemperature;
  readonly guided: boolean;
  /** Full width at half maximum that guiding adds, arcseconds. */
  readonly guidingArcsec: number;
  readonly mount: Mount;
  /** Minutes the mount may follow past the meridian before it must flip. */
  readonly flipAfterMinutes: number;
  readonly filters: readonly Filter[];
  /** The member's usual sub by filter name, seconds. */
  readonly subSeconds: Readonly<Record<string, number>>;
  readonly measuredSkies: readonly MeasuredSky[];
  readonly assumptions: readonly string[];
};

export type Eyepiece = {
  readonly focalLengthMm: number;
  readonly apparentFieldDeg: number;
};

export type VisualRig = {
  readonly kind: "visual";
  readonly name: string;
  readonly apertureMm: number;
  readonly focalLengthMm: number;
  readonly mount: Mount;
  readonly eyepieces: readonly Eyepiece[];
  readonly assumptions: readonly string[];
};

export type Rig = CameraRig | VisualRig;
