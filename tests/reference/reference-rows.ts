/**
 * Reads the tables under tests/reference: rows of words, comments left out.
 *
 * @packageDocumentation
 */
import { readFileSync } from "node:fs";

/** The rows of a table, each as its words; lines that begin with `#` are about the table. */
export function referenceRows(file: string): string[][] {
  const text = readFileSync(new URL(file, import.meta.url), "utf8");
  return text
    .split("\n")
    .filter((line) => line !== "" && !line.startsWith("#"))
    .map((line) => line.split(" "));
}

/** The comment lines of a table that begin with a word, as words after it. */
export function referenceNotes(file: string, word: string): string[][] {
  const text = readFileSync(new URL(file, import.meta.url), "utf8");
  return text
    .split("\n")
    .filter((line) => line.startsWith(`# ${word} `))
    .map((line) => line.split(" ").slice(2));
}
