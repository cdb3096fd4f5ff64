/**
 * Who asks at the console, and in which club.
 *
 * @packageDocumentation
 */
import { matchKey } from "../../commands/read/names.ts";
import type { Asker } from "../../commands/request.ts";
import { DEMO_CLUB } from "../../config/demo-club.ts";
import { isOrganiser, listClubs } from "../store/club-rows.ts";
import type { Store } from "../store/store.ts";
import type { Flags } from "./flags.ts";

/** Whom the console takes for granted. */
const ME = "me";

/**
 * The asker and the club that the flags name.
 *
 * A club nobody keeps yet is a new one: it is kept with the first thing stored in it.
 */
export async function askerOf(flags: Flags, store: Store): Promise<{ member: Asker; club: string }> {
  const clubs = await listClubs(store.db);
  const name = flags.club ?? DEMO_CLUB.id;
  const known = clubs.find((club) => club.id === name || matchKey(club.name) === matchKey(name));
  const club = known?.id ?? matchKey(name);
  const id = matchKey(flags.as ?? ME);
  const organiser = known === undefined || (await isOrganiser(store.db, club, id));
  return { club, member: { id, name: flags.as ?? ME, organiser } };
}
