/**
 * The chosen values that light sums depend on; `config/photometry.ts` fills them.
 *
 * What a published formula fixes stands beside the formula instead.
 *
 * @packageDocumentation
 */
import type { EfficiencyPoint, SensorChannel } from "./rig/rig.ts";

/** Where a sensor's pixels look when no filter stands before them. */
export type OpenBand = { readonly centreNm: number; readonly widthNm: number };

export type Photometry = {
  /** Zenith magnitudes per square arcsecond by Bortle class 1–9. */
  readonly bortleMagArcsec2: Readonly<Record<number, number>>;
  /** Extinction by aerosol at 550 nm, magnitudes per air mass, where no forecast serves it. */
  readonly aerosolExtinction: number;
  /** How far to either side a bright direction reaches: one sigma, degrees of azimuth. */
  readonly brightDirectionSpreadDeg: number;
  /** What each kind of pixel passes without a filter. */
  readonly openBands: Readonly<Record<SensorChannel["name"], OpenBand>>;
  /** Transmission of an ordinary colour camera's infrared block. */
  readonly infraredBlock: readonly EfficiencyPoint[];
  /** A dye sees a line when its efficiency there is at least this share of the best dye's. */
  readonly seesLineShare: number;
  /** A pass band up to this width is a line filter; a wider one is divided among the dyes. */
  readonly lineFilterMaxWidthNm: number;
};
