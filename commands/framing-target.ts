/**
 * What is framed: a place and an extent, whatever kind of target it is.
 *
 * @packageDocumentation
 */

import type { Caution } from "../core/cautions.ts";
import { SUN_GUARD_DEG } from "../core/cautions.ts";
import type { Ellipse } from "../core/rig/frame-area.ts";
import { ellipseOf } from "../core/rig/framing.ts";
import type { Site } from "../core/site.ts";
import type { EquatorialPlace } from "../core/sky/angles.ts";
import { bodyPlace } from "../core/sky/bodies.ts";
import { placeOfJ2000 } from "../core/sky/j2000.ts";
import { movedPlace, placeOfDate, separationDeg } from "../core/sky/place.ts";
import type { SkyObject, Target } from "../core/targets/sky-object.ts";
import { AskError } from "./ask-error.ts";
import { cautionsFor } from "./cautions.ts";
import type { Context } from "./context.ts";
import { pointingAt } from "./pointings.ts";
import { siteOf } from "./read/site.ts";
import type { Request } from "./request.ts";

export type FramedTarget = {
  /** J2000. */
  readonly place: EquatorialPlace;
  /** `null` of a point: nothing is known of its size. */
  readonly ellipse: Ellipse | null;
  /** The same on the sky, as figures give it. */
  readonly extent: Pick<SkyObject, "majorArcmin" | "minorArcmin" | "positionAngleDeg">;
  /** Whether the major axis's angle is known where it matters. */
  readonly angleKnown: boolean;
};

/** The site named, else the member's own; `null` when nothing is saved and nothing was named. */
export async function siteIfAny(request: Request, context: Context): Promise<Site | null> {
  try {
    return await siteOf(request, context);
  } catch (fault) {
    if (fault instanceof AskError && fault.code === "no-site") return null;
    throw fault;
  }
}

/**
 * The target's place and extent.
 *
 * @throws AskError when a body of the solar system is asked for without a site: its place depends on it
 */
export async function framedTarget(
  target: Target,
  request: Request,
  context: Context,
): Promise<FramedTarget> {
  switch (target.kind) {
    case "object": {
      const { object } = target;
      const round = (object.minorArcmin ?? object.majorArcmin) === object.majorArcmin;
      return {
        place: movedPlace(object.raDeg, object.decDeg, request.at, object.properMotion),
        ellipse: ellipseOf(object),
        extent: object,
        angleKnown: round || object.positionAngleDeg !== null,
      };
    }
    case "body": {
      const seen = bodyPlace(target.body, await siteOf(request, context), request.at);
      const arcmin = (2 * seen.semidiameterArcsec) / 60;
      const extent = { majorArcmin: arcmin, minorArcmin: arcmin, positionAngleDeg: null };
      return {
        place: placeOfJ2000(seen, request.at),
        ellipse: ellipseOf(extent),
        extent,
        angleKnown: true,
      };
    }
    case "place":
      return {
        place: { raDeg: target.raDeg, decDeg: target.decDeg },
        ellipse: null,
        extent: { majorArcmin: null, minorArcmin: null, positionAngleDeg: null },
        angleKnown: true,
      };
  }
}

/** The Earth's centre stands in where no site is known: the Sun's place hardly depends on it. */
const NOWHERE = { latitudeDeg: 0, longitudeDeg: 0, elevationMetres: 0 };

/**
 * The cautions of pointing there now.
 *
 * Where no site is known the Sun counts as up.
 */
export function framingCautions(
  target: Target,
  place: EquatorialPlace,
  site: Site | null,
  at: Date,
): readonly Caution[] {
  const solar = target.kind === "body" && target.body === "Sun";
  if (site !== null) return cautionsFor({ solar, pointings: [pointingAt(site, target, at)] });
  const sunSeparationDeg = separationDeg(
    bodyPlace("Sun", NOWHERE, at),
    placeOfDate(place.raDeg, place.decDeg, at),
  );
  const near = sunSeparationDeg <= SUN_GUARD_DEG;
  return cautionsFor({
    solar,
    pointings: near ? [{ sunSeparationDeg, sunAltitudeDeg: 90, minutesToSunrise: null }] : [],
  });
}
