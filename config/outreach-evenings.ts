/**
 * How public evenings are run: who comes when, how long one looks, what an evening is weighed by.
 *
 * All of it is common practice or chosen by the project, and named as assumed where an answer leans on it.
 *
 * @packageDocumentation
 */
import type { Audience, AudienceRules } from "../core/outreach/audience.ts";
import type { EveningWeights } from "../core/outreach/evening-worth.ts";
import type { GuestRules } from "../core/outreach/guest-view.ts";
import type { ViewingRules } from "../core/outreach/instruments.ts";
import type { ShowableKind } from "../core/outreach/showable.ts";
import type { SunHoursRules } from "../core/outreach/sun-session.ts";
import type { BodyName } from "../core/targets/sky-object.ts";
import type { Range } from "./input-limits.ts";

export const AUDIENCES: Readonly<Record<Audience, AudienceRules>> = {
  families: {
    children: true,
    notBefore: "17:00",
    leave: "21:00",
    secondsPerGuest: 60,
    readyWeekdays: [5, 6],
    readyDays: [6, 7],
    leastLevel: 80,
    leastMarginMag: 3.5,
    leastWorth: 2.4,
  },
  school: {
    children: true,
    notBefore: "16:30",
    leave: "20:30",
    secondsPerGuest: 45,
    readyWeekdays: [1, 2, 3, 4],
    readyDays: [1, 2, 3, 4, 5],
    leastLevel: 80,
    leastMarginMag: 3.5,
    leastWorth: 2.4,
  },
  adults: {
    children: false,
    notBefore: "18:30",
    leave: "23:00",
    secondsPerGuest: 75,
    readyWeekdays: [5, 6],
    readyDays: [6, 7],
    leastLevel: 40,
    leastMarginMag: 2.5,
    leastWorth: 1.6,
  },
  mixed: {
    children: true,
    notBefore: "18:00",
    leave: "22:00",
    secondsPerGuest: 60,
    readyWeekdays: [5, 6],
    readyDays: [6, 7],
    leastLevel: 80,
    leastMarginMag: 3.5,
    leastWorth: 2.4,
  },
};

/** Eyepieces that give beams of 5, 2 and 1 mm; f/6 names them. */
export const VIEWING: ViewingRules = {
  exitPupilsMm: [5, 2, 1],
  apparentFieldDeg: 60,
  focalRatio: 6,
  mostPower: 200,
  binocularFieldDeg: 60,
};

/**
 * Set so that the model's levels agree with what visitors report: M51 in 250 mm is nothing for them
 * under 18 mag/arcsec² (level 27) and plain under 21.2 (level 100).
 */
export const GUESTS: GuestRules = {
  glanceFactor: 2.5,
  eyeShare: 0.1,
  // Half the light of M13 lies within a sixth of its extent, of a bright spiral within a third.
  coreShare: { "globular-cluster": 1 / 6, galaxy: 1 / 3, "galaxy-group": 1 / 3 },
  splitArcsec: 240,
  leastInField: 0.8,
  wideDiscDeg: 1,
  leastDiscDeg: 0.15,
  eyeMarginMag: 0.6,
  thinMoon: 0.02,
};

/** How deep the Sun must stand before a kind is shown, degrees; the Moon as soon as it is down. */
export const SUN_DEPTH_DEG: Readonly<Record<ShowableKind, number>> = {
  moon: 1,
  planet: 6,
  figure: 9,
  star: 8,
  "double-star": 8,
  asterism: 11,
  "open-cluster": 11,
  "globular-cluster": 13,
  "planetary-nebula": 13,
  "emission-nebula": 14,
  "supernova-remnant": 16,
  "reflection-nebula": 16,
  "dark-nebula": 18,
  galaxy: 16,
  "galaxy-group": 16,
  "star-cloud": 18,
};

/** Planets so bright that they show earlier. */
export const PLANET_SUN_DEPTH_DEG: Readonly<Partial<Record<BodyName, number>>> = { Venus: 3, Jupiter: 5 };

/** From so deep on an evening counts as dark for the public: bright stars and clusters show. */
export const DARK_ENOUGH_DEG = 12;

/** Weaker meteor showers are nothing to invite people to: zenithal hourly rate. */
export const LEAST_ZHR = 15;

/** Guests that are reckoned with until a number is given. */
export const USUAL_GUESTS = 20;
export const GUESTS_RANGE: Range = { min: 1, max: 500 };

/** One thing at one instrument, minutes. */
export const SLOT_MINUTES: Range = { min: 15, max: 40 };
/** Bare eyes take no queue, but a story and some pointing. */
export const EYE_SLOT_MINUTES = 20;

/** What stands ready unless the asker says: assumed. */
export const USUAL_INSTRUMENTS = "eyes, 2x binoculars 10x50, 1x 80mm, 1x 200mm";

export const INSTRUMENT_KINDS_AT_MOST = 8;
export const INSTRUMENTS_OF_A_KIND: Range = { min: 1, max: 20 };
export const TELESCOPE_MM: Range = { min: 30, max: 1000 };
export const BINOCULARS_POWER: Range = { min: 2, max: 40 };
export const BINOCULARS_MM: Range = { min: 15, max: 200 };
/** From this aperture two people lift. */
export const HEAVY_TELESCOPE_MM = 200;

/** An evening: not so short that nobody sees anything, not so long that nobody stays. */
export const SESSION_HOURS: Range = { min: 0.5, max: 8 };
/** Without hours given an evening takes the last so many before people leave, and no fewer than the least. */
export const EVENING_HOURS: Range = { min: 1, max: 2.5 };
/** Before the doors open. */
export const SET_UP_MINUTES = 60;

/** Evenings looked at when no number is given. */
export const USUAL_EVENINGS = 60;
/** The best of them that are told. */
export const BEST_EVENINGS = 5;
/** Told evenings lie so many nights apart: the ones between serve as rain dates. */
export const EVENINGS_APART = 4;
/** A rain date lies so many nights after, at least and at most: the same weather does not last. */
export const RAIN_DATE_NIGHTS: Range = { min: 1, max: 16 };

/** Sun sessions without hours given: the middle of the day, before the ground has heated through. */
export const SUN_HOURS: SunHoursRules = { usual: { from: "10:00", to: "16:00" }, mostHours: 2.5 };
/** Less of it is no session. */
export const LEAST_SUN_HOURS = 0.5;

export const WEIGHTS: EveningWeights = {
  moonHalfLit: 3,
  moonCrescent: 2,
  moonGibbous: 1,
  moonFull: -1,
  moonless: { withChildren: 0, adults: 2 },
  planets: { Saturn: 3, Jupiter: 3, Venus: 1.5, Mars: 1, Mercury: 0.5 },
  smallMars: 0.3,
  darkHour: { withChildren: 1.2, adults: 1.5 },
  darkHoursThatCount: 2,
  noDarkness: -3,
  pastBedtimeHour: -2,
  readyWeekday: 2.5,
  shower: 1.5,
  lunarEclipse: 12,
  conjunction: 1,
  forecast: { go: 3, marginal: -1, "no-go": -6 },
  sunHour: 1,
  sunHoursThatCount: 4,
  solarEclipse: 12,
};
