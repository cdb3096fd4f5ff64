/**
 * The catalogue in memory: look-up, nearest names, completion.
 *
 * @packageDocumentation
 */
import { type CatalogueIndex, type IndexEntry, indexObjects } from "./catalogue-index.ts";
import { type Completable, type CompletionChoice, completions } from "./completion.ts";
import { readCoordinates } from "./coordinates.ts";
import { designationKey, nameKey } from "./designation.ts";
import { nearestNames } from "./nearest-names.ts";
import type { BodyName, SkyObject, Target } from "./sky-object.ts";

export type Lookup =
  | { readonly kind: "found"; readonly target: Target }
  | {
      readonly kind: "unknown";
      /** The names nearest to it, at most three, the nearest first. */
      readonly nearest: readonly string[];
      /** One sentence, when it was written like coordinates but is no place on the sky. */
      readonly problem?: string;
    };

/** A bright star with a name, for aligning and focusing. */
export type NamedStar = {
  readonly name: string;
  readonly raDeg: number;
  readonly decDeg: number;
  readonly properMotion: { readonly raArcsec: number; readonly decArcsec: number };
  readonly magnitude: number;
};

export interface Catalogue {
  readonly objects: readonly SkyObject[];
  readonly alignmentStars: readonly NamedStar[];
  /** A designation, name, named star, planet, Moon, Sun or J2000 coordinates. */
  find(text: string): Lookup;
  /** Names that begin with, then contain, what was typed; showpieces first. */
  complete(typed: string, limit: number): readonly CompletionChoice[];
}

/** What a catalogue is made of. */
export type CatalogueParts = {
  /** The more prominent first: where two claim one name, it stays with the first. */
  readonly objects: readonly SkyObject[];
  readonly alignmentStars: readonly NamedStar[];
  /** Stars that have a name or letter, the brighter first; called when one is first looked for. */
  readonly stars: () => readonly SkyObject[];
  /** Constellations' genitives and their abbreviations, such as `Ursae Majoris` and `UMa`. */
  readonly constellations: readonly {
    readonly genitive: string;
    readonly name: string;
    readonly abbreviation: string;
  }[];
};

const BODIES: readonly BodyName[] = [
  "Moon",
  "Sun",
  "Jupiter",
  "Saturn",
  "Mars",
  "Venus",
  "Mercury",
  "Uranus",
  "Neptune",
];

/** How many names a refusal offers. */
const NEAREST_COUNT = 3;

/** Names longer than this are not looked for. */
const LONGEST_NAME = 100;

/** A value computed when first asked for. */
function lazily<T>(compute: () => T): () => T {
  let held: { readonly value: T } | null = null;
  return () => {
    held ??= { value: compute() };
    return held.value;
  };
}

/** `alphacygni` to `alphacyg`: a star's constellation in the short form of the index. */
function constellationShortener(parts: CatalogueParts): (key: string) => string {
  const endings = parts.constellations
    .map((one) => ({ long: nameKey(one.genitive), short: nameKey(one.abbreviation) }))
    .sort((a, b) => b.long.length - a.long.length);
  return (key) => {
    const ending = endings.find((one) => key.length > one.long.length && key.endsWith(one.long));
    return ending === undefined ? key : key.slice(0, -ending.long.length) + ending.short;
  };
}

/** Stars by name with the better place and the proper motion of the alignment table. */
function withProperMotion(stars: readonly SkyObject[], known: readonly NamedStar[]): readonly SkyObject[] {
  const byName = new Map(known.map((star) => [nameKey(star.name), star]));
  return stars.map((star) => {
    const better = star.name === null ? undefined : byName.get(nameKey(star.name));
    if (better === undefined) return star;
    const { raDeg, decDeg, properMotion, magnitude } = better;
    return { ...star, raDeg, decDeg, properMotion, magnitude };
  });
}

const BODY_ENTRIES: readonly Completable[] = BODIES.map((body) => ({
  key: nameKey(body),
  text: body,
  owner: body,
  value: body,
}));

function objectTarget(object: SkyObject): Lookup {
  return { kind: "found", target: { kind: "object", object } };
}

const completable = (entry: IndexEntry): Completable => ({
  key: entry.key.replace("/", ""),
  text: entry.text,
  owner: entry.object,
  value: entry.object.id,
});

/** Names worth offering when a name is misspelt: all of a star's or object's but mere numbers of stars. */
function candidatesOf(objects: CatalogueIndex, stars: CatalogueIndex): readonly Completable[] {
  const properNames = stars.entries.filter((entry) => entry.text === entry.object.name);
  const shown = objects.entries.map(completable);
  const firstOther = objects.entries.findIndex((entry) => !entry.object.showpiece);
  const showpieces = firstOther < 0 ? shown.length : firstOther;
  return [
    ...BODY_ENTRIES,
    ...shown.slice(0, showpieces),
    ...properNames.map(completable),
    ...shown.slice(showpieces),
  ];
}

/**
 * A catalogue over rows in memory.
 *
 * The index is built when first needed (tens of milliseconds); look-up and
 * completion then take microseconds to a few milliseconds.
 */
export function buildCatalogue(parts: CatalogueParts): Catalogue {
  const reserved = new Set(parts.constellations.map((one) => nameKey(one.name)));
  const objects = lazily(() => indexObjects(parts.objects, reserved));
  const stars = lazily(() => indexObjects(withProperMotion(parts.stars(), parts.alignmentStars), reserved));
  const candidates = lazily(() => candidatesOf(objects(), stars()));
  const shorten = lazily(() => constellationShortener(parts));

  const unknown = (key: string): Lookup => ({
    kind: "unknown",
    nearest: nearestNames(key, candidates(), NEAREST_COUNT),
  });

  return {
    objects: parts.objects,
    alignmentStars: parts.alignmentStars,

    find(text) {
      const typed = text.trim().slice(0, LONGEST_NAME);
      const name = nameKey(typed);
      const body = BODIES.find((one) => nameKey(one) === name);
      if (body !== undefined) return { kind: "found", target: { kind: "body", body } };

      const coordinates = readCoordinates(typed);
      switch (coordinates.kind) {
        case "place":
          return { kind: "found", target: coordinates };
        case "impossible":
          return { kind: "unknown", nearest: [], problem: coordinates.problem };
        case "not-coordinates":
          break;
      }

      const designation = designationKey(typed);
      for (const key of designation === null ? [name] : [designation, name]) {
        if (key === "") continue;
        const object = objects().byKey.get(key);
        if (object !== undefined) return objectTarget(object);
      }
      const star = designation === null ? undefined : stars().byKey.get(designation);
      const named = star ?? stars().byKey.get(name) ?? stars().byKey.get(shorten()(name));
      if (named !== undefined) return objectTarget(named);
      const again = objects().byKey.get(shorten()(name));
      if (again !== undefined) return objectTarget(again);
      return unknown((designation ?? name).replace("/", ""));
    },

    complete(typed, limit) {
      const key = (designationKey(typed) ?? nameKey(typed)).slice(0, LONGEST_NAME).replace("/", "");
      return completions(key, candidates(), limit);
    },
  };
}
