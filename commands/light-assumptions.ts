/**
 * What sums of light were made with for want of the asker's own data, a sentence each.
 *
 * @packageDocumentation
 */
import { FILTER_TRANSMISSION } from "../config/filters.ts";
import { PHOTOMETRY } from "../config/photometry.ts";
import { UNKNOWN_AIR_CELSIUS } from "../config/rig-defaults.ts";
import type { Filter, Rig } from "../core/rig/rig.ts";
import type { Situation } from "./situation.ts";

/** The rig's, the site's, the filters' and the air's. */
export function lightAssumptions(
  situation: Situation,
  rig: Rig,
  filters: readonly Filter[],
): readonly string[] {
  const assumptions = [...rig.assumptions, ...situation.assumptions];
  const { aerosolExtinction } = situation.conditions;
  if (rig.kind === "camera") {
    const usual = filters.some(
      ({ bands, transmission }) => bands.length > 0 && transmission === FILTER_TRANSMISSION,
    );
    if (usual) {
      assumptions.push(`The filter is taken to pass ${Math.round(FILTER_TRANSMISSION * 100)} % at its peak.`);
    }
    if (rig.sensorTemperature.kind === "above-air" && situation.verdict.kind === "unknown") {
      assumptions.push(`The air is taken as ${UNKNOWN_AIR_CELSIUS} °C, for want of a forecast.`);
    }
  }
  if (aerosolExtinction === PHOTOMETRY.aerosolExtinction) {
    assumptions.push(`Haze is taken to dim the zenith by ${aerosolExtinction} mag: clear air.`);
  }
  return assumptions;
}
