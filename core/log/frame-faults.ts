/**
 * What cannot be true of logged frames.
 *
 * @packageDocumentation
 */
import type { FrameSet, LibrarySet } from "./frame-set.ts";

/** Both ends are allowed. */
export type Span = { readonly min: number; readonly max: number };

export type FrameLimits = {
  readonly frames: Span;
  readonly subSeconds: Span;
  readonly gain: Span;
  readonly iso: Span;
  readonly sensorCelsius: Span;
  readonly rotationDeg: Span;
  /** `YYYY-MM-DD`: no camera of this kind was there before. */
  readonly firstNight: string;
};

export type FrameFigure = "frames" | "rejected" | "sub" | "gain" | "iso" | "sensor-temp" | "rotation";

export type FrameFault =
  | { readonly kind: "range"; readonly figure: FrameFigure; readonly value: number; readonly span: Span }
  | { readonly kind: "not-whole"; readonly figure: FrameFigure; readonly value: number }
  | { readonly kind: "future"; readonly night: string; readonly latest: string }
  | { readonly kind: "too-old"; readonly night: string; readonly earliest: string };

/** Everything that is wrong with a row; empty means that it may be kept. A value at its limit passes. */
export function frameFaults(set: FrameSet, limits: FrameLimits, latestNight: string): readonly FrameFault[] {
  return [
    ...rangeFault("frames", set.frames, limits.frames),
    ...rangeFault("rejected", set.rejected, { min: 0, max: limits.frames.max }),
    ...wholeFault("frames", set.frames),
    ...wholeFault("rejected", set.rejected),
    ...rangeFault("sub", set.subSeconds, limits.subSeconds),
    ...commonFaults(set, limits, latestNight),
  ];
}

/** As {@link frameFaults}, for calibration frames. */
export function libraryFaults(
  set: LibrarySet,
  limits: FrameLimits,
  latestNight: string,
): readonly FrameFault[] {
  return [
    ...rangeFault("frames", set.frames, limits.frames),
    ...wholeFault("frames", set.frames),
    ...rangeFault("sub", set.subSeconds, limits.subSeconds),
    ...commonFaults(set, limits, latestNight),
  ];
}

function commonFaults(
  set: FrameSet | LibrarySet,
  limits: FrameLimits,
  latestNight: string,
): readonly FrameFault[] {
  const { night } = set;
  return [
    ...rangeFault("gain", set.gain, limits.gain),
    ...rangeFault("iso", set.iso, limits.iso),
    ...rangeFault("sensor-temp", set.sensorCelsius, limits.sensorCelsius),
    ...rangeFault("rotation", set.rotationDeg, limits.rotationDeg),
    ...(night > latestNight ? [{ kind: "future", night, latest: latestNight } as const] : []),
    ...(night < limits.firstNight ? [{ kind: "too-old", night, earliest: limits.firstNight } as const] : []),
  ];
}

function rangeFault(figure: FrameFigure, value: number | null, span: Span): readonly FrameFault[] {
  if (value === null || (value >= span.min && value <= span.max)) return [];
  return [{ kind: "range", figure, value, span }];
}

function wholeFault(figure: FrameFigure, value: number): readonly FrameFault[] {
  return Number.isInteger(value) ? [] : [{ kind: "not-whole", figure, value }];
}
