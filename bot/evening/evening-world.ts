/**
 * What the evening run works with; `bot/discord/start.ts` fills it, a test fills it with its own.
 *
 * @packageDocumentation
 */
import type { Answer } from "../../commands/answer.ts";
import type { Context, GroundPlace } from "../../commands/context.ts";
import type { Request } from "../../commands/request.ts";
import type { PostingClub } from "../store/club-book.ts";
import type { ClaimBook } from "../store/evening-claims.ts";
import type { PeopleBook } from "../store/evening-people.ts";
import type { WatchBook } from "../store/evening-watches.ts";
import type { MemberWish } from "../store/notify-book.ts";
import type { EveningChannel } from "./evening-channel.ts";

export type EveningWorld = {
  readonly claims: ClaimBook;
  readonly watches: WatchBook;
  readonly people: PeopleBook;
  readonly channel: EveningChannel;
  /** Names this process; no other has it. */
  readonly holder: string;
  clubs(): Promise<readonly PostingClub[]>;
  wishes(club: string): Promise<readonly MemberWish[]>;
  contextFor(club: string): Context;
  /** The words of a night's post. */
  compose(request: Request, context: Context): Promise<{ readonly answer: Answer }>;
  /** Asks for every place's forecast in as few calls as there can be; those of watched posts oftener. */
  prefetch(places: readonly GroundPlace[], watched: boolean): Promise<void>;
  clock(): Date;
  pause(ms: number): Promise<void>;
  /** For the host's log: no coordinates, no names. */
  log(line: string): void;
};
