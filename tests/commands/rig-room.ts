/**
 * A room to ask about rigs in: one site, one rig, a few objects and stars, no forecast, nothing stored.
 *
 * @packageDocumentation
 */
import type { Answer } from "../../commands/answer.ts";
import { AskError } from "../../commands/ask-error.ts";
import type { Books } from "../../commands/books.ts";
import type { Command } from "../../commands/command.ts";
import type { Context, StarTable } from "../../commands/context.ts";
import { parseRigDescription } from "../../commands/read/rig-description.ts";
import type { OptionValue } from "../../commands/request.ts";
import type { CameraRig } from "../../core/rig/rig.ts";
import type { Site } from "../../core/site.ts";
import type { Catalogue } from "../../core/targets/catalogue.ts";
import type { SkyObject } from "../../core/targets/sky-object.ts";
import { fakeObject } from "../core/targets/fake-catalogue.ts";
import { fakeContext, fakeRequest } from "./fake-context.ts";

/** Moonless, with hours of darkness. */
export const DARK_EVENING = "2026-10-10T19:00:00Z";

export const SITE: Site = {
  name: "Fell End",
  latitudeDeg: 54.5,
  longitudeDeg: -2.6,
  elevationMetres: 310,
  timeZone: "Europe/London",
  skyline: [],
  sky: { kind: "reading", magArcsec2: 21.2 },
  brightDirections: [],
  seeingArcsec: 2.8,
};

function object(id: string, parts: Partial<SkyObject>): SkyObject {
  return fakeObject({ id, kind: "emission-nebula", ...parts });
}

const OBJECTS: readonly SkyObject[] = [
  object("NGC 6888", {
    name: "Crescent Nebula",
    raDeg: 303.03,
    decDeg: 38.36,
    majorArcmin: 18,
    minorArcmin: 12,
    positionAngleDeg: 40,
    surfaceBrightness: { continuumMagArcsec2: null, rayleigh: { "h-alpha": 100, "o-iii": 50 } },
  }),
  object("M31", {
    kind: "galaxy",
    raDeg: 10.685,
    decDeg: 41.269,
    magnitude: 3.4,
    majorArcmin: 190,
    minorArcmin: 60,
    positionAngleDeg: 35,
  }),
  object("M110", { kind: "galaxy", raDeg: 10.092, decDeg: 41.685, majorArcmin: 20, minorArcmin: 10 }),
  object("Nameless", { raDeg: 303, decDeg: 38 }),
  object("Southern", { raDeg: 100, decDeg: -70, majorArcmin: 30, minorArcmin: 30 }),
  object("Beside the Sun", { raDeg: 196.5, decDeg: -7, majorArcmin: 10, minorArcmin: 10 }),
  object("Overhead", { raDeg: 311, decDeg: 54.5, majorArcmin: 30, minorArcmin: 30 }),
];

function catalogue(): Catalogue {
  return {
    objects: OBJECTS,
    alignmentStars: [],
    find(text) {
      const numbers = /^(\d+(?:\.\d+)?)\s+([+-]?\d+(?:\.\d+)?)$/.exec(text);
      if (numbers) {
        return {
          kind: "found",
          target: { kind: "place", raDeg: Number(numbers[1]), decDeg: Number(numbers[2]) },
        };
      }
      if (text === "Moon" || text === "Sun") return { kind: "found", target: { kind: "body", body: text } };
      const found = OBJECTS.find(({ id }) => id === text);
      return found === undefined
        ? { kind: "unknown", nearest: ["M31", "M110"] }
        : { kind: "found", target: { kind: "object", object: found } };
    },
    complete: () => [],
  };
}

/** One star of magnitude 4 half a degree north of NGC 6888, one far away. */
const STARS: StarTable = {
  count: 2,
  raDeg: Float64Array.of(303.03, 10),
  decDeg: Float64Array.of(38.86, -60),
  magnitude: Float32Array.of(4, 2),
  colourIndex: Float32Array.of(0.6, Number.NaN),
};

/** A described rig, as a member would type it. */
export function describedRig(text: string): CameraRig {
  const rig = parseRigDescription("rig", text);
  if (rig.kind !== "camera") throw new Error("not a camera");
  return rig;
}

export const RIG = describedRig("400mm f/5.6, 23.5x15.7mm, 3.76um mono -10C rn 1.6e guided");

/** The room, with overrides. */
export function rigRoom(
  parts: Partial<Context> & { readonly rig?: CameraRig; readonly site?: Site } = {},
): Context {
  const { rig = RIG, site = SITE, ...context } = parts;
  const saved = { id: 1, ownerId: "me", isDefault: true };
  const books = {
    sites: { list: async () => [{ ...saved, site, shared: false }] },
    rigs: { list: async () => [{ ...saved, rig: { ...rig, name: "Four-hundred" } }] },
    clubs: { settings: async () => ({ limits: {} }) },
  };
  return fakeContext({
    books: books as unknown as Books,
    catalogue: catalogue(),
    stars: () => STARS,
    forecasts: { at: async () => ({ models: [], credits: [], problems: [] }) },
    places: { find: async () => [] },
    timeZoneAt: () => "Europe/London",
    ...{ skyPictures: undefined },
    ...context,
  } as Partial<Context>);
}

export type Options = Readonly<Record<string, OptionValue>>;

/** An answer in the room. */
export function answerTo(
  command: Command,
  options: Options,
  room: Context = rigRoom(),
  at: string = DARK_EVENING,
): Promise<Answer> {
  return command.answer(fakeRequest(command.definition.name, options, at), room);
}

/** The refusal of a question in the room. */
export async function refusalOf(
  command: Command,
  options: Options,
  room: Context = rigRoom(),
): Promise<AskError> {
  const fault = await answerTo(command, options, room).then(
    () => new Error("it was answered"),
    (thrown: unknown) => thrown,
  );
  if (fault instanceof AskError) return fault;
  throw fault;
}
