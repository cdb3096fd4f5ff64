/**
 * Members' own names for sites, rigs and filters, in memory for completion.
 *
 * Read once a member and a minute: completion must answer within a tenth of a
 * second, whatever else the store is busy with.
 *
 * @packageDocumentation
 */
import type { Context } from "../../commands/context.ts";

export type OwnNames = {
  readonly sites: readonly string[];
  readonly rigs: readonly string[];
  readonly filters: readonly string[];
};

const KEEP_MS = 60_000;
const MEMBERS_AT_MOST = 2000;

export class CompletionMemory {
  readonly #contextFor: (club: string) => Context;
  readonly #clock: () => Date;
  readonly #known = new Map<string, { readonly at: number; readonly names: Promise<OwnNames> }>();

  constructor(contextFor: (club: string) => Context, clock: () => Date) {
    this.#contextFor = contextFor;
    this.#clock = clock;
  }

  names(club: string, member: string): Promise<OwnNames> {
    const key = `${club} ${member}`;
    const now = this.#clock().getTime();
    const known = this.#known.get(key);
    if (known !== undefined && Math.abs(now - known.at) < KEEP_MS) return known.names;
    if (this.#known.size >= MEMBERS_AT_MOST) this.#known.clear();
    const names = this.#read(club, member);
    names.catch(() => this.#known.delete(key));
    this.#known.set(key, { at: now, names });
    return names;
  }

  /** After a command of that club, which may have changed anything. */
  forget(club: string): void {
    for (const key of this.#known.keys()) {
      if (key.startsWith(`${club} `)) this.#known.delete(key);
    }
  }

  async #read(club: string, member: string): Promise<OwnNames> {
    const { books } = this.#contextFor(club);
    const [sites, rigs] = await Promise.all([books.sites.list(club, member), books.rigs.list(club, member)]);
    const filters = rigs.flatMap(({ rig }) =>
      rig.kind === "camera" ? rig.filters.map(({ name }) => name) : [],
    );
    return {
      sites: [...new Set(sites.map(({ site }) => site.name))],
      rigs: rigs.map(({ rig }) => rig.name),
      filters: [...new Set(filters)],
    };
  }
}
