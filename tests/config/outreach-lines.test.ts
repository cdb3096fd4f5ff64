import { describe, expect, it } from "vitest";
import { openCatalogue } from "../../bot/library/open-catalogue.ts";
import { showablesOf } from "../../commands/showables.ts";
import { CHECKLIST, CLOUD_PLAN } from "../../config/outreach-checklist.ts";
import { AUDIENCES, SUN_DEPTH_DEG } from "../../config/outreach-evenings.ts";
import { BODY_LINES, EYE_FIGURES, KIND_LINES, SHOWPIECE_LINES } from "../../config/outreach-lines.ts";

const catalogue = openCatalogue();

describe("SHOWPIECE_LINES", () => {
  it.each([...SHOWPIECE_LINES])(
    "%s is in the catalogue, with what a view needs, and has a line",
    (name, row) => {
      const found = catalogue.find(name);
      if (found.kind !== "found" || found.target.kind !== "object") throw new Error(`${name} is not there`);
      expect(found.target.object.majorArcmin).toBeGreaterThan(0);
      expect(row.appeal).toBeGreaterThanOrEqual(1);
      expect(row.appeal).toBeLessThanOrEqual(10);
      expect(row.line).toMatch(/^["\p{Lu}\d].{20,170}\.$/u);
      expect(row.shown).not.toBe("");
    },
  );

  it("names everything once, as guests hear it", () => {
    const shown = showablesOf(catalogue).map(({ name }) => name);
    expect(new Set(shown).size).toBe(shown.length);
    expect(shown).toHaveLength(SHOWPIECE_LINES.size + EYE_FIGURES.length + Object.keys(BODY_LINES).length);
  });

  it("has something for every season and both hemispheres", () => {
    for (let hour = 0; hour < 24; hour += 3) {
      for (const north of [true, false]) {
        const there = showablesOf(catalogue).filter(({ target }) => {
          if (target.kind === "body") return false;
          const { raDeg, decDeg } = target.kind === "object" ? target.object : target;
          const apart = Math.abs(((raDeg / 15 - hour + 36) % 24) - 12);
          return apart <= 3 && (north ? decDeg > -20 : decDeg < 20);
        });
        expect(there.length, `${hour} h, ${north ? "north" : "south"}`).toBeGreaterThanOrEqual(5);
      }
    }
  });
});

describe("EYE_FIGURES", () => {
  it.each(EYE_FIGURES.map((figure) => [figure.name, figure] as const))("%s lies on the sky", (_, figure) => {
    expect(figure.raDeg).toBeGreaterThanOrEqual(0);
    expect(figure.raDeg).toBeLessThan(360);
    expect(Math.abs(figure.decDeg)).toBeLessThanOrEqual(90);
    expect(figure.extentDeg).toBeGreaterThan(0);
    expect(figure.faintestMag).toBeLessThan(6);
    expect(figure.line).toMatch(/\.$/);
  });
});

describe("the lists around a session", () => {
  it("have a sentence for everything", () => {
    for (const text of [...Object.values(CHECKLIST), ...Object.values(CLOUD_PLAN)])
      expect(text).toMatch(/^\p{Lu}.*\.$/u);
    for (const { line } of Object.values(KIND_LINES)) expect(line).toMatch(/^\p{Lu}.*\.$/u);
  });

  it("show nothing but by night: the Sun is down before anything", () => {
    for (const depth of Object.values(SUN_DEPTH_DEG)) expect(depth).toBeGreaterThan(0.84);
    for (const { readyWeekdays, readyDays } of Object.values(AUDIENCES)) {
      for (const day of [...readyWeekdays, ...readyDays]) expect([1, 2, 3, 4, 5, 6, 7]).toContain(day);
    }
  });
});
