/**
 * What `tonight` weighs objects by. Common practice throughout, chosen to be pessimistic where
 * an object's own figures are unknown; the overlay of the catalogue overrides.
 *
 * @packageDocumentation
 */
import type { KindBrightness } from "../core/targets/object-brightness.ts";
import type { RankingRules, VisualRules } from "../core/targets/ranking-rules.ts";

/** Figures of the faint half of each kind. */
export const KIND_BRIGHTNESS: KindBrightness = {
  galaxy: { continuumMagArcsec2: 25.5, rayleigh: {} },
  "galaxy-group": { continuumMagArcsec2: 25.5, rayleigh: {} },
  "open-cluster": { continuumMagArcsec2: 25, rayleigh: {} },
  "globular-cluster": { continuumMagArcsec2: 23, rayleigh: {} },
  "emission-nebula": {
    continuumMagArcsec2: null,
    rayleigh: { "h-alpha": 2, "o-iii": 0.5, "s-ii": 0.5, "h-beta": 0.6 },
  },
  "reflection-nebula": { continuumMagArcsec2: 25, rayleigh: {} },
  "dark-nebula": { continuumMagArcsec2: 25.5, rayleigh: {} },
  "planetary-nebula": {
    continuumMagArcsec2: null,
    rayleigh: { "h-alpha": 5, "o-iii": 8, "s-ii": 1, "h-beta": 2 },
  },
  "supernova-remnant": {
    continuumMagArcsec2: null,
    rayleigh: { "h-alpha": 0.5, "o-iii": 0.3, "s-ii": 0.3, "h-beta": 0.15 },
  },
  "star-cloud": { continuumMagArcsec2: 22, rayleigh: {} },
  asterism: { continuumMagArcsec2: 25, rayleigh: {} },
  "double-star": { continuumMagArcsec2: null, rayleigh: {} },
  star: { continuumMagArcsec2: null, rayleigh: {} },
};

/** Of each kind the catalogues hold many that nobody would show: thin clusters, dim patches of dust. */
const UNDESCRIBED = {
  "open-cluster": 0.2,
  asterism: 0.2,
  "reflection-nebula": 0.25,
  "dark-nebula": 0.25,
  "emission-nebula": 0.7,
  "planetary-nebula": 0.7,
  "supernova-remnant": 0.5,
  "double-star": 0,
} as const;

export const RANKING_RULES: RankingRules = {
  suits: {
    "emission-nebula": { "h-alpha": 1, "s-ii": 0.5, "o-iii": 0.4, "h-beta": 0.3, continuum: 1 },
    "planetary-nebula": { "o-iii": 1, "h-alpha": 0.6, "s-ii": 0.2, "h-beta": 0.3, continuum: 1 },
    "supernova-remnant": { "h-alpha": 1, "o-iii": 0.9, "s-ii": 0.6, "h-beta": 0.2, continuum: 1 },
    galaxy: { "h-alpha": 0.15, "o-iii": 0, "s-ii": 0, "h-beta": 0, continuum: 1 },
    "galaxy-group": { "h-alpha": 0.15, "o-iii": 0, "s-ii": 0, "h-beta": 0, continuum: 1 },
    "open-cluster": { "h-alpha": 0, "o-iii": 0, "s-ii": 0, "h-beta": 0, continuum: 1 },
    "globular-cluster": { "h-alpha": 0, "o-iii": 0, "s-ii": 0, "h-beta": 0, continuum: 1 },
    "reflection-nebula": { "h-alpha": 0, "o-iii": 0, "s-ii": 0, "h-beta": 0, continuum: 1 },
    "dark-nebula": { "h-alpha": 0, "o-iii": 0, "s-ii": 0, "h-beta": 0, continuum: 1 },
    "star-cloud": { "h-alpha": 0, "o-iii": 0, "s-ii": 0, "h-beta": 0, continuum: 1 },
    asterism: { "h-alpha": 0, "o-iii": 0, "s-ii": 0, "h-beta": 0, continuum: 0.3 },
    "double-star": { "h-alpha": 0, "o-iii": 0, "s-ii": 0, "h-beta": 0, continuum: 0 },
    star: { "h-alpha": 0, "o-iii": 0, "s-ii": 0, "h-beta": 0, continuum: 0 },
  },
  undescribed: UNDESCRIBED,
  // An object at this share of the frame or more is as large as one wants it.
  fullFill: 0.15,
  wantedSignalToNoise: 5,
  patchArcsec: 10,
  unknownSizeArcmin: 1,
};

export const VISUAL_RULES: VisualRules = {
  suits: {
    "globular-cluster": 1,
    "open-cluster": 0.8,
    "planetary-nebula": 0.9,
    galaxy: 0.8,
    "galaxy-group": 0.7,
    "emission-nebula": 0.9,
    "supernova-remnant": 0.6,
    "double-star": 0.7,
    "star-cloud": 0.6,
    asterism: 0.6,
    "reflection-nebula": 0.5,
    "dark-nebula": 0.1,
    star: 0,
  },
  undescribed: UNDESCRIBED,
  enoughHours: 2,
  easyAboveLimitMag: 5,
  easyLevel: 20,
  softEdgeContrast: 0.03,
  coreAboveMeanMag: { galaxy: 1.5, "galaxy-group": 1.5, "globular-cluster": 1 },
  largeArcmin: 60,
  starryMagArcsec2: 21,
};

/** Below this a clear gap is no use: the list is made as if it cleared, and says so. */
export const LEAST_CLEAR_HOURS = 0.5;

/** How an object's rank changes once its owner has begun it: what is begun comes first, even if small in the frame. */
export const PREFERENCE = { begun: 20, done: 0.25 } as const;

/** Least altitudes, degrees (common practice). */
export const LEAST_ALTITUDE_DEG = { imaging: 30, visual: 20, public: 15 } as const;
