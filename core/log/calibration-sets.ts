/**
 * Which subs are calibrated together, and which darks, flats and bias they still need.
 *
 * A set shares its calibration frames. Subs part where rig, filter, exposure, gain
 * or ISO differ, where the sensor's temperature or the camera's rotation differ by
 * more than the tolerance, and by night where their flats do.
 *
 * Source: common practice.
 *
 * @packageDocumentation
 */
import { clusters, withinTurn } from "./clusters.ts";
import type { CalibrationKind, FrameSet, LibrarySet } from "./frame-set.ts";

export type CalibrationRules = {
  readonly temperatureToleranceCelsius: number;
  readonly rotationToleranceDeg: number;
  /** Frames of each kind that a set ought to have. */
  readonly wanted: Readonly<Record<CalibrationKind, number>>;
};

/** What a set has of one kind of calibration frame, and what it lacks. */
export type Need = {
  readonly matched: readonly LibrarySet[];
  readonly have: number;
  readonly owed: number;
};

export type CalibrationSet = {
  readonly rig: string | null;
  readonly passband: string;
  readonly subSeconds: number;
  readonly gain: number | null;
  readonly iso: number | null;
  /** The mean of its subs; `null` when it was not logged. */
  readonly sensorCelsius: number | null;
  readonly rotationDeg: number | null;
  readonly nights: readonly string[];
  readonly objects: readonly string[];
  readonly frames: number;
  readonly needs: Readonly<Record<CalibrationKind, Need>>;
};

/** Subs of one night that are shot alike, with the flats nearest to it. */
type Stretch = {
  readonly light: FrameSet;
  readonly rows: readonly FrameSet[];
  readonly flats: readonly LibrarySet[];
};

/**
 * The sets of a log, in the order of their first nights.
 *
 * @param lights - rows of the log
 * @param library - calibration frames at hand
 *
 * @remarks
 * A temperature that was not logged is that night's own: it matches only darks of the
 * same night. A rotation that was not logged is taken as unchanged.
 */
export function calibrationSets(
  lights: readonly FrameSet[],
  library: readonly LibrarySet[],
  rules: CalibrationRules,
): readonly CalibrationSet[] {
  const sets: CalibrationSet[] = [];
  for (const alike of groupsBy(lights, setKey)) {
    for (const warm of temperatureClusters(alike, rules)) {
      for (const turned of rotationClusters(warm, rules)) {
        for (const together of groupsBy(stretchesOf(turned, library, rules), flatsKey)) {
          sets.push(setOf(together, library, rules));
        }
      }
    }
  }
  return sets.sort((one, other) => (one.nights[0] ?? "").localeCompare(other.nights[0] ?? ""));
}

/** What must be equal; a night's own temperature parts nights where none was logged. */
function setKey(row: FrameSet): string {
  const night = row.sensorCelsius === null ? row.night : "";
  return [row.rig, row.passband, row.subSeconds, row.gain, row.iso, night].join("|");
}

function temperatureClusters(rows: readonly FrameSet[], rules: CalibrationRules): readonly FrameSet[][] {
  return clusters(rows, (row) => row.sensorCelsius, rules.temperatureToleranceCelsius);
}

function rotationClusters(rows: readonly FrameSet[], rules: CalibrationRules): readonly FrameSet[][] {
  return clusters(rows, (row) => row.rotationDeg, rules.rotationToleranceDeg, 360);
}

/** Night by night, each with the flats that were shot nearest to it. */
function stretchesOf(
  rows: readonly FrameSet[],
  library: readonly LibrarySet[],
  rules: CalibrationRules,
): readonly Stretch[] {
  return groupsBy(rows, (row) => row.night).flatMap((nightly) => {
    const [light] = nightly;
    if (light === undefined) return [];
    const sensorCelsius = meanOf(nightly.map((row) => row.sensorCelsius));
    const flats = nearestFlats(light, library, rules);
    return [
      { light, night: light.night, sensorCelsius, rotationDeg: light.rotationDeg, rows: nightly, flats },
    ];
  });
}

/** Stretches with the same flats, or with none, are calibrated together. */
function flatsKey({ flats }: Stretch): string {
  return flats[0]?.night ?? "";
}

function setOf(
  stretches: readonly Stretch[],
  library: readonly LibrarySet[],
  rules: CalibrationRules,
): CalibrationSet {
  const rows = stretches.flatMap((stretch) => stretch.rows);
  const [first] = stretches;
  if (first === undefined) throw new Error("a calibration set needs subs");
  const { light } = first;
  const sensorCelsius = meanOf(rows.map((row) => row.sensorCelsius));
  const darks = library.filter((set) => isDarkFor({ ...light, sensorCelsius }, set, rules));
  const bias = library.filter((set) => set.kind === "bias" && sameSensor(light, set));
  return {
    rig: light.rig,
    passband: light.passband,
    subSeconds: light.subSeconds,
    gain: light.gain,
    iso: light.iso,
    sensorCelsius,
    rotationDeg: light.rotationDeg,
    nights: [...new Set(stretches.map((stretch) => stretch.light.night))].sort(),
    objects: [...new Set(rows.map((row) => row.object))].sort(),
    frames: rows.reduce((sum, row) => sum + row.frames, 0),
    needs: {
      dark: needOf(darks, rules.wanted.dark),
      flat: needOf(first.flats, rules.wanted.flat),
      bias: needOf(bias, rules.wanted.bias),
    },
  };
}

function needOf(matched: readonly LibrarySet[], wanted: number): Need {
  const have = matched.reduce((sum, set) => sum + set.frames, 0);
  return { matched, have, owed: Math.max(0, wanted - have) };
}

function sameSensor(light: FrameSet, set: LibrarySet): boolean {
  return light.rig === set.rig && light.gain === set.gain && light.iso === set.iso;
}

/** A dark of any night at the same temperature; without one, of the same night alone. */
function isDarkFor(light: FrameSet, set: LibrarySet, rules: CalibrationRules): boolean {
  if (set.kind !== "dark" || !sameSensor(light, set) || set.subSeconds !== light.subSeconds) return false;
  if (light.sensorCelsius === null || set.sensorCelsius === null) {
    return light.sensorCelsius === set.sensorCelsius && light.night === set.night;
  }
  return Math.abs(light.sensorCelsius - set.sensorCelsius) <= rules.temperatureToleranceCelsius;
}

/** Flats through the same filter at the same rotation, of the nearest night that has any. */
function nearestFlats(
  light: FrameSet,
  library: readonly LibrarySet[],
  rules: CalibrationRules,
): readonly LibrarySet[] {
  const fitting = library.filter(
    (set) =>
      set.kind === "flat" &&
      set.rig === light.rig &&
      set.passband === light.passband &&
      sameRotation(light.rotationDeg, set.rotationDeg, rules.rotationToleranceDeg),
  );
  const away = (set: LibrarySet) => Math.abs(Date.parse(set.night) - Date.parse(light.night));
  const nearest = Math.min(...fitting.map(away));
  const night = fitting.find((set) => away(set) === nearest)?.night;
  return fitting.filter((set) => set.night === night);
}

function sameRotation(one: number | null, other: number | null, toleranceDeg: number): boolean {
  if (one === null || other === null) return one === other;
  return withinTurn(one, other, toleranceDeg);
}

function groupsBy<Item>(items: readonly Item[], keyOf: (item: Item) => string): Item[][] {
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return [...groups.values()];
}

function meanOf(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0) / known.length;
}
