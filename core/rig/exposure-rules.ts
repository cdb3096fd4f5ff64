/**
 * What exposure sums are told; `config/exposure-rules.ts` fills it.
 *
 * @packageDocumentation
 */

export type ExposureRules = {
  /** Noise that read noise may add to the sky's and the dark current's, as a ratio. */
  readonly readNoiseShare: number;
  /** Subs that cameras offer, seconds, rising. */
  readonly subSteps: readonly number[];
  /** Longest sub under guiding. */
  readonly guidedSeconds: number;
  /** Unguided: this over the focal length in millimetres, in seconds … */
  readonly unguidedSecondsTimesMm: number;
  /** … and never more than this. */
  readonly unguidedSeconds: number;
  /** Share of the saturation that a star's peak may fill. */
  readonly saturationShare: number;
  /** The star watched when the asker names none. */
  readonly unnamedStarMagnitude: number;
  readonly downloadSeconds: number;
  readonly subsPerDither: number;
  readonly settlingSeconds: number;
  readonly flipSeconds: number;
  /** Before the first sub, inside the window. */
  readonly startUpSeconds: number;
  /** Side of the square patch that signal-to-noise is also given for, arcseconds. */
  readonly patchArcsec: number;
  /** Signal-to-noise in the patch to aim at when the asker wants none in particular. */
  readonly wantedSignalToNoise: number;
};
