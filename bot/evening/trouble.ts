/**
 * What went wrong with a club's post, kept for its organisers' next command.
 *
 * @packageDocumentation
 */
import type { ClubNight } from "./plan.ts";

/** The channel refuses us: it is left alone until an organiser sets it anew. */
export async function markRefused({ club, context }: ClubNight, reason: string): Promise<void> {
  await context.books.clubs.change(club.id, {
    channelId: null,
    trouble: `I may not write in the channel of the evening post (${reason}). Give me View Channel, Send Messages, Embed Links, Attach Files and Read Message History there, then set it again with /club set.`,
    troubleTold: false,
  });
}

/** A post may or may not have arrived, and the channel may not be read to find out. */
export async function markUnreadable({ club, context }: ClubNight, night: string): Promise<void> {
  await context.books.clubs.change(club.id, {
    trouble: `The evening post for ${night} was interrupted, and I may not read the channel back to see whether it arrived, so I did not send it again. Give me Read Message History there.`,
    troubleTold: false,
  });
}
