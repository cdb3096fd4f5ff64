/**
 * What a weather provider promises the rest: to ask for cells, and to read what it once answered.
 *
 * @packageDocumentation
 */
import type { ModelForecast } from "../../core/weather/forecast-hour.ts";
import type { KeptAnswer } from "./cache.ts";
import type { Cell } from "./cell.ts";

/** An answer understood: models, and plain sentences on what in it was refused. */
export type ReadForecast = {
  readonly models: readonly ModelForecast[];
  readonly problems: readonly string[];
};

export type SourceAnswer =
  /** In the order of the cells asked for. */
  | { readonly kind: "answered"; readonly answers: readonly KeptAnswer[] }
  /** `why` ends the sentence `Open-Meteo …`. */
  | { readonly kind: "failed"; readonly why: string };

export interface WeatherSource {
  /** As the asker reads it. */
  readonly name: string;
  readonly credit: string;
  /** Begins every key in the cache: provider, variables and models. */
  readonly keyPrefix: string;
  readonly cellsPerRequest: number;
  /** Not asked for a cell again sooner, however fresh one wants it. */
  readonly leastAgeMs: number;
  /**
   * Asks for some cells, at most `cellsPerRequest`; never throws for what the service does.
   *
   * @param kept - what is held of each cell, for a conditional request
   */
  fetch(cells: readonly Cell[], kept: readonly (KeptAnswer | null)[]): Promise<SourceAnswer>;
  /**
   * Reads a kept body.
   *
   * @throws UnreadableAnswer when it is not what the service promises
   */
  read(body: string): ReadForecast;
}
