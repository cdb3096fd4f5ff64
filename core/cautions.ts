/**
 * Which cautions an answer must carry, decided from what it invites people to do.
 *
 * The texts live in `config/caution-texts.ts`; here are only the rules. No setting,
 * option or format reaches them.
 *
 * @packageDocumentation
 */

export type CautionId =
  | "sun"
  | "cap-before-sunrise"
  | "lightning"
  | "laser"
  | "mains-power"
  | "cold"
  | "dark-site"
  | "heavy-gear"
  | "children";

/** A caution as shown: the rule's name and the words from `config/`. */
export type Caution = { readonly id: CautionId; readonly text: string };

/** One direction that the answer invites people to look or point in, at one instant. */
export type Pointing = {
  /** From the Sun's centre, degrees; 0 for the Sun itself. */
  readonly sunSeparationDeg: number;
  /** True altitude of the Sun's centre, degrees. */
  readonly sunAltitudeDeg: number;
  /** Until the Sun's next rise; `null` when it does not rise within a day. */
  readonly minutesToSunrise: number | null;
};

/** What the answer is about, as far as the rules ask. */
export type Occasion = {
  /** About the Sun: `sun`, a daytime session, a solar eclipse, or the Sun as a target. */
  readonly solar: boolean;
  readonly pointings: readonly Pointing[];
  /** Minutes from the end of the session to sunrise; `null` when there is none to tell of. */
  readonly endToSunriseMinutes: number | null;
  /** Lowest air temperature of the session, °C; `null` when unknown. */
  readonly lowestCelsius: number | null;
  /** Strongest wind of the session, m/s; `null` when unknown. */
  readonly windMetresPerSecond: number | null;
  readonly dewExpected: boolean;
  readonly thunderExpected: boolean;
  /** The public or a class is invited. */
  readonly publicSession: boolean;
  readonly children: boolean;
  /** Somebody will point with a laser. */
  readonly laser: boolean;
  readonly mainsPower: boolean;
  /** Away from home, at a site reached by road in the dark. */
  readonly awayFromHome: boolean;
  readonly heavyGear: boolean;
};

/** An occasion with nothing to caution about: a start for callers to fill. */
export const QUIET_OCCASION: Occasion = {
  solar: false,
  pointings: [],
  endToSunriseMinutes: null,
  lowestCelsius: null,
  windMetresPerSecond: null,
  dewExpected: false,
  thunderExpected: false,
  publicSession: false,
  children: false,
  laser: false,
  mainsPower: false,
  awayFromHome: false,
  heavyGear: false,
};

/** Within this distance of the Sun an object brings the solar caution, degrees. */
export const SUN_GUARD_DEG = 30;

/** "About to rise" and "ends before sunrise": minutes. */
export const SUNRISE_GUARD_MINUTES = 60;

/** Below this the cold is worth a word, °C (common practice). */
export const COLD_CELSIUS = 3;

/**
 * The upper limb shows, refraction included, when the centre stands above this, degrees:
 * 34′ of refraction and a semidiameter of at most 16.3′.
 */
const SUN_UP_DEG = -0.84;

/** Whether looking there needs the solar caution: the Sun is up or about to rise, and near. */
export function nearRisenSun(pointing: Pointing): boolean {
  const up = pointing.sunAltitudeDeg > SUN_UP_DEG;
  const rising = pointing.minutesToSunrise !== null && pointing.minutesToSunrise <= SUNRISE_GUARD_MINUTES;
  return pointing.sunSeparationDeg <= SUN_GUARD_DEG && (up || rising);
}

/**
 * The cautions that apply, the solar one always first.
 *
 * @returns each rule at most once, in the order to be shown
 */
export function cautionsOf(occasion: Occasion): readonly CautionId[] {
  const rules: readonly (readonly [CautionId, boolean])[] = [
    ["sun", occasion.solar || occasion.pointings.some(nearRisenSun)],
    [
      "cap-before-sunrise",
      occasion.endToSunriseMinutes !== null && occasion.endToSunriseMinutes <= SUNRISE_GUARD_MINUTES,
    ],
    ["lightning", occasion.thunderExpected],
    ["laser", occasion.laser],
    ["children", occasion.children],
    ["mains-power", occasion.mainsPower && (occasion.dewExpected || occasion.publicSession)],
    ["cold", occasion.lowestCelsius !== null && occasion.lowestCelsius <= COLD_CELSIUS],
    ["dark-site", occasion.awayFromHome],
    ["heavy-gear", occasion.heavyGear],
  ];
  return rules.filter(([, applies]) => applies).map(([id]) => id);
}
