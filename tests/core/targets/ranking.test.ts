import { beforeAll, describe, expect, it } from "vitest";
import { openCatalogue } from "../../../bot/library/open-catalogue.ts";
import { PHOTOMETRY } from "../../../config/photometry.ts";
import { KIND_BRIGHTNESS, LEAST_ALTITUDE_DEG, RANKING_RULES, VISUAL_RULES } from "../../../config/ranking.ts";
import { totalHours } from "../../../core/interval.ts";
import { bandResponses } from "../../../core/rig/band-response.ts";
import type { CameraRig, Filter, Rig, VisualRig } from "../../../core/rig/rig.ts";
import type { Site } from "../../../core/site.ts";
import { type CatalogueColumns, catalogueColumns } from "../../../core/targets/catalogue-columns.ts";
import { countedHours } from "../../../core/targets/counting-hours.ts";
import { nightGrid } from "../../../core/targets/night-grid.ts";
import { objectBrightness } from "../../../core/targets/object-brightness.ts";
import { fixedTrack } from "../../../core/targets/placer.ts";
import { rankCamera } from "../../../core/targets/ranking.ts";
import { middleOf } from "../../../core/targets/target-night.ts";
import { type FilterLooking, type FitsTonight, fitsTonight } from "../../../core/targets/tonight.ts";
import { type Clearance, visibleIntervals } from "../../../core/targets/visibility.ts";
import { NO_FILTER } from "../rig/fake-rig.ts";
import { FELL, H_ALPHA, KAROO, LONG_MONO, nightOf, SHORT_COLOUR } from "./night-of-a-rig.ts";

let columns: CatalogueColumns;

beforeAll(() => {
  columns = catalogueColumns(openCatalogue().objects, KIND_BRIGHTNESS, RANKING_RULES);
});

const BY_EYE: VisualRig = {
  kind: "visual",
  name: "250 mm reflector",
  apertureMm: 250,
  focalLengthMm: 1200,
  mount: "altazimuth",
  eyepieces: [
    { focalLengthMm: 30, apparentFieldDeg: 68 },
    { focalLengthMm: 10, apparentFieldDeg: 68 },
    { focalLengthMm: 6, apparentFieldDeg: 60 },
  ],
  assumptions: [],
};

type RigLooking = FilterLooking & { readonly rig: Rig; readonly clearance: Clearance };

function camera(rig: CameraRig, filter: Filter, site: Site): RigLooking {
  return {
    rig,
    filter,
    looking: {
      kind: "camera",
      works: bandResponses(rig, filter, PHOTOMETRY).map((band) => ({ rig, band, subSeconds: 120 })),
    },
    clearance: { skyline: site.skyline, leastAltitudeDeg: LEAST_ALTITUDE_DEG.imaging },
  };
}

function eye(site: Site): RigLooking {
  const clearance = { skyline: site.skyline, leastAltitudeDeg: LEAST_ALTITUDE_DEG.visual };
  return { rig: BY_EYE, filter: NO_FILTER, looking: { kind: "eye" }, clearance };
}

function fits(site: Site, date: string, looking: RigLooking, limit = 10): FitsTonight {
  const { times, conditions } = nightOf(site, date);
  return fitsTonight({
    columns,
    conditions,
    times,
    clear: null,
    rig: looking.rig,
    clearance: looking.clearance,
    lookings: [looking],
    rules: RANKING_RULES,
    visualRules: VISUAL_RULES,
    byKind: KIND_BRIGHTNESS,
    limit,
    preferred: new Map(),
  });
}

const idsOf = ({ targets }: FitsTonight) =>
  targets.map(({ target }) =>
    target.kind === "object" ? target.object.id : target.kind === "body" ? target.body : "?",
  );

describe("fitsTonight", () => {
  it("weighs at least 12,000 objects", () => {
    expect(fits(FELL, "2026-10-10", camera(LONG_MONO, H_ALPHA, FELL)).considered).toBeGreaterThanOrEqual(
      12_000,
    );
  });

  it("takes the same hours from its tables as the sum object by object, to 1 %", () => {
    const looking = camera(LONG_MONO, H_ALPHA, FELL);
    // A third of the night under a gibbous Moon, so that every term of the sum matters.
    const { times, conditions } = nightOf(FELL, "2026-10-21");
    const [work] = looking.looking.kind === "camera" ? looking.looking.works : [];
    if (work === undefined) throw new Error("no work");
    for (const { target, night } of fits(FELL, "2026-10-21", looking, 20).targets) {
      if (target.kind !== "object") continue;
      const track = fixedTrack(FELL, target.object, middleOf(times.night));
      const windows = visibleIntervals((at) => track(at.getTime()), looking.clearance, times.workingWindows);
      const { brightness } = objectBrightness(target.object, KIND_BRIGHTNESS);
      const exact = countedHours(work, conditions, brightness, track, windows);
      expect(night.counted.countingHours / exact.countingHours).toBeCloseTo(1, 6);
      const row = rowOf(looking, "2026-10-21", target.object.id);
      expect(Math.abs(row / exact.countingHours - 1), target.object.id).toBeLessThan(0.01);
    }
  });

  it("sees the skyline as the exact search does, to three minutes an edge", () => {
    const skyline = [
      { azimuthDeg: 20, altitudeDeg: 20 },
      { azimuthDeg: 100, altitudeDeg: 55 },
      { azimuthDeg: 185, altitudeDeg: 35 },
      { azimuthDeg: 300, altitudeDeg: 60 },
    ];
    const walled = { ...FELL, skyline };
    const { times, conditions } = nightOf(walled, "2026-10-10");
    const { looking, clearance } = camera(LONG_MONO, H_ALPHA, walled);
    const works = looking.kind === "camera" ? looking.works : [];
    const grid = nightGrid(conditions, times.workingWindows, columns.directions);
    const rows = rankCamera(
      { columns, grid, filters: [works], conditions, clearance, rules: RANKING_RULES, preferred: new Map() },
      60,
    );
    expect(rows).toHaveLength(60);
    for (const { object, usableHours } of rows) {
      const track = fixedTrack(walled, object, middleOf(times.night));
      const windows = visibleIntervals((at) => track(at.getTime()), clearance, times.workingWindows);
      // Each edge of a window is known to half a step of the grid, two and a half minutes.
      const edges = Math.max(1, 2 * windows.length);
      expect(Math.abs(usableHours - totalHours(windows)), object.id).toBeLessThan((edges * 3) / 60);
    }
  });

  it("proposes nothing for the line filter that shows nothing in it", () => {
    const kinds = fits(FELL, "2026-10-10", camera(LONG_MONO, H_ALPHA, FELL), 30).targets.map(({ target }) =>
      target.kind === "object" ? target.object.kind : "body",
    );
    for (const dark of ["open-cluster", "globular-cluster", "reflection-nebula", "dark-nebula"]) {
      expect(kinds).not.toContain(dark);
    }
  });

  it("shows an object once", () => {
    const ids = idsOf(fits(FELL, "2026-01-10", camera(SHORT_COLOUR, NO_FILTER, FELL), 50));
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("gives one row to a nebula and its parts", () => {
    const { targets } = fits(FELL, "2026-09-11", camera(LONG_MONO, H_ALPHA, FELL), 50);
    const families = targets.flatMap(({ target }) =>
      target.kind === "object" ? [target.object.partOf ?? target.object.id] : [],
    );
    expect(families.length).toBeGreaterThan(40);
    expect(new Set(families).size).toBe(families.length);
  });

  it("shows the eye planets, doubles and clusters, and no camera any", () => {
    const ids = idsOf(fits(FELL, "2026-01-15", eye(FELL), 15));
    expect(ids).toContain("Jupiter");
    expect(idsOf(fits(FELL, "2026-01-15", camera(SHORT_COLOUR, NO_FILTER, FELL), 15))).not.toContain(
      "Jupiter",
    );
  });

  it("brings forward what is begun", () => {
    const looking = camera(LONG_MONO, H_ALPHA, FELL);
    const { times, conditions } = nightOf(FELL, "2026-10-10");
    const plain = fits(FELL, "2026-10-10", looking, 20);
    const last = plain.targets.at(-1)?.target;
    if (last?.kind !== "object") throw new Error("no object");
    const begun = fitsTonight({
      columns,
      conditions,
      times,
      clear: null,
      rig: looking.rig,
      clearance: looking.clearance,
      lookings: [looking],
      rules: RANKING_RULES,
      visualRules: VISUAL_RULES,
      byKind: KIND_BRIGHTNESS,
      limit: 20,
      preferred: new Map([[last.object.id, 10]]),
    });
    expect(idsOf(begun)[0]).toBe(last.object.id);
  });
});

/** Counting hours of one object as the ranking's tables have them. */
function rowOf(looking: RigLooking, date: string, id: string): number {
  const { times, conditions } = nightOf(FELL, date);
  const only = {
    ...columns,
    ...catalogueColumns(
      columns.objects.filter((object) => object.id === id),
      KIND_BRIGHTNESS,
      RANKING_RULES,
    ),
  };
  const works = looking.looking.kind === "camera" ? looking.looking.works : [];
  const grid = nightGrid(conditions, times.workingWindows, only.directions);
  const question = {
    columns: only,
    grid,
    filters: [works],
    conditions,
    clearance: looking.clearance,
    rules: RANKING_RULES,
    preferred: new Map(),
  };
  const [row] = rankCamera(question, 1);
  return row?.countingHours ?? Number.NaN;
}

// Common practice: a list of what such an observer would name, not of nameless smudges. The overlay of the
// catalogue holds what is named and photographed; eight of ten must be in it.
describe("the first ten", () => {
  const SEASONS = ["2026-01-16", "2026-04-15", "2026-07-14", "2026-10-11"];
  const RIGS: readonly (readonly [string, (site: Site) => RigLooking])[] = [
    ["a 135 mm lens and a colour camera", (site) => camera(SHORT_COLOUR, NO_FILTER, site)],
    ["800 mm f/4, mono, through Hα", (site) => camera(LONG_MONO, H_ALPHA, site)],
    ["a 250 mm reflector by eye", eye],
  ];
  const cases = [FELL, KAROO].flatMap((site) =>
    SEASONS.flatMap((date) => RIGS.map(([name, looking]) => ({ site, date, name, looking }))),
  );

  it.each(cases)("hold eight showpieces for $name at $site.name on $date", ({ site, date, looking }) => {
    const { targets } = fits(site, date, looking(site));
    const known = targets.filter(
      ({ target }) => target.kind === "body" || (target.kind === "object" && target.object.showpiece),
    );
    expect(known.length, idsOf({ targets, considered: 0 }).join(", ")).toBeGreaterThanOrEqual(8);
  });
});
