/**
 * How much may be asked of a service in a minute, an hour, a day: requests are weighed and wait their turn.
 *
 * @packageDocumentation
 */
import type { AllowanceWindow } from "../../config/forecast-services.ts";

/** Remembers what was asked when; a window slides, so that no clock mark is ever crowded. */
export class Allowance {
  readonly #windows: readonly AllowanceWindow[];
  readonly #longestMs: number;
  #spent: { readonly atMs: number; readonly weight: number }[] = [];

  constructor(windows: readonly AllowanceWindow[]) {
    this.#windows = windows;
    this.#longestMs = Math.max(0, ...windows.map((window) => window.spanMs));
  }

  /**
   * How long a request must wait before it fits into every window.
   *
   * @param weight - of the request; one heavier than a window is let through once the window is empty
   * @param nowMs - a clock that only runs forward
   */
  waitMs(weight: number, nowMs: number): number {
    return Math.max(0, ...this.#windows.map((window) => this.#waitFor(window, weight, nowMs)));
  }

  /** Books a request as made. */
  spend(weight: number, nowMs: number): void {
    this.#spent = this.#spent.filter((entry) => nowMs - entry.atMs < this.#longestMs);
    this.#spent.push({ atMs: nowMs, weight });
  }

  #waitFor(window: AllowanceWindow, weight: number, nowMs: number): number {
    const inside = this.#spent.filter((entry) => nowMs - entry.atMs < window.spanMs);
    let over = inside.reduce((sum, entry) => sum + entry.weight, weight) - window.weight;
    for (const entry of inside) {
      if (over <= 0) return 0;
      over -= entry.weight;
      if (over <= 0) return entry.atMs + window.spanMs - nowMs;
    }
    return inside.length === 0 || over <= 0 ? 0 : (inside.at(-1)?.atMs ?? nowMs) + window.spanMs - nowMs;
  }
}
