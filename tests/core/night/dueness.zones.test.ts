import { DateTime } from "luxon";
import { describe, expect, it } from "vitest";
import { dueness, type PostRules, postTimes, windowWorthPosting } from "../../../core/night/dueness.ts";
import { nightOn } from "../../../core/night/local-night.ts";
import { nightTimes } from "../../../core/night/night-times.ts";

const RULES: PostRules = { hoursBeforeSunset: 3, usefulAfterDuskHours: 1, leastLeftHours: 2 };
const MOOR = { latitudeDeg: 54.5, longitudeDeg: -2.6, elevationMetres: 310 };
const HOUR_MS = 3_600_000;

function post(site: typeof MOOR, date: string, zone: string, rules = RULES) {
  const times = nightTimes(site, nightOn(date, zone));
  return { times, post: postTimes(times, rules) };
}

describe("postTimes", () => {
  it("is due so many hours before that day's own sunset", () => {
    const { times, post: found } = post(MOOR, "2026-10-03", "Europe/London");
    const ahead = (times.sunset?.getTime() ?? 0) - (found?.dueAt.getTime() ?? 0);
    expect(ahead).toBe(3 * HOUR_MS);
  });

  it("helps until an hour after dusk, however deep the dusk of that night is", () => {
    const autumn = post(MOOR, "2026-10-03", "Europe/London");
    expect(autumn.post?.usefulUntil.getTime()).toBe(
      (autumn.times.astronomicalDusk?.getTime() ?? 0) + HOUR_MS,
    );
    // At 54.5° north the midsummer Sun turns near −12°: no astronomical dusk comes.
    const summer = post(MOOR, "2026-06-21", "Europe/London");
    expect(summer.times.astronomicalDusk).toBeNull();
    expect(summer.post?.usefulUntil.getTime()).toBe(
      (summer.times.workingWindows[0]?.start.getTime() ?? 0) + HOUR_MS,
    );
  });

  it("has no post for the midnight Sun, and one for the polar night", () => {
    const tromso = { latitudeDeg: 69.65, longitudeDeg: 18.96, elevationMetres: 10 };
    expect(post(tromso, "2026-06-21", "Europe/Oslo").post).toBeNull();
    const winter = post(tromso, "2026-12-21", "Europe/Oslo");
    expect(winter.times.sunset).toBeNull();
    expect(winter.post?.dueAt.getTime()).toBe(
      (winter.times.workingWindows[0]?.start.getTime() ?? 0) - 3 * HOUR_MS,
    );
  });

  it.each([
    ["Europe/London", MOOR, "2026-03-28"],
    ["Europe/London", MOOR, "2026-10-24"],
    ["Australia/Lord_Howe", { latitudeDeg: -31.55, longitudeDeg: 159.08, elevationMetres: 5 }, "2026-04-04"],
    ["America/St_Johns", { latitudeDeg: 47.56, longitudeDeg: -52.71, elevationMetres: 20 }, "2026-10-31"],
  ] as const)(
    "is three true hours before sunset in %s on the night the clocks change",
    (zone, site, date) => {
      const { times, post: found } = post(site, date, zone);
      expect((times.sunset?.getTime() ?? 0) - (found?.dueAt.getTime() ?? 0)).toBe(3 * HOUR_MS);
      expect(DateTime.fromJSDate(times.sunset ?? new Date(0), { zone }).toISODate()).toBe(date);
    },
  );
});

describe("dueness", () => {
  const { post: found } = post(MOOR, "2026-10-03", "Europe/London");
  if (found === null) throw new Error("the moor has a night in October");
  const later = (instant: Date, ms: number) => new Date(instant.getTime() + ms);

  it("begins at the hour itself and ends with the last moment that helps", () => {
    expect(dueness(later(found.dueAt, -1), found, false)).toBe("early");
    expect(dueness(found.dueAt, found, false)).toBe("due");
    expect(dueness(found.usefulUntil, found, false)).toBe("due");
    expect(dueness(later(found.usefulUntil, 1), found, false)).toBe("over");
  });

  it("goes on as a watch for a night that was looked at in time, until the darkness ends", () => {
    expect(dueness(later(found.usefulUntil, 1), found, true)).toBe("watch");
    expect(dueness(found.watchUntil, found, true)).toBe("watch");
    expect(dueness(later(found.watchUntil, 1), found, true)).toBe("over");
  });

  it("wants two hours of a window while it watches, and any of it while a post is due", () => {
    const window = { start: found.dueAt, end: later(found.dueAt, 2 * HOUR_MS) };
    expect(windowWorthPosting(found.dueAt, "watch", window, RULES)).toBe(true);
    expect(windowWorthPosting(later(found.dueAt, 1), "watch", window, RULES)).toBe(false);
    expect(windowWorthPosting(later(window.end, -1), "due", window, RULES)).toBe(true);
    expect(windowWorthPosting(window.end, "due", window, RULES)).toBe(false);
  });
});
