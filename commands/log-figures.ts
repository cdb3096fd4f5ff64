/**
 * Rows of the log as figures.
 *
 * @packageDocumentation
 */
import { clockHours, type FrameSet, type LibrarySet } from "../core/log/frame-set.ts";
import { type Figure, isoOrNull } from "./answer.ts";

export function frameFigures(set: FrameSet): Figure {
  return {
    night: set.night,
    object: set.object,
    passband: set.passband,
    frames: set.frames,
    rejected: set.rejected,
    subSeconds: set.subSeconds,
    clockHours: clockHours(set),
    gain: set.gain,
    iso: set.iso,
    sensorCelsius: set.sensorCelsius,
    rotationDeg: set.rotationDeg,
    rig: set.rig,
    startedAt: isoOrNull(set.startedAt),
  };
}

export function libraryFigures(set: LibrarySet): Figure {
  return { ...set, startedAt: isoOrNull(set.startedAt) };
}
