/**
 * A handful of objects to look up: plain rows, values of no importance.
 *
 * @packageDocumentation
 */
import { buildCatalogue, type Catalogue, type CatalogueParts } from "../../../core/targets/catalogue.ts";
import type { SkyObject } from "../../../core/targets/sky-object.ts";

export function fakeObject(overrides: Partial<SkyObject> & { readonly id: string }): SkyObject {
  return {
    name: null,
    kind: "galaxy",
    raDeg: 10,
    decDeg: 20,
    properMotion: null,
    magnitude: null,
    majorArcmin: null,
    minorArcmin: null,
    positionAngleDeg: null,
    surfaceBrightness: { continuumMagArcsec2: null, rayleigh: {} },
    suits: {},
    aliases: [],
    ranked: true,
    showpiece: false,
    ...overrides,
  };
}

const OBJECTS: readonly SkyObject[] = [
  fakeObject({ id: "M31", name: "Andromeda Galaxy", aliases: ["NGC 224"], showpiece: true }),
  fakeObject({ id: "M42", name: "Orion Nebula", aliases: ["NGC 1976"], showpiece: true }),
  fakeObject({ id: "NGC 7000", name: "North America Nebula", aliases: ["C20", "Sh2-117"], showpiece: true }),
  fakeObject({ id: "NGC 104", name: "47 Tucanae", aliases: ["C106", "47 Tuc"], showpiece: true }),
  fakeObject({ id: "NGC 7001" }),
  fakeObject({ id: "NGC 224A" }),
];

const STARS: readonly SkyObject[] = [
  fakeObject({ id: "Vega", name: "Vega", kind: "star", aliases: ["α Lyr", "3 Lyr", "HD 172167"] }),
  fakeObject({ id: "61 Cyg", kind: "star" }),
];

export function fakeCatalogue(overrides: Partial<CatalogueParts> = {}): Catalogue {
  return buildCatalogue({
    objects: OBJECTS,
    stars: () => STARS,
    alignmentStars: [
      {
        name: "Vega",
        raDeg: 279.234735,
        decDeg: 38.783689,
        properMotion: { raArcsec: 0.20094, decArcsec: 0.28623 },
        magnitude: 0.03,
      },
    ],
    constellations: [
      { name: "Andromeda", genitive: "Andromedae", abbreviation: "And" },
      { name: "Orion", genitive: "Orionis", abbreviation: "Ori" },
      { name: "Cygnus", genitive: "Cygni", abbreviation: "Cyg" },
      { name: "Lyra", genitive: "Lyrae", abbreviation: "Lyr" },
    ],
    ...overrides,
  });
}
