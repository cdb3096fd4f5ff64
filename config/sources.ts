/**
 * What the answers rest on: for `about`, and for whoever wants to check.
 *
 * @packageDocumentation
 */

/** What is computed, and the publication it is computed from. */
export const SOURCES: readonly { readonly what: string; readonly from: string }[] = [
  {
    what: "Sun, Moon and planets",
    from: "Astronomy Engine, held to the Swiss Ephemeris and the IAU's SOFA routines by tests",
  },
  { what: "Fixed objects", from: "IAU precession, nutation and aberration, held to SOFA by tests" },
  {
    what: "Moonlight and sky glow",
    from: "K. Krisciunas and B. E. Schaefer 1991, PASP 103, 1033; called rough (8 to 23 %)",
  },
  { what: "Twilight glow", from: "F. Patat and others 2006, A&A 455, 385 (from memory)" },
  { what: "Naked-eye limit", from: "B. E. Schaefer 1990, PASP 102, 212" },
  {
    what: "Bortle classes",
    from: "J. E. Bortle 2001, Sky & Telescope 101 (2), 126; magnitudes are common practice",
  },
  { what: "Airmass", from: "F. Kasten and A. T. Young 1989, Applied Optics 28, 4735" },
  { what: "Photons of a sky", from: "M. S. Bessell 1979, PASP 91, 589" },
  { what: "Signal to noise", from: "W. J. Merline and S. B. Howell 1995, Experimental Astronomy 6, 163" },
  { what: "Dew point", from: "O. A. Alduchov and R. E. Eskridge 1996, J. Appl. Meteor. 35, 601" },
  { what: "Polar error", from: "R. N. Hook 1989, J. Brit. Astron. Assoc. 99, 19" },
  { what: "Meteor showers", from: "the working list of the International Meteor Organization (from memory)" },
  {
    what: "Solar viewing",
    from: "ISO 12312-2 for the eye; full-aperture filters over the front (common practice)",
  },
];

/** Whose data are shown. */
export const DATA_CREDITS: readonly string[] = [
  "Weather data by Open-Meteo.com (https://open-meteo.com/), CC BY 4.0; aerosol by CAMS.",
  "Based on data from MET Norway (https://api.met.no/), CC BY 4.0.",
  "Deep-sky and star tables from d3-celestial by Olaf Frohn (BSD-3-Clause), with an overlay of our own; see NOTICE.",
  "Places by Open-Meteo's geocoding, from GeoNames (https://www.geonames.org/), CC BY 4.0.",
  "Letters: Atkinson Hyperlegible by the Braille Institute of America (SIL OFL 1.1).",
];

/** What the answers are not. */
export const KNOWN_LIMITS: readonly string[] = [
  "Exposure, moonlight and sky brightness are rough: to some tens of percent. A sky measured on your own subs is better.",
  "A verdict reaches three nights ahead, an outlook seven; beyond there is none.",
  "Steadiness from the wind aloft is a rough guide.",
  "Sensors, filters and optics you did not describe are typical ones, named as assumptions.",
  "Your coordinates are kept to 0.01°, shown to nobody else unless you share a site.",
  "Local law, codes and trained people come first.",
];
