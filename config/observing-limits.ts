/**
 * The weather limits a club begins with. All are common practice, chosen, not measured.
 *
 * @packageDocumentation
 */
import type { ObservingLimits, OpticsCooling } from "../core/weather/observing-limits.ts";

/** A lens or corrector that faces a clear sky, bare. Common practice. */
export const BARE_OPTICS: OpticsCooling = { coolingCelsius: 3.5, halvingWindMetresPerSecond: 3 };

/** Fog is a visibility under one kilometre (WMO-No. 8); the rest is common practice. */
export const OBSERVING_LIMITS: ObservingLimits = {
  cloudPercent: 30,
  poorCloudPercent: 50,
  highCloudPercent: 50,
  otherLayersPercent: 5,
  precipitationMm: 0.1,
  precipitationProbabilityPercent: 20,
  gustMetresPerSecond: 40 / 3.6,
  fogPercent: 10,
  visibilityMetres: 1000,
  fogRiskSpreadCelsius: 1,
  fogRiskWindMetresPerSecond: 2,
  goHours: 2.5,
  goDarknessShare: 0.6,
  marginalShare: 0.5,
  agreementShare: 0.6,
  knownShare: 0.5,
  verdictNights: 3,
  outlookNights: 7,
  oldAfterHours: 12,
  optics: BARE_OPTICS,
};
