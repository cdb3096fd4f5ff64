/**
 * What an exposure was worked out with for want of the asker's own data, a sentence each.
 *
 * @packageDocumentation
 */
import { FILTER_TRANSMISSION } from "../config/filters.ts";
import { SEEING_ARCSEC, UNKNOWN_AIR_CELSIUS } from "../config/rig-defaults.ts";
import type { ExposureSum } from "./exposure-sum.ts";

export function exposureAssumptions(sum: ExposureSum): readonly string[] {
  const { question, known, sumsFor, plan } = sum;
  const { rig, filter, situation, asked } = question;
  const assumptions = [...rig.assumptions, ...situation.assumptions];
  const measured = plan.leading.rates.leading.channel.measuredSkyElectrons !== null;
  if (!measured)
    assumptions.push("Sky electrons follow from its brightness in V, flat from 400 to 700 nm: rough.");
  if (filter.bands.length > 0 && filter.transmission === FILTER_TRANSMISSION) {
    assumptions.push(`The filter is taken to pass ${Math.round(FILTER_TRANSMISSION * 100)} % at its peak.`);
  }
  if (rig.sensorTemperature.kind === "above-air" && situation.verdict.kind === "unknown") {
    assumptions.push(
      `The air is taken as ${UNKNOWN_AIR_CELSIUS} °C, for want of a forecast; give “sensor-temp” for your own.`,
    );
  }
  if (asked.seeingArcsec === null && situation.site.seeingArcsec === null) {
    assumptions.push(`A star's blur is taken as ${SEEING_ARCSEC}″ at the zenith.`);
  }
  if (asked.star === null) {
    assumptions.push(
      `The longest sub is for a star of magnitude ${sum.starMagnitude}; name a “star” for another.`,
    );
  }
  if (sumsFor === "window" && situation.times.darkWindows.length === 0) {
    assumptions.push("There is no true darkness this night: twilight is counted with the sky.");
  }
  if (known.basis === "assumed") {
    assumptions.push("The object's brightness is not known: a faint figure of its kind stands in.");
  }
  return assumptions;
}
