/**
 * A place on a clock's face in words.
 *
 * @packageDocumentation
 */

const HOURS = [
  ...["twelve", "one", "two", "three", "four", "five"],
  ...["six", "seven", "eight", "nine", "ten", "eleven"],
] as const;
const MINUTES = ["", "five", "ten", "quarter", "twenty", "twenty-five", "half"] as const;

const FIVES_A_TURN = 144;

/** `twenty past four`, `five o'clock`, to the nearest five minutes of the face. */
export function dialWords(dialHours: number): string {
  const fives = Math.round(dialHours * 12) % FIVES_A_TURN;
  const hour = Math.floor(fives / 12);
  const past = fives % 12;
  if (past === 0) return `${HOURS[hour]} o'clock`;
  return past <= 6
    ? `${MINUTES[past]} past ${HOURS[hour]}`
    : `${MINUTES[12 - past]} to ${HOURS[(hour + 1) % 12]}`;
}

/** As a right-angle finder shows it: mirrored left and right. */
export function mirroredDial(dialHours: number): number {
  return dialHours === 0 ? 0 : 12 - dialHours;
}
