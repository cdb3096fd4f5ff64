/**
 * A saved site in words and figures, for its owner.
 *
 * @packageDocumentation
 */
import { skylineRangeDeg } from "../../core/targets/skyline.ts";
import type { Figure } from "../answer.ts";
import type { SavedSite } from "../books.ts";
import { coordinateWords } from "../read/coordinates.ts";
import { skyWords } from "../read/sky.ts";
import { compassWords, listWords } from "./sky.ts";

/** A line each: place, sky, skyline and what else is known. */
export function siteLines({ site }: SavedSite): readonly string[] {
  const lines = [
    `${coordinateWords(site.latitudeDeg, site.longitudeDeg)}, ${site.elevationMetres} m, clock of ${site.timeZone}`,
    site.sky === null ? "Sky: not said yet" : `Sky: ${skyWords(site.sky)}`,
    skylineSentence({ site }),
  ];
  if (site.brightDirections.length > 0) {
    const towards = site.brightDirections.map(
      ({ azimuthDeg, brighterMag }) => `${compassWords(azimuthDeg)} (${brighterMag} mag)`,
    );
    lines.push(`Brighter towards the ${listWords(towards)}`);
  }
  if (site.seeingArcsec !== null) lines.push(`A star's blur at the zenith: ${site.seeingArcsec}″`);
  return lines;
}

/** `Skyline: 12 points, from 0° to 18°, highest in the south`. */
export function skylineSentence({ site }: Pick<SavedSite, "site">): string {
  if (site.skyline.length === 0) return "Skyline: level";
  const { lowestDeg, highestDeg } = skylineRangeDeg(site.skyline);
  const highest = site.skyline.find(({ altitudeDeg }) => altitudeDeg === highestDeg);
  const points = site.skyline.length === 1 ? "1 point" : `${site.skyline.length} points`;
  return `Skyline: ${points}, from ${lowestDeg}° to ${highestDeg}°, highest in the ${compassWords(highest?.azimuthDeg ?? 0)}`;
}

/** A saved site as figures: all that is known of it, and who sees it. */
export function savedSiteFigures(saved: SavedSite): { readonly [name: string]: Figure } {
  const { site } = saved;
  return {
    name: site.name,
    latitudeDeg: site.latitudeDeg,
    longitudeDeg: site.longitudeDeg,
    elevationMetres: site.elevationMetres,
    timeZone: site.timeZone,
    sky: site.sky,
    skyline: site.skyline,
    brightDirections: site.brightDirections,
    seeingArcsec: site.seeingArcsec,
    default: saved.isDefault,
    shared: saved.shared,
  };
}
