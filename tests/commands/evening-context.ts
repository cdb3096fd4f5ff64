/**
 * A member with a site, a rig and the shipped catalogue, for commands about a night.
 *
 * @packageDocumentation
 */
import { openCatalogue } from "../../bot/library/open-catalogue.ts";
import type { Context, ForecastReport } from "../../commands/context.ts";
import type { NightTally, WantedHours } from "../../core/log/progress.ts";
import type { Rig } from "../../core/rig/rig.ts";
import type { Site } from "../../core/site.ts";
import type { Catalogue } from "../../core/targets/catalogue.ts";
import { FELL, LONG_MONO } from "../core/targets/night-of-a-rig.ts";
import { fakeContext } from "./fake-context.ts";

const catalogue: Catalogue = openCatalogue();

const NO_FORECAST: ForecastReport = { models: [], credits: [], problems: [] };

/** The world of one member; nothing is kept of what is asked. */
export function eveningContext(
  given: {
    readonly site?: Site;
    readonly rig?: Rig;
    readonly report?: ForecastReport;
    readonly inHand?: readonly NightTally[];
    readonly wanted?: readonly WantedHours[];
  } = {},
): Context {
  const site = given.site ?? FELL;
  const rig = given.rig ?? LONG_MONO;
  const books = {
    clubs: { settings: async () => ({ limits: {} }) },
    sites: { list: async () => [{ id: 1, ownerId: "me", site, isDefault: true, shared: false }] },
    log: { inHand: async () => given.inHand ?? [], wanted: async () => given.wanted ?? [] },
    rigs: { list: async () => [{ id: 1, ownerId: "me", rig, isDefault: true }] },
  } as unknown as Context["books"];
  return fakeContext({
    books,
    catalogue,
    forecasts: { at: async () => given.report ?? NO_FORECAST },
    places: { find: async () => [] },
    timeZoneAt: () => "Europe/London",
  });
}
