/**
 * Setting the polar axis, as a line of the run card.
 *
 * @packageDocumentation
 */
import { LEAST_POLE_ALTITUDE_DEG } from "../config/mount-rules.ts";
import { POLARIS, SIGMA_OCTANTIS } from "../config/pole-stars.ts";
import { poleStarPlace, risenPole } from "../core/mount/pole-star.ts";
import { poleView } from "../core/mount/pole-view.ts";
import type { Site } from "../core/site.ts";
import { skyFrame } from "../core/sky/frame.ts";
import { poleStarWords } from "./words/align-words.ts";

/** Where the pole star goes on the reticle at an instant; by drift where it cannot be seen. */
export function poleStepWords(site: Site, at: Date): string {
  const star = risenPole(site.latitudeDeg) === "north" ? POLARIS : SIGMA_OCTANTIS;
  const place = poleStarPlace(star, skyFrame(site, at));
  const { kind } = poleView(place, site.skyline, LEAST_POLE_ALTITUDE_DEG);
  return kind === "seen" ? `Align: ${poleStarWords(place)}` : "Align by drift: the pole star is no use here";
}
