/**
 * Which survey pictures come from, how large, and how long one waits for them.
 *
 * @packageDocumentation
 */

/** The Digitized Sky Survey in colour, as the CDS in Strasbourg serves it. */
export const SKY_SURVEY = {
  survey: "CDS/P/DSS2/color",
  path: "/hips-image-services/hips2fits",
  /** Along the longer side; twice the chart's own pixels. */
  pixels: 720,
  /** All in all: an answer does not wait longer for a picture. */
  patienceMs: 2000,
  /** After a failure nobody is kept waiting for so long. */
  pauseMs: 300_000,
  /** No picture of that size needs more. */
  bytesAtMost: 4_000_000,
  credit: "Sky: Digitized Sky Survey (STScI), served by the CDS, Strasbourg (hips2fits).",
} as const;
