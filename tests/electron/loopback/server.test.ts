import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request, type IncomingHttpHeaders } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { LARGEST_KEPT_BYTES } from '../../../electron/bridge/kept-limits.ts';
import { POLICY_HEADERS } from '../../../electron/loopback/policy.ts';
import { serveLoopback, type Loopback } from '../../../electron/loopback/server.ts';

let folder: string;
let served: Loopback;
let own: URL;
let calls: unknown[];
let hasEnded: Promise<void>;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'halfdot-page-'));
  mkdirSync(join(folder, 'page', 'assets'), { recursive: true });
  writeFileSync(join(folder, 'page', 'index.html'), '<!doctype html>');
  writeFileSync(join(folder, 'page', 'assets', 'a.js'), '1');
  writeFileSync(join(folder, 'secret.js'), 'secret');
  calls = [];
  let ended: () => void;
  hasEnded = new Promise((resolve) => (ended = resolve));
  served = await serveLoopback({
    gate: async (name, value) => {
      calls.push([name, value]);
      return { ok: true, value: 7 };
    },
    page: join(folder, 'page'),
    ended: () => ended(),
    patienceS: 0.05,
  });
  own = new URL(served.address);
});
afterEach(async () => {
  await served.close();
  rmSync(folder, { recursive: true, force: true });
});

interface Asked {
  readonly status: number;
  readonly body: string;
  readonly headers: IncomingHttpHeaders;
}

function ask(method: string, path: string, headers: Record<string, string> = {}, body = ''): Promise<Asked> {
  return new Promise((resolve, reject) => {
    const { hostname, port } = own;
    const asking = request({ hostname, port, method, path, headers }, (response) => {
      let text = '';
      response.on('data', (part: Buffer) => (text += part.toString()));
      response.on('end', () =>
        resolve({ status: response.statusCode!, body: text, headers: response.headers }),
      );
    });
    asking.on('error', reject);
    asking.end(body);
  });
}

const allowed = () => ({
  origin: own.origin,
  authorization: `Bearer ${own.hash.slice(1)}`,
  'content-type': 'application/json',
});

describe('the loopback host', () => {
  it('serves this machine alone, by an address with a token that no request carries', () => {
    expect(own.hostname).toBe('127.0.0.1');
    expect(own.hash.length).toBeGreaterThan(30);
    expect(own.search).toBe('');
  });

  it('serves the page with its policy, and nothing above or beside it', async () => {
    const page = await ask('GET', '/');
    expect([page.status, page.body]).toEqual([200, '<!doctype html>']);
    expect(page.headers['content-security-policy']).toContain("default-src 'none'");
    expect(page.headers['content-security-policy']).not.toContain('unsafe');
    expect((await ask('GET', '/assets/a.js')).body).toBe('1');
    for (const path of [
      '/../secret.js',
      '/%2e%2e/secret.js',
      '/..%2fsecret.js',
      '/assets/../../secret.js',
      '//secret.js',
      '/assets',
      '/none.js',
    ])
      expect([path, (await ask('GET', path)).body]).toEqual([path, '']);
  });

  it('passes a call on, and what it answers', async () => {
    const { status, body, headers } = await ask('POST', '/call/notes', allowed(), '{"a":1}');
    expect([status, JSON.parse(body)]).toEqual([200, { ok: true, value: 7 }]);
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(calls).toEqual([['notes', { a: 1 }]]);
  });

  it.each([
    ['another host, as a name that leads here has it', () => ({ ...allowed(), host: 'evil.example' }), 421],
    ['another origin', () => ({ ...allowed(), origin: 'http://evil.example' }), 403],
    [
      'no origin',
      () => ({ authorization: allowed().authorization, 'content-type': 'application/json' }),
      403,
    ],
    ['no token', () => ({ origin: own.origin, 'content-type': 'application/json' }), 403],
    [
      'a forged token',
      () => ({ ...allowed(), authorization: `Bearer ${'x'.repeat(own.hash.length - 1)}` }),
      403,
    ],
    ['a form', () => ({ ...allowed(), 'content-type': 'text/plain' }), 404],
  ])('hears no call with %s', async (_, headers, status) => {
    expect((await ask('POST', '/call/notes', headers(), '{}')).status).toBe(status);
    expect(calls).toEqual([]);
  });

  it('reads no body that is larger than any call, and says so', async () => {
    const headers = { ...allowed(), 'content-length': String((64 << 20) + 1) };
    expect((await ask('POST', '/call/notes', headers)).status).toBe(413);
    expect(calls).toEqual([]);
  });

  it('takes the largest log that is kept', async () => {
    const base64 = 'A'.repeat(Math.ceil(LARGEST_KEPT_BYTES / 3) * 4);
    const body = JSON.stringify({ name: 'n'.repeat(1000), base64 });
    expect((await ask('POST', '/call/keepLog', allowed(), body)).status).toBe(200);
    expect(calls).toHaveLength(1);
  });

  it('sends its policy with every answer, also with those that refuse', async () => {
    const answers = [
      await ask('GET', '/'),
      await ask('GET', '/none.js'),
      await ask('POST', '/call/notes', allowed(), '{}'),
      await ask('POST', '/call/notes'),
      await ask('GET', '/', { host: 'evil.example' }),
    ];
    expect(answers.map(({ status }) => status)).toEqual([200, 404, 200, 403, 421]);
    for (const { headers } of answers) expect(headers).toMatchObject(POLICY_HEADERS);
  });

  it('takes no call by GET, and a body that is no JSON for nothing', async () => {
    expect((await ask('GET', '/call/notes', allowed())).status).toBe(403);
    await ask('POST', '/call/notes', allowed(), '{');
    expect(calls).toEqual([['notes', undefined]]);
  });

  it('tells its pages what happens, and ends when the last of them has gone', async () => {
    const { hostname, port } = own;
    const heard = await new Promise<string>((resolve, reject) => {
      const asking = request(
        { hostname, port, method: 'POST', path: '/events', headers: allowed() },
        (response) => {
          let text = '';
          response.on('data', (part: Buffer) => {
            text += part.toString();
            if (text === '\n') served.tell({ kind: 'given' });
            if (!text.includes('given')) return;
            response.destroy();
            resolve(text);
          });
          response.on('error', () => {});
        },
      );
      asking.on('error', reject);
      asking.end();
    });
    expect(heard).toBe('\n{"kind":"given"}\n');
    await hasEnded;
  });
});
