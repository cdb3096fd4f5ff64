/**
 * The weather limits a club may set for itself, as options and as limits.
 *
 * @packageDocumentation
 */
import { CLUB_LIMIT_RANGES } from "../config/club-defaults.ts";
import type { ClubSettings } from "./books.ts";
import { numberOption } from "./read/numbers.ts";
import { defineNumber } from "./read/options.ts";
import type { Request } from "./request.ts";

type Limits = ClubSettings["limits"];

/** Of a kilometre an hour. */
const METRES_PER_SECOND = 1 / 3.6;

/** One limit: its option, and where the number given goes. */
type LimitOption = {
  readonly name: keyof typeof CLUB_LIMIT_RANGES;
  readonly description: string;
  readonly unit: string;
  limits(value: number): Limits;
};

const LIMITS: readonly LimitOption[] = [
  {
    name: "cloud",
    description: "Usable up to so much cloud, percent",
    unit: "%",
    limits: (cloudPercent) => ({ cloudPercent }),
  },
  {
    name: "high-cloud",
    description: "Usable up to so much cloud where it is high and thin alone, percent",
    unit: "%",
    limits: (highCloudPercent) => ({ highCloudPercent }),
  },
  {
    name: "poor-cloud",
    description: "Counts toward a marginal night up to so much cloud, percent",
    unit: "%",
    limits: (poorCloudPercent) => ({ poorCloudPercent }),
  },
  {
    name: "gusts",
    description: "Gusts up to, km/h",
    unit: "km/h",
    limits: (kmh) => ({ gustMetresPerSecond: kmh * METRES_PER_SECOND }),
  },
  {
    name: "rain",
    description: "Rain in an hour up to, mm",
    unit: "mm",
    limits: (precipitationMm) => ({ precipitationMm }),
  },
  {
    name: "rain-chance",
    description: "The chance of rain stays under, percent",
    unit: "%",
    limits: (precipitationProbabilityPercent) => ({ precipitationProbabilityPercent }),
  },
  {
    name: "go-hours",
    description: "A go needs one usable run of so many hours",
    unit: "hours",
    limits: (goHours) => ({ goHours }),
  },
  {
    name: "go-share",
    description: "Or so much of the darkness, if that is shorter, percent",
    unit: "%",
    limits: (percent) => ({ goDarknessShare: percent / 100 }),
  },
  {
    name: "agreement",
    description: "So many of the models must say the same, percent",
    unit: "%",
    limits: (percent) => ({ agreementShare: percent / 100 }),
  },
];

export const LIMIT_OPTIONS = LIMITS.map(({ name, description }) => defineNumber(name, description));

/**
 * The limits that the options change.
 *
 * @throws AskError naming the option and its range
 */
export function changedLimits(request: Request): Limits {
  const changes = LIMITS.flatMap(({ name, unit, limits }) => {
    const value = numberOption(request, name, { ...CLUB_LIMIT_RANGES[name], unit });
    return value === null ? [] : [limits(value)];
  });
  return Object.assign({}, ...changes);
}
