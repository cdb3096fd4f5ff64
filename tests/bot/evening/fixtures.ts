/**
 * A club, its site and its weather for the evening's tests, over a real store and the stand-in.
 *
 * @packageDocumentation
 */
import { setTimeout as sleep } from "node:timers/promises";
import { eveningSender, singleAttemptRest } from "../../../bot/discord/evening-sender.ts";
import type { EveningWorld } from "../../../bot/evening/evening-world.ts";
import { buttonBook } from "../../../bot/store/answer-buttons.ts";
import { storeBooks } from "../../../bot/store/books.ts";
import { postingClubs } from "../../../bot/store/club-book.ts";
import { claimBook } from "../../../bot/store/evening-claims.ts";
import { peopleBook } from "../../../bot/store/evening-people.ts";
import { watchBook } from "../../../bot/store/evening-watches.ts";
import { listWishes } from "../../../bot/store/notify-book.ts";
import type { Store } from "../../../bot/store/store.ts";
import type { Answer } from "../../../commands/answer.ts";
import type { Books } from "../../../commands/books.ts";
import type { Context, Forecasts } from "../../../commands/context.ts";
import type { Request } from "../../../commands/request.ts";
import type { Site } from "../../../core/site.ts";
import type { ForecastHour, ModelForecast } from "../../../core/weather/forecast-hour.ts";
import { fakeContext } from "../../commands/fake-context.ts";

/** The demo club's site: sunset on 3 October 2026 is near 17:40 UTC. */
export const MOOR: Site = {
  name: "High Moor",
  latitudeDeg: 54.5,
  longitudeDeg: -2.6,
  elevationMetres: 310,
  timeZone: "Europe/London",
  skyline: [],
  sky: null,
  brightDirections: [],
  seeingArcsec: null,
};

/** Two hours before that sunset: a post is due. */
export const DUE = new Date("2026-10-03T15:40:00Z");

const HOUR_MS = 3_600_000;

/** Percent of cloud at an instant; `null` when nobody knows. */
export type CloudAt = (at: Date) => number | null;

/** Hours of one model: dry, calm, as cloudy as told, from twelve hours before to two days after. */
export function modelHours(from: Date, cloud: CloudAt, fetchedAt: Date): ModelForecast {
  const first = Math.floor(from.getTime() / HOUR_MS) * HOUR_MS - 12 * HOUR_MS;
  const hours = Array.from({ length: 61 }, (_, index): ForecastHour => {
    const at = new Date(first + index * HOUR_MS);
    return {
      at,
      cloudPercent: cloud(at),
      lowCloudPercent: null,
      midCloudPercent: null,
      highCloudPercent: null,
      temperatureCelsius: 9,
      dewPointCelsius: -4,
      humidityPercent: 40,
      windMetresPerSecond: 2,
      gustMetresPerSecond: 3,
      precipitationMm: 0,
      precipitationProbabilityPercent: 0,
      fogPercent: 0,
      visibilityMetres: 30_000,
      aerosolOpticalDepth: null,
      upperWindMetresPerSecond: null,
    };
  });
  return {
    provider: "A provider",
    model: "a model",
    issuedAt: fetchedAt,
    fetchedAt,
    layerBoundariesMetres: [2000, 5000],
    hours,
    sample: false,
  };
}

/** Weather everywhere alike; `null` is no forecast at all. */
export function weatherOf(cloud: () => CloudAt | null, clock: () => Date): Forecasts {
  return {
    async at(_, from) {
      const told = cloud();
      const models = told === null ? [] : [modelHours(from, told, clock())];
      return { models, credits: ["Weather invented for a test"], problems: [] };
    },
  };
}

/** A post in a few words. */
export async function composeShort(request: Request): Promise<{ answer: Answer }> {
  const answer: Answer = {
    title: `${String(request.options.site)}, ${String(request.options.night)}`,
    summary: "Worth setting up.",
    sections: [],
    charts: [],
    cautions: [{ id: "cold", text: "It will be cold: gloves, hat, a warm drink." }],
    next: [],
    figures: {},
    credits: [],
  };
  return { answer };
}

export type TestWorld = {
  readonly world: EveningWorld;
  readonly books: Books;
  readonly context: Context;
};

export type WorldParts = {
  readonly store: Store;
  readonly apiBase: string;
  readonly token: string;
  readonly ownId: string;
  readonly holder: string;
  readonly clock: () => Date;
  readonly cloud: () => CloudAt | null;
  readonly mayReadHistory?: () => boolean | null;
  readonly pause?: (ms: number) => Promise<void>;
  readonly attemptMs?: number;
  readonly log?: (line: string) => void;
};

/** An evening world over a real store and the stand-in's real HTTP. */
export function testWorld(parts: WorldParts): TestWorld {
  const { store, clock } = parts;
  const books = storeBooks(store.db, () => clock().getTime());
  const context = fakeContext({ books, forecasts: weatherOf(parts.cloud, clock) });
  const world: EveningWorld = {
    claims: claimBook(store.db),
    watches: watchBook(store.db),
    people: peopleBook(store.db),
    channel: eveningSender({
      rest: singleAttemptRest(parts.token, parts.apiBase, parts.attemptMs ?? 5000),
      buttons: buttonBook(store.db),
      draw: async () => new Uint8Array(),
      clock,
      ownId: () => parts.ownId,
      mayReadHistory: parts.mayReadHistory ?? (() => true),
    }),
    holder: parts.holder,
    clubs: () => postingClubs(store.db),
    wishes: (club) => listWishes(store.db, club),
    contextFor: () => context,
    compose: composeShort,
    prefetch: async () => undefined,
    clock,
    pause: parts.pause ?? ((ms) => sleep(Math.min(ms, 20))),
    log: parts.log ?? (() => undefined),
  };
  return { world, books, context };
}

/** A club whose members share the moor, posting into a channel. */
export async function foundClub(
  books: Books,
  club: string,
  channelId: string,
  site: Site = MOOR,
): Promise<void> {
  await books.sites.save(club, "a-member", site, { shared: true });
  await books.clubs.change(club, { channelId, hoursBeforeSunset: 3 });
}
