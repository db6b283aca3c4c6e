import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openLog } from '../../../electron/files/open-log.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'halfdot-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('openLog', () => {
  it('gives text in chunks, the base name, the size and the hash of the bytes', () => {
    const path = join(folder, 'a log.csv');
    writeFileSync(path, 'abc');
    const outcome = openLog(path);
    if (!outcome.ok) throw new Error(outcome.refusal.message);
    const source = outcome.value;
    expect([...(source.chunks as Iterable<string>)].join('')).toBe('abc');
    expect(source).toMatchObject({ name: 'a log.csv', size: 3 });
    // SHA-256 of "abc": FIPS 180-2, appendix B.1 (published).
    expect(source.sha256()).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    expect(source.sha256()).toHaveLength(64);
  });

  it('reads a file longer than a chunk whole, across a character that straddles the edge', () => {
    const path = join(folder, 'long.csv');
    const text = `${'x'.repeat((1 << 20) - 1)}é${'y'.repeat(10)}`;
    writeFileSync(path, text);
    const outcome = openLog(path);
    if (!outcome.ok) throw new Error(outcome.refusal.message);
    const chunks = [...(outcome.value.chunks as Iterable<string>)];
    expect(chunks.length).toBeGreaterThan(1);
    expect(chunks.join('')).toBe(text);
  });

  it('says in a sentence that a file is missing or a folder', () => {
    const missing = openLog(join(folder, 'none.csv'));
    expect(missing).toMatchObject({ ok: false, refusal: { code: 'file-unreadable' } });
    if (!missing.ok)
      expect(missing.refusal.message).toMatch(/none\.csv cannot be read: there is no such file or folder\.$/);
    expect(openLog(folder)).toMatchObject({ ok: false, refusal: { code: 'file-is-folder' } });
    expect(openLog(join(folder, 'a log.csv', 'b'))).toMatchObject({
      ok: false,
      refusal: { message: expect.stringContaining('a part of its path is a file') },
    });
    expect(openLog(join(folder, 'x'.repeat(300)))).toMatchObject({
      ok: false,
      refusal: { message: expect.stringContaining('the name is too long') },
    });
  });
});
