/**
 * What is worth showing of Sun, Moon and planets, and when: chosen here unless a line says whose.
 *
 * @packageDocumentation
 */
import type { ApproachLimits } from "../core/outreach/conjunctions.ts";
import type { TerminatorBand } from "../core/outreach/lunar-terminator.ts";
import type { PlanetRules } from "../core/outreach/planets.ts";
import type { SunDayRules } from "../core/outreach/sun-day.ts";

/** The Sun stands so high over a lunar feature when its shadows are long (common practice). */
export const TERMINATOR: TerminatorBand = { lowestDeg: 0.5, highestDeg: 8 };

/** Sine of the Earth's least altitude over a lunar feature: nearer the limb it is a mere line. */
export const LEAST_TOWARDS_US = 0.1;

/** A daytime session: lower than 5° the air drowns all detail; the rest is common practice. */
export const SUN_DAY: SunDayRules = {
  leastAltitudeDeg: 5,
  steady: { fromAltitudeDeg: 20, ofNoonAltitude: 0.7, hours: 3 },
};

/** How far ahead `sun` looks for an eclipse that the site sees. */
export const ECLIPSE_AHEAD_DAYS = 730;

/** How far ahead `sun` looks for the next day on which the Sun rises: past any polar night. */
export const SUNLESS_DAYS_AT_MOST = 200;

/** How many nights `moon` looks through for a named feature: two lunations. */
export const FEATURE_NIGHTS = 60;

/** Least height of the Moon for a named feature, degrees, as for looking by eye. */
export const MOON_LEAST_ALTITUDE_DEG = 15;

/** Of the features on the terminator, so many are named in words; the largest, seas apart. */
export const FEATURES_NAMED = 12;

/**
 * Low enough for Mercury, which never stands higher in a sky worth the name; and the Sun so far
 * down, in the evening and in the morning, that nobody sweeps across it.
 */
export const PLANET_RULES: PlanetRules = {
  leastAltitudeDeg: 5,
  leastElongationDeg: 10,
  sunDepthDeg: 4,
  darkSkyMag: 3,
};

/** How far ahead `planets` names a planet's next opposition, conjunction or elongation. */
export const PLANET_EVENTS_AHEAD_DAYS = 120;

/** With the ring more closed than this, degrees, one looks for a line (common practice). */
export const RING_EDGE_DEG = 3;

/** Closer than this is worth a look: the Moon by a planet, planets by one another (chosen here). */
export const APPROACH_LIMITS: ApproachLimits = { moonDeg: 5, planetsDeg: 3, leastElongationDeg: 12 };

/** `events` looks so many days ahead unless it is told. */
export const EVENTS_AHEAD_DAYS = 90;

/** A comet's table has so many rows at most, spread over the span. */
export const COMET_ROWS = 8;

/** Fewer meteors an hour than this at the best of the night are not worth an alarm (common practice). */
export const METEORS_WORTH_A_LOOK = 5;
