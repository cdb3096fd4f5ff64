import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { editDistance } from "../../../core/targets/edit-distance.ts";

const word = fc.string({ maxLength: 12, unit: fc.constantFrom("a", "b", "c", "d") });

describe("editDistance", () => {
  // The usual textbook pairs; "ca" and "abc" is where the restricted form differs from the full one (3, not 2).
  it.each([
    ["kitten", "sitting", 3],
    ["saturday", "sunday", 3],
    ["ca", "abc", 3],
    ["ab", "ba", 1],
    ["", "abc", 3],
    ["same", "same", 0],
  ])("counts from %s to %s", (first, second, slips) => {
    expect(editDistance(first, second, 10)).toBe(slips);
  });

  it("counts alike both ways, and nothing between equals", () => {
    fc.assert(
      fc.property(word, word, (first, second) => {
        expect(editDistance(first, second, 20)).toBe(editDistance(second, first, 20));
        expect(editDistance(first, second, 20) === 0).toBe(first === second);
      }),
    );
  });

  it("stops one past the limit, and agrees with no limit below it", () => {
    fc.assert(
      fc.property(word, word, fc.nat(12), (first, second, limit) => {
        const whole = editDistance(first, second, 99);
        expect(editDistance(first, second, limit)).toBe(Math.min(whole, limit + 1));
      }),
    );
  });

  it("counts a swap of neighbours, a lost and a doubled letter as one", () => {
    fc.assert(
      fc.property(fc.string({ minLength: 2, maxLength: 12 }), fc.nat(10), (text, at) => {
        const i = at % (text.length - 1);
        const swapped = text.slice(0, i) + text.charAt(i + 1) + text.charAt(i) + text.slice(i + 2);
        const lost = text.slice(0, i) + text.slice(i + 1);
        const doubled = text.slice(0, i) + text.charAt(i) + text.slice(i);
        for (const slip of [swapped, lost, doubled]) {
          expect(editDistance(text, slip, 3)).toBe(slip === text ? 0 : 1);
        }
      }),
    );
  });
});
