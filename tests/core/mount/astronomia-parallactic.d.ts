/** The one function these tests ask of astronomia, which ships no types. */
declare module "astronomia/parallactic" {
  /** Meeus 14.1; radians throughout, west of the meridian positive. */
  export function parallacticAngle(latitude: number, declination: number, hourAngle: number): number;
}
