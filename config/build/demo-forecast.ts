/**
 * Writes the demo club's sample forecast: ten invented nights, good and bad, in the
 * shape in which several models are answered.
 *
 * Run with `npx tsx config/build/demo-forecast.ts`; every number is invented here.
 *
 * @packageDocumentation
 */
import { writeFileSync } from "node:fs";

/** Cloud, percent, at 12, 15, 18, 21, 0, 3, 6 and 9 hours UTC from the day's noon on. */
type Story = {
  readonly cloud: readonly [number, number, number, number, number, number, number, number];
  /** Share of the cloud that is low, middle and high. */
  readonly layers: readonly [number, number, number];
  readonly windMetresPerSecond: number;
  readonly rainMm: number;
  readonly nightCelsius: number;
  readonly upperWindMetresPerSecond: number;
};

const LOW = [0.8, 0.5, 0.2] as const;
const HIGH = [0, 0, 1] as const;

/** The first night is yesterday's, the second tonight's. */
const STORIES: readonly Story[] = [
  {
    cloud: [55, 40, 25, 10, 5, 5, 10, 30],
    layers: LOW,
    windMetresPerSecond: 2.4,
    rainMm: 0,
    nightCelsius: 7,
    upperWindMetresPerSecond: 22,
  },
  {
    cloud: [75, 75, 70, 12, 4, 12, 80, 75],
    layers: LOW,
    windMetresPerSecond: 2.8,
    rainMm: 0,
    nightCelsius: 6,
    upperWindMetresPerSecond: 18,
  },
  {
    cloud: [70, 65, 60, 44, 40, 38, 55, 70],
    layers: LOW,
    windMetresPerSecond: 4.5,
    rainMm: 0,
    nightCelsius: 8,
    upperWindMetresPerSecond: 31,
  },
  {
    cloud: [90, 95, 100, 100, 98, 95, 90, 85],
    layers: LOW,
    windMetresPerSecond: 8,
    rainMm: 0.8,
    nightCelsius: 9,
    upperWindMetresPerSecond: 46,
  },
  {
    cloud: [40, 25, 15, 5, 0, 0, 5, 10],
    layers: LOW,
    windMetresPerSecond: 1.5,
    rainMm: 0,
    nightCelsius: 2,
    upperWindMetresPerSecond: 15,
  },
  {
    cloud: [20, 25, 30, 38, 42, 45, 48, 50],
    layers: HIGH,
    windMetresPerSecond: 3.2,
    rainMm: 0,
    nightCelsius: 4,
    upperWindMetresPerSecond: 38,
  },
  {
    cloud: [65, 80, 90, 85, 75, 70, 80, 90],
    layers: LOW,
    windMetresPerSecond: 6,
    rainMm: 0.3,
    nightCelsius: 8,
    upperWindMetresPerSecond: 41,
  },
  {
    cloud: [60, 45, 30, 20, 15, 10, 20, 40],
    layers: LOW,
    windMetresPerSecond: 3.5,
    rainMm: 0,
    nightCelsius: 5,
    upperWindMetresPerSecond: 26,
  },
  {
    cloud: [50, 55, 60, 60, 62, 65, 70, 75],
    layers: LOW,
    windMetresPerSecond: 4,
    rainMm: 0,
    nightCelsius: 7,
    upperWindMetresPerSecond: 30,
  },
  {
    cloud: [80, 85, 90, 90, 95, 95, 90, 85],
    layers: LOW,
    windMetresPerSecond: 7,
    rainMm: 0.5,
    nightCelsius: 8,
    upperWindMetresPerSecond: 35,
  },
];

/** Models differ: by so much cloud, and by so many hours in when it comes. */
const MODELS = [
  { name: "one", cloudFactor: 1, lateHours: 0 },
  { name: "two", cloudFactor: 1.12, lateHours: 0.5 },
  { name: "three", cloudFactor: 0.85, lateHours: -0.5 },
] as const;

/** A Monday long past, 2001-01-01T12:00Z; laid on tonight by whole days when shown. */
const START_SECONDS = 978_350_400;
const HOURS = STORIES.length * 24;

function storyAt(hour: number): Story {
  const story = STORIES[Math.min(STORIES.length - 1, Math.max(0, Math.floor(hour / 24)))];
  if (story === undefined) throw new Error("there are no stories");
  return story;
}

function cloudAt(hour: number): number {
  const before = Math.floor(hour / 3) * 3;
  const at = (threeHourly: number) => storyAt(threeHourly).cloud[(((threeHourly % 24) + 24) % 24) / 3] ?? 0;
  return at(before) + ((at(before + 3) - at(before)) * (hour - before)) / 3;
}

const round = (value: number, decimals: number) => Number(value.toFixed(decimals));

function hourOf(hour: number, model: (typeof MODELS)[number]): Record<string, number> {
  const story = storyAt(hour);
  const cloud = Math.min(100, Math.max(0, cloudAt(hour - model.lateHours) * model.cloudFactor));
  const [low, mid, high] = story.layers;
  // Warmest two hours after noon.
  const warmth = 0.5 * (1 + Math.cos(((hour - 2 - 24) / 24) * 2 * Math.PI));
  const temperature = story.nightCelsius + 6 * warmth - (model.cloudFactor - 1) * 3;
  const wind = story.windMetresPerSecond * (0.7 + 0.6 * warmth) * model.cloudFactor;
  return {
    cloud_cover: Math.round(cloud),
    cloud_cover_low: Math.round(cloud * low),
    cloud_cover_mid: Math.round(cloud * mid),
    cloud_cover_high: Math.round(cloud * high),
    temperature_2m: round(temperature, 1),
    dew_point_2m: round(story.nightCelsius - 2.2, 1),
    wind_speed_10m: round(wind, 1),
    wind_gusts_10m: round(wind * 1.8, 1),
    precipitation: cloud > 80 ? story.rainMm : 0,
    precipitation_probability: story.rainMm > 0 ? Math.round(cloud * 0.8) : Math.round(cloud * 0.1),
    visibility: 24_000,
    wind_speed_250hPa: round(story.upperWindMetresPerSecond * model.cloudFactor, 1),
  };
}

const UNITS: Readonly<Record<string, string>> = {
  cloud_cover: "%",
  cloud_cover_low: "%",
  cloud_cover_mid: "%",
  cloud_cover_high: "%",
  temperature_2m: "°C",
  dew_point_2m: "°C",
  wind_speed_10m: "m/s",
  wind_gusts_10m: "m/s",
  precipitation: "mm",
  precipitation_probability: "%",
  visibility: "m",
  wind_speed_250hPa: "m/s",
};

const hourly: Record<string, number[]> = {
  time: Array.from({ length: HOURS }, (_, hour) => START_SECONDS + hour * 3600),
};
const hourlyUnits: Record<string, string> = { time: "unixtime" };
for (const model of MODELS) {
  for (const [variable, unit] of Object.entries(UNITS)) {
    const key = `${variable}_${model.name}`;
    hourlyUnits[key] = unit;
    hourly[key] = Array.from({ length: HOURS }, (_, hour) => hourOf(hour, model)[variable] ?? 0);
  }
}

writeFileSync(
  new URL("../data/demo-forecast.json", import.meta.url),
  `${JSON.stringify({
    sample: true,
    latitude: 54.5,
    longitude: -2.6,
    utc_offset_seconds: 0,
    timezone: "GMT",
    hourly_units: hourlyUnits,
    hourly,
  })}\n`,
);
