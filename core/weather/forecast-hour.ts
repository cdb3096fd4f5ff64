/**
 * What a weather model says, in one shape whatever the provider.
 *
 * A value a model lacks is `null`: unknown, never zero.
 *
 * @packageDocumentation
 */

export type ForecastHour = {
  readonly at: Date;
  /** Total cloud, percent of the sky. */
  readonly cloudPercent: number | null;
  readonly lowCloudPercent: number | null;
  readonly midCloudPercent: number | null;
  readonly highCloudPercent: number | null;
  readonly temperatureCelsius: number | null;
  readonly dewPointCelsius: number | null;
  readonly humidityPercent: number | null;
  readonly windMetresPerSecond: number | null;
  /** The strongest gust of the hour before `at`. */
  readonly gustMetresPerSecond: number | null;
  /** Fallen in the hour before `at`, millimetres. */
  readonly precipitationMm: number | null;
  readonly precipitationProbabilityPercent: number | null;
  readonly fogPercent: number | null;
  readonly visibilityMetres: number | null;
  /** At 550 nm, dimensionless. */
  readonly aerosolOpticalDepth: number | null;
  /** Wind near 250 hPa. */
  readonly upperWindMetresPerSecond: number | null;
};

/** One model's hours for one place, in order of time. */
export type ModelForecast = {
  /** As credited: `Open-Meteo`, `MET Norway`. */
  readonly provider: string;
  readonly model: string;
  readonly issuedAt: Date | null;
  readonly fetchedAt: Date | null;
  /** Where its cloud layers part, so that no two providers' layers are averaged. */
  readonly layerBoundariesMetres: readonly [number, number];
  readonly hours: readonly ForecastHour[];
  /** Invented for the demo: said in the title of whatever shows it. */
  readonly sample: boolean;
};
