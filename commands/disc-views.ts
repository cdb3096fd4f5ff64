/**
 * How a disc looks through what people look with, turned for the place and the hour.
 *
 * There is no view "as a finder shows it" of the Sun, and never will be: finders are capped.
 *
 * @packageDocumentation
 */
import type { DiscView } from "./chart.ts";

/**
 * Views of a disc by night: by eye, upside down, and mirrored.
 *
 * @param parallacticDeg - position angle of the zenith: turned back by it, the zenith is up
 */
export function nightViews(parallacticDeg: number): readonly DiscView[] {
  return [
    { caption: "By eye or in binoculars", mirrored: false, turnDeg: -parallacticDeg },
    invertedView(parallacticDeg),
    diagonalView(parallacticDeg),
  ];
}

/** Views of the Sun: each through a front filter, or thrown on a card. */
export function sunViews(parallacticDeg: number): readonly DiscView[] {
  return [
    { caption: "By eye, behind a certified viewer", mirrored: false, turnDeg: -parallacticDeg },
    invertedView(parallacticDeg),
    diagonalView(parallacticDeg),
    {
      // Two inversions, by the objective and by the eyepiece, set the picture upright; it is
      // looked at from the side it falls on, so left and right change places.
      caption: "Thrown straight through onto a card, your back to the Sun",
      mirrored: true,
      turnDeg: -parallacticDeg,
    },
  ];
}

/** A Newtonian, or a refractor without a diagonal: turned by half a turn. */
function invertedView(parallacticDeg: number): DiscView {
  return {
    caption: "Telescope without a diagonal: upside down",
    mirrored: false,
    turnDeg: 180 - parallacticDeg,
  };
}

/** One more mirror: upright, left and right exchanged. */
function diagonalView(parallacticDeg: number): DiscView {
  return { caption: "With a star diagonal: upright, mirrored", mirrored: true, turnDeg: -parallacticDeg };
}
