/**
 * What weather a club still goes out in. The numbers stand in `config/`, and a club may set its own.
 *
 * @packageDocumentation
 */

export type ObservingLimits = {
  /** Total cloud up to this is usable. */
  readonly cloudPercent: number;
  /** Total cloud up to this counts toward a marginal night. */
  readonly poorCloudPercent: number;
  /** Total cloud up to this is usable where it is high, thin cloud alone. */
  readonly highCloudPercent: number;
  /** Cloud is high alone while the low and the middle layer each hold no more than this. */
  readonly otherLayersPercent: number;
  /** Rain or snow in the hour before, up to this. */
  readonly precipitationMm: number;
  /** The chance of rain must stay under this. */
  readonly precipitationProbabilityPercent: number;
  readonly gustMetresPerSecond: number;
  /** Share of the area in fog, up to this. */
  readonly fogPercent: number;
  /** Less visibility than this is fog. */
  readonly visibilityMetres: number;
  /** Air this near its dew point (and this calm, below) may turn to fog. */
  readonly fogRiskSpreadCelsius: number;
  readonly fogRiskWindMetresPerSecond: number;
  /** A go needs one run of so many hours, or of this share of the darkness if that is shorter. */
  readonly goHours: number;
  readonly goDarknessShare: number;
  /** A marginal night needs this share of a go's run. */
  readonly marginalShare: number;
  /** So many of the models must say the same for a go or a no-go. */
  readonly agreementShare: number;
  /** Less of the darkness known than this makes no no-go: the rest might be clear. */
  readonly knownShare: number;
  /** So many nights ahead a verdict; tonight is 0. */
  readonly verdictNights: number;
  /** So many nights ahead an outlook; beyond, nothing. */
  readonly outlookNights: number;
  /** A forecast issued or fetched longer ago than this is called old. */
  readonly oldAfterHours: number;
  readonly optics: OpticsCooling;
};

/** How far optics that face a clear sky cool below the air. */
export type OpticsCooling = {
  readonly coolingCelsius: number;
  /** Wind above this halves it. */
  readonly halvingWindMetresPerSecond: number;
};
