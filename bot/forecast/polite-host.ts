/**
 * A service asked politely: one request at a time, weighed, tried again with growing
 * waits where that can help, and left alone for as long as it asks.
 *
 * @packageDocumentation
 */
import type { Patience } from "../../config/forecast-services.ts";
import type { Allowance } from "./allowance.ts";
import type { Exchange, Exchanger } from "./http-exchange.ts";

/** What a question to a service came to. */
export type Hearing<Value> =
  | { readonly kind: "heard"; readonly value: Value; readonly exchange: Exchange & { kind: "body" } }
  | { readonly kind: "not-modified"; readonly expires: Date | null }
  /** `why` ends the sentence `Open-Meteo …`. */
  | { readonly kind: "unheard"; readonly why: string };

/** A body that could not be understood: worth another try, for a stream may have broken off. */
export class UnreadableAnswer extends Error {
  constructor(why: string) {
    super(why);
    this.name = "UnreadableAnswer";
  }
}

export type HostTools = {
  readonly exchanger: Exchanger;
  readonly patience: Patience;
  /** Epoch milliseconds. */
  readonly nowMs: () => number;
  readonly sleep: (ms: number) => Promise<void>;
  /** In [0, 1). */
  readonly random: () => number;
  /** For the log: what the people who run the bot should know. */
  readonly warn: (sentence: string) => void;
};

export type Question<Value> = {
  readonly url: string;
  readonly headers?: Readonly<Record<string, string>>;
  /** By the service's own weighing. */
  readonly weight: number;
  /**
   * @throws UnreadableAnswer when the body is not what the service promises
   */
  readonly read: (text: string) => Value;
};

export type Refusal = { readonly status: number; readonly text: string };

export type HostRules = {
  /** As the asker reads it. */
  readonly name: string;
  readonly allowance: Allowance;
  /** How long a refusal asks us to stay away, where the service says so in words. */
  readonly pauseMs?: (refusal: Refusal, nowMs: number) => number | null;
};

/** One service behind one queue. */
export class PoliteHost {
  readonly #rules: HostRules;
  readonly #tools: HostTools;
  #tail: Promise<unknown> = Promise.resolve();
  #pausedUntilMs = 0;

  constructor(rules: HostRules, tools: HostTools) {
    this.#rules = rules;
    this.#tools = tools;
  }

  /** Asks when those before have been answered; never throws for what the service does. */
  ask<Value>(question: Question<Value>): Promise<Hearing<Value>> {
    const turn = this.#tail.then(() => this.#tried(question));
    this.#tail = turn.catch(() => undefined);
    return turn;
  }

  async #tried<Value>(question: Question<Value>): Promise<Hearing<Value>> {
    const { patience, sleep, nowMs, random } = this.#tools;
    let why = "did not answer";
    for (let attempt = 1; attempt <= patience.tries; attempt += 1) {
      if (this.#pausedUntilMs > nowMs()) return { kind: "unheard", why: "asks to be left alone for now" };
      const queueMs = this.#rules.allowance.waitMs(question.weight, nowMs());
      if (queueMs > patience.longestQueueMs) {
        return { kind: "unheard", why: "has been asked as much as it allows for now" };
      }
      if (queueMs > 0) await sleep(queueMs);
      this.#rules.allowance.spend(question.weight, nowMs());
      const exchange = await this.#tools.exchanger.get(question.url, question.headers);
      const outcome = this.#weighed(exchange, question);
      if (outcome.kind !== "again") return outcome;
      why = outcome.why;
      if (attempt === patience.tries) break;
      const spread = 0.5 + random();
      await sleep(Math.max(outcome.waitMs, patience.firstWaitMs * 2 ** (attempt - 1) * spread));
    }
    return { kind: "unheard", why };
  }

  #weighed<Value>(
    exchange: Exchange,
    question: Question<Value>,
  ): Hearing<Value> | { readonly kind: "again"; readonly why: string; readonly waitMs: number } {
    switch (exchange.kind) {
      case "not-modified":
        return exchange;
      case "lost":
        if (exchange.why === "too-large")
          return { kind: "unheard", why: "sent far too much to be a forecast" };
        return {
          kind: "again",
          why: exchange.why === "time-out" ? "did not answer in time" : "could not be reached",
          waitMs: 0,
        };
      case "refused":
        return this.#refused(exchange);
      case "body":
        return this.#heard(exchange, question);
    }
  }

  #heard<Value>(
    exchange: Exchange & { kind: "body" },
    question: Question<Value>,
  ): Hearing<Value> | { readonly kind: "again"; readonly why: string; readonly waitMs: number } {
    if (exchange.deprecated) {
      this.#tools.warn(
        `${this.#rules.name} says that this version of its service is to end: ${question.url}`,
      );
    }
    try {
      return { kind: "heard", value: question.read(exchange.text), exchange };
    } catch (fault) {
      if (!(fault instanceof UnreadableAnswer)) throw fault;
      this.#tools.warn(`${this.#rules.name} sent an answer that cannot be read: ${fault.message}`);
      return { kind: "again", why: "sent an answer that cannot be read", waitMs: 0 };
    }
  }

  #refused(
    refusal: Exchange & { kind: "refused" },
  ): Hearing<never> | { readonly kind: "again"; readonly why: string; readonly waitMs: number } {
    const { patience, nowMs, warn } = this.#tools;
    const { status, retryAfterMs } = refusal;
    warn(`${this.#rules.name} answered ${status}: ${refusal.text.replace(/\s+/g, " ")}`);
    const askedMs = retryAfterMs ?? this.#rules.pauseMs?.(refusal, nowMs()) ?? null;
    const busy = status === 429 || status === 503;
    if (askedMs !== null && askedMs > patience.longestWaitMs) {
      this.#pausedUntilMs = nowMs() + askedMs;
      return { kind: "unheard", why: busy ? "is busy and asks to wait" : "asks to wait" };
    }
    if (status === 429 || status >= 500) {
      return { kind: "again", why: busy ? "is busy" : "is failing", waitMs: askedMs ?? 0 };
    }
    if (status === 401 || status === 403) this.#pausedUntilMs = nowMs() + patience.refusedPauseMs;
    return { kind: "unheard", why: `refused the request (${status})` };
  }
}
