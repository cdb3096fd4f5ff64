/**
 * Setting up a mount in words.
 *
 * @packageDocumentation
 */
import type { AlignmentChoice } from "../../core/mount/alignment-stars.ts";
import type { FocusStar } from "../../core/mount/focus-star.ts";
import { declinationDriftArcsec } from "../../core/mount/polar-error.ts";
import type { PoleStarPlace } from "../../core/mount/pole-star.ts";
import type { PoleView } from "../../core/mount/pole-view.ts";
import type { StarInSky } from "../../core/mount/visible-stars.ts";
import { RAD_PER_DEG } from "../../core/sky/angles.ts";
import type { PolarDamage, TurnLimit } from "../alignment.ts";
import { clockTime } from "./clock.ts";
import { dialWords, mirroredDial } from "./dial-words.ts";
import { withMinus } from "./minus.ts";
import { compassWords } from "./sky.ts";

/** `Polaris at twenty past four upright, twenty past ten inverted, 37.6′ from the pole`. */
export function poleStarWords({ star, dial, poleDistanceArcmin }: PoleStarPlace): string {
  return `${star.name} at ${dialWords(dial.correct)} upright, ${dialWords(dial.inverted)} inverted, ${poleDistanceArcmin.toFixed(1)}′ from the pole`;
}

/** What to do at the polar finder, kind by kind of finder. */
export function poleLines(places: readonly [PoleStarPlace, ...PoleStarPlace[]]): string[] {
  const [{ dial, hourAngleHours, star, altitudeDeg, poleDistanceArcmin }, ...others] = places;
  return [
    `By eye, or where the picture stands upright: ${dialWords(dial.correct)} (${faceWords(dial.correct)}).`,
    `In a finder that inverts: ${dialWords(dial.inverted)} (${faceWords(dial.inverted)}).`,
    `A right-angle finder mirrors left and right: upright and mirrored ${dialWords(mirroredDial(dial.correct))}.`,
    `${star.name} stands ${poleDistanceArcmin.toFixed(1)}′ from the true pole, ${altitudeDeg.toFixed(1)}° high, at hour angle ${hourAngleHours.toFixed(2)} h.`,
    ...others.map((other) => `${poleStarWords(other)} (magnitude ${other.star.magnitude.toFixed(1)}).`),
  ];
}

/** `4:21` on the face. */
function faceWords(hours: number): string {
  const minutes = Math.round(hours * 60) % 720;
  return `${Math.floor(minutes / 60) || 12}:${String(minutes % 60).padStart(2, "0")} on the face`;
}

/** Why the pole star is no use here; `null` when it is seen. */
export function hiddenPoleWords(view: PoleView, name: string): string | null {
  switch (view.kind) {
    case "seen":
      return null;
    case "low":
      return view.altitudeDeg < 0
        ? `${name} is below the horizon here: align by drift instead.`
        : `${name} stands only ${view.altitudeDeg.toFixed(1)}° high, under ${view.leastAltitudeDeg}°: align by drift instead.`;
    case "hidden":
      return `${name} is behind the skyline here (${view.altitudeDeg.toFixed(0)}° high, the skyline ${view.skylineDeg.toFixed(0)}°): align by drift instead.`;
  }
}

/** The drift method with its figures, for the pole that is up. */
export function driftMethodLines(north: boolean, latitudeDeg: number, watchMinutes: number): string[] {
  const perArcmin = declinationDriftArcsec(1, watchMinutes * 60);
  const turn = 1 / Math.cos(latitudeDeg * RAD_PER_DEG);
  const wrongWay = north ? ["west", "high"] : ["east", "low"];
  const screw = Number.isFinite(turn) && turn < 60 ? ` (${turn.toFixed(1)}′ on the azimuth screw)` : "";
  return [
    `Drift method, ${watchMinutes} minutes a look: each ${perArcmin.toFixed(1)}″ of drift is 1′ of error (Hook 1989: 0.2625″ a minute).`,
    `If a star on the meridian near the equator drifts north, the axis points too far ${wrongWay[0]}${screw}.`,
    `If a star low in the east near the equator drifts north, the axis points too ${wrongWay[1]}; in the west it is the other way.`,
  ];
}

/** `Vega: 64° high in the west, magnitude 0.0`. */
function starWords(star: StarInSky): string {
  return `${star.name}: ${star.altitudeDeg.toFixed(0)}° high in the ${compassWords(star.azimuthDeg)}, magnitude ${withMinus(star.magnitude.toFixed(1))}`;
}

/** The stars to align on, in the order to take them, and what the sky would not give. */
export function alignmentLines(choice: AlignmentChoice | null, brightMag: number): string[] {
  if (choice === null) return ["None: this mount does not find its own way."];
  const notes = [
    ...(choice.kind === "short"
      ? [
          `The sky here gives ${choice.stars.length === 0 ? "none" : `only ${choice.stars.length}`} by the rules.`,
        ]
      : []),
    ...(choice.kind === "near" ? ["The third is not 3 to 9 hours of right ascension from the pair."] : []),
    ...(choice.kind !== "short" && choice.faintestMag > brightMag
      ? [`Stars to magnitude ${choice.faintestMag} had to serve.`]
      : []),
  ];
  return [...choice.stars.map((star, index) => `${index + 1}. ${starWords(star)}`), ...notes];
}

export function focusLine(focus: FocusStar | null, targetName: string | null): string {
  if (focus === null) return "No bright star clears the skyline to focus on.";
  const near =
    focus.separationDeg === null || targetName === null
      ? "the highest now"
      : `${focus.separationDeg.toFixed(1)}° from ${targetName}`;
  return `Focus on ${starWords(focus.star)}, ${near}.`;
}

/** What the polar error costs, in seconds of arc and in pixels. */
export function damageLines(damage: PolarDamage, guided: boolean): string[] {
  const { errorArcmin, subSeconds, driftArcsec, turnArcsec, pixels } = damage;
  const drift = `${driftArcsec.toFixed(1)}″${pixels === null ? "" : ` (${pixels.drift.toFixed(1)} pixels)`}`;
  const guiding = guided ? ", which guiding takes out" : "";
  return [
    `An axis ${errorArcmin}′ off drifts a star by up to ${drift} in ${subSeconds} s${guiding}.`,
    pixels === null
      ? `The field turns by up to ${turnArcsec.toFixed(1)}″.`
      : `The field turns by up to ${turnArcsec.toFixed(1)}″, ${pixels.cornerTrail.toFixed(2)} pixels in the corners, guided or not; up to ${pixels.forgivenErrorArcmin.toFixed(0)}′ stays under a pixel.`,
    "Formulas: Hook 1989, the worst over the sky.",
  ];
}

export function flipLine(target: string, flip: Date | null, minutes: number, zone: string): string {
  return flip === null
    ? `No meridian flip on ${target} in its window.`
    : `Meridian flip on ${target} at ${clockTime(flip, zone)}: it costs about ${minutes} minutes.`;
}

export function turnLine(limit: TurnLimit | null, target: string, zone: string): string {
  if (limit === null) return `${target} has no window tonight, so no field turns.`;
  const seconds = limit.seconds >= 10 ? limit.seconds.toFixed(0) : limit.seconds.toFixed(1);
  return `An altazimuth mount turns the field: at ${clockTime(limit.at, zone)}, the worst for ${target}, ${seconds} s trail a pixel in the corners.`;
}
