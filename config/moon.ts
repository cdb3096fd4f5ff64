/**
 * The Moon's size.
 *
 * @packageDocumentation
 */

/** Mean radius in km. Source: IAU Working Group on Cartographic Coordinates (from memory). */
export const MOON_RADIUS_KM = 1737.4;
