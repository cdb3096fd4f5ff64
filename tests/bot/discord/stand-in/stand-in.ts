/**
 * A server on loopback that speaks the part of Discord's API the bot uses.
 *
 * It keeps Discord's documented limits and can be ordered to fail. What it only
 * assumes about Discord is listed in ASSUMPTIONS.md beside it.
 *
 * @packageDocumentation
 */
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { StandInClock } from "./clock.ts";
import { Faults } from "./faults.ts";
import { Gateway } from "./gateway.ts";
import { Interactions } from "./interactions.ts";
import { Messages } from "./messages.ts";
import { channelJson, guildJson, roleJson } from "./payloads.ts";
import { RateLimits } from "./rate-limits.ts";
import { Rest } from "./rest.ts";
import { type Channel, type Guild, State, type StoredMessage } from "./state.ts";

export const STAND_IN_TOKEN = "stand-in.token.of-no-worth";

export class StandIn {
  readonly clock = new StandInClock();
  readonly state = new State(STAND_IN_TOKEN, this.clock);
  readonly faults = new Faults();
  readonly messages = new Messages(this.state);
  readonly interactions = new Interactions(this.state);
  readonly gateway = new Gateway(this.state);
  readonly rest: Rest;
  private readonly server: Server;
  private port = 0;

  constructor() {
    this.rest = new Rest({
      state: this.state,
      messages: this.messages,
      interactions: this.interactions,
      faults: this.faults,
      limits: new RateLimits(),
      gatewayUrl: () => this.gatewayUrl,
    });
    this.server = createServer((request, response) => {
      this.rest.handle(request, response).catch((error: unknown) => response.destroy(error as Error));
    });
    this.server.on("upgrade", (request, socket, head) => this.gateway.upgrade(request, socket, head));
  }

  /** For `DISCORD_API_BASE`. */
  get apiBase(): string {
    return `http://127.0.0.1:${this.port}/api`;
  }

  private get gatewayUrl(): string {
    return `ws://127.0.0.1:${this.port}`;
  }

  async start(): Promise<void> {
    await new Promise<void>((resolve) => this.server.listen(0, "127.0.0.1", resolve));
    this.port = (this.server.address() as AddressInfo).port;
    this.gateway.listen(this.gatewayUrl);
  }

  async stop(): Promise<void> {
    this.gateway.close();
    this.server.closeAllConnections();
    await new Promise<void>((resolve) => this.server.close(() => resolve()));
  }

  addGuild(name: string): Guild {
    const guild: Guild = {
      id: this.clock.snowflake(),
      name,
      ownerId: this.clock.snowflake(),
      channels: [],
      roles: [],
      events: [],
    };
    this.state.guilds.set(guild.id, guild);
    this.gateway.dispatch("GUILD_CREATE", guildJson(guild, this.state));
    return guild;
  }

  addChannel(guild: Guild, name: string): Channel {
    const channel: Channel = {
      id: this.clock.snowflake(),
      guildId: guild.id,
      name,
      denied: 0n,
      deleted: false,
      messages: [],
    };
    guild.channels.push(channel);
    this.gateway.dispatch("CHANNEL_CREATE", channelJson(channel));
    return channel;
  }

  addRole(guild: Guild, name: string): string {
    const role = { id: this.clock.snowflake(), name };
    guild.roles.push(role);
    this.gateway.dispatch("GUILD_ROLE_CREATE", { guild_id: guild.id, role: roleJson(role, "0") });
    return role.id;
  }

  /** Denies the bot these permissions in the channel. */
  deny(channel: Channel, bits: bigint): void {
    channel.denied = bits;
    this.gateway.dispatch("CHANNEL_UPDATE", channelJson(channel));
  }

  /** The bot is removed from the server, or the server is only out of reach. */
  removeGuild(guild: Guild, unavailable: boolean): void {
    if (!unavailable) this.state.guilds.delete(guild.id);
    this.gateway.dispatch("GUILD_DELETE", unavailable ? { id: guild.id, unavailable } : { id: guild.id });
  }

  /** What everyone in the channel sees. */
  publicMessages(channel: Channel): readonly StoredMessage[] {
    return channel.messages.filter((message) => message.ephemeralFor === null);
  }
}

/** A running stand-in; the test stops it. */
export async function startStandIn(): Promise<StandIn> {
  const standIn = new StandIn();
  await standIn.start();
  return standIn;
}
