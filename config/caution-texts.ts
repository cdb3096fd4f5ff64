/**
 * The words of each caution. Checked by a test: every rule has a text.
 *
 * @packageDocumentation
 */
import type { CautionId } from "../core/cautions.ts";

export const CAUTION_TEXTS: Readonly<Record<CautionId, string>> = {
  sun:
    "The Sun blinds in an instant. Never look at it, or near it, through any telescope, binoculars, camera " +
    "or finder without a certified full-aperture solar filter fixed over the FRONT; never use a filter at the " +
    "eyepiece. Cap or remove every finder. Inspect the filter before each use and discard it if scratched or " +
    "pierced. For the bare eye only viewers to ISO 12312-2, and never those together with optics. A dedicated " +
    "solar telescope, or a guarded projection that nobody can look into, is safe when its maker's rules are " +
    "kept. Never leave a telescope unattended in daylight; keep children beside an adult. Only the totality of " +
    "a total eclipse may be watched without a filter. Local rules and trained people come first.",
  "cap-before-sunrise":
    "The session ends close to sunrise: cap or turn away every telescope, finder and lens before the Sun is up.",
  lightning:
    "Thunder is possible: stop, leave the gear, and go indoors or into a car at the first flash or rumble.",
  laser:
    "Green lasers: many places forbid or license them. Never near aircraft, roads or faces; one trained person holds it.",
  children: "Children look only beside an adult who keeps hold of the queue, the steps and the cables.",
  "mains-power":
    "Mains and dew do not mix: a residual-current device, outdoor connectors off the ground, and a licensed electrician for anything fixed.",
  cold: "It will be cold: more layers than seem needed, gloves, hat, a warm drink, and stop before hands go numb.",
  "dark-site":
    "Away from home: ask leave to use the ground, park clear of the road, tell someone where you are and when you will be back.",
  "heavy-gear": "Heavy gear: lift with two, and set the mount on firm ground before anything goes on it.",
};
