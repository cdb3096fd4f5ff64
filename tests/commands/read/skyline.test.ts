import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { AskError } from "../../../commands/ask-error.ts";
import { parseBrightDirections, parseSkyline, textOfFile } from "../../../commands/read/skyline.ts";

describe("parseSkyline", () => {
  it("sorts points by azimuth and brings each into one turn", () => {
    expect(parseSkyline("profile", "90:30, 0:12, -10:5")).toEqual([
      { azimuthDeg: 0, altitudeDeg: 12 },
      { azimuthDeg: 90, altitudeDeg: 30 },
      { azimuthDeg: 350, altitudeDeg: 5 },
    ]);
  });

  it("takes 360 for 0 when both say the same", () => {
    expect(parseSkyline("profile", "0:12,180:4,360:12")).toHaveLength(2);
  });

  it("refuses two heights in one direction", () => {
    expect(() => parseSkyline("profile", "0:12, 360:13")).toThrow(/two heights at azimuth 0°/);
  });

  it("reads a file of lines as well", () => {
    expect(parseSkyline("file", "0 12\r\n90 30\n")).toEqual(parseSkyline("profile", "0:12, 90:30"));
  });

  it("takes level for no skyline at all", () => {
    expect(parseSkyline("profile", "level")).toEqual([]);
  });

  it("refuses 10,000 points and takes 360", () => {
    const points = (count: number) =>
      Array.from({ length: count }, (_, n) => `${(n * 360) / count}:5`).join(",");
    expect(() => parseSkyline("profile", points(10_000))).toThrow(/“profile” takes at most 360 points/);
    expect(parseSkyline("profile", points(360))).toHaveLength(360);
  });

  it.each([
    ["0:91", /from -10 to 90° of altitude/],
    ["0:-11", /from -10 to 90° of altitude/],
    ["400:5", /from -360 to 360° of azimuth/],
    ["0:12, ninety:30", /cannot be read at point 2/],
    ["0:12:14", /cannot be read at point 1/],
    ["\u0000\u0001\u0002", /cannot be read at point 1/],
    ["", /cannot be read at point 1/],
  ])("refuses %j", (text, message) => {
    expect(() => parseSkyline("profile", text)).toThrow(message);
  });

  it("gives sorted points within range, or a refusal that names the option, for any text", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[\d:,. -]*$/)), (text) => {
        try {
          const points = parseSkyline("profile", text);
          const azimuths = points.map(({ azimuthDeg }) => azimuthDeg);
          expect(azimuths).toEqual([...new Set(azimuths)].sort((one, other) => one - other));
          for (const { azimuthDeg, altitudeDeg } of points) {
            expect(azimuthDeg >= 0 && azimuthDeg < 360).toBe(true);
            expect(altitudeDeg >= -10 && altitudeDeg <= 90).toBe(true);
          }
        } catch (fault) {
          expect(fault).toBeInstanceOf(AskError);
          expect((fault as AskError).message).toContain("“profile”");
        }
      }),
    );
  });
});

describe("textOfFile", () => {
  it("refuses bytes that are no text", () => {
    expect(() => textOfFile("file", Uint8Array.of(0xff, 0xfe, 0x00, 0x9c))).toThrow(AskError);
  });
});

describe("parseBrightDirections", () => {
  it("reads azimuth and magnitudes", () => {
    expect(parseBrightDirections("bright", "200:0.4, 120:0.8")).toEqual([
      { azimuthDeg: 120, brighterMag: 0.8 },
      { azimuthDeg: 200, brighterMag: 0.4 },
    ]);
  });

  it("refuses a direction that would be darker than the rest", () => {
    expect(() => parseBrightDirections("bright", "120:-1")).toThrow(/from 0.1 to 6 magnitudes brighter/);
  });
});
