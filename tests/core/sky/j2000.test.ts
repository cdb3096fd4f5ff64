import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { placeOfJ2000 } from "../../../core/sky/j2000.ts";
import { placeOfDate, separationDeg } from "../../../core/sky/place.ts";

describe("placeOfJ2000", () => {
  it("is the inverse of the apparent place, to a thousandth of an arcsecond", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 359.9, noNaN: true }),
        fc.double({ min: -90, max: 90, noNaN: true }),
        fc.date({
          min: new Date("1980-01-01T00:00:00Z"),
          max: new Date("2050-01-01T00:00:00Z"),
          noInvalidDate: true,
        }),
        (raDeg, decDeg, at) => {
          const back = placeOfJ2000(placeOfDate(raDeg, decDeg, at), at);
          expect(separationDeg(back, { raDeg, decDeg }) * 3600).toBeLessThan(0.001);
        },
      ),
    );
  });
});
