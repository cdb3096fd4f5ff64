/**
 * Small values on their way into rows and out again.
 *
 * @packageDocumentation
 */
import { randomInt } from "node:crypto";
import { WorldError } from "../../commands/ask-error.ts";

/** Ids stay below this, so that a JavaScript number holds them exactly. */
const ID_BELOW = 2 ** 48 - 1;

/** A new row's id: random, so that no database needs its own way of counting. */
export function newRowId(): number {
  return randomInt(1, ID_BELOW);
}

/**
 * A nested value out of its JSON text.
 *
 * @param where - table and column, for the message
 * @throws WorldError when the text is no JSON: the store is damaged
 */
export function fromJson<Value>(text: string, where: string): Value {
  try {
    return JSON.parse(text);
  } catch (fault) {
    throw new WorldError(`The store is damaged: ${where} holds a value that cannot be read.`, fault);
  }
}

/** Columns that say nothing to the member whose row it is. */
const INTERNAL_COLUMNS = new Set(["name_key", "duplicate_key", "sum_key"]);

/**
 * A row as its owner reads it: names in words, instants as ISO 8601, JSON unpacked.
 *
 * `created_ms` becomes `createdAt`, `skyline_json` becomes `skyline`, `is_default` a yes or no.
 */
export function rowForPeople(row: object): Record<string, unknown> {
  const readable: Record<string, unknown> = {};
  for (const [column, value] of Object.entries(row)) {
    if (INTERNAL_COLUMNS.has(column)) continue;
    if (column.endsWith("_ms")) {
      readable[camelCase(column.replace(/_ms$/, "_at"))] =
        value === null ? null : new Date(Number(value)).toISOString();
    } else if (column.endsWith("_json")) {
      readable[camelCase(column.replace(/_json$/, ""))] =
        value === null ? null : fromJson<unknown>(String(value), column);
    } else if (YES_OR_NO.test(column)) {
      readable[camelCase(column)] = value === 1;
    } else {
      readable[camelCase(column)] = value;
    }
  }
  return readable;
}

const YES_OR_NO = /^(is_.*|shared|organiser|good)$/;

function camelCase(column: string): string {
  return column.replace(/_([a-z])/g, (_, letter: string) => letter.toUpperCase());
}
