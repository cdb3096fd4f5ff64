import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Lookup } from "../../../core/targets/catalogue.ts";
import { fakeCatalogue, fakeObject } from "./fake-catalogue.ts";

const catalogue = fakeCatalogue();

/** The id of what was found, or the nearest names. */
function answer(lookup: Lookup): string {
  if (lookup.kind === "unknown") return `unknown: ${lookup.nearest.join(", ")}`;
  switch (lookup.target.kind) {
    case "object":
      return lookup.target.object.id;
    case "body":
      return `body ${lookup.target.body}`;
    case "place":
      return `place ${lookup.target.raDeg} ${lookup.target.decDeg}`;
  }
}

describe("find", () => {
  it.each([
    ["m31", "M31"],
    ["NGC 224", "M31"],
    ["NGC 224A", "NGC 224A"],
    ["andromeda galaxy", "M31"],
    ["C20", "NGC 7000"],
    ["Caldwell 20", "NGC 7000"],
    ["sh 2 117", "NGC 7000"],
    ["north-america nebula", "NGC 7000"],
    ["North America", "NGC 7000"],
    ["47 tuc", "NGC 104"],
    ["vega", "Vega"],
    ["alpha lyrae", "Vega"],
    ["α Lyr", "Vega"],
    ["61 Cygni", "61 Cyg"],
    ["moon", "body Moon"],
    ["The Moon", "body Moon"],
    ["Jupiter", "body Jupiter"],
    ["sun", "body Sun"],
    ["1h +20d", "place 15 20"],
    ["15 20", "place 15 20"],
  ])("finds what “%s” means", (typed, found) => {
    expect(answer(catalogue.find(typed))).toBe(found);
  });

  it("does not take a constellation for the nebula named after it", () => {
    expect(answer(catalogue.find("Orion"))).toMatch(/^unknown: Orion Nebula/);
  });

  it("refuses a misspelling with three names, the right one first", () => {
    for (const [typed, meant] of [
      ["Andromida Galaxy", "Andromeda Galaxy"],
      ["andromida", "Andromeda Galaxy"],
      ["orin nebula", "Orion Nebula"],
      ["nroth america", "North America Nebula"],
      ["vgea", "Vega"],
      ["jupitr", "Jupiter"],
      ["ngc 70000", "NGC 7000"],
    ] as const) {
      const looked = catalogue.find(typed);
      if (looked.kind !== "unknown") throw new Error(`${typed} was corrected in silence`);
      expect(looked.nearest[0], typed).toBe(meant);
      expect(looked.nearest).toHaveLength(3);
    }
  });

  it("says why coordinates are no place on the sky", () => {
    expect(catalogue.find("25h +10d")).toMatchObject({
      kind: "unknown",
      problem: expect.stringContaining("0h to 24h"),
    });
  });

  it("gives a star of the alignment table its proper motion", () => {
    const looked = catalogue.find("Vega");
    if (looked.kind !== "found" || looked.target.kind !== "object") throw new Error("Vega is missing");
    expect(looked.target.object.properMotion).toEqual({ raArcsec: 0.20094, decArcsec: 0.28623 });
    expect(looked.target.object.raDeg).toBe(279.234735);
  });

  it("does not read the stars until one is looked for", () => {
    let read = 0;
    const lazy = fakeCatalogue({
      stars: () => {
        read++;
        return [];
      },
    });
    lazy.find("M31");
    expect(read).toBe(0);
    lazy.find("Vega");
    lazy.find("Deneb");
    expect(read).toBe(1);
  });

  it("leaves a disputed short form to nobody", () => {
    const two = fakeCatalogue({
      objects: [
        fakeObject({ id: "NGC 1", name: "Spindle Galaxy" }),
        fakeObject({ id: "NGC 2", name: "Spindle Nebula" }),
      ],
    });
    expect(two.find("Spindle").kind).toBe("unknown");
    expect(answer(two.find("Spindle Nebula"))).toBe("NGC 2");
  });

  it("answers anything, and never with more than three names", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 200 }), (text) => {
        const looked = catalogue.find(text);
        if (looked.kind === "unknown") expect(looked.nearest.length).toBeLessThanOrEqual(3);
      }),
    );
  });
});

describe("complete", () => {
  const names = (typed: string, limit = 25) => catalogue.complete(typed, limit).map((choice) => choice.name);

  it("offers names that begin with what was typed before names that contain it", () => {
    expect(names("ne")).toEqual(["Neptune", "M42 – Orion Nebula", "NGC 7000 – North America Nebula"]);
  });

  it("offers an object once, under the name that fits", () => {
    expect(names("ngc 22")).toEqual(["M31 – NGC 224", "NGC 224A"]);
  });

  it("offers showpieces first", () => {
    expect(names("ngc 700")).toEqual(["NGC 7000", "NGC 7001"]);
  });

  it("keeps to the limit, and offers something for nothing typed", () => {
    expect(names("", 5)).toHaveLength(5);
    expect(names("n", 2)).toHaveLength(2);
  });

  it("offers only what is then found", () => {
    for (const typed of ["", "m", "n", "o", "v", "4", "j"]) {
      for (const choice of catalogue.complete(typed, 25)) {
        expect(catalogue.find(choice.value).kind, choice.value).toBe("found");
      }
    }
  });
});
