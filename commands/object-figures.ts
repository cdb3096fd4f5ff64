/**
 * Sites, targets and windows as figures.
 *
 * @packageDocumentation
 */
import type { Interval } from "../core/interval.ts";
import type { Site } from "../core/site.ts";
import { bodyPlace } from "../core/sky/bodies.ts";
import type { BodyName, Target } from "../core/targets/sky-object.ts";
import type { Figure } from "./answer.ts";
import { targetName } from "./words/target-words.ts";

/** `site` of the figures. */
export function siteFigures({ name, latitudeDeg, longitudeDeg, timeZone }: Site): Figure {
  return { name, latitudeDeg, longitudeDeg, timeZone };
}

/** A span as figures carry it. */
export function spanFigure({ start, end }: Interval): { readonly start: string; readonly end: string } {
  return { start: start.toISOString(), end: end.toISOString() };
}

/** Spans as figures carry them. */
export function spanFigures(spans: readonly Interval[]): Figure {
  return spans.map(spanFigure);
}

/** `sun`, `moon` or `planet`. */
export function bodyKind(body: BodyName): string {
  return body === "Sun" || body === "Moon" ? body.toLowerCase() : "planet";
}

/** `object` of the figures: J2000 of a fixed target, of date of a body. */
export function objectFigures(target: Target, site: Site, at: Date): { readonly [name: string]: Figure } {
  switch (target.kind) {
    case "object": {
      const { object } = target;
      return {
        id: object.id,
        name: object.name,
        kind: object.kind,
        raDeg: object.raDeg,
        decDeg: object.decDeg,
        majorArcmin: object.majorArcmin,
        minorArcmin: object.minorArcmin,
        positionAngleDeg: object.positionAngleDeg,
        magnitude: object.magnitude,
      };
    }
    case "body": {
      const place = bodyPlace(target.body, site, at);
      const diameterArcmin = (2 * place.semidiameterArcsec) / 60;
      return {
        id: target.body,
        name: target.body,
        kind: bodyKind(target.body),
        raDeg: place.raDeg,
        decDeg: place.decDeg,
        majorArcmin: diameterArcmin,
        minorArcmin: diameterArcmin,
        positionAngleDeg: null,
        magnitude: place.magnitude,
      };
    }
    case "place":
      return {
        id: targetName(target),
        name: null,
        kind: "place",
        raDeg: target.raDeg,
        decDeg: target.decDeg,
        majorArcmin: null,
        minorArcmin: null,
        positionAngleDeg: null,
        magnitude: null,
      };
  }
}
