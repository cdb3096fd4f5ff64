import { describe, expect, it } from "vitest";
import { temporaryFolder } from "../store/temporary-folder.ts";
import { PLACES, simulateNights } from "./simulated-nights.ts";

// The whole year is run by hand with whole-year.ts; here only days around clock changes and
// the seasons of the polar site.
describe("evenings by a driven clock", { timeout: 120_000 }, () => {
  it.each([
    ["the European spring change", "2026-03-28", ["Fell End", "Tromso"]],
    ["the southern autumn change", "2026-04-04", ["Lord Howe", "Adelaide", "Santiago"]],
    ["the American autumn change", "2026-10-31", ["St Johns", "Kathmandu", "Cape Town"]],
    ["the beginning of the midnight Sun", "2026-04-27", ["Tromso"]],
  ])("post every night once through %s", async (_, from, names) => {
    const places = PLACES.filter(({ name }) => names.includes(name));
    const { wrong, posts } = await simulateNights({
      folder: temporaryFolder(),
      places,
      from,
      days: 2,
      disturbed: false,
      seed: 1,
      tickMinutes: 15,
    });
    expect(wrong).toEqual([]);
    expect(posts).toBeGreaterThan(0);
  });

  it("post every night once through jumping clocks, restarts and outages", async () => {
    const { wrong } = await simulateNights({
      folder: temporaryFolder(),
      places: PLACES.slice(0, 3),
      from: "2026-10-24",
      days: 3,
      disturbed: true,
      seed: 7,
      tickMinutes: 10,
    });
    expect(wrong).toEqual([]);
  });
});
