/**
 * How many slips of the finger lie between two words.
 *
 * @packageDocumentation
 */

/**
 * Damerau–Levenshtein distance (optimal string alignment): insertions, deletions,
 * substitutions and swaps of neighbours, each counted as one.
 *
 * @param first - compared letter by letter, case included
 * @param second - likewise
 * @param limit - give up beyond this distance
 * @returns the distance, or `limit + 1` when it is larger than `limit`
 *
 * @remarks
 * Source: F. J. Damerau 1964, Communications of the ACM 7, 171; the restricted
 * form, in which no part is edited twice.
 */
export function editDistance(first: string, second: string, limit: number): number {
  if (Math.abs(first.length - second.length) > limit) return limit + 1;
  let beforeLast = new Uint16Array(second.length + 1);
  let last = new Uint16Array(second.length + 1);
  let row = new Uint16Array(second.length + 1);
  for (let j = 0; j <= second.length; j++) last[j] = j;
  for (let i = 1; i <= first.length; i++) {
    row[0] = i;
    let least = i;
    const letter = first.charCodeAt(i - 1);
    const letterBefore = i > 1 ? first.charCodeAt(i - 2) : -1;
    for (let j = 1; j <= second.length; j++) {
      const other = second.charCodeAt(j - 1);
      const cost = letter === other ? 0 : 1;
      let best = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + cost);
      if (j > 1 && letterBefore === other && letter === second.charCodeAt(j - 2)) {
        best = Math.min(best, (beforeLast[j - 2] ?? 0) + 1);
      }
      row[j] = best;
      if (best < least) least = best;
    }
    if (least > limit) return limit + 1;
    [beforeLast, last, row] = [last, row, beforeLast];
  }
  const distance = last[second.length] ?? 0;
  return distance > limit ? limit + 1 : distance;
}
