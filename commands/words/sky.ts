/**
 * Directions and coordinates as people read them.
 *
 * @packageDocumentation
 */

const COMPASS = [
  "north",
  "north-east",
  "east",
  "south-east",
  "south",
  "south-west",
  "west",
  "north-west",
] as const;

/** `north-east`, of an azimuth from north through east. */
export function compassWords(azimuthDeg: number): string {
  const turned = ((azimuthDeg % 360) + 360) % 360;
  return COMPASS[Math.round(turned / 45) % 8] ?? "north";
}

/** `20h 12m 07s`. */
export function rightAscensionWords(raDeg: number): string {
  const seconds = Math.round(((((raDeg % 360) + 360) % 360) / 15) * 3600) % 86_400;
  const two = (value: number) => String(value).padStart(2, "0");
  return `${two(Math.floor(seconds / 3600))}h ${two(Math.floor(seconds / 60) % 60)}m ${two(seconds % 60)}s`;
}

/** `+38° 21′ 18″`. */
export function declinationWords(decDeg: number): string {
  const seconds = Math.round(Math.abs(decDeg) * 3600);
  const two = (value: number) => String(value).padStart(2, "0");
  const sign = decDeg < 0 ? "−" : "+";
  return `${sign}${two(Math.floor(seconds / 3600))}° ${two(Math.floor(seconds / 60) % 60)}′ ${two(seconds % 60)}″`;
}

/** `M33, M27 and NGC 6888`. */
export function listWords(items: readonly string[]): string {
  if (items.length < 2) return items[0] ?? "";
  return `${items.slice(0, -1).join(", ")} and ${items[items.length - 1]}`;
}
