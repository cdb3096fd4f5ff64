/**
 * What a failed call means for a message: gone, refused, wrong, or nobody knows.
 *
 * @packageDocumentation
 */
import { DiscordAPIError, RateLimitError, RESTJSONErrorCodes } from "discord.js";
import type { SendOutcome } from "../evening/evening-channel.ts";

/** The channel is gone, or closed to us: asking again would only count against us. */
const CLOSED = new Map<number, string>([
  [RESTJSONErrorCodes.UnknownChannel, "it is gone"],
  [RESTJSONErrorCodes.UnknownGuild, "the server is gone"],
  [RESTJSONErrorCodes.MissingAccess, "I cannot see it"],
  [RESTJSONErrorCodes.MissingPermissions, "I lack a permission"],
]);

/** The outcome of an attempt that threw. */
export function failedOutcome(fault: unknown): SendOutcome {
  if (fault instanceof RateLimitError) return { kind: "unclear", retryAfterMs: fault.retryAfter };
  if (!(fault instanceof DiscordAPIError)) return { kind: "unclear", retryAfterMs: null };
  const code = Number(fault.code);
  if (code === RESTJSONErrorCodes.UnknownMessage) return { kind: "deleted" };
  const closed = CLOSED.get(code);
  if (closed !== undefined) return { kind: "refused", reason: closed };
  // A refused token says nothing of the channel: the host has to mend it.
  if (fault.status === 401) return { kind: "unclear", retryAfterMs: null };
  if (fault.status === 403 || fault.status === 404) return { kind: "refused", reason: fault.message };
  return { kind: "invalid", reason: fault.message };
}
