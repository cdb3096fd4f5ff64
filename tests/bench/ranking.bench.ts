/**
 * The whole catalogue ranked for one night, beside the arithmetic it cannot do without.
 *
 * @packageDocumentation
 */
import { spawnSync } from "node:child_process";
import { openCatalogue } from "../../bot/library/open-catalogue.ts";
import { PHOTOMETRY } from "../../config/photometry.ts";
import { KIND_BRIGHTNESS, LEAST_ALTITUDE_DEG, RANKING_RULES } from "../../config/ranking.ts";
import { bandResponses } from "../../core/rig/band-response.ts";
import { catalogueColumns } from "../../core/targets/catalogue-columns.ts";
import { nightGrid } from "../../core/targets/night-grid.ts";
import { rankCamera } from "../../core/targets/ranking.ts";
import { FELL, H_ALPHA, LONG_MONO, nightOf } from "../core/targets/night-of-a-rig.ts";
import { type Measured, medianMs } from "./measured.ts";

const RUNS = 15;

/** A skyline that has to be asked for many objects, and a Moon that is up half the night. */
const SITE = {
  ...FELL,
  skyline: [
    { azimuthDeg: 0, altitudeDeg: 5 },
    { azimuthDeg: 120, altitudeDeg: 12 },
    { azimuthDeg: 180, altitudeDeg: 35 },
    { azimuthDeg: 240, altitudeDeg: 15 },
  ],
};

export async function rankingTimes(): Promise<readonly Measured[]> {
  const columns = catalogueColumns(openCatalogue().objects, KIND_BRIGHTNESS, RANKING_RULES);
  const { times, conditions } = nightOf(SITE, "2026-10-21");
  const works = bandResponses(LONG_MONO, H_ALPHA, PHOTOMETRY).map((band) => ({
    rig: LONG_MONO,
    band,
    subSeconds: 300,
  }));
  const clearance = { skyline: SITE.skyline, leastAltitudeDeg: LEAST_ALTITUDE_DEG.imaging };
  const rank = () => {
    const grid = nightGrid(conditions, times.workingWindows, columns.directions);
    return rankCamera(
      { columns, grid, filters: [works], conditions, clearance, rules: RANKING_RULES, preferred: new Map() },
      100,
    );
  };
  const ranking = await medianMs(RUNS, rank);

  const grid = nightGrid(conditions, times.workingWindows, columns.directions);
  let above = 0;
  const bare = await medianMs(RUNS, () => {
    const { directions } = grid;
    for (const { up } of grid.instants) {
      const [x, y, z] = up;
      for (let at = 0; at < directions.length; at += 3) {
        const sine =
          x * (directions[at] as number) +
          y * (directions[at + 1] as number) +
          z * (directions[at + 2] as number);
        if (sine > 0.5) above++;
      }
    }
  });
  const size = `${columns.objects.length} objects, ${grid.instants.length} instants, ${above > 0 ? "all up some time" : ""}`;
  return [
    {
      what: "rank the whole catalogue for a night",
      value: ranking,
      unit: "ms",
      budget: 50,
      note: `(${size})`,
    },
    { what: "a bare loop of the altitudes' multiply-adds", value: bare, unit: "ms", budget: null },
    { what: "ranking over bare loop", value: ranking / bare, unit: "×", budget: 5 },
    ...astropyTimes(columns.objects.length, grid.instants.length, ranking),
  ];
}

const ASTROPY = `
import sys, time
import numpy as np
import astropy.units as u
from astropy.coordinates import AltAz, EarthLocation, SkyCoord
from astropy.time import Time
from astropy.utils import iers
iers.conf.auto_download = False
iers.conf.iers_degraded_accuracy = "ignore"
objects, instants = int(sys.argv[1]), int(sys.argv[2])
rng = np.random.default_rng(1)
sky = SkyCoord(rng.uniform(0, 360, objects) * u.deg, np.degrees(np.arcsin(rng.uniform(-1, 1, objects))) * u.deg)
site = EarthLocation(lat=54.5 * u.deg, lon=-2.6 * u.deg)
times = Time("2026-10-21T19:00:00") + np.arange(instants) * 300 * u.s
start = time.perf_counter()
for instant in times:
    placed = sky.transform_to(AltAz(obstime=instant, location=site))
    placed.alt.deg, placed.az.deg
print((time.perf_counter() - start) * 1000)
`;

/** A vectorised general library on the altitudes and azimuths alone; nothing where it is not installed. */
function astropyTimes(objects: number, instants: number, rankingMs: number): readonly Measured[] {
  for (const python of ["python3", "/usr/bin/python3"]) {
    const ran = spawnSync(python, ["-c", ASTROPY, String(objects), String(instants)], { encoding: "utf8" });
    const value = Number.parseFloat(ran.stdout ?? "");
    if (ran.status !== 0 || !Number.isFinite(value)) continue;
    return [
      { what: "astropy, altitudes and azimuths alone", value, unit: "ms", budget: null },
      { what: "astropy over ranking (at least 20)", value: value / rankingMs, unit: "×", budget: null },
    ];
  }
  return [];
}
