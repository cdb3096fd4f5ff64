/**
 * The planets of one night as found for a site, and as figures.
 *
 * @packageDocumentation
 */
import type { NightTimes } from "../core/night/night.ts";
import type { JovianPhenomenon, JovianSystem } from "../core/outreach/jupiter-moons.ts";
import type { PlanetEvent } from "../core/outreach/planet-events.ts";
import type { PlanetLook, PlanetNight } from "../core/outreach/planets.ts";
import type { Site } from "../core/site.ts";
import { type Figure, isoOrNull } from "./answer.ts";
import { siteFigures, spanFigure, spanFigures } from "./object-figures.ts";

/** Jupiter and its moons at one instant, and what happens while it can be seen. */
export type JupiterTonight = {
  readonly at: Date;
  readonly look: PlanetLook;
  readonly system: JovianSystem;
  readonly phenomena: readonly JovianPhenomenon[];
};

export type PlanetsTonight = {
  readonly site: Site;
  readonly times: NightTimes;
  readonly nights: readonly PlanetNight[];
  readonly events: readonly PlanetEvent[];
  readonly jupiter: JupiterTonight | null;
  /** The time asked for. */
  readonly named: Date | null;
};

export function planetFigures(found: PlanetsTonight): { readonly [name: string]: Figure } {
  const { site, times, nights, events, jupiter } = found;
  return {
    site: siteFigures(site),
    night: times.night.date,
    planets: nights.map((night) => ({
      name: night.planet,
      rise: isoOrNull(night.rise),
      transit: isoOrNull(night.transit),
      set: isoOrNull(night.set),
      windows: spanFigures(night.windows),
      look: lookFigures(night.look),
    })),
    jupiter: jupiter === null ? null : jupiterFigures(jupiter),
    events: events.map(({ planet, kind, at, elongationDeg }) => ({
      planet,
      kind,
      at: at.toISOString(),
      elongationDeg,
    })),
  };
}

function lookFigures(look: PlanetLook): { readonly [name: string]: Figure } {
  return {
    at: look.at.toISOString(),
    altitudeDeg: look.altitudeDeg,
    azimuthDeg: look.azimuthDeg,
    raDeg: look.raDeg,
    decDeg: look.decDeg,
    constellation: look.constellation,
    distanceAu: look.distanceAu,
    diameterArcsec: look.diameterArcsec,
    magnitude: look.magnitude,
    illuminatedFraction: look.illuminatedFraction,
    phaseAngleDeg: look.phaseAngleDeg,
    elongationDeg: look.elongationDeg,
    evening: look.evening,
    axisPositionAngleDeg: look.axisDeg,
    brightLimbPositionAngleDeg: look.brightLimbDeg,
    parallacticAngleDeg: look.parallacticDeg,
    ring: look.ring === null ? null : { ...look.ring },
  };
}

function jupiterFigures({ at, system, phenomena }: JupiterTonight): { readonly [name: string]: Figure } {
  return {
    at: at.toISOString(),
    /** In Jupiter's equatorial radii: west, north, beyond. */
    moons: system.moons.map(({ numeral, x, y, z, state }) => ({ numeral, x, y, z, state })),
    shadows: system.shadows.map(({ numeral, x, y }) => ({ numeral, x, y })),
    phenomena: phenomena.map(({ numeral, kind, beginsInside, endsInside, ...span }) => ({
      numeral,
      kind,
      ...spanFigure(span),
      beginsInside,
      endsInside,
    })),
  };
}
