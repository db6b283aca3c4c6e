import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CALLS, type Services } from '../../../electron/bridge/calls.ts';
import { gateTo } from '../../../electron/bridge/gate.ts';
import { serveLoopback, type Loopback } from '../../../electron/loopback/server.ts';

const LONG = process.env['HALFDOT_LONG'] ? 50 : 1;
const runs = (count: number) => ({ numRuns: count * LONG, seed: 20261126 });

/** What the services were given: nothing that the contract does not allow may come so far. */
let reached: [string, unknown][] = [];
const services = new Proxy({} as Services, {
  get: (_, name) => async (value: unknown) => void reached.push([String(name), value]),
});

const names = fc.oneof(fc.constantFrom(...Object.keys(CALLS)), fc.string(), fc.anything());
/** Values of about the right shape, and of none. */
const values = fc.oneof(
  fc.anything({ withBigInt: true, withDate: true, withMap: true, withNullPrototype: true }),
  fc.dictionary(
    fc.constantFrom(
      'sha256',
      'debriefId',
      'studentId',
      'name',
      'base64',
      'notes',
      'revision',
      'filter',
      '__proto__',
    ),
    fc.oneof(
      fc.anything(),
      fc.constantFrom('a'.repeat(64), '../x', -1, Infinity, null),
      fc.string({ unit: 'binary' }),
    ),
  ),
);

describe('whatever is asked of a host', () => {
  it('passes the gate only as the contract has it, and is always answered', async () => {
    reached = [];
    const gate = gateTo(services);
    await fc.assert(
      fc.asyncProperty(names, values, async (name, value) => {
        const answer = await gate(name, value);
        if (!answer.ok) expect(answer.message.length).toBeGreaterThan(0);
      }),
      runs(2000),
    );
    for (const [name, value] of reached)
      expect(CALLS[name as keyof typeof CALLS].input.safeParse(value).success).toBe(true);
  }, 3_600_000);

  describe('over loopback', () => {
    let folder = '';
    let served: Loopback;
    const calls: unknown[] = [];
    beforeAll(async () => {
      folder = mkdtempSync(join(tmpdir(), 'halfdot-fuzz-'));
      writeFileSync(join(folder, 'index.html'), '<!doctype html>');
      const gate = async (name: unknown) => {
        calls.push(name);
        return { ok: true, value: 7 } as const;
      };
      served = await serveLoopback({ gate, page: folder, ended: () => {}, patienceS: 3600 });
    });
    afterAll(async () => {
      await served.close();
      rmSync(folder, { recursive: true, force: true });
    });

    const header = fc.constantFrom(
      {},
      { host: 'evil.example' },
      { origin: 'null' },
      { authorization: 'Bearer x' },
      { authorization: '' },
      { 'content-type': 'application/json' },
      { 'content-length': '99999999999' },
      { 'transfer-encoding': 'chunked' },
      { expect: '100-continue' },
    );
    const path = fc.oneof(
      fc.constantFrom(
        '/',
        '/call/',
        '/call/notes',
        '/call/notes?x',
        '/index.html',
        '/../',
        '/%00',
        '/%',
        '//',
        '/call/%2e%2e',
      ),
      fc.webPath().map((part) => `/${part}`),
      fc.string({ unit: 'grapheme-ascii' }).map((part) => `/${part.replaceAll(/[^\x21-\x7e]/g, '%')}`),
    );
    const method = fc.constantFrom('GET', 'POST', 'PUT', 'HEAD', 'OPTIONS', 'DELETE', 'PATCH');

    it('is answered or hung up on, and calls nothing without the token', async () => {
      await fc.assert(
        fc.asyncProperty(
          method,
          path,
          fc.array(header, { maxLength: 4 }),
          fc.string({ unit: 'binary', maxLength: 200 }),
          async (how, where, headers, body) => {
            const status = await ask(
              new URL(served.address),
              how,
              where,
              Object.assign({}, ...headers),
              body,
            );
            expect(status).toBeLessThan(500);
          },
        ),
        runs(400),
      );
      expect(calls).toEqual([]);
    }, 3_600_000);
  });
});

/** The status of an answer; 0 where the other end hung up. */
function ask(
  to: URL,
  method: string,
  path: string,
  headers: Record<string, string>,
  body: string,
): Promise<number> {
  return new Promise((resolve) => {
    const asked = request(
      { host: to.hostname, port: to.port, method, path, headers, agent: false },
      (answer) => {
        answer.resume();
        answer.on('close', () => resolve(answer.statusCode!));
      },
    );
    asked.on('error', () => resolve(0));
    // Who announces more than he sends is waited for.
    asked.on('timeout', () => (headers['content-length'] ? asked.destroy() : resolve(599)));
    asked.setTimeout(headers['content-length'] ? 50 : 5000);
    asked.end(body);
  });
}
