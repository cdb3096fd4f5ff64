/**
 * Eclipses as figures.
 *
 * @packageDocumentation
 */
import type { Interval } from "../core/interval.ts";
import type { LunarEclipse } from "../core/outreach/lunar-eclipse.ts";
import type { EclipseMoment, LocalSolarEclipse } from "../core/outreach/solar-eclipse.ts";
import { type Figure, isoOrNull } from "./answer.ts";
import { spanFigures } from "./object-figures.ts";

/** The local circumstances of a solar eclipse; `seen`: spans with the Sun over the skyline. */
export function localEclipseFigures(
  eclipse: LocalSolarEclipse,
  seen: readonly Interval[],
): { readonly [name: string]: Figure } {
  return {
    kind: eclipse.kind,
    partialBegins: momentFigures(eclipse.begins),
    centralBegins: momentFigures(eclipse.centralBegins),
    greatest: momentFigures(eclipse.greatest),
    centralEnds: momentFigures(eclipse.centralEnds),
    partialEnds: momentFigures(eclipse.ends),
    magnitude: eclipse.magnitude,
    obscuration: eclipse.obscuration,
    seenWindows: spanFigures(seen),
    seenFromSite: seen.length > 0,
  };
}

function momentFigures(moment: EclipseMoment | null): Figure {
  if (moment === null) return null;
  const { at, sunAltitudeDeg, sunAzimuthDeg } = moment;
  return { at: at.toISOString(), sunAltitudeDeg, sunAzimuthDeg };
}

/** A lunar eclipse; `seen`: spans with the Moon over the skyline. */
export function lunarEclipseFigures(
  eclipse: LunarEclipse,
  seen: readonly Interval[],
): { readonly [name: string]: Figure } {
  return {
    kind: eclipse.kind,
    penumbraBegins: eclipse.penumbraBegins.toISOString(),
    partialBegins: isoOrNull(eclipse.partialBegins),
    totalBegins: isoOrNull(eclipse.totalBegins),
    greatest: eclipse.greatest.toISOString(),
    totalEnds: isoOrNull(eclipse.totalEnds),
    partialEnds: isoOrNull(eclipse.partialEnds),
    penumbraEnds: eclipse.penumbraEnds.toISOString(),
    umbralMagnitude: eclipse.umbralMagnitude,
    penumbralMagnitude: eclipse.penumbralMagnitude,
    shadowConvention: "Danjon: the Earth's radius 1/85 larger for its air, 1/594 less for its flattening",
    seenWindows: spanFigures(seen),
    seenFromSite: seen.length > 0,
  };
}
