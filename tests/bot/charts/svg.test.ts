import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { element, num, through, words } from "../../../bot/charts/svg.ts";
import { pixelsOf, textOf } from "./pixels.ts";

describe("words", () => {
  it("escapes what would be markup", () => {
    expect(words(`<script>"a" & 'b'</script>`).markup).toBe(
      "&lt;script&gt;&quot;a&quot; &amp; &#39;b&#39;&lt;/script&gt;",
    );
  });

  it("makes well-formed markup of any string, lone surrogates and control characters too", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 60 }), (text) => {
        const svg = element("svg", { xmlns: "http://www.w3.org/2000/svg", width: 4, height: 4 }, [
          element("g", { "data-text": text }, [element("text", {}, [words(text)])]),
        ]).markup;
        expect(pixelsOf(svg).width).toBe(4);
      }),
    );
  });

  it("survives the way there and back", () => {
    expect(textOf(words("a < b & c > d \"e\" 'f' &amp;").markup)).toBe("a < b & c > d \"e\" 'f' &amp;");
  });
});

describe("num", () => {
  it("writes hundredths, without a negative zero", () => {
    expect([num(1.23456), num(-0.001), num(12)]).toEqual(["1.23", "0", "12"]);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY])("refuses %d", (value) => {
    expect(() => num(value)).toThrow(RangeError);
  });
});

describe("element", () => {
  it("leaves out attributes that are undefined", () => {
    expect(element("g", { a: undefined, b: "x" }).markup).toBe('<g b="x"/>');
  });
});

describe("through", () => {
  it("gives nothing of fewer than two points", () => {
    expect(through([{ x: 1, y: 1 }])).toBe("");
  });
});
