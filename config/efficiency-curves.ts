/**
 * Quantum efficiencies of sensors by make of silicon, at the lines and in the broad bands.
 *
 * All are typical values from memory, read off makers' curves to some 10 %; a
 * rig may override its sensor's. Between points they run linearly.
 *
 * @packageDocumentation
 */
import type { Dyes } from "../core/rig/chip.ts";
import type { EfficiencyPoint } from "../core/rig/rig.ts";

type Curve = readonly EfficiencyPoint[];

function curve(...points: readonly (readonly [number, number])[]): Curve {
  return points.map(([wavelengthNm, efficiency]) => ({ wavelengthNm, efficiency }));
}

/** Back-illuminated chips since about 2018, no dyes. */
export const BACK_LIT_PLAIN: Curve = curve(
  [400, 0.62],
  [465, 0.82],
  [486.1, 0.86],
  [500.7, 0.88],
  [535, 0.9],
  [550, 0.89],
  [610, 0.79],
  [656.3, 0.67],
  [672.4, 0.63],
  [700, 0.56],
);

/** Front-illuminated chips with microlenses, no dyes. */
export const FRONT_LIT_PLAIN: Curve = curve(
  [400, 0.4],
  [465, 0.56],
  [486.1, 0.58],
  [500.7, 0.6],
  [535, 0.61],
  [550, 0.6],
  [610, 0.52],
  [656.3, 0.44],
  [672.4, 0.41],
  [700, 0.36],
);

/** Charge-coupled chips with microlenses, no dyes. */
export const CHARGE_COUPLED_PLAIN: Curve = curve(
  [400, 0.34],
  [465, 0.48],
  [486.1, 0.51],
  [500.7, 0.53],
  [535, 0.56],
  [550, 0.56],
  [610, 0.51],
  [656.3, 0.46],
  [672.4, 0.44],
  [700, 0.4],
);

/** Dyes on back-illuminated chips. */
export const BACK_LIT_DYES: Dyes = {
  red: curve([560, 0.03], [580, 0.4], [610, 0.66], [656.3, 0.54], [672.4, 0.5], [700, 0.44]),
  green: curve(
    [465, 0.14],
    [486.1, 0.22],
    [500.7, 0.58],
    [535, 0.74],
    [560, 0.62],
    [610, 0.12],
    [656.3, 0.06],
  ),
  blue: curve([400, 0.35], [465, 0.64], [486.1, 0.58], [500.7, 0.38], [535, 0.08], [560, 0.03]),
};

/** Dyes on the chips of ordinary cameras, infrared block not counted. */
export const FRONT_LIT_DYES: Dyes = {
  red: curve([560, 0.02], [580, 0.24], [610, 0.4], [656.3, 0.3], [672.4, 0.28], [700, 0.24]),
  green: curve(
    [465, 0.08],
    [486.1, 0.13],
    [500.7, 0.33],
    [535, 0.45],
    [560, 0.38],
    [610, 0.08],
    [656.3, 0.04],
  ),
  blue: curve([400, 0.2], [465, 0.42], [486.1, 0.36], [500.7, 0.22], [535, 0.05], [560, 0.02]),
};
