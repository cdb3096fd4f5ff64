/** The parts of astronomia that the outreach tests ask; it ships no types. Radians, Julian ephemeris days. */
declare module "astronomia/planetposition" {
  export class Planet {
    constructor(data: unknown);
  }
}
declare module "astronomia/data/*" {
  const data: unknown;
  // biome-ignore lint/style/noDefaultExport: this is how the package exports its series
  export default data;
}
declare module "astronomia/solardisk" {
  import type { Planet } from "astronomia/planetposition";
  /** P, B0, L0. */
  export function ephemeris(jde: number, earth: Planet): [number, number, number];
}
declare module "astronomia/moon" {
  import type { Planet } from "astronomia/planetposition";

  type Selenographic = { readonly lon: number; readonly lat: number };
  /** Libration, axis, the Sun over the Moon. */
  export function physical(jde: number, earth: Planet): [Selenographic, number, Selenographic];
  export function sunAltitude(place: Selenographic, sun: Selenographic): number;
  export const selenographic: Readonly<Record<string, Selenographic>>;
}
declare module "astronomia/saturnring" {
  import type { Planet } from "astronomia/planetposition";
  /** B, B', difference of longitudes, P, major and minor axes. */
  export function ring(
    jde: number,
    earth: Planet,
    saturn: Planet,
  ): [number, number, number, number, number, number];
}
declare module "astronomia/jupitermoons" {
  import type { Planet } from "astronomia/planetposition";

  type BesideJupiter = { readonly x: number; readonly y: number; readonly z: number };
  /** Theory E5: west, north, beyond, in equatorial radii; I to IV. */
  export function e5(
    jde: number,
    earth: Planet | { position(jde: number): { lon: number; lat: number; range: number } },
    jupiter: Planet,
  ): readonly [BesideJupiter, BesideJupiter, BesideJupiter, BesideJupiter];
}
declare module "astronomia/nearparabolic" {
  export class Elements {
    constructor(timeP: number, perihelionAu: number, eccentricity: number);
    anomalyDistance(jde: number): { readonly ano: number; readonly dist: number; readonly err: unknown };
  }
}
declare module "astronomia/kepler" {
  /** Eccentric anomaly, by bisection. */
  export function kepler3(eccentricity: number, meanAnomaly: number): number;
}
