/**
 * Counting hours of the whole catalogue in one night, through one pass band or by eye.
 *
 * The same sums as `counting-hours.ts`, with what depends on altitude or on the distance from the
 * Moon alone read from tables: the hours agree to about a thousandth.
 *
 * @packageDocumentation
 */
import { moonBeam, scatteredShare, scattering } from "../night/moonlight.ts";
import { nanolamberts } from "../night/sky-brightness.ts";
import { skyGlowNanolamberts } from "../night/sky-glow.ts";
import { DEG_PER_RAD, RAD_PER_DEG } from "../sky/angles.ts";
import { airmass } from "./airmass.ts";
import { type Detector, weightOfSky } from "./detector.ts";
import { transmission, V_BAND_NM } from "./extinction.ts";
import type { GridInstant, NightGrid } from "./night-grid.ts";
import { extinctionAt, type ObservingConditions } from "./observing-conditions.ts";
import { skylineAltitudeDeg, skylineRangeDeg } from "./skyline.ts";
import type { Clearance } from "./visibility.ts";

export type CatalogueHours = {
  /** Hours clear of skyline and least altitude, by object. */
  readonly usable: Float64Array;
  /** Hours that count for each detector, by object. */
  readonly counting: readonly Float64Array[];
};

/** Rows of a table by the sine of the altitude, from 0 to 1. */
const SINE_STEPS = 2048;
/** Rows of a table by the sine of half the distance from the Moon, from 0 to 1. */
const MOON_STEPS = 1024;
/** Directions of the skyline, and of a sky that is brighter to one side. */
const AZIMUTH_STEPS = 1440;
const GLOW_AZIMUTH_STEPS = 72;

function tableBySine(value: (altitudeDeg: number) => number, steps: number): Float64Array {
  return Float64Array.from({ length: steps + 1 }, (_, step) =>
    value(Math.asin(Math.min(1, step / steps)) * DEG_PER_RAD),
  );
}

/** The moonless night's own sky by altitude, and by azimuth where it is uneven. */
function glowTable(detector: Detector, conditions: ObservingConditions): Float64Array {
  const perNanolambert = weightOfSky(detector);
  const { brightDirections } = conditions.site;
  const azimuths = brightDirections.length === 0 ? 1 : GLOW_AZIMUTH_STEPS;
  const table = new Float64Array(azimuths * (SINE_STEPS + 1));
  for (let azimuth = 0; azimuth < azimuths; azimuth++) {
    const row = tableBySine((altitudeDeg) => {
      if (detector.measuredSky !== null) return detector.measuredSky;
      return (
        perNanolambert *
        skyGlowNanolamberts({
          zenithNanolamberts: nanolamberts(conditions.zenithMagArcsec2),
          altitudeDeg,
          azimuthDeg: azimuths === 1 ? 0 : azimuthOfStep(azimuth, azimuths),
          extinctionV: extinctionAt(conditions, V_BAND_NM),
          brightDirections,
          spreadDeg: conditions.photometry.brightDirectionSpreadDeg,
        })
      );
    }, SINE_STEPS);
    table.set(row, azimuth * (SINE_STEPS + 1));
  }
  return table;
}

/** Moonlight by distance from the Moon, before the target's own path: one instant. */
function moonTable(
  detector: Detector,
  conditions: ObservingConditions,
  instant: GridInstant,
  scattered: readonly Float64Array[],
): Float64Array | null {
  if (instant.moonAltitudeDeg <= 0) return null;
  const table = new Float64Array(MOON_STEPS + 1);
  detector.skies.forEach((sky, index) => {
    const beam = moonBeam(
      instant.moonAltitudeDeg,
      instant.phaseAngleDeg,
      extinctionAt(conditions, sky.wavelengthNm),
      instant.litShare,
    );
    const share = scattered[index] as Float64Array;
    const factor = beam * sky.electronsPerNanolambert;
    for (let step = 0; step <= MOON_STEPS; step++) {
      table[step] = (table[step] as number) + factor * (share[step] as number);
    }
  });
  return table;
}

/** A detector's noise, ready for the loop. */
type NoiseTables = {
  readonly detector: Detector;
  readonly counting: Float64Array;
  readonly overhead: number;
  readonly arriving: Float64Array;
  readonly gain: Float64Array;
  readonly glow: Float64Array;
  readonly scattered: readonly Float64Array[];
  readonly perNanolambert: number;
};

function noiseTables(detector: Detector, conditions: ObservingConditions): NoiseTables {
  const extinction = extinctionAt(conditions, detector.wavelengthNm);
  const overhead = transmission(extinction, 1);
  const arriving = tableBySine((altitude) => transmission(extinction, airmass(altitude)), SINE_STEPS);
  return {
    detector,
    counting: new Float64Array(detector.signal.length),
    overhead,
    arriving,
    gain: arriving.map((share) => (share / overhead) ** detector.arrivingPower),
    glow: glowTable(detector, conditions),
    scattered: detector.skies.map((sky) =>
      Float64Array.from({ length: MOON_STEPS + 1 }, (_, step) =>
        scattering(2 * Math.asin(step / MOON_STEPS) * DEG_PER_RAD, sky.wavelengthNm),
      ),
    ),
    perNanolambert: weightOfSky(detector),
  };
}

/**
 * How far round from north through east a direction lies, along a square instead of a circle: no
 * arctangent is needed, and tables can be kept by it as well.
 *
 * @returns in [0, 1)
 */
function squareTurn(north: number, east: number): number {
  const around = Math.abs(north) + Math.abs(east);
  if (around === 0) return 0;
  if (east >= 0) return (north >= 0 ? east / around : 1 - north / around) / 4;
  const turn = (north < 0 ? 2 - east / around : 3 + north / around) / 4;
  return turn < 1 ? turn : 0;
}

/** The azimuth in the middle of a step of a table kept by {@link squareTurn}. */
function azimuthOfStep(step: number, steps: number): number {
  const quarters = (4 * (step + 0.5)) / steps;
  const corner = Math.floor(quarters);
  const along = quarters - corner;
  return 90 * corner + Math.atan2(along, 1 - along) * DEG_PER_RAD;
}

/** The skyline as the loop asks it: by sines of altitude. */
function skylineSines(clearance: Clearance) {
  const { highestDeg } = skylineRangeDeg(clearance.skyline);
  const sine = (altitudeDeg: number) => Math.sin(Math.max(0, altitudeDeg) * RAD_PER_DEG);
  return {
    least: sine(clearance.leastAltitudeDeg),
    /** From here up nothing is in the way, whatever the direction. */
    free: sine(Math.max(highestDeg, clearance.leastAltitudeDeg)),
    facing: Float64Array.from({ length: AZIMUTH_STEPS }, (_, step) =>
      Math.sin(skylineAltitudeDeg(clearance.skyline, azimuthOfStep(step, AZIMUTH_STEPS)) * RAD_PER_DEG),
    ),
  };
}

/** The objects in view at one instant, by their rows in the tables. */
type InView = {
  /** How many; the arrays are longer. */
  count: number;
  readonly objects: Int32Array;
  readonly altitudeRows: Int32Array;
  readonly glowRows: Int32Array;
  readonly moonRows: Int32Array;
};

/** Finds what is in view: one matrix row, three multiply-adds an object, and the rest for those up. */
function lookAround(
  inView: InView,
  instant: GridInstant,
  directions: Float64Array,
  skyline: ReturnType<typeof skylineSines>,
  uneven: boolean,
): void {
  const { objects, altitudeRows, glowRows, moonRows } = inView;
  const { least, free, facing } = skyline;
  const [upX, upY, upZ] = instant.up;
  const [northX, northY, northZ] = instant.north;
  const [eastX, eastY, eastZ] = instant.east;
  const [moonX, moonY, moonZ] = instant.moon;
  const moonUp = instant.moonAltitudeDeg > 0;
  const all = directions.length / 3;
  let count = 0;
  for (let index = 0, at = 0; index < all; index++, at += 3) {
    const x = directions[at] as number;
    const y = directions[at + 1] as number;
    const z = directions[at + 2] as number;
    const sine = upX * x + upY * y + upZ * z;
    if (sine < least) continue;
    const row = (sine * SINE_STEPS + 0.5) | 0;
    let glowRow = row;
    if (sine < free || uneven) {
      const turn = squareTurn(northX * x + northY * y + northZ * z, eastX * x + eastY * y + eastZ * z);
      if (sine < (facing[(turn * AZIMUTH_STEPS) | 0] as number)) continue;
      if (uneven) glowRow += ((turn * GLOW_AZIMUTH_STEPS) | 0) * (SINE_STEPS + 1);
    }
    // The sine of half the distance from the Moon.
    const apart = moonUp ? Math.sqrt(Math.max(0, (1 - (moonX * x + moonY * y + moonZ * z)) / 2)) : 0;
    objects[count] = index;
    altitudeRows[count] = row;
    glowRows[count] = glowRow;
    moonRows[count] = (apart * MOON_STEPS + 0.5) | 0;
    count++;
  }
  inView.count = count;
}

/** Adds what one instant is worth to one detector, for all that is in view. */
function addInstant(
  tables: NoiseTables,
  instant: GridInstant,
  inView: InView,
  moonPath: Float64Array,
  conditions: ObservingConditions,
): void {
  const { counting, overhead, arriving, gain, glow, detector } = tables;
  const { objects, altitudeRows, glowRows, moonRows, count } = inView;
  const { signal, worthwhile } = detector;
  const { hours } = instant;
  const own = detector.ownNoise(instant.airCelsius);
  const moon = moonTable(detector, conditions, instant, tables.scattered);
  const constant = own + tables.perNanolambert * instant.twilightNanolamberts;
  const measure = own + (glow[SINE_STEPS] as number);
  for (let each = 0; each < count; each++) {
    const index = objects[each] as number;
    if (worthwhile[index] === 0) continue;
    const row = altitudeRows[each] as number;
    const source = signal[index] as number;
    let variance = constant + (glow[glowRows[each] as number] as number) + source * (arriving[row] as number);
    if (moon !== null) variance += (moon[moonRows[each] as number] as number) * (moonPath[row] as number);
    counting[index] =
      (counting[index] as number) +
      (hours * (gain[row] as number) * (measure + source * overhead)) / variance;
  }
}

/**
 * Counting hours of every object of the catalogue, for several detectors in one pass.
 *
 * @param grid - of the spans in which it is dark (and clear)
 * @param detectors - at least one; the geometry they share is worked out once
 */
export function catalogueHours(
  grid: NightGrid,
  detectors: readonly Detector[],
  conditions: ObservingConditions,
  clearance: Clearance,
): CatalogueHours {
  const { directions } = grid;
  const all = directions.length / 3;
  const usable = new Float64Array(all);
  const noises = detectors.map((detector) => noiseTables(detector, conditions));
  const extinctionV = extinctionAt(conditions, V_BAND_NM);
  const moonPath = tableBySine((altitude) => scatteredShare(altitude, extinctionV), SINE_STEPS);
  const skyline = skylineSines(clearance);
  const uneven = conditions.site.brightDirections.length > 0;
  const inView: InView = {
    count: 0,
    objects: new Int32Array(all),
    altitudeRows: new Int32Array(all),
    glowRows: new Int32Array(all),
    moonRows: new Int32Array(all),
  };
  for (const instant of grid.instants) {
    lookAround(inView, instant, directions, skyline, uneven);
    for (let each = 0; each < inView.count; each++) {
      const index = inView.objects[each] as number;
      usable[index] = (usable[index] as number) + instant.hours;
    }
    for (const tables of noises) addInstant(tables, instant, inView, moonPath, conditions);
  }
  return { usable, counting: noises.map(({ counting }) => counting) };
}
