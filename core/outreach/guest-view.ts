/**
 * What a guest sees of a thing in one instrument under one sky: at a glance, after a moment, or not.
 *
 * Guests are not trained and not fully adapted to the dark: they need several times the contrast
 * at which the eye can tell a patch from the sky at all.
 *
 * @packageDocumentation
 */
import { nakedEyeLimit } from "../night/sky-brightness.ts";
import { bestView, circleFit, type EyepieceUse, telescopeLimitMag } from "../targets/eyepiece-choice.ts";
import type { AudienceRules } from "./audience.ts";
import type { Viewer } from "./instruments.ts";
import type { Showable, ShowableKind } from "./showable.ts";

/** The sky beside the thing, and what the air takes of its light. */
export type SkyBeside = {
  readonly skyMagArcsec2: number;
  /** Magnitudes lost on the way through the air. */
  readonly extinctionMag: number;
};

/** A body of the solar system as it is this night. */
export type BodyLook = { readonly diameterArcsec: number; readonly illuminatedFraction: number };

export type GuestView = {
  readonly use: EyepieceUse;
  /** 0 to 1: how well it shows here, for choosing the instrument. */
  readonly quality: number;
  readonly ease: "at-a-glance" | "after-a-moment";
  /** How wide it looks, degrees at the eye; `null` of stars. */
  readonly apparentDeg: number | null;
  /** Contrast over the eye's threshold; `null` of what is no surface. */
  readonly level: number | null;
  /** Faintest star this instrument shows under this sky. */
  readonly limitMag: number;
  /** Share of it that the field holds; 1 of a point. */
  readonly objectInField: number;
};

/** Chosen figures of the model; stand in `config/`. */
export type GuestRules = {
  /** Clear at a glance from so many times the least level of the audience. */
  readonly glanceFactor: number;
  /** The bare eye, which nobody has to be taught, needs this share of the least level. */
  readonly eyeShare: number;
  /** Half the light of a globular cluster or a galaxy lies within this share of its extent. */
  readonly coreShare: Readonly<Partial<Record<ShowableKind, number>>>;
  /** The eye parts two stars so far apart in the eyepiece, arcseconds. */
  readonly splitArcsec: number;
  /** The least a cluster must have of its stars in the field. */
  readonly leastInField: number;
  /** A disc so wide in the eyepiece is well seen, degrees. */
  readonly wideDiscDeg: number;
  /** Less than this is a bright point and no disc, degrees. */
  readonly leastDiscDeg: number;
  /** The bare eye needs so much less of a margin than a guest at an eyepiece. */
  readonly eyeMarginMag: number;
  /** A Moon thinner than this is hard to find. */
  readonly thinMoon: number;
};

const ARCSEC_PER_DEG = 3600;
const ARCMIN_PER_DEG = 60;
/** Half the light: magnitudes. */
const HALF_LIGHT_MAG = 2.5 * Math.log10(2);
/** Separation that an aperture of 1 mm parts, arcseconds (Dawes: 116″ over the aperture in mm). */
const DAWES_ARCSEC_MM = 116;

/** A view that holds so much of a thing shows it whole. */
const WHOLE = 0.99;

/** Kinds that show as a surface. */
const SURFACES: ReadonlySet<ShowableKind> = new Set([
  "galaxy",
  "galaxy-group",
  "globular-cluster",
  "emission-nebula",
  "reflection-nebula",
  "planetary-nebula",
  "supernova-remnant",
  "star-cloud",
]);

/**
 * How a thing shows in an instrument.
 *
 * @param body - of the Moon or a planet
 * @returns `null` when a guest of this audience would see nothing worth the queue
 */
export function guestView(
  what: Showable,
  viewer: Viewer,
  sky: SkyBeside,
  body: BodyLook | null,
  audience: AudienceRules,
  rules: GuestRules,
): GuestView | null {
  const isEye = viewer.instrument.kind === "eyes";
  const limitMag = isEye
    ? nakedEyeLimit(sky.skyMagArcsec2)
    : telescopeLimitMag(sky.skyMagArcsec2, viewer.apertureMm);
  const scene = { what, viewer, sky, audience, rules, limitMag, isEye };
  if (what.kind === "moon") return body === null ? null : moonView(scene, body);
  if (what.kind === "planet") return body === null ? null : planetView(scene, body);
  if (what.kind === "figure") return figureView(scene);
  if (what.kind === "double-star") return doubleView(scene);
  return SURFACES.has(what.kind) ? surfaceView(scene) : clusterView(scene);
}

type Scene = {
  readonly what: Showable;
  readonly viewer: Viewer;
  readonly sky: SkyBeside;
  readonly audience: AudienceRules;
  readonly rules: GuestRules;
  readonly limitMag: number;
  readonly isEye: boolean;
};

function moonView({ viewer, rules, limitMag, isEye }: Scene, body: BodyLook): GuestView | null {
  if (body.illuminatedFraction < rules.thinMoon) return null;
  // The whole Moon in the field first; guests may be shown the terminator at more power after.
  const whole = viewer.uses.filter(
    ({ trueFieldDeg }) => trueFieldDeg * ARCSEC_PER_DEG >= body.diameterArcsec,
  );
  const use = whole.at(-1) ?? viewer.uses[0];
  if (use === undefined) return null;
  const quality = isEye ? 0.3 : viewer.instrument.kind === "binoculars" ? 0.6 : 1;
  return {
    use,
    quality,
    ease: "at-a-glance",
    apparentDeg: (body.diameterArcsec / ARCSEC_PER_DEG) * use.power,
    level: null,
    limitMag,
    objectInField: 1,
  };
}

function planetView(
  { what, viewer, sky, audience, rules, limitMag }: Scene,
  body: BodyLook,
): GuestView | null {
  const use = viewer.uses.at(-1);
  const magnitude = what.magnitude;
  if (use === undefined || magnitude === null) return null;
  const margin = limitMag - magnitude - sky.extinctionMag;
  const apparentDeg = (body.diameterArcsec / ARCSEC_PER_DEG) * use.power;
  if (margin < rules.eyeMarginMag) return null;
  const isDisc = apparentDeg >= rules.leastDiscDeg;
  // A point that only a list tells from a star is nothing for children, and none for the bare eye.
  const plain = margin >= audience.leastMarginMag;
  if (!isDisc && !plain) return null;
  return {
    use,
    quality: isDisc ? Math.min(1, apparentDeg / rules.wideDiscDeg) : 0.2,
    ease: plain ? "at-a-glance" : "after-a-moment",
    apparentDeg: isDisc ? apparentDeg : null,
    level: null,
    limitMag,
    objectInField: 1,
  };
}

function figureView({ what, viewer, sky, rules, limitMag, isEye }: Scene): GuestView | null {
  const [use] = viewer.uses;
  if (!isEye || use === undefined || what.magnitude === null) return null;
  const margin = limitMag - what.magnitude - sky.extinctionMag;
  if (margin < rules.eyeMarginMag) return null;
  return {
    use,
    quality: Math.min(1, 0.4 + margin / 5),
    ease: margin >= 2 * rules.eyeMarginMag ? "at-a-glance" : "after-a-moment",
    apparentDeg: what.majorArcmin === null ? null : what.majorArcmin / ARCMIN_PER_DEG,
    level: null,
    limitMag,
    objectInField: 1,
  };
}

function doubleView({ what, viewer, sky, audience, rules, limitMag, isEye }: Scene): GuestView | null {
  if (what.majorArcmin === null || what.magnitude === null || isEye) return null;
  const separationArcsec = what.majorArcmin * 60;
  const parted = viewer.uses.find(({ power }) => separationArcsec * power >= rules.splitArcsec);
  if (parted === undefined || separationArcsec < (2 * DAWES_ARCSEC_MM) / viewer.apertureMm) return null;
  if (limitMag - what.magnitude - sky.extinctionMag < audience.leastMarginMag) return null;
  const ease = separationArcsec * parted.power >= 1.5 * rules.splitArcsec ? "at-a-glance" : "after-a-moment";
  return {
    use: parted,
    quality: ease === "at-a-glance" ? 0.8 : 0.6,
    ease,
    apparentDeg: (separationArcsec / ARCSEC_PER_DEG) * parted.power,
    level: null,
    limitMag,
    objectInField: 1,
  };
}

/** Star by star: enough of them, and most of the cluster in the field. */
function clusterView({ what, viewer, sky, audience, rules, limitMag, isEye }: Scene): GuestView | null {
  if (what.magnitude === null || what.majorArcmin === null) return null;
  const margin = limitMag - what.magnitude - sky.extinctionMag;
  const needed = isEye ? rules.eyeMarginMag + 1 : audience.leastMarginMag;
  if (margin < needed) return null;
  const major = what.majorArcmin / ARCMIN_PER_DEG;
  const minor = (what.minorArcmin ?? what.majorArcmin) / ARCMIN_PER_DEG;
  const fits = viewer.uses
    .map((use) => ({ use, ...circleFit(major, minor, use.trueFieldDeg) }))
    .filter(({ objectInField }) => objectInField >= rules.leastInField);
  const best = fits.at(-1);
  if (best === undefined) return null;
  const wide = Math.min(1, (major * best.use.power) / rules.wideDiscDeg / 4);
  return {
    use: best.use,
    quality: Math.min(1, margin / 7) * (0.4 + 0.6 * wide) * (best.objectInField < WHOLE ? 0.7 : 1),
    ease: margin >= needed + 1 ? "at-a-glance" : "after-a-moment",
    apparentDeg: major * best.use.power,
    level: null,
    limitMag,
    objectInField: best.objectInField,
  };
}

/** A glow: as much brighter than the sky as the audience needs. */
function surfaceView({ what, viewer, sky, audience, rules, limitMag, isEye }: Scene): GuestView | null {
  const { majorArcmin, surfaceMagArcsec2 } = what;
  if (majorArcmin === null || surfaceMagArcsec2 === null) return null;
  const minorArcmin = what.minorArcmin ?? majorArcmin;
  const least = audience.leastLevel * (isEye ? rules.eyeShare : 1);
  const glance = least * rules.glanceFactor;
  const share = rules.coreShare[what.kind];
  // The bright middle is what guests see: half of the light within a share of the extent.
  const patch =
    share === undefined
      ? { majorArcmin, minorArcmin, magArcsec2: surfaceMagArcsec2 }
      : {
          majorArcmin: majorArcmin * share,
          minorArcmin: minorArcmin * share,
          magArcsec2: surfaceMagArcsec2 + HALF_LIGHT_MAG + 5 * Math.log10(share),
        };
  const seen = bestView(
    viewer.uses,
    { ...patch, magArcsec2: patch.magArcsec2 + sky.extinctionMag },
    sky.skyMagArcsec2,
  );
  if (seen === null || seen.level < least) return null;
  if (seen.objectInField < rules.leastInField && !isEye) return null;
  const tooFaint =
    what.magnitude !== null && limitMag - what.magnitude - sky.extinctionMag < rules.eyeMarginMag;
  if (tooFaint) return null;
  const apparentDeg = (patch.majorArcmin / ARCMIN_PER_DEG) * seen.use.power;
  // Smaller than a twelfth of a degree it is a star to a guest.
  if (apparentDeg < rules.leastDiscDeg) return null;
  return {
    use: seen.use,
    quality: Math.min(1, 0.3 + (0.35 * seen.level) / glance) * largeShare(apparentDeg, rules),
    ease: seen.level >= glance ? "at-a-glance" : "after-a-moment",
    apparentDeg,
    level: seen.level,
    limitMag,
    objectInField: seen.objectInField,
  };
}

function largeShare(apparentDeg: number, rules: GuestRules): number {
  return 0.3 + 0.7 * Math.min(1, apparentDeg / (2 * rules.wideDiscDeg));
}
