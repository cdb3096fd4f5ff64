/**
 * A place to observe from: where it is, what stands in the way, how dark it gets.
 *
 * @packageDocumentation
 */

/** One corner of the obstruction profile: what stands this high in that direction. */
export type SkylinePoint = {
  /** Degrees from north through east, in [0, 360). */
  readonly azimuthDeg: number;
  /** Degrees above the level horizon, in [-10, 90]. */
  readonly altitudeDeg: number;
};

/** How the asker described the darkness of the sky at the zenith. */
export type SkyQuality =
  | { readonly kind: "reading"; readonly magArcsec2: number }
  | { readonly kind: "bortle"; readonly class: number }
  | { readonly kind: "naked-eye"; readonly limitMag: number };

/** A direction brighter than the rest, such as the dome of a town. */
export type BrightDirection = {
  readonly azimuthDeg: number;
  /** Magnitudes brighter than the site's sky would be there, at 30° altitude; positive. */
  readonly brighterMag: number;
};

export type Site = {
  readonly name: string;
  /** Degrees, north positive, in [-90, 90]. */
  readonly latitudeDeg: number;
  /** Degrees, east positive, in [-180, 180]. */
  readonly longitudeDeg: number;
  /** Metres above sea level. */
  readonly elevationMetres: number;
  /** IANA name, such as `Europe/London`. */
  readonly timeZone: string;
  /** Sorted by azimuth; empty for a level horizon. */
  readonly skyline: readonly SkylinePoint[];
  /** `null` when nobody has said: the club's default stands in, named as an assumption. */
  readonly sky: SkyQuality | null;
  readonly brightDirections: readonly BrightDirection[];
  /** Full width at half maximum of a star's blur at the zenith, arcseconds; `null` when unknown. */
  readonly seeingArcsec: number | null;
};
