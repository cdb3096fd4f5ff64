/**
 * The gateway: hello, identify, heartbeats, dispatch, dropped connections, resume.
 *
 * @packageDocumentation
 */
import type { IncomingMessage } from "node:http";
import type { Duplex } from "node:stream";
import { type WebSocket, WebSocketServer } from "ws";
import { guildJson, userJson } from "./payloads.ts";
import type { State } from "./state.ts";

type Frame = { op: number; d?: unknown; s?: number | null; t?: string | null };
type Session = { readonly id: string; sequence: number; readonly sent: Frame[]; socket: WebSocket | null };

const HEARTBEAT_MS = 41_250;
const SENDS_PER_MINUTE = 120;
/** GUILD_MEMBERS, GUILD_PRESENCES, MESSAGE_CONTENT: this application was granted none. */
const PRIVILEGED = (1 << 1) | (1 << 8) | (1 << 15);

export class Gateway {
  private readonly state: State;
  private readonly server = new WebSocketServer({ noServer: true });
  private readonly sessions = new Map<string, Session>();
  private resumeUrl = "";
  /** How often a client identified and resumed. */
  identifies = 0;
  resumes = 0;
  /** Intents of the last identify. */
  intents = 0;
  /** Whether a session may be taken up again; `false` answers op 9. */
  resumable = true;

  constructor(state: State) {
    this.state = state;
  }

  listen(url: string): void {
    this.resumeUrl = url;
  }

  upgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void {
    this.server.handleUpgrade(request, socket, head, (client) => this.greet(client));
  }

  /** Sends an event to every session; one without a connection gets it when it resumes. */
  dispatch(type: string, data: unknown): void {
    for (const session of this.sessions.values()) this.push(session, type, data);
  }

  get connected(): number {
    return [...this.sessions.values()].filter((session) => session.socket !== null).length;
  }

  /** Breaks every connection without a close code, or closes with one. */
  drop(code?: number): void {
    for (const session of this.sessions.values()) {
      const socket = session.socket;
      session.socket = null;
      if (code === undefined) socket?.terminate();
      else socket?.close(code);
    }
  }

  close(): void {
    for (const client of this.server.clients) client.terminate();
    this.server.close();
  }

  private greet(client: WebSocket): void {
    let session: Session | null = null;
    let sends = 0;
    let windowStart = Date.now();
    send(client, { op: 10, d: { heartbeat_interval: HEARTBEAT_MS } });
    client.on("close", () => {
      if (session?.socket === client) session.socket = null;
    });
    client.on("message", (raw) => {
      if (Date.now() - windowStart > 60_000) {
        windowStart = Date.now();
        sends = 0;
      }
      sends += 1;
      if (sends > SENDS_PER_MINUTE) return client.close(4008);
      const frame = JSON.parse(String(raw)) as Frame;
      if (frame.op === 1) send(client, { op: 11 });
      if (frame.op === 2) session = this.identify(client, frame.d as Identify);
      if (frame.op === 6) session = this.resume(client, frame.d as Resume);
    });
  }

  private identify(client: WebSocket, data: Identify): Session | null {
    if (data.token !== this.state.token) {
      client.close(4004);
      return null;
    }
    if ((data.intents & PRIVILEGED) !== 0) {
      client.close(4014);
      return null;
    }
    this.identifies += 1;
    this.intents = data.intents;
    const session: Session = { id: this.state.clock.snowflake(), sequence: 0, sent: [], socket: client };
    this.sessions.set(session.id, session);
    const guilds = [...this.state.guilds.values()];
    this.push(session, "READY", {
      v: 10,
      user: userJson(this.state.botUser, true),
      guilds: guilds.map((guild) => ({ id: guild.id, unavailable: true })),
      session_id: session.id,
      resume_gateway_url: this.resumeUrl,
      application: { id: this.state.applicationId, flags: 0 },
    });
    for (const guild of guilds) this.push(session, "GUILD_CREATE", guildJson(guild, this.state));
    return session;
  }

  private resume(client: WebSocket, data: Resume): Session | null {
    const session = this.sessions.get(data.session_id);
    if (session === undefined || !this.resumable) {
      send(client, { op: 9, d: false });
      return null;
    }
    this.resumes += 1;
    session.socket = client;
    for (const frame of session.sent.filter((one) => (one.s ?? 0) > data.seq)) send(client, frame);
    this.push(session, "RESUMED", {});
    return session;
  }

  private push(session: Session, type: string, data: unknown): void {
    session.sequence += 1;
    const frame = { op: 0, t: type, s: session.sequence, d: data };
    session.sent.push(frame);
    if (session.socket !== null) send(session.socket, frame);
  }
}

type Identify = { token: string; intents: number };
type Resume = { token: string; session_id: string; seq: number };

function send(client: WebSocket, frame: Frame): void {
  client.send(JSON.stringify({ s: null, t: null, ...frame }));
}
