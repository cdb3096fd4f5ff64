/**
 * One request to a service and what came of it: never a thrown error, never an unbounded body.
 *
 * @packageDocumentation
 */
import { Agent, fetch, type Response } from "undici";
import type { Patience } from "../../config/forecast-services.ts";

export type Exchange =
  | {
      readonly kind: "body";
      readonly text: string;
      readonly lastModified: string | null;
      readonly expires: Date | null;
      /** The service says that this version of it will go (status 203). */
      readonly deprecated: boolean;
    }
  | { readonly kind: "not-modified"; readonly expires: Date | null }
  /** The service answered, and would not. */
  | {
      readonly kind: "refused";
      readonly status: number;
      readonly text: string;
      readonly retryAfterMs: number | null;
    }
  /** No answer, half an answer, or far too much of one. */
  | { readonly kind: "lost"; readonly why: "time-out" | "network" | "too-large" };

/** Sends requests; `close` ends those under way. */
export interface Exchanger {
  get(url: string, headers?: Readonly<Record<string, string>>): Promise<Exchange>;
  close(): Promise<void>;
}

/** Of a refusal no more is read than serves the log. */
const REFUSAL_CHARACTERS = 500;

/**
 * An exchanger over HTTP, with its own connections.
 *
 * @param userAgent - who asks: a name and a contact
 */
export function httpExchanger(userAgent: string, patience: Patience): Exchanger {
  const agent = new Agent({
    connect: { timeout: patience.connectMs },
    connections: 2,
    headersTimeout: patience.totalMs,
    bodyTimeout: patience.totalMs,
  });
  const underWay = new Set<AbortController>();
  return {
    async get(url, headers = {}) {
      const stop = new AbortController();
      const timer = setTimeout(
        () => stop.abort(new DOMException("too slow", "TimeoutError")),
        patience.totalMs,
      );
      underWay.add(stop);
      try {
        const response = await fetch(url, {
          dispatcher: agent,
          redirect: "manual",
          headers: { accept: "application/json", ...headers, "user-agent": userAgent },
          signal: stop.signal,
        });
        return await exchangeOf(response, patience.bodyBytesAtMost);
      } catch (fault) {
        return { kind: "lost", why: isTimeout(fault) ? "time-out" : "network" };
      } finally {
        clearTimeout(timer);
        underWay.delete(stop);
      }
    },

    async close() {
      for (const stop of underWay) stop.abort();
      await agent.destroy();
    },
  };
}

async function exchangeOf(response: Response, bytesAtMost: number): Promise<Exchange> {
  const { status, headers } = response;
  const expires = dateOf(headers.get("expires"));
  if (status === 304) return { kind: "not-modified", expires };
  const text = await boundedText(response, bytesAtMost);
  if (status !== 200 && status !== 203) {
    return {
      kind: "refused",
      status,
      text: (text ?? "").slice(0, REFUSAL_CHARACTERS),
      retryAfterMs: retryAfterMs(headers.get("retry-after"), headers.get("date")),
    };
  }
  if (text === null) return { kind: "lost", why: "too-large" };
  return {
    kind: "body",
    text,
    lastModified: headers.get("last-modified"),
    expires,
    deprecated: status === 203,
  };
}

/** The body as text; `null`, and the connection dropped, when it is larger than allowed. */
async function boundedText(response: Response, bytesAtMost: number): Promise<string | null> {
  if (response.body === null) return "";
  const reader = response.body.getReader();
  const chunks: Uint8Array[] = [];
  let bytes = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return Buffer.concat(chunks).toString("utf8");
    bytes += value.byteLength;
    if (bytes > bytesAtMost) {
      await reader.cancel();
      return null;
    }
    chunks.push(value);
  }
}

/**
 * What `Retry-After` asks for: seconds, or a date (measured against the service's own clock).
 */
function retryAfterMs(header: string | null, serverDate: string | null): number | null {
  if (header === null) return null;
  if (/^\s*\d+\s*$/.test(header)) return Number(header) * 1000;
  const until = dateOf(header);
  if (until === null) return null;
  return Math.max(0, until.getTime() - (dateOf(serverDate)?.getTime() ?? Date.now()));
}

function dateOf(header: string | null): Date | null {
  if (header === null) return null;
  const date = new Date(header);
  return Number.isNaN(date.getTime()) ? null : date;
}

const TIMEOUT_CODES: ReadonlySet<unknown> = new Set([
  "UND_ERR_CONNECT_TIMEOUT",
  "UND_ERR_HEADERS_TIMEOUT",
  "UND_ERR_BODY_TIMEOUT",
  "ETIMEDOUT",
]);

function isTimeout(fault: unknown): boolean {
  for (let error = fault; error instanceof Error; error = error.cause) {
    if (error.name === "TimeoutError") return true;
    if ("code" in error && TIMEOUT_CODES.has(error.code)) return true;
  }
  return false;
}
