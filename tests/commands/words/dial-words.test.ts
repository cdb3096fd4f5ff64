import { describe, expect, it } from "vitest";
import { dialWords, mirroredDial } from "../../../commands/words/dial-words.ts";

describe("dialWords", () => {
  it.each([
    [0, "twelve o'clock"],
    [4 + 20 / 60, "twenty past four"],
    [9.5, "half past nine"],
    [2.75, "quarter to three"],
    [11 + 55 / 60, "five to twelve"],
    [11.99, "twelve o'clock"],
    [7 + 35 / 60, "twenty-five to eight"],
    [12.25 % 12, "quarter past twelve"],
  ])("says %s h as “%s”", (hours, words) => {
    expect(dialWords(hours)).toBe(words);
  });
});

describe("mirroredDial", () => {
  it("swaps left and right and leaves top and bottom", () => {
    expect(mirroredDial(9)).toBe(3);
    expect(mirroredDial(0)).toBe(0);
    expect(mirroredDial(6)).toBe(6);
    expect(mirroredDial(10.5)).toBe(1.5);
  });
});
