/**
 * Named stars as they stand over a site: which of them a mount can be set on.
 *
 * @packageDocumentation
 */
import type { SkylinePoint } from "../site.ts";
import { horizontalOf, hourAngleDeg, type SkyFrame } from "../sky/frame.ts";
import { movedPlace, placeOfDate, separationDeg } from "../sky/place.ts";
import type { NamedStar } from "../targets/catalogue.ts";
import { skylineAltitudeDeg } from "../targets/skyline.ts";

/** A star and its place of date, airless. */
export type StarInSky = {
  readonly name: string;
  readonly magnitude: number;
  /** Of date, degrees. */
  readonly raDeg: number;
  readonly decDeg: number;
  /** West positive, in [-180, 180]. */
  readonly hourAngleDeg: number;
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
};

/** A circle of sky to keep out of, such as the one around the Moon; place of date. */
export type Avoided = { readonly raDeg: number; readonly decDeg: number; readonly radiusDeg: number };

/** The sky over a site at an instant, as far as stars to set on are concerned. */
export type StarField = {
  readonly frame: SkyFrame;
  readonly skyline: readonly SkylinePoint[];
  readonly avoided: readonly Avoided[];
};

/** Which stars will do; every limit itself is still allowed. */
export type StarLimits = {
  readonly faintestMag: number;
  readonly lowestDeg: number;
  readonly highestDeg: number;
  readonly farthestDecDeg: number;
};

/** The stars within the limits, clear of the skyline and of the circles to avoid. */
export function starsWithin(
  stars: readonly NamedStar[],
  field: StarField,
  limits: StarLimits,
): readonly StarInSky[] {
  return stars
    .filter((star) => star.magnitude <= limits.faintestMag)
    .map((star) => starInSky(star, field.frame))
    .filter(
      (star) =>
        star.altitudeDeg >= limits.lowestDeg &&
        star.altitudeDeg <= limits.highestDeg &&
        Math.abs(star.decDeg) <= limits.farthestDecDeg &&
        star.altitudeDeg > skylineAltitudeDeg(field.skyline, star.azimuthDeg) &&
        field.avoided.every((circle) => separationDeg(star, circle) >= circle.radiusDeg),
    );
}

function starInSky(star: NamedStar, frame: SkyFrame): StarInSky {
  const moved = movedPlace(star.raDeg, star.decDeg, frame.at, star.properMotion);
  const ofDate = placeOfDate(star.raDeg, star.decDeg, frame.at, star.properMotion);
  return {
    name: star.name,
    magnitude: star.magnitude,
    raDeg: ofDate.raDeg,
    decDeg: ofDate.decDeg,
    hourAngleDeg: hourAngleDeg(frame, ofDate.raDeg),
    ...horizontalOf(frame, moved.raDeg, moved.decDeg),
  };
}
