/**
 * How far a member's own figures may reach before a question is refused.
 *
 * Chosen by the project: wide enough for any instrument a club owns, narrow
 * enough to catch a slipped unit or decimal point.
 *
 * @packageDocumentation
 */

/** A span both ends of which are allowed. */
export type Range = { readonly min: number; readonly max: number };

export const LATITUDE_DEG: Range = { min: -90, max: 90 };
export const LONGITUDE_DEG: Range = { min: -180, max: 180 };
/** From the shore of the Dead Sea to above the highest summit. */
export const ELEVATION_METRES: Range = { min: -430, max: 9000 };

/** Zenith readings a meter gives between a stadium and the darkest desert. */
export const SKY_MAG_ARCSEC2: Range = { min: 14, max: 22.5 };
export const BORTLE_CLASS: Range = { min: 1, max: 9 };
/** Under the darkest of the readings above, rounded up; at 7.93 the formula has no sky left. */
export const NAKED_EYE_LIMIT_MAG: Range = { min: 1, max: 7 };
export const SEEING_ARCSEC: Range = { min: 0.3, max: 15 };

/** Points of an obstruction profile: one is a wall all around, more than one a degree says nothing new. */
export const SKYLINE_POINTS: Range = { min: 1, max: 360 };
export const SKYLINE_ALTITUDE_DEG: Range = { min: -10, max: 90 };
/** Characters of a profile: 360 points, generously spaced. */
export const SKYLINE_TEXT_LENGTH = 8000;

export const BRIGHT_DIRECTIONS_AT_MOST = 12;
export const BRIGHT_DIRECTION_MAG: Range = { min: 0.1, max: 6 };

/** Characters of a name that people give to a site, a rig or a filter. */
export const NAME_LENGTH: Range = { min: 1, max: 40 };

export const FOCAL_LENGTH_MM: Range = { min: 4, max: 20_000 };
export const FOCAL_RATIO: Range = { min: 0.7, max: 64 };
export const APERTURE_MM: Range = { min: 2, max: 4000 };
export const REDUCER_FACTOR: Range = { min: 0.2, max: 6 };
export const OBSTRUCTION: Range = { min: 0, max: 0.7 };
export const THROUGHPUT: Range = { min: 0.05, max: 1 };
/** The largest plate a member could mount is eight by ten inches. */
export const SENSOR_SIDE_MM: Range = { min: 1, max: 254 };
/** A sensor with fewer pixels across is a slip of the pen. */
export const FEWEST_PIXELS_ACROSS = 50;
export const PIXEL_UM: Range = { min: 0.5, max: 50 };
export const READ_NOISE_ELECTRONS: Range = { min: 0.1, max: 100 };
export const ELECTRONS_PER_ADU: Range = { min: 0.001, max: 100 };
export const SATURATION_ELECTRONS: Range = { min: 100, max: 5_000_000 };
/** Electrons per second and pixel: from a deeply cooled chip to one in the Sun. */
export const DARK_ELECTRONS: Range = { min: 0, max: 1000 };
export const EFFICIENCY: Range = { min: 0.001, max: 1 };
export const EFFICIENCY_POINTS: Range = { min: 1, max: 12 };
export const SENSOR_CELSIUS: Range = { min: -100, max: 60 };
export const GUIDING_ARCSEC: Range = { min: 0, max: 20 };
export const FLIP_AFTER_MINUTES: Range = { min: 0, max: 180 };
export const SUB_SECONDS: Range = { min: 0.0001, max: 7200 };
export const MEASURED_SKY_ELECTRONS: Range = { min: 1e-6, max: 10_000 };
/** What a 16-bit converter counts to. */
export const MEASURED_ADU: Range = { min: 0, max: 65_535 };
export const EYEPIECE_MM: Range = { min: 1.5, max: 100 };
export const APPARENT_FIELD_DEG: Range = { min: 20, max: 120 };
export const EYEPIECES_AT_MOST = 12;

/** Wavelengths that silicon or an eye sees. */
export const WAVELENGTH_NM: Range = { min: 300, max: 1100 };
export const FILTER_WIDTH_NM: Range = { min: 0.1, max: 800 };
export const FILTER_TRANSMISSION: Range = { min: 0.01, max: 1 };
export const FILTER_BANDS_AT_MOST = 6;
export const FILTERS_AT_MOST = 24;

/** Years in which the sky can be computed and a clock's zone is known. */
export const YEARS: Range = { min: 1900, max: 2100 };
/** Nights in one question, a year and a lunation. */
export const NIGHTS_AT_MOST = 400;

/** Sites and rigs a member may keep. */
export const SITES_AT_MOST = 50;
export const RIGS_AT_MOST = 50;

/** Targets of one list, and how many there are unless somebody says. */
export const TARGETS_LISTED: Range = { min: 1, max: 50 };
export const TARGETS_LISTED_UNASKED = 10;

/** Minutes between points of a track, and how many points one answer carries. */
export const TRACK_STEP_MINUTES: Range = { min: 0.1, max: 1440 };
export const TRACK_STEP_MINUTES_UNASKED = 15;
export const TRACK_POINTS_AT_MOST = 5000;
