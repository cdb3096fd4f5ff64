/**
 * What the public can be shown: the shipped list with its lines, and whatever an organiser names.
 *
 * @packageDocumentation
 */
import {
  BODY_LINES,
  EYE_FIGURES,
  KIND_LINES,
  SHOWPIECE_LINES,
  type ShowpieceLine,
} from "../config/outreach-lines.ts";
import { magArcsec2 } from "../core/night/sky-brightness.ts";
import type { Showable } from "../core/outreach/showable.ts";
import type { Catalogue } from "../core/targets/catalogue.ts";
import type { BodyName, SkyObject, Target } from "../core/targets/sky-object.ts";
import { columnsOf } from "./catalogue-columns.ts";
import { objectName } from "./words/target-words.ts";

const ARCMIN_PER_DEG = 60;
/** Asked for by name, a thing is shown before all others. */
const ASKED_FOR_APPEAL = 12;

const laidOut = new WeakMap<Catalogue, readonly Showable[]>();

/** Everything of the shipped list; read once for a catalogue. */
export function showablesOf(catalogue: Catalogue): readonly Showable[] {
  const known = laidOut.get(catalogue);
  if (known !== undefined) return known;
  const bodies = Object.entries(BODY_LINES).map(([body, line]) => bodyShowable(body as BodyName, line));
  const figures = EYE_FIGURES.map(
    ({ name, raDeg, decDeg, extentDeg, faintestMag, appeal, line }): Showable => ({
      name,
      kind: "figure",
      target: { kind: "place", raDeg, decDeg },
      appeal,
      line,
      majorArcmin: extentDeg * ARCMIN_PER_DEG,
      minorArcmin: extentDeg * ARCMIN_PER_DEG,
      magnitude: faintestMag,
      surfaceMagArcsec2: null,
    }),
  );
  const surfaces = surfacesOf(catalogue);
  const objects = [...SHOWPIECE_LINES].flatMap(([name, line]) => {
    const found = catalogue.find(name);
    if (found.kind !== "found" || found.target.kind !== "object") return [];
    return [objectShowable(found.target.object, line.shown, line, surfaces)];
  });
  const showables = [...bodies, ...figures, ...objects];
  laidOut.set(catalogue, showables);
  return showables;
}

/** A target that an organiser wants shown; `null` when the public cannot be shown it. */
export function wantedShowable(catalogue: Catalogue, target: Target): Showable | null {
  const listed = showablesOf(catalogue).find(({ target: other }) => isSame(other, target));
  if (listed !== undefined) return { ...listed, appeal: ASKED_FOR_APPEAL };
  if (target.kind !== "object") return null;
  const line = { ...KIND_LINES[target.object.kind], appeal: ASKED_FOR_APPEAL };
  return objectShowable(target.object, objectName(target.object), line, surfacesOf(catalogue));
}

function isSame(one: Target, other: Target): boolean {
  if (one.kind === "body" && other.kind === "body") return one.body === other.body;
  return one.kind === "object" && other.kind === "object" && one.object.id === other.object.id;
}

function bodyShowable(body: BodyName, { appeal, line }: ShowpieceLine): Showable {
  return {
    name: body === "Moon" ? "the Moon" : body,
    kind: body === "Moon" ? "moon" : "planet",
    target: { kind: "body", body },
    appeal,
    line,
    majorArcmin: null,
    minorArcmin: null,
    magnitude: null,
    surfaceMagArcsec2: null,
  };
}

function objectShowable(
  object: SkyObject,
  name: string,
  { appeal, line }: ShowpieceLine,
  surfaces: ReadonlyMap<string, number>,
): Showable {
  return {
    name,
    kind: object.kind,
    target: { kind: "object", object },
    appeal,
    line,
    majorArcmin: object.majorArcmin,
    minorArcmin: object.minorArcmin,
    magnitude: object.magnitude,
    surfaceMagArcsec2: surfaces.get(object.id) ?? null,
  };
}

/** Mean surface to the dark-adapted eye, by designation, of what has one. */
function surfacesOf(catalogue: Catalogue): ReadonlyMap<string, number> {
  const { objects, toTheEye } = columnsOf(catalogue);
  return new Map(
    objects.flatMap(({ id }, index) => {
      const light = toTheEye[index] ?? 0;
      return light > 0 ? [[id, magArcsec2(light)] as const] : [];
    }),
  );
}
