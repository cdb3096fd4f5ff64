/**
 * Parting rows where a figure differs by more than a tolerance.
 *
 * @packageDocumentation
 */

/** Whether two angles lie within a tolerance around the circle; at it, they do. */
export function withinTurn(oneDeg: number, otherDeg: number, toleranceDeg: number): boolean {
  const apart = Math.abs(oneDeg - otherDeg) % 360;
  return Math.min(apart, 360 - apart) <= toleranceDeg;
}

/**
 * Rows in groups whose figures span at most the tolerance; unknown ones are a group of their own.
 *
 * @param turn - 360 for angles: values are brought into [0, 360), and the group at its
 * end is joined with the one at its beginning where they lie within the tolerance
 */
export function clusters<Row>(
  rows: readonly Row[],
  figureOf: (row: Row) => number | null,
  tolerance: number,
  turn?: number,
): Row[][] {
  const unknown = rows.filter((row) => figureOf(row) === null);
  const known = rows
    .flatMap((row) => {
      const figure = figureOf(row);
      if (figure === null) return [];
      return [{ row, figure: turn === undefined ? figure : ((figure % turn) + turn) % turn }];
    })
    .sort((one, other) => one.figure - other.figure);
  const groups: (typeof known)[] = [];
  for (const item of known) {
    const group = groups.at(-1);
    if (group?.[0] && item.figure - group[0].figure <= tolerance) group.push(item);
    else groups.push([item]);
  }
  const [first] = groups;
  const last = groups.at(-1);
  if (turn !== undefined && first && last && first !== last) {
    const lowest = (last[0]?.figure ?? 0) - turn;
    const highest = first.at(-1)?.figure ?? 0;
    if (highest - lowest <= tolerance) {
      groups.pop();
      first.unshift(...last);
    }
  }
  const grouped = groups.map((group) => group.map(({ row }) => row));
  return unknown.length > 0 ? [...grouped, unknown] : grouped;
}
