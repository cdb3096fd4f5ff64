/**
 * What a log may hold, and what it begins with until a member says otherwise.
 *
 * Chosen by the project, common practice where marked.
 *
 * @packageDocumentation
 */
import type { CalibrationRules } from "../core/log/calibration-sets.ts";
import type { FrameLimits } from "../core/log/frame-faults.ts";
import { SENSOR_CELSIUS, SUB_SECONDS } from "./input-limits.ts";

export const FRAME_LIMITS: FrameLimits = {
  /** More than a night of two-second subs. */
  frames: { min: 1, max: 20_000 },
  subSeconds: SUB_SECONDS,
  gain: { min: 0, max: 10_000 },
  iso: { min: 25, max: 4_000_000 },
  sensorCelsius: SENSOR_CELSIUS,
  rotationDeg: { min: -360, max: 360 },
  /** Before this nobody of a club took digital pictures of the sky. */
  firstNight: "1980-01-01",
};

/** Characters of one typed line. */
export const LINE_LENGTH = 200;

/** Rows of one file, rows a member may keep, and files of one question. */
export const ROWS_PER_FILE = 20_000;
export const ROWS_PER_MEMBER = 250_000;
export const FILES_AT_ONCE = 10;

/** Rows of one list, and how many there are unless somebody says. */
export const ROWS_LISTED = { min: 1, max: 200 };
export const ROWS_LISTED_UNASKED = 15;

/** Hours that may be wanted of a target through one filter. */
export const WANTED_HOURS = { min: 0.1, max: 1000 };

/** Common practice throughout. */
export const CALIBRATION_RULES: CalibrationRules = {
  temperatureToleranceCelsius: 2,
  rotationToleranceDeg: 2,
  wanted: { dark: 20, flat: 20, bias: 50 },
};

/** Widest tolerance that can be asked for. */
export const TEMPERATURE_TOLERANCE_CELSIUS = { min: 0, max: 20 };

/** The weeks from which a finish date is reckoned, and the fewest nights they must have given. */
export const FINISH_WEEKS = 8;
export const FINISH_NIGHTS_AT_LEAST = 3;

/** Nights with an answer before shares and scores are shown instead of counts. */
export const RECORD_NIGHTS_AT_LEAST = 30;

/** Subs older than so many nights are taken as calibrated, unless asked for. */
export const CALIBRATION_NIGHTS = 90;

/** Idle hours are looked for so many nights ahead, and are worth naming from so long on. */
export const IDLE_NIGHTS = 7;
export const IDLE_HOURS_AT_LEAST = 0.5;
