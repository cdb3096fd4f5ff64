/**
 * What an exposure was worked out with for want of the asker's own data, a sentence each.
 *
 * @packageDocumentation
 */
import { SEEING_ARCSEC } from "../config/rig-defaults.ts";
import type { ExposureSum } from "./exposure-sum.ts";
import { lightAssumptions } from "./light-assumptions.ts";

export function exposureAssumptions(sum: ExposureSum): readonly string[] {
  const { question, known, sumsFor, plan } = sum;
  const { rig, filter, situation, asked } = question;
  const assumptions = [...lightAssumptions(situation, rig, [filter])];
  const measured = plan.leading.rates.leading.channel.measuredSkyElectrons !== null;
  if (!measured)
    assumptions.push("Sky electrons follow from its brightness in V, flat from 400 to 700 nm: rough.");
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
