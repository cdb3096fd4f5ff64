/**
 * A comet's place from its orbit: ellipse, parabola or hyperbola, by one formula.
 *
 * @packageDocumentation
 */
import { Body, HelioVector } from "astronomy-engine";
import {
  angleBetweenDeg,
  type EquatorialPlace,
  placeOfVector,
  RAD_PER_DEG,
  type Vector3,
} from "../sky/angles.ts";
import { engineTime, MS_PER_DAY } from "../sky/time.ts";
import { difference, scaled, vectorOf } from "../sky/vectors.ts";

/** Osculating elements, ecliptic and equinox of 2000. */
export type CometElements = {
  readonly name: string;
  /** q, AU. */
  readonly perihelionAu: number;
  /** e. */
  readonly eccentricity: number;
  /** i. */
  readonly inclinationDeg: number;
  /** ω. */
  readonly perihelionArgumentDeg: number;
  /** Ω. */
  readonly nodeDeg: number;
  /** T. */
  readonly perihelionAt: Date;
  /** H and n of m = H + 5 log Δ + 2.5 n log r; `null` when not given. */
  readonly brightness: { readonly absoluteMag: number; readonly slope: number } | null;
};

export type CometPlace = EquatorialPlace & {
  /** From the Sun. */
  readonly sunDistanceAu: number;
  /** From the Earth. */
  readonly earthDistanceAu: number;
  /** From the Sun on the sky, degrees. */
  readonly elongationDeg: number;
  /** Rough: comets do as they please. `null` without H. */
  readonly magnitude: number | null;
};

/** Gauss's constant: AU^1.5 a day. */
const GAUSS = 0.017_202_098_95;
const LIGHT_DAYS_PER_AU = 0.005_775_518_3;
/** Obliquity of 2000, IAU 1976 as orbits are published with: 23° 26′ 21.448″. */
const OBLIQUITY = 23.439_291_1 * RAD_PER_DEG;

/**
 * Where a comet stands, from the Earth's centre, J2000, light's travel allowed for.
 *
 * @remarks
 * The planets' pull since the elements' epoch is left out: within a minute of arc for some
 * months about it, a degree and more after years.
 *
 * Source: universal variables about perihelion (R. R. Bate, D. D. Mueller & J. E. White,
 * *Fundamentals of Astrodynamics*, chapter 4); checked with Meeus, chapters 33 to 35.
 */
export function cometPlace(elements: CometElements, at: Date): CometPlace {
  const earth = vectorOf(HelioVector(Body.Earth, engineTime(at)));
  let delayDays = 0;
  let fromSun: Vector3 = [0, 0, 0];
  let fromEarth: Vector3 = [0, 0, 0];
  for (let turn = 0; turn < 3; turn++) {
    fromSun = heliocentric(elements, new Date(at.getTime() - delayDays * MS_PER_DAY));
    fromEarth = difference(fromSun, earth);
    delayDays = Math.hypot(...fromEarth) * LIGHT_DAYS_PER_AU;
  }
  const sunDistanceAu = Math.hypot(...fromSun);
  const earthDistanceAu = Math.hypot(...fromEarth);
  const { brightness } = elements;
  return {
    ...placeOfVector(fromEarth),
    sunDistanceAu,
    earthDistanceAu,
    elongationDeg: angleBetweenDeg(fromEarth, scaled(earth, -1)),
    magnitude:
      brightness === null
        ? null
        : brightness.absoluteMag +
          5 * Math.log10(earthDistanceAu) +
          2.5 * brightness.slope * Math.log10(sunDistanceAu),
  };
}

/** J2000 equator, AU. */
function heliocentric(elements: CometElements, at: Date): Vector3 {
  const days = (at.getTime() - elements.perihelionAt.getTime()) / MS_PER_DAY;
  const { x, y } = inOrbit(elements.perihelionAu, elements.eccentricity, days);
  const [argument, node, tilt] = [
    elements.perihelionArgumentDeg * RAD_PER_DEG,
    elements.nodeDeg * RAD_PER_DEG,
    elements.inclinationDeg * RAD_PER_DEG,
  ];
  // From the orbit's plane to the line of nodes, to the ecliptic, to the equator.
  const along = x * Math.cos(argument) - y * Math.sin(argument);
  const across = x * Math.sin(argument) + y * Math.cos(argument);
  const eclipticX = along * Math.cos(node) - across * Math.cos(tilt) * Math.sin(node);
  const eclipticY = along * Math.sin(node) + across * Math.cos(tilt) * Math.cos(node);
  const eclipticZ = across * Math.sin(tilt);
  return [
    eclipticX,
    eclipticY * Math.cos(OBLIQUITY) - eclipticZ * Math.sin(OBLIQUITY),
    eclipticY * Math.sin(OBLIQUITY) + eclipticZ * Math.cos(OBLIQUITY),
  ];
}

/**
 * Where a body stands in the plane of its orbit, the Sun at the middle, perihelion on the x axis.
 *
 * @param perihelionAu - q, positive
 * @param eccentricity - e, 0 or more; about 1 too
 * @param days - since perihelion
 */
export function inOrbit(
  perihelionAu: number,
  eccentricity: number,
  days: number,
): { readonly x: number; readonly y: number } {
  const inverseAxis = (1 - eccentricity) / perihelionAu;
  const wanted = withinPeriod(GAUSS * days, inverseAxis);
  // The parabola's own solution is a good first guess for all.
  const w = ((3 * wanted) / Math.SQRT2 / perihelionAu ** 1.5) * 0.5;
  const cubeRoot = Math.cbrt(w + Math.sqrt(w * w + 1));
  let s = Math.SQRT2 * Math.sqrt(perihelionAu) * (cubeRoot - 1 / cubeRoot);
  // On an ellipse the answer lies within half a revolution: what leaves that is halved back into it.
  let most = inverseAxis > 0 ? Math.PI / Math.sqrt(inverseAxis) : Number.POSITIVE_INFINITY;
  let least = -most;
  s = Math.max(least, Math.min(most, s));
  let [c, d] = [0.5, 1 / 6];
  for (let step = 0; step < 60; step++) {
    [c, d] = stumpff(inverseAxis * s * s);
    const reached = perihelionAu * s + eccentricity * s ** 3 * d;
    const distance = perihelionAu + eccentricity * s * s * c;
    if (reached < wanted) least = s;
    else most = s;
    const next = s + (wanted - reached) / distance;
    const correction = (next < least || next > most ? (least + most) / 2 : next) - s;
    s += correction;
    if (Math.abs(correction) < 1e-13 * (1 + Math.abs(s))) break;
  }
  [c, d] = stumpff(inverseAxis * s * s);
  const speed = Math.sqrt((1 + eccentricity) / perihelionAu);
  return {
    x: perihelionAu - s * s * c,
    y: (wanted - s ** 3 * d) * speed,
  };
}

/** Of an ellipse, the same place within half a period of perihelion. */
function withinPeriod(wanted: number, inverseAxis: number): number {
  if (inverseAxis <= 0) return wanted;
  const period = (2 * Math.PI) / inverseAxis ** 1.5;
  return wanted - period * Math.round(wanted / period);
}

/** Stumpff's functions c₂ and c₃. */
function stumpff(z: number): [number, number] {
  if (Math.abs(z) < 1e-3) {
    return [1 / 2 - z / 24 + (z * z) / 720, 1 / 6 - z / 120 + (z * z) / 5040];
  }
  if (z > 0) {
    const root = Math.sqrt(z);
    return [(1 - Math.cos(root)) / z, (root - Math.sin(root)) / root ** 3];
  }
  const root = Math.sqrt(-z);
  return [(Math.cosh(root) - 1) / -z, (Math.sinh(root) - root) / root ** 3];
}
