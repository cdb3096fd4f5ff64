/**
 * Request limits: one bucket a route and top resource, and 50 a second in all.
 *
 * @packageDocumentation
 */

type Bucket = { startMs: number; used: number };

export type Allowance = {
  readonly allowed: boolean;
  readonly global: boolean;
  readonly limit: number;
  readonly remaining: number;
  readonly resetMs: number;
  readonly resetAfterSeconds: number;
  readonly bucket: string;
};

const GLOBAL_PER_SECOND = 50;

/** Limit and window by kind of route; Discord publishes none, clients must read the headers. */
function limitOf(method: string, path: string): { limit: number; windowMs: number } {
  if (method === "POST" && /\/channels\/\d+\/messages$/.test(path)) return { limit: 5, windowMs: 5000 };
  if (method === "PATCH" && /\/channels\/\d+\/messages\/\d+$/.test(path)) return { limit: 5, windowMs: 5000 };
  if (method === "GET" && /\/channels\/\d+\/messages$/.test(path)) return { limit: 10, windowMs: 5000 };
  return { limit: 40, windowMs: 1000 };
}

export class RateLimits {
  private readonly buckets = new Map<string, Bucket>();
  private global: Bucket = { startMs: 0, used: 0 };

  /** Counts one request. Interaction callbacks are outside the global limit. */
  take(method: string, path: string, nowMs: number): Allowance {
    const { limit, windowMs } = limitOf(method, path);
    const route = path.replace(/(\/messages|\/commands|\/interactions)\/[^/]+.*$/, "$1/:id");
    const key = `${method} ${route}`;
    const bucket = fresh(this.buckets.get(key), nowMs, windowMs);
    this.buckets.set(key, bucket);
    this.global = fresh(this.global, nowMs, 1000);
    const outsideGlobal = /\/(interactions|webhooks)\//.test(path);
    const globalFull = !outsideGlobal && this.global.used >= GLOBAL_PER_SECOND;
    const allowed = bucket.used < limit && !globalFull;
    if (allowed) {
      bucket.used += 1;
      if (!outsideGlobal) this.global.used += 1;
    }
    const resetMs = globalFull ? this.global.startMs + 1000 : bucket.startMs + windowMs;
    return {
      allowed,
      global: globalFull,
      limit,
      remaining: Math.max(0, limit - bucket.used),
      resetMs,
      resetAfterSeconds: Math.max(0.001, (resetMs - nowMs) / 1000),
      bucket: key.replace(/[^a-zA-Z]/g, "").toLowerCase(),
    };
  }
}

function fresh(bucket: Bucket | undefined, nowMs: number, windowMs: number): Bucket {
  if (bucket === undefined || nowMs - bucket.startMs >= windowMs || nowMs < bucket.startMs) {
    return { startMs: nowMs, used: 0 };
  }
  return bucket;
}
