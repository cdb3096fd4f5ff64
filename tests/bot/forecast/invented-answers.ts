/**
 * Answers in the services' own shapes, with invented values.
 *
 * @packageDocumentation
 */

export type Values = readonly (number | null)[];

const DAY_HOURS = 24;
const START_SECONDS = Date.UTC(2026, 9, 10) / 1000;

/** Whole hours from 2026-10-10T00:00Z, as seconds. */
export function hourlySeconds(count = DAY_HOURS): number[] {
  return Array.from({ length: count }, (_, hour) => START_SECONDS + hour * 3600);
}

export function repeated(value: number | null, count = DAY_HOURS): Values {
  return Array.from({ length: count }, () => value);
}

const UNITS: Readonly<Record<string, string>> = {
  cloud_cover: "%",
  temperature_2m: "°C",
  dew_point_2m: "°C",
  wind_speed_10m: "m/s",
  wind_gusts_10m: "m/s",
  precipitation: "mm",
  aerosol_optical_depth: "",
};

function unitOf(key: string): string {
  const name = Object.keys(UNITS).find((known) => key.startsWith(known));
  return name === undefined ? "%" : (UNITS[name] ?? "%");
}

/** One place's answer of Open-Meteo; keys as they stand in it, suffixes and all. */
export function openMeteoAnswer(
  columns: Readonly<Record<string, Values>>,
  units: Readonly<Record<string, string>> = {},
): Record<string, unknown> {
  const count = Math.max(...Object.values(columns).map((values) => values.length));
  return {
    latitude: 54.48,
    longitude: -2.6199999,
    generationtime_ms: 0.7,
    utc_offset_seconds: 0,
    timezone: "GMT",
    timezone_abbreviation: "GMT",
    elevation: 300,
    hourly_units: {
      time: "unixtime",
      ...Object.fromEntries(Object.keys(columns).map((key) => [key, unitOf(key)])),
      ...units,
    },
    hourly: { time: hourlySeconds(count), ...columns },
  };
}

/** Three models with the same cloud all day. */
export function threeModels(cloud: number): Record<string, unknown> {
  return openMeteoAnswer({
    cloud_cover_icon_seamless: repeated(cloud),
    cloud_cover_gfs_seamless: repeated(cloud),
    cloud_cover_ecmwf_ifs025: repeated(cloud),
    temperature_2m_icon_seamless: repeated(8),
    temperature_2m_gfs_seamless: repeated(9),
    temperature_2m_ecmwf_ifs025: repeated(10),
  });
}

export function aerosolAnswer(depth: number): Record<string, unknown> {
  return openMeteoAnswer({ aerosol_optical_depth: repeated(depth) });
}

type MetEntry = {
  readonly time: string;
  readonly instant: Readonly<Record<string, number>>;
  readonly next_1_hours?: Readonly<Record<string, number>>;
  readonly next_6_hours?: Readonly<Record<string, number>>;
};

/** An answer of MET Norway from its entries. */
export function metAnswer(
  entries: readonly MetEntry[],
  units: Readonly<Record<string, string>> = {},
): Record<string, unknown> {
  return {
    type: "Feature",
    geometry: { type: "Point", coordinates: [-2.6, 54.5, 300] },
    properties: {
      meta: {
        updated_at: "2026-10-10T11:12:13Z",
        units: {
          air_temperature: "celsius",
          cloud_area_fraction: "%",
          precipitation_amount: "mm",
          wind_speed: "m/s",
          ...units,
        },
      },
      timeseries: entries.map(({ time, instant, ...periods }) => ({
        time,
        data: {
          instant: { details: instant },
          ...Object.fromEntries(
            Object.entries(periods).map(([name, details]) => [
              name,
              { summary: { symbol_code: "fair_night" }, details },
            ]),
          ),
        },
      })),
    },
  };
}

/** Hourly from noon for so many hours, with the same cloud. */
export function metHours(cloud: number, count = 24): Record<string, unknown> {
  return metAnswer(
    Array.from({ length: count }, (_, hour) => ({
      time: new Date(Date.UTC(2026, 9, 10, 12 + hour)).toISOString().replace(".000", ""),
      instant: { air_temperature: 7, cloud_area_fraction: cloud, wind_speed: 2 },
      ...(hour === count - 1 ? {} : { next_1_hours: { precipitation_amount: 0 } }),
    })),
  );
}
