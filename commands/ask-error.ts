/**
 * A mistake the asker can fix: what is wrong, with which option, and what would be right.
 *
 * Only the doors catch it; nothing is stored of a question that was refused.
 *
 * @packageDocumentation
 */

export class AskError extends Error {
  /** Stable word for the kind of mistake, such as `unknown-site`. */
  readonly code: string;
  /** The option at fault, as typed without dashes; `null` when it is the question itself. */
  readonly option: string | null;

  constructor(code: string, option: string | null, message: string) {
    super(message);
    this.name = "AskError";
    this.code = code;
    this.option = option;
  }
}

/** The world failed (network, disk) and nothing useful could be said. */
export class WorldError extends Error {
  constructor(message: string, cause?: unknown) {
    super(message, { cause });
    this.name = "WorldError";
  }
}
