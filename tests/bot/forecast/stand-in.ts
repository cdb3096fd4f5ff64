/**
 * A stand-in for the weather services on loopback: answers as a test tells it to, and remembers what it was asked.
 *
 * @packageDocumentation
 */
import { createServer, type IncomingHttpHeaders, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { gzipSync } from "node:zlib";

export type Asked = {
  /** Path without the query. */
  readonly path: string;
  readonly query: Readonly<Record<string, string>>;
  readonly headers: IncomingHttpHeaders;
};

export type Reply = (asked: Asked, response: ServerResponse) => void;

export type StandIn = {
  readonly base: string;
  readonly asked: readonly Asked[];
  /** How the next requests are answered; the last one goes on. */
  answer(...replies: readonly Reply[]): void;
  close(): Promise<void>;
};

export async function openStandIn(): Promise<StandIn> {
  const asked: Asked[] = [];
  let replies: readonly Reply[] = [];
  let answered = 0;
  const server = createServer((request, response) => {
    const url = new URL(request.url ?? "/", "http://127.0.0.1");
    const one = {
      path: url.pathname,
      query: Object.fromEntries(url.searchParams),
      headers: request.headers,
    };
    asked.push(one);
    const reply = replies[Math.min(answered, replies.length - 1)];
    answered += 1;
    if (reply === undefined) response.writeHead(500).end();
    else reply(one, response);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  return {
    base: `http://127.0.0.1:${port}`,
    asked,
    answer(...next) {
      replies = next;
      answered = 0;
    },
    async close() {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

/** A good answer, compressed as the services do. */
export function json(value: unknown, headers: Readonly<Record<string, string>> = {}, status = 200): Reply {
  return (_asked, response) => {
    response.writeHead(status, {
      "content-type": "application/json",
      "content-encoding": "gzip",
      ...headers,
    });
    response.end(gzipSync(JSON.stringify(value)));
  };
}

export function status(code: number, body = "", headers: Readonly<Record<string, string>> = {}): Reply {
  return (_asked, response) => {
    response.writeHead(code, headers);
    response.end(body);
  };
}

/** Plain text as it is, with status 200. */
export function text(body: string): Reply {
  return status(200, body, { "content-type": "application/json" });
}

/** Never answers. */
export function silence(): Reply {
  return () => undefined;
}

/** Half an answer, and the connection torn down. */
export function cutOff(value: unknown): Reply {
  return (_asked, response) => {
    const body = JSON.stringify(value);
    response.writeHead(200, { "content-type": "application/json", "content-length": String(body.length) });
    response.write(body.slice(0, body.length / 2), () => response.destroy());
  };
}

/** Answers after a while. */
export function slowly(ms: number, reply: Reply): Reply {
  return (asked, response) => {
    setTimeout(() => reply(asked, response), ms);
  };
}
