/**
 * What commands need kept: clubs' settings, members' sites, rigs and wishes.
 *
 * `bot/store` keeps them; a test keeps them in memory. Every call names the club,
 * so that no club ever sees another's rows.
 *
 * @packageDocumentation
 */
import type { Rig } from "../core/rig/rig.ts";
import type { Site } from "../core/site.ts";
import type { ObservingLimits } from "../core/weather/observing-limits.ts";
import type { OutreachSettings } from "./announcements.ts";
import type { LogBook, PoolBook, RecordBook } from "./log-books.ts";
import type { RigFacts } from "./read/rig-facts.ts";

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
  /** What its owner said, where the rig was made of that. */
  readonly said?: RigFacts;
};

/** Names are matched without regard to case, spaces and hyphens. */
export interface SiteBook {
  /** The member's own sites, then those shared in the club. */
  list(club: string, member: string): Promise<readonly SavedSite[]>;
  /**
   * Adds, or replaces the member's site of that name (of that id with `replaces`, which may rename);
   * coordinates are rounded to 0.01° here. A member's first site is the default.
   */
  save(
    club: string,
    member: string,
    site: Site,
    options?: { makeDefault?: boolean; shared?: boolean; replaces?: number },
  ): Promise<SavedSite>;
  remove(club: string, member: string, id: number): Promise<void>;
}

export interface RigBook {
  list(club: string, member: string): Promise<readonly SavedRig[]>;
  /** As {@link SiteBook.save}; what was said of it stays when it is not said anew. */
  save(
    club: string,
    member: string,
    rig: Rig,
    options?: { makeDefault?: boolean; replaces?: number; said?: RigFacts },
  ): Promise<SavedRig>;
  remove(club: string, member: string, id: number): Promise<void>;
}

/** Everything kept of one member, for export and erasure. */
export interface MemberBook {
  /** JSON-ready; everything, every table. */
  exportAll(club: string, member: string): Promise<Readonly<Record<string, unknown>>>;
  eraseAll(club: string, member: string): Promise<void>;
}

/** Which nights the evening post goes out on. */
export type PostOn = "go" | "marginal" | "every-night";

/** Wind, temperature and rain in km/h, °C and mm, or in miles an hour, °F and inches. */
export type Units = "metric" | "imperial";

export type ClubSettings = {
  /** Channel of the evening post; `null` while there is none. */
  readonly channelId: string | null;
  /** Names of shared sites, home first; empty: the first one shared. */
  readonly sites: readonly string[];
  readonly hoursBeforeSunset: number;
  /** The rig that the post's proposals are for, described; `null` for that of `config/`. */
  readonly rig: string | null;
  readonly postOn: PostOn;
  readonly units: Units;
  /** The limits the club set itself; the rest are those of `config/`. */
  readonly limits: Partial<Omit<ObservingLimits, "optics">>;
  /** Who holds this role runs the club, besides those who may manage the server. */
  readonly organiserRoleId: string | null;
  /** What went wrong with the post, in a sentence for the organisers; `null` when nothing did. */
  readonly trouble: string | null;
  /** Whether an organiser has been told. */
  readonly troubleTold: boolean;
  /** Where public sessions are announced; absent until an organiser says. */
  readonly outreach?: OutreachSettings;
};

export interface ClubBook {
  /** The club's settings, or those it begins with. */
  settings(club: string): Promise<ClubSettings>;
  change(club: string, changes: Partial<ClubSettings>): Promise<ClubSettings>;
}

/** A member's wish to be mentioned in the evening post. */
export type NotifyWish = {
  /** One of the member's sites; `null` for whichever is the default. */
  readonly siteName: string | null;
  readonly leastHours: number;
};

export interface NotifyBook {
  get(club: string, member: string): Promise<NotifyWish | null>;
  set(club: string, member: string, wish: NotifyWish): Promise<void>;
  remove(club: string, member: string): Promise<void>;
}

export interface Books {
  readonly clubs: ClubBook;
  readonly notify: NotifyBook;
  readonly sites: SiteBook;
  readonly rigs: RigBook;
  readonly log: LogBook;
  readonly pools: PoolBook;
  readonly record: RecordBook;
  readonly members: MemberBook;
}
