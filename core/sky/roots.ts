/**
 * Where a smooth curve passes zero, and where it is highest; times in milliseconds.
 *
 * @packageDocumentation
 */

const ROOT_MS = 1;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Where a continuous function changes sign: false position, with Illinois's halving. */
export function rootBetween(
  height: (at: number) => number,
  startMs: number,
  startHeight: number,
  endMs: number,
  endHeight: number,
): number {
  let [low, lowHeight, high, highHeight] = [startMs, startHeight, endMs, endHeight];
  let kept: "low" | "high" | null = null;
  for (let turn = 0; turn < 60 && high - low > ROOT_MS; turn++) {
    const guess = low + ((high - low) * lowHeight) / (lowHeight - highHeight);
    const at = Math.min(Math.max(guess, low + ROOT_MS / 4), high - ROOT_MS / 4);
    const value = height(at);
    if (value < 0 === lowHeight < 0) {
      [low, lowHeight] = [at, value];
      if (kept === "high") highHeight /= 2;
      kept = "high";
    } else {
      [high, highHeight] = [at, value];
      if (kept === "low") lowHeight /= 2;
      kept = "low";
    }
    if (Math.abs(value) < 1e-9) return at;
  }
  return (low + high) / 2;
}

/** Where a function with one hill is highest, by golden section, to 0.1 s. */
export function highestBetween(height: (at: number) => number, startMs: number, endMs: number): number {
  let [low, high] = [startMs, endMs];
  let left = high - GOLDEN * (high - low);
  let right = low + GOLDEN * (high - low);
  let [leftHeight, rightHeight] = [height(left), height(right)];
  while (high - low > 100) {
    if (leftHeight < rightHeight) {
      [low, left, leftHeight] = [left, right, rightHeight];
      right = low + GOLDEN * (high - low);
      rightHeight = height(right);
    } else {
      [high, right, rightHeight] = [right, left, leftHeight];
      left = high - GOLDEN * (high - low);
      leftHeight = height(left);
    }
  }
  return (low + high) / 2;
}
