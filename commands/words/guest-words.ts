/**
 * What a guest will see, in honest words: how large, how bright, what not to expect.
 *
 * @packageDocumentation
 */
import type { Sight } from "../../core/outreach/sights.ts";

/** How wide the Moon looks to the bare eye, degrees. */
const MOON_DEG = 0.52;

export type BodyDetails = {
  /** Names of lunar features on the terminator, the most telling first. */
  readonly onTerminator: readonly string[];
  /** Opening of Saturn's rings as seen from the Earth, degrees; `null` when nobody asked. */
  readonly ringTiltDeg: number | null;
};

/** One or two sentences on what a guest will see. */
export function guestWords(sight: Sight, details: BodyDetails): string {
  const { what, view } = sight;
  switch (what.kind) {
    case "moon":
      return moonSentences(sight, details);
    case "planet":
      return planetSentences(sight, details);
    case "figure":
      return what.majorArcmin !== null && what.majorArcmin > 120
        ? `For everybody at once, ${handsWords(what.majorArcmin / 60)}.`
        : "For everybody at once: one bright star.";
    case "double-star":
      return `Two stars side by side${powerWords(sight)}; colours are easiest slightly out of focus.`;
    case "open-cluster":
    case "asterism":
    case "star":
      return `${view.ease === "at-a-glance" ? "Separate stars at a glance" : "Separate stars after a moment"}${powerWords(sight)}${fieldWords(sight)}.`;
    case "globular-cluster":
      return `${globularWords(sight)}${easeWords(sight)}`;
    case "galaxy":
    case "galaxy-group":
      return `A grey oval glow, brighter in the middle${powerWords(sight)}: no arms and no colour.${easeWords(sight)}`;
    case "planetary-nebula":
      return `A small ${isTiny(sight) ? "disc, hardly larger than a star" : "grey disc or ring"}${powerWords(sight)}; pictures show its colours, the eye hardly does.${easeWords(sight)}`;
    case "emission-nebula":
    case "supernova-remnant":
    case "reflection-nebula":
    case "dark-nebula":
      return `A pale, colourless haze with stars in it${powerWords(sight)}, not the red of the pictures.${easeWords(sight)}`;
    case "star-cloud":
      return `A glow that breaks up into stars${powerWords(sight)}.${easeWords(sight)}`;
  }
}

function moonSentences({ viewer, view, look }: Sight, { onTerminator }: BodyDetails): string {
  const lit = look?.illuminatedFraction ?? 0;
  if (viewer.instrument.kind === "eyes") return "The dark seas, without any glass.";
  const terminator =
    onTerminator.length === 0 ? "" : ` On the line of shadow: ${onTerminator.slice(0, 3).join(", ")}.`;
  if (viewer.instrument.kind === "binoculars") {
    return `The seas and the largest craters, ${timesMoon(view.apparentDeg)}; lean on something.${terminator}`;
  }
  const dazzle =
    lit > 0.95
      ? "Dazzling and flat: a full Moon has no shadows."
      : "Mountains and craters with black shadows along the line of shadow.";
  return `The whole disc at ${power(view.use.power)}. ${dazzle}${terminator}`;
}

function planetSentences({ what, viewer, view, look }: Sight, { ringTiltDeg }: BodyDetails): string {
  const body = what.target.kind === "body" ? what.target.body : "";
  if (viewer.instrument.kind === "eyes")
    return `A steady point ${body === "Mars" ? "of orange light" : "of light"}: planets hardly twinkle.`;
  if (view.apparentDeg === null) {
    const moons = body === "Jupiter" ? ", with its moons as sparks beside it if the glass is held still" : "";
    return `A bright point, not yet a disc${moons}.`;
  }
  const size = `${timesMoon(view.apparentDeg)} at ${power(view.use.power)}`;
  const lit = look?.illuminatedFraction ?? 1;
  switch (body) {
    case "Jupiter":
      return `A cream disc, ${size}, with ${viewer.apertureMm >= 60 ? "two dark belts and " : ""}up to four moons as sparks in a row.`;
    case "Saturn":
      return `A small yellow disc with ${ringWords(ringTiltDeg)}; the disc alone is ${size}.`;
    case "Venus":
      return `A dazzling ${venusShape(lit)}, ${size}; nothing shows on its clouds.`;
    case "Mars":
      return `A small orange disc, ${size}; ${view.apparentDeg >= MOON_DEG ? "dark markings and a pale cap come and go with the air" : "too small this time for more than its colour"}.`;
    case "Mercury":
      return `A tiny half-lit disc, ${size}, unsteady so low down.`;
    default:
      return `A tiny bluish disc, ${size}: the point is to have seen it.`;
  }
}

function ringWords(tiltDeg: number | null): string {
  if (tiltDeg === null) return "its rings";
  const open = Math.abs(tiltDeg);
  if (open < 1.5) return "its rings edge on, hardly to be seen";
  return open < 8 ? "its rings as a narrow line either side" : "its rings plainly open";
}

function venusShape(lit: number): string {
  if (lit < 0.4) return "crescent";
  return lit < 0.6 ? "half disc" : "lopsided disc";
}

function globularWords(sight: Sight): string {
  const grainy = sight.viewer.instrument.kind === "telescope" && sight.viewer.apertureMm >= 180;
  return grainy
    ? `A ball of light that breaks into grains at its edge${powerWords(sight)}.`
    : `A round misty ball${powerWords(sight)}; too small an aperture to part its stars.`;
}

function easeWords({ view }: Sight): string {
  return view.ease === "at-a-glance" ? "" : " Give each guest a moment: look a little beside it.";
}

function isTiny({ view }: Sight): boolean {
  return view.apparentDeg !== null && view.apparentDeg < MOON_DEG;
}

function fieldWords({ view }: Sight): string {
  return view.objectInField < 0.99 ? ", a little larger than the view" : "";
}

function powerWords({ viewer, view }: Sight): string {
  return viewer.instrument.kind === "eyes" ? "" : ` at ${power(view.use.power)}`;
}

/** `80×`. */
export function power(times: number): string {
  return `${Math.round(times)}×`;
}

/** How wide something looks beside the Moon to the bare eye. */
function timesMoon(apparentDeg: number | null): string {
  if (apparentDeg === null) return "a point";
  const times = apparentDeg / MOON_DEG;
  if (times < 0.4) return "a third as wide as the Moon to the bare eye or less";
  if (times < 0.75) return "half as wide as the Moon to the bare eye";
  if (times < 1.25) return "as wide as the Moon to the bare eye";
  if (times < 1.75) return "one and a half times as wide as the Moon to the bare eye";
  if (times < 2.5) return "twice as wide as the Moon to the bare eye";
  return `${Math.round(times)} times as wide as the Moon to the bare eye`;
}

/** `three fists across`; a span of the hand. */
function handsWords(degrees: number): string {
  const fists = Math.round(degrees / 10);
  if (fists < 1) return "about half a fist across";
  return fists === 1 ? "about a fist across" : `about ${fists} fists across`;
}
