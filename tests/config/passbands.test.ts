import { describe, expect, it } from "vitest";
import { PASSBANDS } from "../../config/passbands.ts";
import { passbandKey, passbandOf } from "../../core/log/passband.ts";

describe("the filters' names", () => {
  it("mean one filter each", () => {
    const keys = PASSBANDS.flatMap(({ name, aliases }) => [
      ...new Set([name, ...aliases].map((alias) => passbandKey(alias))),
    ]);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it.each([
    ["[O III]", "o-iii"],
    ["Hα", "h-alpha"],
    ["H alpha", "h-alpha"],
    ["SII", "s-ii"],
    ["Lum", "luminance"],
    ["no filter", "none"],
  ])("file “%s” under %s", (typed, name) => {
    expect(passbandOf(typed, [], PASSBANDS)).toBe(name);
  });

  it("add up members' hours: a rig's own name of a common filter is filed as the common one", () => {
    expect(passbandOf("Hα", ["Hα"], PASSBANDS)).toBe("h-alpha");
    expect(passbandOf("duo 7", ["Duo-7"], PASSBANDS)).toBe("Duo-7");
    expect(passbandOf("duo", ["Duo-7"], PASSBANDS)).toBeNull();
  });
});
