/**
 * Back from the sky of an instant to the coordinates of catalogues.
 *
 * @packageDocumentation
 */
import { type EquatorialPlace, placeOfVector } from "./angles.ts";
import { placeOfDate, unitVector } from "./place.ts";

/** Each step leaves some 1e-4 of the error before it: the aberration's own change. */
const STEPS = 4;

/**
 * The J2000 place whose apparent place of date is the given one: the inverse of `placeOfDate`.
 *
 * @param ofDate - true equator and equinox of date, aberration included
 * @returns within 0.001″
 */
export function placeOfJ2000(ofDate: EquatorialPlace, at: Date): EquatorialPlace {
  const wanted = unitVector(ofDate.raDeg, ofDate.decDeg);
  let guess: EquatorialPlace = ofDate;
  for (let step = 0; step < STEPS; step++) {
    const reached = placeOfDate(guess.raDeg, guess.decDeg, at);
    const from = unitVector(guess.raDeg, guess.decDeg);
    const to = unitVector(reached.raDeg, reached.decDeg);
    const along = (axis: 0 | 1 | 2) => from[axis] + wanted[axis] - to[axis];
    guess = placeOfVector([along(0), along(1), along(2)]);
  }
  return guess;
}
