import { describe, expect, it } from "vitest";
import { meridianFlip } from "../../../core/mount/meridian-flip.ts";

const at = (clock: string) => new Date(`2026-10-03T${clock}:00Z`);
const WINDOW = [{ start: at("20:00"), end: at("23:00") }];

describe("meridianFlip", () => {
  it("comes the allowed minutes after transit", () => {
    expect(meridianFlip("german", at("21:30"), 10, WINDOW)).toEqual(at("21:40"));
  });

  it("comes inside the window although transit was before it", () => {
    expect(meridianFlip("german", at("19:55"), 10, WINDOW)).toEqual(at("20:05"));
  });

  it("is none outside every window, or at its very end", () => {
    expect(meridianFlip("german", at("23:30"), 0, WINDOW)).toBeNull();
    expect(meridianFlip("german", at("22:50"), 10, WINDOW)).toBeNull();
    expect(meridianFlip("german", null, 10, WINDOW)).toBeNull();
  });

  it.each(["fork", "tracker", "altazimuth", "fixed"] as const)("is none for a mount of kind %s", (mount) => {
    expect(meridianFlip(mount, at("21:30"), 10, WINDOW)).toBeNull();
  });
});
