/**
 * The inks of everything drawn: a warm umber ground, bone ink, one copper accent,
 * a muted lilac for the Moon. Meaning never rests on hue alone.
 *
 * @packageDocumentation
 */

export const PALETTE = {
  /** The page, and the dark of night. */
  umber: "#1b1410",
  /** A surface lifted from the page. */
  umberRaised: "#2a2019",
  /** The lightest ground: daylight on the night chart. */
  umberDay: "#4a3a2e",
  /** Ink for words and lines. */
  bone: "#efe5d2",
  /** Quieter ink: captions, scales. */
  boneQuiet: "#c4b8a4",
  /** Hairlines and grids; never words. */
  boneFaint: "#7a6d5f",
  /** The one accent. */
  copper: "#dd965c",
  /** What the bluest and the reddest stars lean towards. */
  starBlue: "#c3d0ee",
  starRed: "#f0b98c",
  /** The Moon's own. */
  lilac: "#bcacd3",
} as const;

/** The one colour of a message's edge, as Discord takes it. */
export const EMBED_COLOUR = 0xdd965c;
