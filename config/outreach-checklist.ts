/**
 * What those who run a public session check, each line where it applies. Common practice.
 *
 * @packageDocumentation
 */

export const CHECKLIST = {
  leave:
    "Leave to use the ground, insurance and local rules settled; one person is in charge and knows where help is.",
  capsUntilSunset:
    "Until the Sun is down every telescope, finder and pair of binoculars stays capped and points away from it; an adult stays beside them.",
  alignFinders: "Finders are aligned on a distant lamp or a star, never on anything near the Sun.",
  coolDown: "Telescopes stand outdoors, so that they cool to the air.",
  cables:
    "Tripod legs and cables marked with dim red lamps; nothing to trip over between the queue and the eyepiece.",
  steps:
    "Steps or a low stool at each eyepiece; children look first with a hand on the step, not on the telescope.",
  darkAdaptation:
    "Twenty minutes without white light before the faint things: phones away, car lights away from the field.",
  redLight: "Red torches only, pointed at the ground.",
  moonlight: "The Moon lights the field: torches are hardly needed.",
  power:
    "Power packs charged and off the wet ground; anything on the mains through a residual-current device.",
  dew: "Dew comes: shields and heaters on from the start, a dry cloth for eyepieces at hand, none for lenses.",
  laser:
    "A green laser only if local law allows it, in one trained hand, never towards aircraft, roads or faces; an outstretched arm does as well.",
  cold: "Cold: spare gloves and blankets, a warm place within reach, and an end in good time.",
  children: "Adults stay with their children; one helper for every telescope and one for the queue.",
  binoculars: "Straps round necks before eyes to glasses; sit or lean to hold them still.",
  heavy: "Two lift what is heavy; the mount stands firm before anything goes on it.",
  after: "Count the eyepieces, walk the ground with a lamp, thank the landholder, write down what went well.",
  inspectFilters:
    "Before each use every front filter is held to a bright lamp: a scratch, a pinhole or a loose cell, and it is not used. It is then taped on over the FRONT.",
  finders: "Finders are taken off or capped: the Sun is found by the telescope's own shadow on the ground.",
  viewers:
    "Viewers to ISO 12312-2 for bare eyes, looked over one by one; never used together with a telescope or binoculars.",
  neverAlone:
    "Somebody who knows how stands at every telescope the whole time, and caps it before walking away.",
  sunCream: "Shade, water, hats and sun cream for the queue and for the helpers.",
  aside: "No other telescope and no binoculars stand about uncapped while the Sun is up.",
} as const;

/** The same in a few words, for the printed page. */
export const CHECKLIST_SHORT: Readonly<Record<keyof typeof CHECKLIST, string>> = {
  leave: "Leave, insurance, one person in charge",
  capsUntilSunset: "Everything capped and turned away until the Sun is down",
  alignFinders: "Finders: on a distant lamp or a star, never near the Sun",
  coolDown: "Telescopes outdoors to cool",
  cables: "Red lamps on legs and cables",
  steps: "Steps at each eyepiece",
  darkAdaptation: "Twenty minutes without white light before the faint things",
  redLight: "Red torches, pointed down",
  moonlight: "The Moon lights the field",
  power: "Batteries charged, off the wet ground; mains through a residual-current device",
  dew: "Dew: shields and heaters on from the start",
  laser: "Laser: by local law, in one trained hand, or an arm instead",
  cold: "Cold: gloves, blankets, a warm place",
  children: "Adults stay with their children; a helper at every telescope",
  binoculars: "Straps round necks first",
  heavy: "Two lift what is heavy",
  after: "Count the eyepieces, walk the ground",
  inspectFilters: "Every front filter held to a lamp, then taped on over the FRONT",
  finders: "Finders off or capped",
  viewers: "Viewers to ISO 12312-2, looked over; never with optics",
  neverAlone: "Somebody at every telescope, always; cap before walking away",
  sunCream: "Shade, water, hats, sun cream",
  aside: "Nothing else uncapped while the Sun is up",
};

/** What can be done when clouds come. */
export const CLOUD_PLAN = {
  gaps: "Broken cloud: keep one telescope on the brightest thing in a gap, and let the queue come to it.",
  noBright: "Broken cloud: point with the arm at whatever stars show, and tell the sentences of this sheet.",
  indoors:
    "Full cloud: take a telescope to pieces under a roof, pass the eyepieces round, show this sheet, and tell what the sky would have shown.",
  sunIndoors:
    "Full cloud: show the filters, the telescopes capped, and pictures of the Sun; nobody looks for it through thin cloud without a filter.",
} as const;
