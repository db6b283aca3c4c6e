import { randomBytes, timingSafeEqual } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Answer } from '../bridge/gate.ts';
import type { HostEvent } from '../bridge/calls.ts';
import { pageFile } from './page-files.ts';
import { POLICY_HEADERS } from './policy.ts';

/** More than this no call of the contract carries. */
const LARGEST_BODY = 64 << 20;
/** So long after its last page went the host ends, seconds: a page that is loaded anew is back sooner. */
const PATIENCE_S = 10;
const BEAT_S = 15;

export interface Loopback {
  /** The page's address, with the token behind the `#`, which no browser sends to anybody. */
  readonly address: string;
  /** Tells the page that something happened. */
  tell(event: HostEvent): void;
  close(): Promise<void>;
}

interface Serving {
  readonly gate: (name: unknown, value: unknown) => Promise<Answer>;
  /** Folder of the built page. */
  readonly page: string;
  /** Called when the last page has been gone for a while. */
  readonly ended: () => void;
  readonly patienceS?: number;
}

/**
 * Serves the page and the contract's calls on this machine alone: 127.0.0.1, a port of the system's choice, a random
 * token. A request for another host's name (as a page elsewhere makes it, by a name that leads here) gets nothing;
 * a call from another origin, or without the token, gets nothing either.
 */
export async function serveLoopback(serving: Serving): Promise<Loopback> {
  const token = randomBytes(24).toString('base64url');
  const pages = new Set<ServerResponse>();
  const patience = new Patience(serving.ended, serving.patienceS ?? PATIENCE_S);
  const server = createServer((request, response) => {
    answer(request, response).catch(() => end(response, 500));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const own = `127.0.0.1:${(server.address() as AddressInfo).port}`;

  async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    if (request.headers.host !== own) return end(response, 421);
    const { pathname } = new URL(`http://${own}${request.url ?? '/'}`);
    const isCall = pathname.startsWith('/call/');
    if (request.method === 'GET' && !isCall && pathname !== '/events')
      return sendPage(serving.page, pathname, response);
    const isOwn = request.headers.origin === `http://${own}` && isToken(request.headers.authorization, token);
    if (request.method !== 'POST' || !isOwn) return end(response, 403);
    if (pathname === '/events') return listen(response);
    if (!isCall || request.headers['content-type'] !== 'application/json') return end(response, 404);
    const body = await bodyOf(request);
    if (body === null) return end(response, 413);
    send(
      response,
      200,
      'application/json',
      JSON.stringify(await serving.gate(pathname.slice(6), parsed(body))),
    );
  }

  /** A line of JSON for every event, for as long as the page is there; empty lines in between keep it alive. */
  function listen(response: ServerResponse): void {
    response.writeHead(200, { ...POLICY_HEADERS, 'content-type': 'application/x-ndjson' });
    response.write('\n');
    pages.add(response);
    patience.off();
    const beat = setInterval(() => response.write('\n'), BEAT_S * 1000);
    response.on('close', () => {
      clearInterval(beat);
      pages.delete(response);
      if (pages.size === 0) patience.on();
    });
  }

  return {
    address: `http://${own}/#${token}`,
    tell: (event) => {
      for (const page of pages) page.write(`${JSON.stringify(event)}\n`);
    },
    close: () => closed(server, patience),
  };
}

/** Waits for a page to come back, and calls when none does. */
class Patience {
  #timer: NodeJS.Timeout | null = null;
  readonly #ended: () => void;
  readonly #seconds: number;

  constructor(ended: () => void, seconds: number) {
    this.#ended = ended;
    this.#seconds = seconds;
  }

  on(): void {
    this.off();
    this.#timer = setTimeout(this.#ended, this.#seconds * 1000);
  }

  off(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
  }
}

function closed(server: Server, patience: Patience): Promise<void> {
  patience.off();
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}

function isToken(authorization: string | undefined, token: string): boolean {
  const said = Buffer.from(authorization ?? '');
  const due = Buffer.from(`Bearer ${token}`);
  return said.length === due.length && timingSafeEqual(said, due);
}

async function bodyOf(request: IncomingMessage): Promise<string | null> {
  // Before a byte is read: to stop in the middle cuts the connection, and the answer with it.
  if (Number(request.headers['content-length'] ?? 0) > LARGEST_BODY) return null;
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    length += part.length;
    if (length > LARGEST_BODY) return null;
    parts.push(part);
  }
  return Buffer.concat(parts).toString('utf8');
}

function parsed(body: string): unknown {
  try {
    return JSON.parse(body);
  } catch {
    return undefined;
  }
}

function sendPage(folder: string, path: string, response: ServerResponse): void {
  const file = pageFile(folder, path);
  if (file === null) return end(response, 404);
  send(response, 200, file.type, file.bytes);
}

function send(response: ServerResponse, status: number, type: string, body: string | Buffer): void {
  response.writeHead(status, { ...POLICY_HEADERS, 'content-type': type });
  response.end(body);
}

function end(response: ServerResponse, status: number): void {
  if (!response.headersSent) response.writeHead(status, POLICY_HEADERS);
  response.end();
}
