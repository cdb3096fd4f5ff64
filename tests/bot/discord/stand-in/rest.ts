/**
 * The HTTP side: authorisation, limits, ordered faults, and the routes in use.
 *
 * A request that Discord would count as invalid (401, 403, 429) is counted.
 *
 * @packageDocumentation
 */
import type { IncomingMessage, ServerResponse } from "node:http";
import { ApiError, unauthorised, unknownChannel } from "./api-error.ts";
import { asStored, checkCommands } from "./command-checks.ts";
import { checkEvent, checkStatusChange } from "./event-checks.ts";
import type { Fault, Faults } from "./faults.ts";
import type { Interactions } from "./interactions.ts";
import { type Messages, openChannel } from "./messages.ts";
import { channelJson, guildJson, messageJson, userJson } from "./payloads.ts";
import type { Allowance, RateLimits } from "./rate-limits.ts";
import type { MessageBody, SentPart, State } from "./state.ts";

export type LoggedRequest = { readonly method: string; readonly path: string; readonly status: number };

type Call = {
  readonly method: string;
  readonly path: string;
  readonly query: URLSearchParams;
  readonly body: Record<string, unknown> | readonly unknown[];
  readonly files: readonly SentPart[];
};

type Reply = { readonly status: number; readonly body: unknown };
type Handler = (call: Call, ids: readonly string[]) => Reply;
type Route = {
  readonly method: string;
  readonly pattern: RegExp;
  readonly open: boolean;
  readonly run: Handler;
};

export type Parts = {
  readonly state: State;
  readonly messages: Messages;
  readonly interactions: Interactions;
  readonly faults: Faults;
  readonly limits: RateLimits;
  gatewayUrl(): string;
};

const USER_AGENT = /^DiscordBot \(\S+, \S+\)/;
const ok = (body: unknown): Reply => ({ status: 200, body });
const none: Reply = { status: 204, body: null };

function messageRoutes({ state, messages }: Parts): Route[] {
  const show = (message: Parameters<typeof messageJson>[0], nonce = false) =>
    ok(messageJson(message, state, nonce));
  return [
    route("POST", "/channels/:id/messages", (call, [channel = ""]) =>
      show(messages.create(channel, call.body as MessageBody, call.files), true),
    ),
    route("GET", "/channels/:id/messages", (call, [channel = ""]) =>
      ok(messages.list(channel, call.query).map((message) => messageJson(message, state, false))),
    ),
    route("GET", "/channels/:id/messages/:id", (_, [channel = "", id = ""]) =>
      show(messages.get(channel, id)),
    ),
    route("PATCH", "/channels/:id/messages/:id", (call, [channel = "", id = ""]) =>
      show(messages.edit(channel, id, call.body as MessageBody, call.files)),
    ),
    route("DELETE", "/channels/:id/messages/:id", (_, [channel = "", id = ""]) => {
      messages.remove(channel, id);
      return none;
    }),
    route("GET", "/channels/:id", (_, [id = ""]) => ok(channelJson(openChannel(state, id, 0n)))),
  ];
}

function interactionRoutes({ state, interactions }: Parts): Route[] {
  return [
    open("POST", "/interactions/:id/:word/callback", (call, [id = "", token = ""]) => {
      interactions.respond(id, token, call.body as Parameters<Interactions["respond"]>[2], call.files);
      return none;
    }),
    open("POST", "/webhooks/:id/:word", (call, [, token = ""]) =>
      ok(messageJson(interactions.followUp(token, call.body as MessageBody, call.files), state, false)),
    ),
    open("PATCH", "/webhooks/:id/:word/messages/:word", (call, [, token = "", id = ""]) =>
      ok(messageJson(interactions.edit(token, id, call.body as MessageBody, call.files), state, false)),
    ),
    open("GET", "/webhooks/:id/:word/messages/:word", (_, [, token = "", id = ""]) =>
      ok(messageJson(interactions.get(token, id), state, false)),
    ),
    open("DELETE", "/webhooks/:id/:word/messages/:word", (_, [, token = "", id = ""]) => {
      interactions.remove(token, id);
      return none;
    }),
  ];
}

function commandRoutes({ state }: Parts): Route[] {
  const read = (scope: string) => ok(state.commands.get(scope) ?? []);
  const replace = (scope: string, body: Call["body"]) => {
    const commands = body as Record<string, unknown>[];
    checkCommands(commands);
    const ids = () => ({
      id: state.clock.snowflake(),
      version: state.clock.snowflake(),
      applicationId: state.applicationId,
    });
    state.commands.set(
      scope,
      commands.map((command) => asStored(command, ids())),
    );
    return read(scope);
  };
  return [
    route("GET", "/applications/:id/commands", () => read("global")),
    route("PUT", "/applications/:id/commands", (call) => replace("global", call.body)),
    route("GET", "/applications/:id/guilds/:id/commands", (_, [, guild = ""]) => read(guild)),
    route("PUT", "/applications/:id/guilds/:id/commands", (call, [, guild = ""]) =>
      replace(guild, call.body),
    ),
  ];
}

function guildRoutes({ state }: Parts): Route[] {
  const guildOf = (id: string) => {
    const guild = state.guilds.get(id);
    if (guild === undefined) throw new ApiError(404, 10_004, "Unknown Guild");
    return guild;
  };
  const eventOf = (guildId: string, id: string) => {
    const event = guildOf(guildId).events.find((one) => one.id === id);
    if (event === undefined) throw new ApiError(404, 10_070, "Unknown Guild Scheduled Event");
    return event;
  };
  return [
    route("GET", "/guilds/:id", (_, [id = ""]) => ok(guildJson(guildOf(id), state))),
    route("GET", "/guilds/:id/scheduled-events", (_, [id = ""]) => ok(guildOf(id).events)),
    route("POST", "/guilds/:id/scheduled-events", (call, [id = ""]) => {
      const guild = guildOf(id);
      checkEvent(call.body as Record<string, unknown>, state.clock.now());
      const live = guild.events.filter((event) => event.status === 1 || event.status === 2);
      if (live.length >= 100) throw new ApiError(400, 30_038, "Maximum number of uncompleted events reached");
      const event = {
        id: state.clock.snowflake(),
        guild_id: id,
        creator_id: state.botUser.id,
        status: 1,
        ...call.body,
      };
      guild.events.push(event);
      return ok(event);
    }),
    route("PATCH", "/guilds/:id/scheduled-events/:id", (call, [guild = "", id = ""]) => {
      const event = eventOf(guild, id);
      const changed = { ...event, ...call.body } as Record<string, unknown>;
      checkStatusChange(Number(event.status), Number(changed.status));
      if (changed.status === 1) checkEvent(changed, state.clock.now());
      return ok(Object.assign(event, changed));
    }),
    route("DELETE", "/guilds/:id/scheduled-events/:id", (_, [guild = "", id = ""]) => {
      const events = guildOf(guild).events;
      events.splice(events.indexOf(eventOf(guild, id)), 1);
      return none;
    }),
  ];
}

function selfRoutes({ state, gatewayUrl }: Parts): Route[] {
  const limit = { total: 1000, remaining: 1000, reset_after: 0, max_concurrency: 1 };
  const application = { id: state.applicationId, name: "Duskbell", flags: 0 };
  return [
    route("GET", "/gateway/bot", () => ok({ url: gatewayUrl(), shards: 1, session_start_limit: limit })),
    route("GET", "/users/@me", () => ok(userJson(state.botUser, true))),
    route("GET", "/applications/@me", () => ok(application)),
    route("GET", "/oauth2/applications/@me", () => ok(application)),
  ];
}

function route(method: string, path: string, run: Handler, isOpen = false): Route {
  const source = path.replaceAll(":id", "(\\d+)").replaceAll(":word", "([^/]+)");
  return { method, pattern: new RegExp(`^${source}$`), open: isOpen, run };
}

/** A route that needs no bot token: the interaction's own stands in the path. */
function open(method: string, path: string, run: Handler): Route {
  return route(method, path, run, true);
}

export class Rest {
  private readonly parts: Parts;
  private readonly routes: readonly Route[];
  readonly requests: LoggedRequest[] = [];

  constructor(parts: Parts) {
    this.parts = parts;
    this.routes = [
      ...messageRoutes(parts),
      ...interactionRoutes(parts),
      ...commandRoutes(parts),
      ...guildRoutes(parts),
      ...selfRoutes(parts),
    ];
  }

  /** 401, 403 and 429 without shared scope, as Discord counts them against an address. */
  get invalidRequests(): number {
    return this.requests.filter((one) => [401, 403, 429].includes(one.status)).length;
  }

  async handle(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const url = new URL(request.url ?? "/", "http://127.0.0.1");
    const method = request.method ?? "GET";
    const path = decodeURIComponent(url.pathname).replace(/^\/api\/v10/, "");
    const fault = this.parts.faults.take(method, path);
    const { body, files } = await readBody(request);
    if (fault?.kind === "held-request") {
      fault.onHeld?.();
      await fault.release;
    }
    if (fault?.kind === "lost-request") return this.hangUp(request, method, path);
    const now = this.parts.state.clock.now();
    const allowance = this.parts.limits.take(method, path, now);
    const call = { method, path, query: url.searchParams, body, files };
    const reply = this.refusal(fault, allowance, method, path, request) ?? this.run(call);
    this.requests.push({ method, path, status: reply.status });
    if (fault?.kind === "lost-reply") {
      request.socket.destroy();
      return;
    }
    if (fault?.kind === "held-reply") {
      fault.onHeld?.();
      await fault.release;
    }
    write(response, reply, allowance);
  }

  private hangUp(request: IncomingMessage, method: string, path: string): void {
    this.requests.push({ method, path, status: 0 });
    request.socket.destroy();
  }

  private refusal(
    fault: Fault | null,
    allowance: Allowance,
    method: string,
    path: string,
    request: IncomingMessage,
  ): Reply | null {
    if (fault?.kind === "rate-limit") return limited(fault.retryAfterSeconds, fault.global === true);
    if (fault?.kind === "status") {
      return { status: fault.status, body: { message: fault.message ?? "refused", code: fault.code ?? 0 } };
    }
    if (!allowance.allowed) return limited(allowance.resetAfterSeconds, allowance.global);
    const known = this.routes.find((one) => one.method === method && one.pattern.test(path));
    if (known?.open) return null;
    if (request.headers.authorization !== `Bot ${this.parts.state.token}`) return asReply(unauthorised());
    if (!USER_AGENT.test(request.headers["user-agent"] ?? "")) {
      return asReply(new ApiError(403, 40_333, "internal network error"));
    }
    return null;
  }

  private run(call: Call): Reply {
    for (const one of this.routes) {
      const match = one.method === call.method ? one.pattern.exec(call.path) : null;
      if (match === null) continue;
      try {
        return one.run(call, match.slice(1));
      } catch (error) {
        if (error instanceof ApiError) return asReply(error);
        throw error;
      }
    }
    return asReply(unknownChannel());
  }
}

function asReply(error: ApiError): Reply {
  return { status: error.status, body: error.body() };
}

function limited(retryAfterSeconds: number, global: boolean): Reply {
  const body = { message: "You are being rate limited.", retry_after: retryAfterSeconds, global };
  return { status: 429, body };
}

function write(response: ServerResponse, reply: Reply, allowance: Allowance): void {
  response.setHeader("X-RateLimit-Limit", allowance.limit);
  response.setHeader("X-RateLimit-Remaining", allowance.remaining);
  response.setHeader("X-RateLimit-Reset", allowance.resetMs / 1000);
  response.setHeader("X-RateLimit-Reset-After", allowance.resetAfterSeconds);
  response.setHeader("X-RateLimit-Bucket", allowance.bucket);
  if (reply.status === 429) {
    const { retry_after, global } = reply.body as { retry_after: number; global: boolean };
    response.setHeader("Retry-After", retry_after);
    response.setHeader("X-RateLimit-Scope", global ? "global" : "user");
    if (global) response.setHeader("X-RateLimit-Global", "true");
  }
  response.statusCode = reply.status;
  if (reply.body === null) {
    response.end();
    return;
  }
  response.setHeader("Content-Type", "application/json");
  response.end(JSON.stringify(reply.body));
}

async function readBody(request: IncomingMessage): Promise<Pick<Call, "body" | "files">> {
  const chunks: Buffer[] = [];
  for await (const chunk of request) chunks.push(chunk as Buffer);
  const bytes = Buffer.concat(chunks);
  const type = request.headers["content-type"] ?? "";
  if (!type.startsWith("multipart/form-data")) {
    return { body: bytes.length === 0 ? {} : JSON.parse(bytes.toString("utf8")), files: [] };
  }
  const form = await new Response(bytes, { headers: { "content-type": type } }).formData();
  const files: SentPart[] = [];
  let body: Call["body"] = {};
  for (const [name, value] of form.entries()) {
    if (typeof value === "string") {
      if (name === "payload_json") body = JSON.parse(value);
    } else {
      files.push({
        name: value.name,
        mediaType: value.type,
        bytes: new Uint8Array(await value.arrayBuffer()),
      });
    }
  }
  return { body, files };
}
