/**
 * Assumptions about light, for want of a site's or a sensor's own measurements.
 *
 * @packageDocumentation
 */
import type { Photometry } from "../core/photometry.ts";

export const PHOTOMETRY: Photometry = {
  // Common practice: the scale itself (J. E. Bortle 2001, Sky & Telescope 101 (2), 126) names
  // naked-eye signs and no magnitudes; these are the middles that observers commonly put on it.
  bortleMagArcsec2: {
    1: 22.0,
    2: 21.94,
    3: 21.8,
    4: 21.1,
    5: 20.0,
    6: 19.2,
    7: 18.7,
    8: 18.0,
    9: 17.5,
  },
  // Common practice for clear air near sea level.
  aerosolExtinction: 0.12,
  // Chosen: a town's dome as a camera sees it from some ten kilometres off spans about 60°.
  brightDirectionSpreadDeg: 30,
  // Common practice: 400–700 nm, as dyes of some 90 nm each divide it.
  openBands: {
    mono: { centreNm: 550, widthNm: 300 },
    blue: { centreNm: 465, widthNm: 90 },
    green: { centreNm: 535, widthNm: 90 },
    red: { centreNm: 610, widthNm: 90 },
  },
  // Common practice: a quarter of hydrogen-alpha passes; the other points follow the usual slope, from memory.
  infraredBlock: [
    { wavelengthNm: 610, efficiency: 1 },
    { wavelengthNm: 656.3, efficiency: 0.25 },
    { wavelengthNm: 672.4, efficiency: 0.17 },
    { wavelengthNm: 700, efficiency: 0.08 },
  ],
  // Chosen so that [O III] counts for green and blue, H-beta for blue, H-alpha and [S II] for red.
  seesLineShare: 0.4,
  // Chosen: line filters are sold up to some 35 nm, colour filters from some 60 nm.
  lineFilterMaxWidthNm: 50,
};
