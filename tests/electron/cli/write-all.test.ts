import { closeSync, mkdtempSync, openSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeAll } from '../../../electron/cli/write-all.ts';

function failing(code: string): never {
  throw Object.assign(new Error(code), { code });
}

describe('writeAll', () => {
  it('writes a text as UTF-8', () => {
    const folder = mkdtempSync(join(tmpdir(), 'halfdot-'));
    const file = openSync(join(folder, 'out'), 'w');
    try {
      expect(writeAll(file, '¾ scale, 3°\n')).toBe(true);
      expect(readFileSync(join(folder, 'out'), 'utf8')).toBe('¾ scale, 3°\n');
    } finally {
      closeSync(file);
      rmSync(folder, { recursive: true });
    }
  });

  it('waits for a reader that takes it in pieces', () => {
    const taken: number[] = [];
    let isFull = false;
    const slow = (_file: number, bytes: Uint8Array, from: number): number => {
      isFull = !isFull;
      if (isFull) failing('EAGAIN');
      const piece = bytes.subarray(from, from + 3);
      taken.push(...piece);
      return piece.length;
    };
    expect(writeAll(1, 'a long answer', slow)).toBe(true);
    expect(Buffer.from(taken).toString()).toBe('a long answer');
  });

  it.each(['EPIPE', 'ENOSPC'])('gives up on %s', (code) => {
    expect(writeAll(1, 'text', () => failing(code))).toBe(false);
  });
});
