/**
 * How much of an ellipse a centred frame takes in, when both lie along the same axes.
 *
 * @packageDocumentation
 */

/** Area under an ellipse's upper edge from its centre to `x`: a quarter ellipse for x = a. */
function quarterArea(x: number, a: number, b: number): number {
  const share = Math.min(1, x / a);
  return (b * a * (share * Math.sqrt(1 - share * share) + Math.asin(share))) / 2;
}

/**
 * Area that an ellipse and a rectangle share, both centred, the longer sides together.
 *
 * @param majorDeg - the ellipse's axes, full lengths, above 0
 * @param widthDeg - the rectangle's sides, full lengths, above 0
 * @returns in the square of the unit given; exact
 */
export function sharedEllipseArea(
  majorDeg: number,
  minorDeg: number,
  widthDeg: number,
  heightDeg: number,
): number {
  const a = Math.max(majorDeg, minorDeg) / 2;
  const b = Math.min(majorDeg, minorDeg) / 2;
  const halfWidth = Math.max(widthDeg, heightDeg) / 2;
  const halfHeight = Math.min(widthDeg, heightDeg) / 2;
  const right = Math.min(a, halfWidth);
  // Where the ellipse sinks below the rectangle's upper side.
  const flatTo = b > halfHeight ? Math.min(right, a * Math.sqrt(1 - (halfHeight / b) ** 2)) : 0;
  const curved = quarterArea(right, a, b) - quarterArea(flatTo, a, b);
  return 4 * (flatTo * halfHeight + curved);
}

export type FieldFit = {
  /** Part of the frame that the object covers, in [0, 1]. */
  readonly fillFraction: number;
  /** Part of the object that the frame holds, in [0, 1]. */
  readonly objectInField: number;
};

/** How an object of known size sits in a frame turned along it. */
export function fieldFit(majorDeg: number, minorDeg: number, widthDeg: number, heightDeg: number): FieldFit {
  const shared = sharedEllipseArea(majorDeg, minorDeg, widthDeg, heightDeg);
  return {
    fillFraction: shared / (widthDeg * heightDeg),
    objectInField: Math.min(1, shared / ((Math.PI / 4) * majorDeg * minorDeg)),
  };
}
