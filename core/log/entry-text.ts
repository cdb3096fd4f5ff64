/**
 * A typed line from which parts are taken out one by one.
 *
 * @packageDocumentation
 */

/** Stands where a part was, so that what stood on either side of it stays apart. */
const GAP = " | ";

export class EntryText {
  #rest: string;
  readonly #taken: string[] = [];

  constructor(line: string) {
    this.#rest = line.replaceAll("|", " ");
  }

  /** Takes out the first match and remembers it; `null` when there is none. */
  take(pattern: RegExp): RegExpExecArray | null {
    const found = pattern.exec(this.#rest);
    if (found === null) return null;
    const end = found.index + found[0].length;
    this.#rest = this.#rest.slice(0, found.index) + GAP + this.#rest.slice(end);
    this.#taken.push(found[0].trim());
    return found;
  }

  /** Every part taken out, as it stood. */
  understood(): readonly string[] {
    return this.#taken;
  }

  /** The pieces between the parts, in order, the empty ones left out. */
  left(): readonly string[] {
    return this.#rest
      .split(GAP.trim())
      .map((piece) => piece.trim())
      .filter((piece) => piece !== "");
  }
}
