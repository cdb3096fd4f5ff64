/**
 * Names that mean one object and no other.
 *
 * @packageDocumentation
 */
import { lookupKey } from "../../core/targets/designation.ts";
import type { SkyObject } from "../../core/targets/sky-object.ts";

/**
 * Leaves every name to one object: designations before names, then the earlier row.
 *
 * @throws Error when two showpieces, or two designations, claim one name (a fault of the tables)
 */
export function withoutSharedNames(objects: readonly SkyObject[]): readonly SkyObject[] {
  const owner = new Map<string, SkyObject>();
  for (const object of objects) {
    const key = lookupKey(object.id);
    const other = owner.get(key);
    if (other !== undefined) throw new Error(`“${object.id}” and “${other.id}” are one designation`);
    owner.set(key, object);
  }
  const claim = (object: SkyObject, name: string): boolean => {
    const key = lookupKey(name);
    const other = owner.get(key);
    if (other === undefined) owner.set(key, object);
    else if (other !== object && other.showpiece && object.showpiece) {
      throw new Error(`“${name}” is claimed by ${other.id} and by ${object.id}`);
    }
    return (owner.get(key) ?? object) === object;
  };
  return objects.map((object) => ({
    ...object,
    name: object.name !== null && claim(object, object.name) ? object.name : null,
    aliases: object.aliases.filter((alias) => claim(object, alias)),
  }));
}
