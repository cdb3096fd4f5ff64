/**
 * Where providers' answers are kept: through a restart in the store, or in memory.
 *
 * @packageDocumentation
 */

export type KeptAnswer = {
  readonly body: string;
  readonly fetchedAt: Date;
  /** The provider is not asked again before. */
  readonly expiresAt: Date;
  /** The exact `Last-Modified` text, for a conditional request. */
  readonly lastModified: string | null;
};

export interface ForecastCache {
  get(key: string): Promise<KeptAnswer | null>;
  put(key: string, answer: KeptAnswer): Promise<void>;
}

/** Keeps answers as long as the process lives. */
export function memoryCache(): ForecastCache {
  const kept = new Map<string, KeptAnswer>();
  return {
    async get(key) {
      return kept.get(key) ?? null;
    },
    async put(key, answer) {
      kept.set(key, answer);
    },
  };
}
