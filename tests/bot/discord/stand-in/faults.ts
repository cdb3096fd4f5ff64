/**
 * Faults to order: each rule waits for requests that match and is used up in turn.
 *
 * @packageDocumentation
 */

export type FaultKind =
  /** The connection breaks before the request is acted on. */
  | { readonly kind: "lost-request" }
  /** The request is acted on, the reply never arrives. */
  | { readonly kind: "lost-reply" }
  /** Acted on; the reply waits until `release` resolves. */
  | { readonly kind: "held-reply"; readonly release: Promise<void>; readonly onHeld?: () => void }
  /** Not acted on until `release` resolves. */
  | { readonly kind: "held-request"; readonly release: Promise<void>; readonly onHeld?: () => void }
  | { readonly kind: "status"; readonly status: number; readonly code?: number; readonly message?: string }
  | { readonly kind: "rate-limit"; readonly retryAfterSeconds: number; readonly global?: boolean };

export type Fault = FaultKind & {
  readonly method: string;
  readonly path: RegExp;
  /** How many requests it strikes; `Infinity` until cleared. */
  times: number;
};

export class Faults {
  private rules: Fault[] = [];

  /** Adds a rule for `times` matching requests. */
  add(method: string, path: RegExp, fault: FaultKind, times = 1): void {
    this.rules.push({ ...fault, method, path, times });
  }

  clear(): void {
    this.rules = [];
  }

  /** The fault that strikes this request, or `null`. */
  take(method: string, path: string): Fault | null {
    const rule = this.rules.find((one) => one.method === method && one.path.test(path) && one.times > 0);
    if (rule === undefined) return null;
    rule.times -= 1;
    return rule;
  }
}
