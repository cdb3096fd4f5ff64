/**
 * A club's site, and a world of nothing else, for commands about the sky.
 *
 * @packageDocumentation
 */
import type { Books } from "../../commands/books.ts";
import type { Context } from "../../commands/context.ts";
import type { Site } from "../../core/site.ts";
import { fakeContext } from "./fake-context.ts";

export const FELL_END: Site = {
  name: "Fell End",
  latitudeDeg: 54.5,
  longitudeDeg: -2.6,
  elevationMetres: 250,
  timeZone: "Europe/London",
  skyline: [
    { azimuthDeg: 0, altitudeDeg: 3 },
    { azimuthDeg: 90, altitudeDeg: 4 },
    { azimuthDeg: 180, altitudeDeg: 12 },
    { azimuthDeg: 270, altitudeDeg: 3 },
  ],
  sky: { kind: "bortle", class: 4 },
  brightDirections: [],
  seeingArcsec: null,
};

/** One saved site, and zones by longitude for typed coordinates. */
export function worldWith(site: Site): Context {
  const saved = { id: 1, ownerId: "me", site, isDefault: true, shared: false };
  return fakeContext({
    books: { sites: { list: async () => [saved] } } as unknown as Books,
    places: { find: async () => [] },
    timeZoneAt: () => site.timeZone,
  });
}
