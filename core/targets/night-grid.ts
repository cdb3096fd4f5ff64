/**
 * A night cut into instants, with the light of each: what a loop over the catalogue shares.
 *
 * @packageDocumentation
 */
import { Rotation_EQJ_EQD } from "astronomy-engine";
import { type Interval, totalHours } from "../interval.ts";
import { twilightNanolamberts } from "../night/twilight-glow.ts";
import { RAD_PER_DEG, type Vector3 } from "../sky/angles.ts";
import { skyFrame } from "../sky/frame.ts";
import { engineTime, localSiderealDeg, MS_PER_HOUR } from "../sky/time.ts";
import { horizonDirection, type ObservingConditions } from "./observing-conditions.ts";

/** The least number of instants a night is cut into. */
const LEAST_INSTANTS = 100;
const STEP_HOURS = 1 / 12;

/** Axes of the horizon in the true equator of date, and the light, at one instant. */
export type GridInstant = {
  readonly utMs: number;
  /** How much of the night it stands for. */
  readonly hours: number;
  readonly north: Vector3;
  readonly east: Vector3;
  readonly up: Vector3;
  /** Towards the Moon, same axes. */
  readonly moon: Vector3;
  readonly moonAltitudeDeg: number;
  readonly phaseAngleDeg: number;
  readonly litShare: number;
  readonly twilightNanolamberts: number;
  readonly airCelsius: number;
};

export type NightGrid = {
  readonly instants: readonly GridInstant[];
  /** J2000 directions turned to the true equator of date, aberration included. */
  readonly directions: Float64Array;
};

/** The middles of equal steps through spans of time: a hundred at least, five minutes at most. */
function gridSteps(spans: readonly Interval[]): { readonly utMs: number; readonly hours: number }[] {
  const longest = Math.min(STEP_HOURS, totalHours(spans) / LEAST_INSTANTS);
  return spans.flatMap(({ start, end }) => {
    const hours = (end.getTime() - start.getTime()) / MS_PER_HOUR;
    const count = Math.max(1, Math.ceil(hours / longest - 1e-9));
    return Array.from({ length: count }, (_, step) => ({
      utMs: start.getTime() + ((step + 0.5) / count) * hours * MS_PER_HOUR,
      hours: hours / count,
    }));
  });
}

function gridInstant(conditions: ObservingConditions, utMs: number, hours: number): GridInstant {
  const { site } = conditions;
  const sidereal = localSiderealDeg(new Date(utMs), site.longitudeDeg) * RAD_PER_DEG;
  const latitude = site.latitudeDeg * RAD_PER_DEG;
  const cos = Math.cos(sidereal);
  const sin = Math.sin(sidereal);
  const north: Vector3 = [-Math.sin(latitude) * cos, -Math.sin(latitude) * sin, Math.cos(latitude)];
  const east: Vector3 = [-sin, cos, 0];
  const up: Vector3 = [Math.cos(latitude) * cos, Math.cos(latitude) * sin, Math.sin(latitude)];
  const light = conditions.lightAt(utMs);
  const towards = horizonDirection({
    altitudeDeg: light.moonAltitudeDeg,
    azimuthDeg: light.moonAzimuthDeg,
  });
  const turned = (axis: 0 | 1 | 2) =>
    towards[0] * north[axis] + towards[1] * east[axis] + towards[2] * up[axis];
  return {
    utMs,
    hours,
    north,
    east,
    up,
    moon: [turned(0), turned(1), turned(2)],
    moonAltitudeDeg: light.moonAltitudeDeg,
    phaseAngleDeg: light.phaseAngleDeg,
    litShare: light.litShare,
    twilightNanolamberts: twilightNanolamberts(light.sunAltitudeDeg),
    airCelsius: conditions.airCelsiusAt(utMs),
  };
}

/**
 * Cuts spans of a night into instants and turns the catalogue to the night's own equator.
 *
 * @param spans - in order, not empty
 * @param directions - J2000 unit vectors, x y z x y z …
 *
 * @remarks
 * Precession, nutation and aberration are taken once, in the middle: within 0.4″ of taking them at
 * each instant (SOURCES of the design: measured against SOFA).
 */
export function nightGrid(
  conditions: ObservingConditions,
  spans: readonly Interval[],
  directions: Float64Array,
): NightGrid {
  const instants = gridSteps(spans).map(({ utMs, hours }) => gridInstant(conditions, utMs, hours));
  const middle = instants[Math.floor(instants.length / 2)];
  if (middle === undefined) throw new RangeError("a night without a span has no grid");
  return { instants, directions: ofDate(conditions, directions, new Date(middle.utMs)) };
}

/** J2000 directions as apparent ones of date. */
function ofDate(conditions: ObservingConditions, directions: Float64Array, at: Date): Float64Array {
  const [shiftX, shiftY, shiftZ] = skyFrame(conditions.site, at).aberration;
  // The engine's matrix has the input's axes as its rows.
  const [fromX, fromY, fromZ] = Rotation_EQJ_EQD(engineTime(at)).rot as [number[], number[], number[]];
  const [xx = 0, xy = 0, xz = 0] = fromX;
  const [yx = 0, yy = 0, yz = 0] = fromY;
  const [zx = 0, zy = 0, zz = 0] = fromZ;
  const turned = new Float64Array(directions.length);
  for (let index = 0; index < directions.length; index += 3) {
    const x = (directions[index] as number) + shiftX;
    const y = (directions[index + 1] as number) + shiftY;
    const z = (directions[index + 2] as number) + shiftZ;
    const scale = 1 / Math.sqrt(x * x + y * y + z * z);
    turned[index] = (xx * x + yx * y + zx * z) * scale;
    turned[index + 1] = (xy * x + yy * y + zy * z) * scale;
    turned[index + 2] = (xz * x + yz * y + zz * z) * scale;
  }
  return turned;
}
