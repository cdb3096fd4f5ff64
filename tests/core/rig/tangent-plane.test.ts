import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromPlane, positionAngleAt, toPlane } from "../../../core/rig/tangent-plane.ts";
import { halfTurnDeg } from "../../../core/sky/angles.ts";
import { separationDeg } from "../../../core/sky/place.ts";
import { referenceRows } from "../../reference/reference-rows.ts";

const ARCSEC = 1 / 3600;

const rows = referenceRows("astropy/gnomonic.txt").map((columns) => {
  const [ra = 0, dec = 0, xi = 0, eta = 0, placeRa = 0, placeDec = 0, angle = 0] = columns.map(Number);
  return {
    contact: { raDeg: ra, decDeg: dec },
    point: { xiDeg: xi, etaDeg: eta },
    place: { raDeg: placeRa, decDeg: placeDec },
    angle,
  };
});

describe("the tangent plane, against astropy's TAN projection", () => {
  // Both are exact formulas; the table carries nine decimals of a degree.
  it.each(rows)(
    "$point.xiDeg, $point.etaDeg from $contact.raDeg, $contact.decDeg lies within 0.001″",
    ({ contact, point, place }) => {
      expect(separationDeg(fromPlane(contact, point), place)).toBeLessThan(0.001 * ARCSEC);
      const back = toPlane(contact, place);
      expect(back?.xiDeg).toBeCloseTo(point.xiDeg, 6);
      expect(back?.etaDeg).toBeCloseTo(point.etaDeg, 6);
    },
  );

  // The table's angle is a difference quotient over 0.36″ to either side: good to some 1e-4 degrees.
  it.each(rows.filter(({ place }) => Math.abs(place.decDeg) < 90))(
    "north of the plane at $point.xiDeg, $point.etaDeg from $contact.raDeg, $contact.decDeg",
    ({ contact, point, angle }) => {
      expect(Math.abs(halfTurnDeg(positionAngleAt(contact, point, 0) - angle))).toBeLessThan(2e-4);
    },
  );
});

describe("positionAngleAt", () => {
  // Common practice, by hand: 3° · tan 61° = 5.4°.
  it("turns by 5.4° at 3° aside from declination 61°", () => {
    const turned = positionAngleAt({ raDeg: 38, decDeg: 61 }, { xiDeg: 3, etaDeg: 0 }, 0);
    expect(turned).toBeCloseTo(5.4, 1);
  });
});

describe("toPlane", () => {
  it("does not reach a quarter of the sky away", () => {
    expect(toPlane({ raDeg: 0, decDeg: 0 }, { raDeg: 90, decDeg: 0 })).toBeNull();
    expect(toPlane({ raDeg: 0, decDeg: 0 }, { raDeg: 180, decDeg: 0 })).toBeNull();
  });

  it("is undone by fromPlane anywhere on the sphere", () => {
    const angle = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        angle(0, 359.9),
        angle(-90, 90),
        angle(-20, 20),
        angle(-20, 20),
        (ra, dec, xiDeg, etaDeg) => {
          const contact = { raDeg: ra, decDeg: dec };
          const back = toPlane(contact, fromPlane(contact, { xiDeg, etaDeg }));
          expect(back?.xiDeg).toBeCloseTo(xiDeg, 8);
          expect(back?.etaDeg).toBeCloseTo(etaDeg, 8);
        },
      ),
    );
  });
});
