/**
 * What the log keeps: subs shot alike in one go, and calibration frames.
 *
 * @packageDocumentation
 */

/** Subs of one object, shot alike; one row of the log. */
export type FrameSet = {
  /** `YYYY-MM-DD`, the local date on which the night began. */
  readonly night: string;
  /** As the catalogue files it. */
  readonly object: string;
  /** The filter's name; `none` without one. */
  readonly passband: string;
  /** Kept; the rejected ones are counted apart. */
  readonly frames: number;
  readonly rejected: number;
  readonly subSeconds: number;
  /** As the camera's maker counts it; `null` when unknown, like every figure below. */
  readonly gain: number | null;
  readonly iso: number | null;
  readonly sensorCelsius: number | null;
  /** Position angle of the frame's up, or what the member reads off the rotator. */
  readonly rotationDeg: number | null;
  readonly rig: string | null;
  /** When the first sub began. */
  readonly startedAt: Date | null;
};

export type CalibrationKind = "dark" | "flat" | "bias";

/** Calibration frames of one kind, shot alike; one row of the library. */
export type LibrarySet = {
  readonly kind: CalibrationKind;
  readonly night: string;
  /** Flats alone have one; `null` for darks and bias. */
  readonly passband: string | null;
  readonly frames: number;
  /** `null` for bias. */
  readonly subSeconds: number | null;
  readonly gain: number | null;
  readonly iso: number | null;
  readonly sensorCelsius: number | null;
  /** Flats alone have one. */
  readonly rotationDeg: number | null;
  readonly rig: string | null;
  /** When the first of them began; `null` for those added by hand. */
  readonly startedAt: Date | null;
};

/** Hours of the kept subs by the clock. */
export function clockHours(set: Pick<FrameSet, "frames" | "subSeconds">): number {
  return (set.frames * set.subSeconds) / 3600;
}

/**
 * Two rows with the same key are the same subs.
 *
 * With a start: the same object, filter, rig, start and exposure. Without one the
 * night stands for it, and everything else must agree too: nobody shoots twice in
 * a night by exactly the same figures without saying so.
 */
export function duplicateKey(set: FrameSet): string {
  const identity = [set.object, set.passband, set.rig ?? "", set.subSeconds];
  const moment =
    set.startedAt !== null
      ? ["at", set.startedAt.getTime()]
      : ["on", set.night, set.frames, set.rejected, set.gain, set.iso, set.sensorCelsius, set.rotationDeg];
  return [...identity, ...moment].map((part) => String(part).toLowerCase()).join("|");
}

/** As {@link duplicateKey}, for the library. */
export function libraryKey(set: LibrarySet): string {
  const identity = [set.kind, set.passband ?? "", set.rig ?? "", set.subSeconds];
  const moment =
    set.startedAt !== null
      ? ["at", set.startedAt.getTime()]
      : ["on", set.night, set.frames, set.gain, set.iso, set.sensorCelsius, set.rotationDeg];
  return [...identity, ...moment].map((part) => String(part).toLowerCase()).join("|");
}
