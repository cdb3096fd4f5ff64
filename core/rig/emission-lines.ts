/**
 * The emission lines that line filters are made for.
 *
 * @packageDocumentation
 */
import type { EmissionLine } from "../targets/sky-object.ts";
import type { Band } from "./rig.ts";

export const EMISSION_LINES: readonly EmissionLine[] = ["h-alpha", "o-iii", "s-ii", "h-beta"];

/** Wavelengths in air, nanometres; [S II] is the middle of its pair. */
export const LINE_WAVELENGTH_NM: Readonly<Record<EmissionLine, number>> = {
  "h-alpha": 656.3,
  "o-iii": 500.7,
  "s-ii": 672.4,
  "h-beta": 486.1,
};

/** As people write them. */
export const LINE_NAME: Readonly<Record<EmissionLine, string>> = {
  "h-alpha": "Hα",
  "o-iii": "[O III]",
  "s-ii": "[S II]",
  "h-beta": "Hβ",
};

/** The lines that fall within a pass band, nearest to its centre first. */
export function linesWithin(band: Pick<Band, "centreNm" | "widthNm">): EmissionLine[] {
  const aside = (line: EmissionLine) => Math.abs(LINE_WAVELENGTH_NM[line] - band.centreNm);
  return EMISSION_LINES.filter((line) => aside(line) <= band.widthNm / 2).sort(
    (one, other) => aside(one) - aside(other),
  );
}
