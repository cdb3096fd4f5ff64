/**
 * Keys to objects: which name or designation belongs to which object.
 *
 * @packageDocumentation
 */
import { designationKey, nameKey } from "./designation.ts";
import type { SkyObject } from "./sky-object.ts";

/** One name under which an object is found. */
export type IndexEntry = {
  readonly key: string;
  /** As written, to be shown. */
  readonly text: string;
  readonly object: SkyObject;
};

export type CatalogueIndex = {
  readonly byKey: ReadonlyMap<string, SkyObject>;
  /** Showpieces first, then in the catalogue's order; one entry a name. */
  readonly entries: readonly IndexEntry[];
};

/** Everything an object answers to, its designation first. */
export function namesOf(object: SkyObject): readonly string[] {
  return object.name === null ? [object.id, ...object.aliases] : [object.id, object.name, ...object.aliases];
}

/** Last words that may be left out of a name: `Rosette` for the `Rosette Nebula`. */
const CLASS_WORD = /\s+(?:nebula|galaxy|cluster|group|asterism)$/i;

/** Keys of names without their class word, where just one object lays claim to them. */
function shortForms(
  objects: readonly SkyObject[],
  taken: ReadonlyMap<string, SkyObject>,
  reserved: ReadonlySet<string>,
): ReadonlyMap<string, SkyObject> {
  const forms = new Map<string, SkyObject>();
  const disputed = new Set<string>();
  for (const object of objects) {
    for (const name of namesOf(object)) {
      if (!CLASS_WORD.test(name)) continue;
      const key = nameKey(name.replace(CLASS_WORD, ""));
      if (key.length < 3 || reserved.has(key) || taken.has(key)) continue;
      const holder = forms.get(key);
      if (holder !== undefined && holder !== object) disputed.add(key);
      forms.set(key, object);
    }
  }
  for (const key of disputed) forms.delete(key);
  return forms;
}

/**
 * Indexes objects by everything they answer to.
 *
 * @param objects - a name that two of them claim stays with the first
 * @param reserved - keys that no shortened name may take, such as those of constellations
 */
export function indexObjects(objects: readonly SkyObject[], reserved: ReadonlySet<string>): CatalogueIndex {
  const byKey = new Map<string, SkyObject>();
  const showpieces: IndexEntry[] = [];
  const others: IndexEntry[] = [];
  for (const object of objects) {
    for (const text of namesOf(object)) {
      const key = designationKey(text) ?? nameKey(text);
      if (key === "" || byKey.has(key)) continue;
      byKey.set(key, object);
      (object.showpiece ? showpieces : others).push({ key, text, object });
    }
  }
  for (const [key, object] of shortForms(objects, byKey, reserved)) byKey.set(key, object);
  return { byKey, entries: [...showpieces, ...others] };
}
