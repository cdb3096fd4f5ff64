/**
 * Everything that setting up a mount asks of the sky: pole, stars, flip, drift, turn.
 *
 * @packageDocumentation
 */
import {
  ALIGNMENT_RULES,
  DEFAULT_DRIFT_DEC_DEG,
  FOCUS_STAR_LIMITS,
  LEAST_POLE_ALTITUDE_DEG,
  MOON_CLEARANCE_DEG,
  SUN_DOWN_DEG,
  TRAIL_PX,
} from "../config/mount-rules.ts";
import { POLARIS, SOUTHERN_TRAPEZIUM } from "../config/pole-stars.ts";
import { SUN_GUARD_DEG, SUNRISE_GUARD_MINUTES } from "../core/cautions.ts";
import { type AlignmentChoice, alignmentStars } from "../core/mount/alignment-stars.ts";
import { fieldTurnRate, longestUnturnedSeconds } from "../core/mount/field-rotation.ts";
import { type FocusStar, focusStar } from "../core/mount/focus-star.ts";
import {
  declinationDriftArcsec,
  fieldTurnArcsec,
  forgivenErrorArcmin,
  turnTrail,
} from "../core/mount/polar-error.ts";
import { type Pole, type PoleStarPlace, poleStarPlace, risenPole } from "../core/mount/pole-star.ts";
import { type PoleView, poleView } from "../core/mount/pole-view.ts";
import type { Avoided, StarField } from "../core/mount/visible-stars.ts";
import { scaleArcsecPerPixel } from "../core/rig/optics.ts";
import type { CameraRig, Rig } from "../core/rig/rig.ts";
import type { Site } from "../core/site.ts";
import { DEG_PER_RAD } from "../core/sky/angles.ts";
import { bodyPlace } from "../core/sky/bodies.ts";
import { skyFrame } from "../core/sky/frame.ts";
import { placeOfDate } from "../core/sky/place.ts";
import type { NamedStar } from "../core/targets/catalogue.ts";
import type { Target } from "../core/targets/sky-object.ts";
import type { TargetNight } from "../core/targets/target-night.ts";
import { minutesToSunrise } from "./pointings.ts";

export type Alignment = {
  readonly at: Date;
  readonly pole: Pole;
  /** The pole star first; in the south the rest of the trapezium after it. */
  readonly poleStars: readonly [PoleStarPlace, ...PoleStarPlace[]];
  readonly view: PoleView;
  /** `null` for a mount that does not find its own way. */
  readonly choice: AlignmentChoice | null;
  readonly focus: FocusStar | null;
  /** The Sun stands above the horizon: no star can be seen. */
  readonly byDay: boolean;
};

/** What the sky offers to set up by at an instant. */
export function alignmentAt(
  site: Site,
  at: Date,
  stars: readonly NamedStar[],
  target: Target | null,
  goto: boolean,
): Alignment {
  const frame = skyFrame(site, at);
  const pole = risenPole(site.latitudeDeg);
  const place = (star: (typeof SOUTHERN_TRAPEZIUM)[number]) => poleStarPlace(star, frame);
  const [first, ...rest] = pole === "north" ? [POLARIS] : SOUTHERN_TRAPEZIUM;
  const poleStars = [place(first ?? POLARIS), ...rest.map(place)] as const;
  const field: StarField = { frame, skyline: site.skyline, avoided: avoidedAt(site, at) };
  return {
    at,
    pole,
    poleStars,
    view: poleView(poleStars[0], site.skyline, LEAST_POLE_ALTITUDE_DEG),
    choice: goto ? alignmentStars(stars, field, ALIGNMENT_RULES) : null,
    focus: focusStar(stars, field, target === null ? null : placeOf(site, target, at), FOCUS_STAR_LIMITS),
    byDay: bodyPlace("Sun", site, at).altitudeDeg > SUN_DOWN_DEG,
  };
}

/** Around the Moon always, around the Sun while it is up or about to rise. */
function avoidedAt(site: Site, at: Date): readonly Avoided[] {
  const moon = bodyPlace("Moon", site, at);
  const sun = bodyPlace("Sun", site, at);
  const rising = minutesToSunrise(site, at);
  const sunNear = sun.altitudeDeg > SUN_DOWN_DEG || (rising !== null && rising <= SUNRISE_GUARD_MINUTES);
  return [
    { raDeg: moon.raDeg, decDeg: moon.decDeg, radiusDeg: MOON_CLEARANCE_DEG },
    ...(sunNear ? [{ raDeg: sun.raDeg, decDeg: sun.decDeg, radiusDeg: SUN_GUARD_DEG }] : []),
  ];
}

/** A target's place of date. */
export function placeOf(
  site: Site,
  target: Target,
  at: Date,
): { readonly raDeg: number; readonly decDeg: number } {
  switch (target.kind) {
    case "body":
      return bodyPlace(target.body, site, at);
    case "object":
      return placeOfDate(target.object.raDeg, target.object.decDeg, at, target.object.properMotion);
    case "place":
      return placeOfDate(target.raDeg, target.decDeg, at);
  }
}

/** What a polar error does to one sub. */
export type PolarDamage = {
  readonly errorArcmin: number;
  readonly subSeconds: number;
  readonly decDeg: number;
  readonly driftArcsec: number;
  readonly turnArcsec: number;
  /** On the rig's pixels; `null` for the eye. */
  readonly pixels: {
    readonly drift: number;
    /** In the corner, the guide star in the middle. */
    readonly cornerTrail: number;
    /** The error that keeps the corner's trail to a pixel. */
    readonly forgivenErrorArcmin: number;
  } | null;
};

/** Drift and turn of one sub, the worst over the sky. */
export function polarDamage(
  rig: Rig,
  errorArcmin: number,
  subSeconds: number,
  targetDecDeg: number | null,
): PolarDamage {
  const decDeg = targetDecDeg ?? DEFAULT_DRIFT_DEC_DEG;
  const driftArcsec = declinationDriftArcsec(errorArcmin, subSeconds);
  const turnArcsec = fieldTurnArcsec(errorArcmin, subSeconds, decDeg);
  const figures = { errorArcmin, subSeconds, decDeg, driftArcsec, turnArcsec };
  if (rig.kind === "visual") return { ...figures, pixels: null };
  const corner = cornerOf(rig);
  const limit = {
    trailUm: TRAIL_PX * rig.sensor.pixelUm,
    exposureMinutes: subSeconds / 60,
    decDeg,
    focalLengthMm: rig.focalLengthMm,
    guideToEdgeDeg: corner.degrees,
  };
  return {
    ...figures,
    pixels: {
      drift: driftArcsec / scaleArcsecPerPixel(rig.sensor.pixelUm, rig.focalLengthMm),
      cornerTrail: turnTrail(turnArcsec, corner.pixels),
      forgivenErrorArcmin: forgivenErrorArcmin(limit),
    },
  };
}

/** From the middle of the sensor to its corner. */
function cornerOf(rig: CameraRig): { readonly pixels: number; readonly degrees: number } {
  const millimetres = Math.hypot(rig.sensor.widthMm, rig.sensor.heightMm) / 2;
  return {
    pixels: (millimetres * 1000) / rig.sensor.pixelUm,
    degrees: (millimetres / rig.focalLengthMm) * DEG_PER_RAD,
  };
}

/** The longest sub that an altazimuth mount allows anywhere in the windows. */
export type TurnLimit = { readonly seconds: number; readonly at: Date };

const STEP_MS = 10 * 60_000;

/** Where the field of a followed target turns fastest; `null` without a window. */
export function turnLimit(site: Site, rig: CameraRig, night: TargetNight): TurnLimit | null {
  const corner = cornerOf(rig).pixels;
  let least: TurnLimit | null = null;
  for (const { start, end } of night.windows) {
    for (let ms = start.getTime(); ms <= end.getTime(); ms += STEP_MS) {
      const { altitudeDeg, azimuthDeg } = night.track(ms);
      const rate = fieldTurnRate(site.latitudeDeg, altitudeDeg, azimuthDeg);
      const seconds = longestUnturnedSeconds(rate, corner, TRAIL_PX);
      if (least === null || seconds < least.seconds) least = { seconds, at: new Date(ms) };
    }
  }
  return least;
}
