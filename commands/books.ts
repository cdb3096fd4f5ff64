/**
 * What commands need kept: clubs, members' sites and rigs.
 *
 * `bot/store` keeps them; a test keeps them in memory. Every call names the club,
 * so that no club ever sees another's rows.
 *
 * @packageDocumentation
 */
import type { Rig } from "../core/rig/rig.ts";
import type { Site } from "../core/site.ts";

export type SavedSite = {
  readonly id: number;
  readonly ownerId: string;
  readonly site: Site;
  readonly isDefault: boolean;
  /** Shown to the club by its owner, or the club's own. */
  readonly shared: boolean;
};

export type SavedRig = {
  readonly id: number;
  readonly ownerId: string;
  readonly rig: Rig;
  readonly isDefault: boolean;
};

/** Names are matched without regard to case, spaces and hyphens. */
export interface SiteBook {
  /** The member's own sites, then those shared in the club. */
  list(club: string, member: string): Promise<readonly SavedSite[]>;
  /** Adds, or replaces the member's site of that name; coordinates are rounded to 0.01° here. */
  save(
    club: string,
    member: string,
    site: Site,
    options?: { makeDefault?: boolean; shared?: boolean },
  ): Promise<SavedSite>;
  remove(club: string, member: string, id: number): Promise<void>;
}

export interface RigBook {
  list(club: string, member: string): Promise<readonly SavedRig[]>;
  save(club: string, member: string, rig: Rig, options?: { makeDefault?: boolean }): Promise<SavedRig>;
  remove(club: string, member: string, id: number): Promise<void>;
}

/** Everything kept of one member, for export and erasure. */
export interface MemberBook {
  /** JSON-ready; everything, every table. */
  exportAll(club: string, member: string): Promise<Readonly<Record<string, unknown>>>;
  eraseAll(club: string, member: string): Promise<void>;
}

export interface Books {
  readonly sites: SiteBook;
  readonly rigs: RigBook;
  readonly members: MemberBook;
}
