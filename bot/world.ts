/**
 * The world as the commands may ask it: store, catalogue, weather and places.
 *
 * Everything that costs time is opened when it is first asked for, so that a
 * question about the sky alone neither reads the network's library nor waits for it.
 *
 * @packageDocumentation
 */
import tzLookup from "@photostructure/tz-lookup";
import type { Context, Forecasts, Places, SkyPictures } from "../commands/context.ts";
import type { Settings } from "../config/settings.ts";
import type { Weather } from "./forecast/open-forecasts.ts";
import { openCatalogue } from "./library/open-catalogue.ts";
import { openStars } from "./library/open-stars.ts";
import { storeBooks } from "./store/books.ts";
import { forecastShelf } from "./store/forecast-shelf.ts";
import { openStore, type Store } from "./store/store.ts";
import type { OpenedPictures } from "./survey/hips2fits.ts";

/** Where forecasts and places come from: nowhere, or what somebody else opened; `null` for the services. */
export type WeatherInstead = { readonly forecasts: Forecasts; readonly places: Places } | null;

export type WorldOptions = {
  /** Default: the system's. */
  readonly clock?: () => Date;
  /** How long one answer waits for the weather, all services together, milliseconds. */
  readonly weatherBudgetMs?: number;
  /** Takes a sentence for the log. */
  readonly warn?: (sentence: string) => void;
};

export type World = {
  readonly settings: Settings;
  readonly store: Store;
  clock(): Date;
  /** What commands receive. The books ask for the club with each call. */
  context(instead?: WeatherInstead): Context;
  /** As {@link World.context}, its books within a transaction of the store. */
  contextWithin(transaction: Store["db"]): Context;
  /** The weather services, opened once. */
  weather(): Promise<Weather>;
  close(): Promise<void>;
};

/**
 * Opens the store and makes the rest ready.
 *
 * @throws WorldError, one sentence, when the store cannot be used
 */
export async function openWorld(settings: Settings, options: WorldOptions = {}): Promise<World> {
  const clock = options.clock ?? (() => new Date());
  const nowMs = () => clock().getTime();
  const store = await openStore(settings.dataFolder, nowMs());
  const catalogue = once(openCatalogue);
  const stars = once(openStars);
  let opening: Promise<Weather> | null = null;
  let openingPictures: Promise<OpenedPictures> | null = null;

  const weather = (): Promise<Weather> => {
    opening ??= import("./forecast/open-forecasts.ts").then(({ openWeather }) =>
      openWeather({
        hosts: settings.hosts,
        contact: settings.contact,
        cache: forecastShelf(store.db),
        ...(options.weatherBudgetMs === undefined ? {} : { budgetMs: options.weatherBudgetMs }),
        ...(options.warn === undefined ? {} : { warn: options.warn }),
      }),
    );
    return opening;
  };
  const pictures = (): Promise<OpenedPictures> => {
    openingPictures ??= Promise.all([
      import("./survey/hips2fits.ts"),
      import("./forecast/open-forecasts.ts"),
    ]).then(([{ openSkyPictures }, { userAgentOf }]) =>
      openSkyPictures({ host: settings.hosts.skySurvey, userAgent: userAgentOf(settings.contact) }),
    );
    return openingPictures;
  };
  const services = {
    skyPictures: {
      skyPicture: async (question) => (await pictures()).skyPicture(question),
    } satisfies SkyPictures,
    forecasts: { at: async (place, from) => (await weather()).forecasts.at(place, from) } satisfies Forecasts,
    places: { find: async (name) => (await weather()).places.find(name) } satisfies Places,
  };
  const contextOver = (db: Store["db"], instead: WeatherInstead): Context => ({
    books: storeBooks(db, nowMs),
    get catalogue() {
      return catalogue();
    },
    stars,
    timeZoneAt: (latitudeDeg, longitudeDeg) => tzLookup(latitudeDeg, longitudeDeg),
    ...(instead ?? services),
  });

  return {
    settings,
    store,
    clock,
    context: (instead = null) => contextOver(store.db, instead),
    contextWithin: (transaction) => contextOver(transaction, null),
    weather,
    async close() {
      await (await opening)?.close();
      await (await openingPictures)?.close();
      await store.close();
    },
  };
}

function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
