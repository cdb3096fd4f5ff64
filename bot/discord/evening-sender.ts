/**
 * The evening run's way into Discord: one attempt a call, nothing repeated behind its back.
 *
 * A REST client of its own: no retries and no waiting in a queue, since a message
 * that goes out later than its lease allows could be a second one.
 *
 * @packageDocumentation
 */
import { type APIMessage, type RawFile, REST, Routes, SnowflakeUtil } from "discord.js";
import type { EveningChannel, EveningMessage, FindOutcome, SendOutcome } from "../evening/evening-channel.ts";
import type { ButtonBook } from "../store/answer-buttons.ts";
import { rowButtonId } from "./button-ids.ts";
import { renderEvening } from "./evening-message.ts";
import { followUpQuestion } from "./kept-questions.ts";
import { type DrawChart, type MessageFile, messageFiles } from "./message-files.ts";
import type { ShownButton } from "./render-answer.ts";
import { failedOutcome } from "./send-outcome.ts";

export type SenderParts = {
  readonly rest: REST;
  readonly buttons: ButtonBook;
  readonly draw: DrawChart;
  clock(): Date;
  /** This bot's own user id; `null` before it is known. */
  ownId(): string | null;
  /** Whether the channel's history may be read; `null` when it cannot be said. */
  mayReadHistory(channelId: string): boolean | null;
};

/** A REST client that makes one attempt and never waits. */
export function singleAttemptRest(token: string, apiBase: string | null, timeoutMs: number): REST {
  const options = { retries: 0, timeout: timeoutMs, rejectOnRateLimit: () => true };
  return new REST({ ...options, ...(apiBase === null ? {} : { api: apiBase }) }).setToken(token);
}

/** More pages than this, and the channel is too busy to be read back. */
const PAGES_AT_MOST = 20;
const PAGE_LENGTH = 100;

export function eveningSender(parts: SenderParts): EveningChannel {
  return {
    async prepare(message) {
      const { files, remarks } = await messageFiles(message.answer, parts.draw);
      const followUps = await keepFollowUps(parts, message);
      const body = {
        ...renderEvening(message, followUps, remarks),
        ...attachmentsOf(files),
        nonce: message.key,
        enforce_nonce: true,
        ...(message.replyTo === null
          ? {}
          : { message_reference: { message_id: message.replyTo, fail_if_not_exists: false } }),
      };
      return {
        send: (channelId, timeoutMs) =>
          attempt(timeoutMs, (signal) =>
            parts.rest.post(Routes.channelMessages(channelId), { body, files: rawFiles(files), signal }),
          ),
      };
    },

    async edit(channelId, messageId, message, files, timeoutMs) {
      const route = Routes.channelMessage(channelId, messageId);
      if (files === "kept") {
        // Buttons and charts that are left out stay as they are.
        const { components: _, ...body } = renderEvening(message, [], []);
        return attempt(timeoutMs, (signal) => parts.rest.patch(route, { body, signal }));
      }
      const drawn = await messageFiles(message.answer, parts.draw);
      const followUps = await keepFollowUps(parts, message);
      const body = {
        ...renderEvening(message, followUps, drawn.remarks),
        ...attachmentsOf(drawn.files, true),
      };
      return attempt(timeoutMs, (signal) =>
        parts.rest.patch(route, { body, files: rawFiles(drawn.files), signal }),
      );
    },

    find: (channelId, key, since, timeoutMs) => findMessage(parts, { channelId, key, since, timeoutMs }),
  };
}

/** Runs one call and gives it up after its time, whatever the client still waits for. */
async function attempt(
  timeoutMs: number,
  call: (signal: AbortSignal) => Promise<unknown>,
): Promise<SendOutcome> {
  try {
    const { id } = (await inTime(timeoutMs, call)) as APIMessage;
    return { kind: "sent", messageId: id };
  } catch (fault) {
    return failedOutcome(fault);
  }
}

async function inTime<Result>(
  timeoutMs: number,
  call: (signal: AbortSignal) => Promise<Result>,
): Promise<Result> {
  const signal = AbortSignal.timeout(timeoutMs);
  const late = new Promise<never>((_, reject) => {
    signal.addEventListener("abort", () => reject(new Error("no reply in time")), { once: true });
  });
  const result = call(signal);
  result.catch(() => undefined);
  return Promise.race([result, late]);
}

async function keepFollowUps(parts: SenderParts, message: EveningMessage): Promise<readonly ShownButton[]> {
  const { next } = message.answer;
  const rows = next.map((one) => ({
    ownerId: null,
    kind: "next" as const,
    question: followUpQuestion(one, null),
  }));
  const ids = await parts.buttons.keep(message.club, rows, parts.clock());
  return next.map(({ label, command }, index) => ({
    id: rowButtonId("next", ids[index] ?? "", command),
    label,
    primary: false,
  }));
}

/** @param always - an edit names its files even when there are none, so that old ones go */
function attachmentsOf(files: readonly MessageFile[], always = false) {
  if (files.length === 0 && !always) return {};
  const attachments = files.map(({ name, description }, id) => ({
    id,
    filename: name,
    ...(description === null ? {} : { description }),
  }));
  return { attachments };
}

function rawFiles(files: readonly MessageFile[]): RawFile[] {
  return files.map(({ name, mediaType, bytes }) => ({
    name,
    contentType: mediaType,
    data: Buffer.from(bytes),
  }));
}

type Search = {
  readonly channelId: string;
  readonly key: string;
  readonly since: Date;
  readonly timeoutMs: number;
};

async function findMessage(parts: SenderParts, search: Search): Promise<FindOutcome> {
  const allowed = parts.mayReadHistory(search.channelId);
  const ownId = parts.ownId();
  // Without the permission Discord lists nothing at all, which must not be taken for absence.
  if (allowed === false) return { kind: "unreadable", lasting: true };
  if (allowed === null || ownId === null) return { kind: "unreadable", lasting: false };
  try {
    return await readBack(parts.rest, search, ownId);
  } catch (fault) {
    const { kind } = failedOutcome(fault);
    return { kind: "unreadable", lasting: kind === "refused" };
  }
}

async function readBack(rest: REST, search: Search, ownId: string): Promise<FindOutcome> {
  const oldest = SnowflakeUtil.generate({ timestamp: search.since, increment: 0n });
  let before: string | null = null;
  for (let page = 0; page < PAGES_AT_MOST; page++) {
    const query = new URLSearchParams({ limit: String(PAGE_LENGTH), ...(before === null ? {} : { before }) });
    const messages = (await inTime(search.timeoutMs, (signal) =>
      rest.get(Routes.channelMessages(search.channelId), { query, signal }),
    )) as APIMessage[];
    const found = messages.find((message) => message.author.id === ownId && hasKey(message, search.key));
    if (found !== undefined) return { kind: "found", messageId: found.id };
    const last = messages.at(-1);
    if (messages.length < PAGE_LENGTH || last === undefined || BigInt(last.id) < oldest) {
      return { kind: "absent" };
    }
    before = last.id;
  }
  return { kind: "unreadable", lasting: false };
}

function hasKey(message: APIMessage, key: string): boolean {
  return (message.components ?? []).some(
    (row) =>
      "components" in row &&
      row.components.some((part) => "custom_id" in part && part.custom_id.endsWith(`:${key}`)),
  );
}
