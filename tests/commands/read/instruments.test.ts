import { describe, expect, it } from "vitest";
import { AskError } from "../../../commands/ask-error.ts";
import { instrumentWords, parseInstruments } from "../../../commands/read/instruments.ts";

const words = (text: string) => parseInstruments("instruments", text).map(instrumentWords);

describe("parseInstruments", () => {
  it.each([
    ["eyes", ["bare eyes"]],
    ["naked eye", ["bare eyes"]],
    ["2x binoculars 10x50", ["2 × binoculars 10×50"]],
    ["10x50", ["binoculars 10×50"]],
    ["2x 7x50 binoculars", ["2 × binoculars 7×50"]],
    ["1x 80mm", ["80 mm telescope"]],
    ["80mm", ["80 mm telescope"]],
    ["3 x 114 mm telescopes", ["3 × 114 mm telescopes"]],
    ["10in", ["254 mm telescope"]],
    ["20cm", ["200 mm telescope"]],
    ["solar 60mm", ["60 mm solar telescope"]],
    ["2x 60mm solar telescopes", ["2 × 60 mm solar telescopes"]],
    ["1x 250mm, eyes, 2x 80mm", ["bare eyes", "2 × 80 mm telescopes", "250 mm telescope"]],
  ])("reads %s", (text, expected) => {
    expect(words(text)).toEqual(expected);
  });

  it.each(["", ",", "a bucket", "0x 80mm", "21x 80mm", "5mm", "2000mm", "1x50", "10x5", "eyes,".repeat(9)])(
    "refuses %j by name",
    (text) => {
      expect(() => parseInstruments("instruments", text)).toThrow(AskError);
      expect(() => parseInstruments("instruments", text)).toThrow(/“instruments”/);
    },
  );
});
