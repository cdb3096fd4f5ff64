/**
 * Forecasts from the providers, through the cache: each independent of the rest, so
 * that one that fails is no outage, and none of them ever throws into an answer.
 *
 * @packageDocumentation
 */
import type { ForecastReport, Forecasts, GroundPlace } from "../../commands/context.ts";
import { FORECAST_REACH, REFRESH } from "../../config/forecast-services.ts";
import { MS_PER_HOUR } from "../../core/sky/time.ts";
import type { ModelForecast } from "../../core/weather/forecast-hour.ts";
import type { ForecastCache, KeptAnswer } from "./cache.ts";
import { type Cell, cellOf, cellsOf } from "./cell.ts";
import type { ReadForecast, WeatherSource } from "./weather-source.ts";

export type PrefetchOptions = {
  /** A post is being watched: hours old will not do. */
  readonly watched?: boolean;
};

export interface LiveForecasts extends Forecasts {
  /**
   * Asks for many places together and keeps what comes; slow where the services ask for it.
   *
   * @returns sentences on what failed
   */
  prefetch(places: readonly GroundPlace[], options?: PrefetchOptions): Promise<readonly string[]>;
}

export type LiveTools = {
  readonly sources: readonly WeatherSource[];
  readonly cache: ForecastCache;
  /** Epoch milliseconds; the true clock, whatever instant is asked about. */
  readonly nowMs: () => number;
  /** How long one answer waits; what comes later serves the next. */
  readonly budgetMs: number;
  /** A cell whose request failed is not asked for again before. */
  readonly failedPauseMs: number;
  readonly sleep: (ms: number) => Promise<void>;
  /** In [0, 1). */
  readonly random: () => number;
  /** For the log: what the people who run the bot should know. */
  readonly warn: (sentence: string) => void;
};

/** What one source has for one cell. */
type Held = { readonly kept: KeptAnswer | null; readonly why: string | null };

export function liveForecasts(tools: LiveTools): LiveForecasts {
  const { sources, nowMs } = tools;
  const desks = sources.map((source) => new SourceDesk(source, tools));
  return {
    async at(place, from) {
      const aheadHours = (from.getTime() - nowMs()) / MS_PER_HOUR;
      if (aheadHours > FORECAST_REACH.aheadHours || aheadHours < -FORECAST_REACH.pastHours) {
        return { models: [], credits: [], problems: ["That night is out of the reach of any forecast."] };
      }
      const cell = cellOf(place);
      const parts = await Promise.all(desks.map((desk) => desk.report(cell, tools.budgetMs)));
      return {
        models: parts.flatMap((part) => part.models),
        credits: [...new Set(parts.flatMap((part) => part.credits))],
        problems: parts.flatMap((part) => part.problems),
      };
    },

    async prefetch(places, options = {}) {
      const maxAgeMs = options.watched === true ? REFRESH.watchedMs : REFRESH.ordinaryMs;
      const cells = cellsOf(places);
      const failures = await Promise.all(desks.map((desk) => desk.fill(cells, maxAgeMs)));
      return failures.flat();
    },
  };
}

/** One source with its share of the cache: what is under way is never asked for twice. */
class SourceDesk {
  readonly #source: WeatherSource;
  readonly #tools: LiveTools;
  readonly #underWay = new Map<string, Promise<Held>>();
  readonly #failed = new Map<string, { readonly untilMs: number; readonly why: string }>();
  readonly #read = new Map<string, { readonly fetchedMs: number; readonly forecast: ReadForecast }>();

  constructor(source: WeatherSource, tools: LiveTools) {
    this.#source = source;
    this.#tools = tools;
  }

  /** What this source says of a cell, within so many milliseconds. */
  async report(cell: Cell, budgetMs: number): Promise<ForecastReport> {
    const key = this.#keyOf(cell);
    const kept = await this.#kept(key);
    if (kept !== null && this.#isFresh(kept, REFRESH.ordinaryMs)) return this.#told(key, { kept, why: null });
    const late: Held = { kept, why: "has not answered yet" };
    const held = await inTime(this.#refreshed(cell, key), late, budgetMs);
    return this.#told(key, held.kept === null ? { ...held, kept } : held);
  }

  /** Fetches those cells that are not fresh, many to a request; returns what failed. */
  async fill(cells: readonly Cell[], maxAgeMs: number): Promise<readonly string[]> {
    const stale: Cell[] = [];
    for (const cell of cells) {
      const key = this.#keyOf(cell);
      const kept = await this.#kept(key);
      const fresh = kept !== null && this.#isFresh(kept, maxAgeMs);
      if (!fresh && this.#failedWhy(key) === null) stale.push(cell);
    }
    if (stale.length === 0) return [];
    // Many bots that all asked on the minute would be a crowd at the door.
    await this.#tools.sleep(this.#tools.random() * REFRESH.prefetchJitterMs);
    const failures = new Set<string>();
    const size = this.#source.cellsPerRequest;
    for (let start = 0; start < stale.length; start += size) {
      const batch = stale.slice(start, start + size);
      const held = await Promise.all(this.#together(batch));
      for (const { why } of held) if (why !== null) failures.add(`${this.#source.name} ${why}.`);
    }
    return [...failures];
  }

  #refreshed(cell: Cell, key: string): Promise<Held> {
    const why = this.#failedWhy(key);
    if (why !== null) return Promise.resolve({ kept: null, why });
    const [held] = this.#together([cell]);
    return held ?? Promise.resolve({ kept: null, why: "sent nothing" });
  }

  /** One request for those of the cells that nobody is asking for already. */
  #together(cells: readonly Cell[]): readonly Promise<Held>[] {
    const idle = cells.filter((cell) => !this.#underWay.has(this.#keyOf(cell)));
    if (idle.length > 0) {
      const fetched = this.#fetched(idle);
      idle.forEach((cell, index) => {
        const key = this.#keyOf(cell);
        const held = fetched.then((all): Held => all[index] ?? { kept: null, why: "sent nothing" });
        this.#underWay.set(
          key,
          held.finally(() => this.#underWay.delete(key)),
        );
      });
    }
    return cells.flatMap((cell) => this.#underWay.get(this.#keyOf(cell)) ?? []);
  }

  async #fetched(cells: readonly Cell[]): Promise<readonly Held[]> {
    const keys = cells.map((cell) => this.#keyOf(cell));
    const kept = await Promise.all(keys.map((key) => this.#kept(key)));
    const answer = await this.#source.fetch(cells, kept);
    if (answer.kind === "failed") {
      const untilMs = this.#tools.nowMs() + this.#tools.failedPauseMs;
      for (const key of keys) this.#failed.set(key, { untilMs, why: answer.why });
      return keys.map((_, index) => ({ kept: kept[index] ?? null, why: answer.why }));
    }
    return Promise.all(
      answer.answers.map(async (fresh, index): Promise<Held> => {
        const key = keys[index];
        if (key !== undefined) await this.#keep(key, fresh);
        return { kept: fresh, why: null };
      }),
    );
  }

  #told(key: string, { kept, why }: Held): ForecastReport {
    const { name, credit } = this.#source;
    const failure = why === null ? [] : [`${name} ${why}.`];
    if (kept === null) return { models: [], credits: [], problems: failure };
    const ageHours = (this.#tools.nowMs() - kept.fetchedAt.getTime()) / MS_PER_HOUR;
    if (ageHours > REFRESH.uselessAfterMs / MS_PER_HOUR)
      return { models: [], credits: [], problems: failure };
    const { models, problems } = this.#understood(key, kept);
    const stale = why === null ? [] : [`${name} ${why}: its forecast of ${ageWords(ageHours)} ago is used.`];
    return {
      models: models.map((model): ModelForecast => ({ ...model, fetchedAt: kept.fetchedAt })),
      credits: models.length === 0 ? [] : [credit],
      problems: [...stale, ...problems],
    };
  }

  #understood(key: string, kept: KeptAnswer): ReadForecast {
    const fetchedMs = kept.fetchedAt.getTime();
    const known = this.#read.get(key);
    if (known?.fetchedMs === fetchedMs) return known.forecast;
    const forecast = readOrNothing(this.#source, kept.body);
    if (this.#read.size >= READ_AT_MOST) this.#read.clear();
    this.#read.set(key, { fetchedMs, forecast });
    return forecast;
  }

  /** What is held of a cell; a cache that fails costs a request, not an answer. */
  async #kept(key: string): Promise<KeptAnswer | null> {
    try {
      return await this.#tools.cache.get(key);
    } catch (fault) {
      this.#tools.warn(`The forecast cache cannot be read: ${String(fault)}`);
      return null;
    }
  }

  async #keep(key: string, answer: KeptAnswer): Promise<void> {
    try {
      await this.#tools.cache.put(key, answer);
    } catch (fault) {
      this.#tools.warn(`The forecast cache cannot be written: ${String(fault)}`);
    }
  }

  #isFresh(kept: KeptAnswer, maxAgeMs: number): boolean {
    const now = this.#tools.nowMs();
    const ageMs = now - kept.fetchedAt.getTime();
    // Fetched in the future: the clock was set back, and the age means nothing.
    if (ageMs < 0 || ageMs > LONGEST_FRESH_MS) return false;
    return now < kept.expiresAt.getTime() || ageMs < Math.max(maxAgeMs, this.#source.leastAgeMs);
  }

  #failedWhy(key: string): string | null {
    const failed = this.#failed.get(key);
    if (failed === undefined) return null;
    if (failed.untilMs > this.#tools.nowMs()) return failed.why;
    this.#failed.delete(key);
    return null;
  }

  #keyOf(cell: Cell): string {
    return `${this.#source.keyPrefix}/${cell.key}`;
  }
}

/** However long a service says that its answer holds. */
const LONGEST_FRESH_MS = 24 * MS_PER_HOUR;

/** Answers kept in understood form, so that one evening reads each once. */
const READ_AT_MOST = 64;

/** A kept body was readable when it came; a damaged store must not break an answer. */
function readOrNothing(source: WeatherSource, body: string): ReadForecast {
  try {
    return source.read(body);
  } catch {
    return { models: [], problems: [`What is kept of ${source.name}'s forecast cannot be read.`] };
  }
}

function ageWords(hours: number): string {
  return hours < 1 ? `${Math.max(1, Math.round(hours * 60))} min` : `${Math.round(hours)} h`;
}

/** A promise's value, or another when it takes too long. */
async function inTime<Value>(promise: Promise<Value>, otherwise: Value, ms: number): Promise<Value> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<Value>((resolve) => {
    timer = setTimeout(() => resolve(otherwise), ms);
  });
  try {
    return await Promise.race([promise, late]);
  } finally {
    clearTimeout(timer);
  }
}
