/**
 * The calibration frames still to be shot, each kind once however many sets need it.
 *
 * @packageDocumentation
 */
import type { CalibrationSet } from "./calibration-sets.ts";
import type { CalibrationKind } from "./frame-set.ts";

export type OwedFrames = {
  readonly kind: CalibrationKind;
  readonly frames: number;
  readonly rig: string | null;
  /** Flats alone. */
  readonly passband: string | null;
  readonly rotationDeg: number | null;
  /** Darks alone. */
  readonly subSeconds: number | null;
  readonly sensorCelsius: number | null;
  readonly gain: number | null;
  readonly iso: number | null;
  /** Nights of the subs that wait for them. */
  readonly nights: readonly string[];
  /** How many sets wait for them. */
  readonly sets: number;
};

const KINDS: readonly CalibrationKind[] = ["dark", "flat", "bias"];

/** What a member has yet to shoot: darks, then flats, then bias. */
export function owedFrames(sets: readonly CalibrationSet[]): readonly OwedFrames[] {
  return KINDS.flatMap((kind) => {
    const owed = new Map<string, OwedFrames>();
    for (const set of sets) {
      if (set.needs[kind].owed === 0) continue;
      const frames = owedBy(kind, set);
      const key = keyOf(frames);
      const before = owed.get(key);
      owed.set(key, before === undefined ? frames : joined(before, frames));
    }
    return [...owed.values()];
  });
}

function owedBy(kind: CalibrationKind, set: CalibrationSet): OwedFrames {
  const flat = kind === "flat";
  const dark = kind === "dark";
  return {
    kind,
    frames: set.needs[kind].owed,
    rig: set.rig,
    passband: flat ? set.passband : null,
    rotationDeg: flat ? set.rotationDeg : null,
    subSeconds: dark ? set.subSeconds : null,
    sensorCelsius: dark ? set.sensorCelsius : null,
    gain: set.gain,
    iso: set.iso,
    nights: set.nights,
    sets: 1,
  };
}

/** Temperatures and angles to the whole degree: finer ones are shot in one go. */
function keyOf(frames: OwedFrames): string {
  const whole = (value: number | null) => (value === null ? null : Math.round(value));
  const night = frames.kind === "dark" && frames.sensorCelsius === null ? frames.nights.join() : "";
  const settings =
    frames.kind === "flat" ? [frames.passband, whole(frames.rotationDeg)] : [frames.gain, frames.iso];
  return [frames.rig, ...settings, frames.subSeconds, whole(frames.sensorCelsius), night].join("|");
}

function joined(one: OwedFrames, other: OwedFrames): OwedFrames {
  return {
    ...one,
    frames: Math.max(one.frames, other.frames),
    nights: [...new Set([...one.nights, ...other.nights])].sort(),
    sets: one.sets + other.sets,
  };
}
