/**
 * Tab-separated tables: comment lines, a line of column names, rows.
 *
 * @packageDocumentation
 */

export type TableRow = Readonly<Record<string, string>>;

/**
 * The rows of a table, each by column name; missing fields at a line's end are empty.
 *
 * @param text - lines beginning with `#` and blank lines are skipped; the first other line names the columns
 * @throws Error when a row has more fields than there are columns
 */
export function readTable(text: string): readonly TableRow[] {
  const lines = text.split("\n").filter((line) => line.trim() !== "" && !line.startsWith("#"));
  const columns = (lines[0] ?? "").split("\t");
  return lines.slice(1).map((line) => {
    const fields = line.split("\t");
    if (fields.length > columns.length) throw new Error(`more fields than columns: “${line}”`);
    return Object.fromEntries(columns.map((column, i) => [column, (fields[i] ?? "").trim()]));
  });
}

/** A table with its comment lines, ready to be written. */
export function writeTable(
  comments: readonly string[],
  columns: readonly string[],
  rows: readonly string[],
): string {
  return `${[...comments.map((line) => `# ${line}`), columns.join("\t"), ...rows].join("\n")}\n`;
}
