/**
 * The framing chart: stars and neighbours around the target, panels, a survey picture.
 *
 * @packageDocumentation
 */
import { NEIGHBOUR_LEAST_SHARE, NEIGHBOURS_AT_MOST } from "../config/framing-rules.ts";
import { onPlaneDeg } from "../core/rig/framing.ts";
import type { FramingPlan } from "../core/rig/framing-plan.ts";
import { toPlane } from "../core/rig/tangent-plane.ts";
import { DEG_PER_RAD, type EquatorialPlace, RAD_PER_DEG } from "../core/sky/angles.ts";
import { unitVector } from "../core/sky/place.ts";
import type { SkyObject, Target } from "../core/targets/sky-object.ts";
import type { ChartEllipse, ChartStar, FramingChart } from "./chart.ts";
import type { Context, SkyPicture, StarTable } from "./context.ts";
import type { FramedTarget } from "./framing-target.ts";
import { KIND_WORDS, objectName, targetKind, targetName } from "./words/target-words.ts";

/** Room around the panels, so that the rim of the drawing has sky to show. */
const ROOM = 1.3;

/** No survey picture wider than this: the plane bends the sky too much. */
const PICTURE_AT_MOST_DEG = 40;

/** How far from the target the drawing reaches, degrees of the plane. */
function reachDeg(plan: FramingPlan, framed: FramedTarget): number {
  const half = Math.hypot(plan.frame.widthDeg, plan.frame.heightDeg) / 2;
  const panels = Math.max(...plan.panels.map(({ plane }) => Math.hypot(plane.xiDeg, plane.etaDeg) + half));
  return Math.max(panels, (framed.ellipse?.majorDeg ?? 0) / 2) * ROOM;
}

/** Whether a place lies within an angle of a target: for long tables, declination first. */
function nearness(target: EquatorialPlace, radiusDeg: number) {
  const [x, y, z] = unitVector(target.raDeg, target.decDeg);
  const angleDeg = Math.atan(radiusDeg * RAD_PER_DEG) * DEG_PER_RAD;
  const least = Math.cos(angleDeg * RAD_PER_DEG);
  return (raDeg: number, decDeg: number): boolean => {
    if (Math.abs(decDeg - target.decDeg) > angleDeg) return false;
    const up = Math.sin(decDeg * RAD_PER_DEG);
    const across = Math.cos(decDeg * RAD_PER_DEG);
    const ra = raDeg * RAD_PER_DEG;
    return x * across * Math.cos(ra) + y * across * Math.sin(ra) + z * up >= least;
  };
}

function starsAround(target: EquatorialPlace, radiusDeg: number, stars: StarTable): ChartStar[] {
  const isNear = nearness(target, radiusDeg);
  const found: ChartStar[] = [];
  for (let index = 0; index < stars.count; index++) {
    const raDeg = stars.raDeg[index] ?? 0;
    const decDeg = stars.decDeg[index] ?? 0;
    if (!isNear(raDeg, decDeg)) continue;
    const point = toPlane(target, { raDeg, decDeg });
    if (point === null) continue;
    const colour = stars.colourIndex[index] ?? Number.NaN;
    found.push({
      ...point,
      magnitude: stars.magnitude[index] ?? 8,
      colourIndex: Number.isNaN(colour) ? null : colour,
    });
  }
  return found;
}

function chartEllipse(object: SkyObject, target: EquatorialPlace): ChartEllipse | null {
  const point = toPlane(target, object);
  if (point === null || object.majorArcmin === null) return null;
  return {
    name: object.name ?? object.id,
    kindWords: KIND_WORDS[object.kind],
    ...point,
    majorDeg: onPlaneDeg(object.majorArcmin / 60),
    minorDeg: onPlaneDeg((object.minorArcmin ?? object.majorArcmin) / 60),
    positionAngleDeg: object.positionAngleDeg ?? 0,
  };
}

function neighboursOf(
  what: Target,
  target: EquatorialPlace,
  radiusDeg: number,
  leastDeg: number,
  objects: readonly SkyObject[],
): ChartEllipse[] {
  const isNear = nearness(target, radiusDeg);
  const own = what.kind === "object" ? what.object.id : null;
  return objects
    .filter(
      (object) =>
        isNear(object.raDeg, object.decDeg) &&
        object.id !== own &&
        object.majorArcmin !== null &&
        object.majorArcmin / 60 >= leastDeg &&
        (object.ranked || object.showpiece),
    )
    .sort(
      (one, other) =>
        Number(other.showpiece) - Number(one.showpiece) || (other.majorArcmin ?? 0) - (one.majorArcmin ?? 0),
    )
    .slice(0, NEIGHBOURS_AT_MOST)
    .map((object) => chartEllipse(object, target))
    .filter((ellipse) => ellipse !== null);
}

/** A survey picture that covers the drawing, its up as the frame's; `null` where there is none. */
export async function pictureBehind(
  context: Context,
  plan: FramingPlan,
  framed: FramedTarget,
): Promise<{ readonly picture: SkyPicture; readonly spanDeg: number } | null> {
  const spanDeg = 2 * reachDeg(plan, framed);
  if (context.skyPictures === undefined || spanDeg > PICTURE_AT_MOST_DEG) return null;
  const picture = await context.skyPictures.skyPicture({
    ...framed.place,
    widthDeg: spanDeg,
    heightDeg: spanDeg,
    positionAngleDeg: plan.frame.positionAngleDeg,
  });
  return picture === null ? null : { picture, spanDeg };
}

export type FramingPictureParts = {
  readonly what: Target;
  readonly framed: FramedTarget;
  readonly plan: FramingPlan;
  readonly behind: { readonly picture: SkyPicture; readonly spanDeg: number } | null;
  readonly title: string;
  readonly caption: string;
  readonly alt: string;
  readonly cautions: readonly string[];
};

/** Describes the chart. */
export function framingPicture(parts: FramingPictureParts, context: Context): FramingChart {
  const { what, framed, plan, behind } = parts;
  const radiusDeg = reachDeg(plan, framed);
  const least = NEIGHBOUR_LEAST_SHARE * Math.min(plan.frame.widthDeg, plan.frame.heightDeg);
  return {
    kind: "framing",
    name: "framing",
    title: parts.title,
    caption: parts.caption,
    alt: parts.alt,
    cautions: parts.cautions,
    positionAngleDeg: plan.frame.positionAngleDeg,
    fieldWidthDeg: plan.fieldWidthDeg,
    fieldHeightDeg: plan.fieldHeightDeg,
    stars: starsAround(framed.place, radiusDeg, context.stars()),
    target: {
      name: what.kind === "object" ? (what.object.name ?? objectName(what.object)) : targetName(what),
      kindWords: targetKind(what),
      xiDeg: 0,
      etaDeg: 0,
      majorDeg: framed.ellipse?.majorDeg ?? 0,
      minorDeg: framed.ellipse?.minorDeg ?? 0,
      positionAngleDeg: framed.ellipse?.positionAngleDeg ?? 0,
    },
    neighbours: neighboursOf(what, framed.place, radiusDeg, least, context.catalogue.objects),
    panels: plan.panels.map(({ order, plane }) => ({
      order,
      ...plane,
      widthDeg: plan.frame.widthDeg,
      heightDeg: plan.frame.heightDeg,
      turnDeg: 0,
    })),
    picture:
      behind === null
        ? null
        : { bytes: behind.picture.bytes, mediaType: behind.picture.mediaType, spanDeg: behind.spanDeg },
  };
}
