/** Running orders of invented sights: whatever is given, the same rules must hold. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fallBackOf } from "../../../core/outreach/fall-back.ts";
import type { Viewer } from "../../../core/outreach/instruments.ts";
import { runningOrder, type Station, type Stop } from "../../../core/outreach/running-order.ts";
import type { Sight } from "../../../core/outreach/sights.ts";

const EVENING = new Date("2026-11-16T18:00:00Z").getTime();
const minutes = (count: number) => new Date(EVENING + count * 60_000);
const SESSION = { start: minutes(0), end: minutes(150) };

function viewer(apertureMm: number): Viewer {
  return { instrument: { kind: "telescope", count: 1, apertureMm }, apertureMm, uses: [] };
}

const SMALL = viewer(80);
const LARGE = viewer(250);

type Given = {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly appeal?: number;
  readonly quality?: number;
  readonly viewer?: Viewer;
  readonly azimuthDeg?: number;
};

function sight({
  name,
  from,
  to,
  appeal = 5,
  quality = 1,
  viewer: by = SMALL,
  azimuthDeg = 180,
}: Given): Sight {
  return {
    what: {
      name,
      kind: "open-cluster",
      target: { kind: "place", raDeg: 0, decDeg: 0 },
      appeal,
      line: "A line.",
      majorArcmin: 30,
      minorArcmin: 30,
      magnitude: 5,
      surfaceMagArcsec2: null,
    },
    viewer: by,
    window: { start: minutes(from), end: minutes(to) },
    view: {
      use: {
        eyepiece: { focalLengthMm: 30, apparentFieldDeg: 60 },
        power: 16,
        trueFieldDeg: 3.75,
        exitPupilMm: 5,
      },
      quality,
      ease: "at-a-glance",
      apparentDeg: 8,
      level: null,
      limitMag: 11,
      objectInField: 1,
    },
    track: () => ({ altitudeDeg: 40, azimuthDeg, hourAngleDeg: 0 }),
    look: null,
  };
}

const stations = [
  { viewer: SMALL, slotMinutes: 20 },
  { viewer: LARGE, slotMinutes: 25 },
];

const named = ({ stops }: Station) => stops.map(({ sight: { what } }) => what.name);

const anySight = fc
  .record({
    name: fc.constantFrom(..."abcdefghijklmnopqrst"),
    from: fc.integer({ min: 0, max: 140 }),
    length: fc.integer({ min: 1, max: 150 }),
    appeal: fc.integer({ min: 1, max: 10 }),
    quality: fc.double({ min: 0.05, max: 1, noNaN: true }),
    large: fc.boolean(),
  })
  .map(({ name, from, length, appeal, quality, large }) =>
    sight({
      name,
      from,
      to: Math.min(150, from + length),
      appeal,
      quality,
      viewer: large ? LARGE : SMALL,
    }),
  );

const anyEvening = fc
  .uniqueArray(anySight, {
    maxLength: 30,
    selector: ({ what, viewer: by }) => `${what.name} ${by.apertureMm}`,
  })
  .map((sights) => ({ sights, order: runningOrder(sights, stations, SESSION) }));

const pairs = (stops: readonly Stop[]) =>
  stops.flatMap((earlier, index) => stops.slice(index + 1).map((later) => [earlier, later] as const));

describe("runningOrder", () => {
  it("shows nothing outside its window, and nothing for less than a slot", () => {
    fc.assert(
      fc.property(anyEvening, ({ order }) => {
        for (const { stops, slotMinutes } of order) {
          for (const { sight: shown, start, end } of stops) {
            expect(start.getTime()).toBeGreaterThanOrEqual(shown.window.start.getTime());
            expect(end.getTime()).toBeLessThanOrEqual(shown.window.end.getTime());
            expect(end.getTime() - start.getTime()).toBeGreaterThanOrEqual(slotMinutes * 60_000);
          }
        }
      }),
    );
  });

  it("lets no two stops of a station overlap", () => {
    fc.assert(
      fc.property(anyEvening, ({ order }) => {
        for (const { stops } of order) {
          for (const [earlier, later] of pairs(stops)) expect(earlier.end <= later.start).toBe(true);
        }
      }),
    );
  });

  it("shows first what is lost first: nothing waits behind a thing that lasts longer", () => {
    fc.assert(
      fc.property(anyEvening, ({ order }) => {
        for (const { stops } of order) {
          for (const [earlier, later] of pairs(stops)) {
            const wasInSight = later.sight.window.start <= earlier.start;
            if (wasInSight) expect(later.sight.window.end >= earlier.sight.window.end).toBe(true);
          }
        }
      }),
    );
  });

  it("shows a thing once at a station", () => {
    fc.assert(
      fc.property(anyEvening, ({ order }) => {
        for (const station of order) expect(new Set(named(station)).size).toBe(station.stops.length);
      }),
    );
  });

  it("leaves out nothing that an idle station could still show", () => {
    fc.assert(
      fc.property(anyEvening, ({ sights, order }) => {
        for (const station of order.filter(({ stops }) => stops.length === 0)) {
          const long = sights.filter(
            ({ viewer: by, window }) =>
              by === station.viewer && +window.end - +window.start >= station.slotMinutes * 60_000,
          );
          expect(long).toEqual([]);
        }
      }),
    );
  });

  it("puts what sets before what stays, though it is worth less", () => {
    const order = runningOrder(
      [
        sight({ name: "stays", from: 0, to: 150, appeal: 10 }),
        sight({ name: "sets", from: 0, to: 45, appeal: 3 }),
      ],
      stations,
      SESSION,
    );
    expect(named(order[0] as Station)).toEqual(["sets", "stays"]);
  });

  it("gives up the lesser thing where both cannot be had", () => {
    const order = runningOrder(
      [
        sight({ name: "great", from: 0, to: 25, appeal: 10 }),
        sight({ name: "small", from: 0, to: 25, appeal: 3 }),
      ],
      stations,
      SESSION,
    );
    expect(named(order[0] as Station)).toEqual(["great"]);
  });

  it("waits for what rises late", () => {
    const [small] = runningOrder([sight({ name: "late", from: 90, to: 150 })], stations, SESSION);
    expect(small?.stops[0]?.start).toEqual(minutes(90));
  });

  it("shows a thing in the telescope that shows it best", () => {
    const order = runningOrder(
      [
        sight({ name: "faint", from: 0, to: 150, quality: 0.2 }),
        sight({ name: "faint", from: 0, to: 150, quality: 0.9, viewer: LARGE }),
        ...["p", "q", "r", "s", "t", "u", "v"].map((name) => sight({ name, from: 0, to: 150 })),
      ],
      stations,
      SESSION,
    );
    expect(named(order[0] as Station)).not.toContain("faint");
    expect(named(order[1] as Station)).toContain("faint");
  });
});

describe("fallBackOf", () => {
  const stop = (shown: Sight): Stop => ({ sight: shown, start: minutes(20), end: minutes(40) });
  const shown = sight({ name: "shown", from: 0, to: 150, azimuthDeg: 180 });

  it("names something in another part of the sky that the instrument can show all the while", () => {
    const near = sight({ name: "near", from: 0, to: 150, azimuthDeg: 190, appeal: 9 });
    const far = sight({ name: "far", from: 0, to: 150, azimuthDeg: 300 });
    const late = sight({ name: "late", from: 30, to: 150, azimuthDeg: 300, appeal: 9 });
    const other = sight({ name: "other", from: 0, to: 150, azimuthDeg: 300, viewer: LARGE, appeal: 9 });
    expect(fallBackOf(stop(shown), [shown, near, far, late, other])?.what.name).toBe("far");
  });

  it("is nothing where the sky offers nothing else", () => {
    expect(fallBackOf(stop(shown), [shown])).toBeNull();
  });
});
