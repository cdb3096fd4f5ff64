import { describe, expect, it, onTestFinished } from "vitest";
import { storeBooks } from "../../../bot/store/books.ts";
import { removeClub } from "../../../bot/store/club-rows.ts";
import { openStore, type Store } from "../../../bot/store/store.ts";
import type { Books } from "../../../commands/books.ts";
import type { FrameSet, LibrarySet } from "../../../core/log/frame-set.ts";
import { progressLines } from "../../../core/log/progress.ts";
import { processorClock } from "../../processor-clock.ts";
import { temporaryFolder } from "./temporary-folder.ts";

const NOW = Date.UTC(2026, 9, 4, 8);
const CLUB = "fell-end";

async function openBooks(): Promise<{ readonly books: Books; readonly store: Store }> {
  const store = await openStore(temporaryFolder(), NOW);
  onTestFinished(() => store.close());
  return { books: storeBooks(store.db, () => NOW), store };
}

const subs = (over: Partial<FrameSet> = {}): FrameSet => ({
  night: "2026-10-03",
  object: "NGC 6888",
  passband: "o-iii",
  frames: 20,
  rejected: 2,
  subSeconds: 180,
  gain: 100,
  iso: null,
  sensorCelsius: -9.8,
  rotationDeg: 45.5,
  rig: "Eight-inch",
  startedAt: null,
  ...over,
});

const darks: LibrarySet = {
  kind: "dark",
  night: "2026-10-03",
  passband: null,
  frames: 20,
  subSeconds: 180,
  gain: 100,
  iso: null,
  sensorCelsius: -10,
  rotationDeg: null,
  rig: "Eight-inch",
  startedAt: null,
};

const rows = (...sets: readonly FrameSet[]) => ({
  frames: sets.map((set) => ({ set, countingHours: 0.5 })),
  library: [],
});

describe("logBook", () => {
  it("gives back every row as it was added", async () => {
    const { books } = await openBooks();
    const started = subs({
      startedAt: new Date("2026-10-03T21:40:00.250Z"),
      gain: null,
      iso: 800,
      rig: null,
    });
    const added = await books.log.add(CLUB, "me", { ...rows(subs(), started), library: [darks] });
    expect(added).toEqual({ frames: [subs(), started], library: [darks], duplicates: 0 });
    const kept = await books.log.all(CLUB, "me");
    expect(kept.frames).toHaveLength(2);
    expect(kept.frames).toEqual(expect.arrayContaining([subs(), started]));
    expect(kept.library).toEqual([darks]);
  });

  it("keeps the same subs once: same object, filter, rig, start and exposure", async () => {
    const { books } = await openBooks();
    const first = subs({ startedAt: new Date("2026-10-03T21:40:00Z") });
    await books.log.add(CLUB, "me", rows(first));
    const again = await books.log.add(CLUB, "me", rows({ ...first, sensorCelsius: -10, frames: 19 }, first));
    expect(again).toMatchObject({ frames: [], duplicates: 2 });
    const others = [
      subs({ startedAt: new Date("2026-10-03T21:43:00Z") }),
      { ...first, object: "M33" },
      { ...first, passband: "h-alpha" },
      { ...first, rig: "lens" },
      { ...first, subSeconds: 120 },
    ];
    expect(await books.log.add(CLUB, "me", rows(...others))).toMatchObject({ duplicates: 0 });
  });

  it("keeps its sums equal to its rows through adding, repeating and taking back", async () => {
    const { books } = await openBooks();
    await books.log.add(CLUB, "me", rows(subs(), subs({ passband: "h-alpha" })));
    await books.log.add(CLUB, "me", rows(subs(), subs({ frames: 10 })));
    expect(await books.log.inHand(CLUB, "me")).toEqual(
      expect.arrayContaining([
        expect.objectContaining({
          passband: "o-iii",
          frames: 30,
          rejected: 4,
          clockHours: 1.5,
          countingHours: 1,
        }),
        expect.objectContaining({ passband: "h-alpha", frames: 20, clockHours: 1 }),
      ]),
    );
    await books.log.undo(CLUB, "me");
    expect(await books.log.inHand(CLUB, "me")).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ passband: "o-iii", frames: 20, countingHours: 0.5 }),
      ]),
    );
    await books.log.undo(CLUB, "me");
    expect(await books.log.inHand(CLUB, "me")).toEqual([]);
    expect(await books.log.undo(CLUB, "me")).toBeNull();
  });

  it("does not know counting hours where one row's are unknown", async () => {
    const { books } = await openBooks();
    await books.log.add(CLUB, "me", {
      frames: [
        { set: subs(), countingHours: 0.5 },
        { set: subs({ frames: 5 }), countingHours: null },
      ],
      library: [],
    });
    expect((await books.log.inHand(CLUB, "me"))[0]).toMatchObject({ frames: 25, countingHours: null });
  });

  it("shows no row to another member or club", async () => {
    const { books } = await openBooks();
    await books.log.add(CLUB, "me", { ...rows(subs()), library: [darks] });
    await books.log.want(CLUB, "me", { object: "M33", passband: "none", hours: 5 });
    for (const [club, member] of [
      [CLUB, "wren"],
      ["other", "me"],
    ] as const) {
      expect(await books.log.all(club, member)).toEqual({ frames: [], library: [] });
      expect(await books.log.latest(club, member, 10, null)).toEqual([]);
      expect(await books.log.summed(club, member, "2000-01-01")).toEqual([]);
      expect(await books.log.inHand(club, member)).toEqual([]);
      expect(await books.log.wanted(club, member)).toEqual([]);
      expect(await books.log.count(club, member)).toBe(0);
      expect(await books.log.undo(club, member)).toBeNull();
    }
    expect(await books.log.count(CLUB, "me")).toBe(2);
  });

  it("goes with its club, and with its member", async () => {
    const { books, store } = await openBooks();
    await books.log.add(CLUB, "me", rows(subs()));
    await books.log.add("other", "me", rows(subs()));
    await removeClub(store.db, "other");
    expect(await books.log.count("other", "me")).toBe(0);
    await books.members.eraseAll(CLUB, "me");
    expect(await books.log.count(CLUB, "me")).toBe(0);
    expect(await books.log.inHand(CLUB, "me")).toEqual([]);
  });
});

describe("a log of 100,000 frames", () => {
  /** The middle of seven runs, milliseconds of processor time. */
  async function medianMs(work: () => Promise<unknown>): Promise<number> {
    const runs: number[] = [];
    for (let run = 0; run < 7; run++) {
      const processorMs = processorClock();
      await work();
      runs.push(processorMs());
    }
    return runs.sort((one, other) => one - other)[3] ?? Number.NaN;
  }

  it("tells progress, latest rows and recent sets within the 50 ms of any command", {
    timeout: 120_000,
  }, async () => {
    const { books } = await openBooks();
    const objects = ["NGC 6888", "M33", "IC 434", "M27"];
    const dayMs = 86_400_000;
    for (let piece = 0; piece < 10; piece++) {
      const sets = Array.from({ length: 10_000 }, (_, index) => {
        const frame = piece * 10_000 + index;
        const nightMs = Date.UTC(2021, 0, 1) + Math.floor(frame / 150) * 3 * dayMs;
        return subs({
          night: new Date(nightMs).toISOString().slice(0, 10),
          object: objects[Math.floor(frame / 1500) % 4] ?? "M33",
          passband: frame % 2 === 0 ? "o-iii" : "h-alpha",
          frames: 1,
          rejected: 0,
          sensorCelsius: -10 + (frame % 7) * 0.05,
          startedAt: new Date(nightMs + (frame % 150) * 200_000),
        });
      });
      await books.log.add(CLUB, "me", rows(...sets));
    }
    expect(await books.log.count(CLUB, "me")).toBe(100_000);
    const progress = async () => progressLines(await books.log.inHand(CLUB, "me"), []);
    expect((await progress()).reduce((sum, { frames }) => sum + frames, 0)).toBe(100_000);
    expect(await medianMs(progress)).toBeLessThan(50);
    expect(await medianMs(() => books.log.latest(CLUB, "me", 15, null))).toBeLessThan(50);
    expect(await medianMs(() => books.log.latest(CLUB, "me", 15, "M27"))).toBeLessThan(50);
    expect(await medianMs(() => books.log.summed(CLUB, "me", "2026-01-01"))).toBeLessThan(50);
    expect(await medianMs(() => books.log.count(CLUB, "me"))).toBeLessThan(50);
  });
});
