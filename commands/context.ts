/**
 * The world a command may ask: what it needs kept, foretold and looked up.
 *
 * `bot/` fills it; a test fills it with plain objects.
 *
 * @packageDocumentation
 */
import type { Catalogue } from "../core/targets/catalogue.ts";
import type { ModelForecast } from "../core/weather/forecast-hour.ts";
import type { Announcements } from "./announcements.ts";
import type { Books } from "./books.ts";

export type GroundPlace = {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationMetres: number;
};

/** What the providers said, or why they did not. */
export type ForecastReport = {
  /** Empty when nothing is known: no verdict then, never a guess. */
  readonly models: readonly ModelForecast[];
  /** Lines to show beside the weather. */
  readonly credits: readonly string[];
  /** Plain sentences on what failed, for the answer's small print. */
  readonly problems: readonly string[];
};

export interface Forecasts {
  /** Hours from the cache or the providers, covering `from` and up to 16 days on. */
  at(place: GroundPlace, from: Date): Promise<ForecastReport>;
}

export type FoundPlace = GroundPlace & { readonly name: string; readonly timeZone: string };

export interface Places {
  /** Places of that name, best first; empty when there is none or the network may not be asked. */
  find(name: string): Promise<readonly FoundPlace[]>;
}

/** The shipped star table to magnitude 8, columns side by side; J2000 degrees. */
export type StarTable = {
  readonly count: number;
  readonly raDeg: Float64Array;
  readonly decDeg: Float64Array;
  readonly magnitude: Float32Array;
  /** B−V; NaN where unknown. */
  readonly colourIndex: Float32Array;
};

/** A piece of sky around a J2000 place, its up turned from north through east. */
export type SkyPictureQuestion = {
  readonly raDeg: number;
  readonly decDeg: number;
  readonly widthDeg: number;
  readonly heightDeg: number;
  readonly positionAngleDeg: number;
};

export type SkyPicture = {
  readonly bytes: Uint8Array;
  readonly mediaType: string;
  /** Whom to thank, beside the picture. */
  readonly credit: string;
};

/** Pictures from a sky survey. */
export interface SkyPictures {
  /** `null` when the service does not answer in time or at all. */
  skyPicture(question: SkyPictureQuestion): Promise<SkyPicture | null>;
}

export interface Context {
  readonly books: Books;
  readonly catalogue: Catalogue;
  readonly forecasts: Forecasts;
  readonly places: Places;
  /** IANA zone of a place, from a table in memory. */
  timeZoneAt(latitudeDeg: number, longitudeDeg: number): string;
  /** Read when first asked for. */
  stars(): StarTable;
  /** Absent where the network may not be asked. */
  readonly skyPictures?: SkyPictures;
  /**
   * Why the evening post could not go into a channel of the club, as a sentence; `null` when it
   * could. Only a chat knows.
   */
  channelTrouble?(club: string, channelId: string): string | null;
  /** Absent where there is no chat to announce in. */
  readonly announcements?: Announcements;
}
