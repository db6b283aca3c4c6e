import { createHash } from 'node:crypto';
import { closeSync, openSync, readSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { refused, usable, type Outcome } from '../../core/issue/issue.ts';
import type { LogSource } from '../../core/log/log.ts';
import { TextDecoding } from './decode-text.ts';
import { cannotRead } from './file-problems.ts';

const CHUNK_BYTES = 1 << 20;

/** Opens a log on disk: hashed and decoded while it is read, a megabyte at a time. */
export function openLog(path: string): Outcome<LogSource> {
  try {
    if (statSync(path).isDirectory())
      return refused('file-is-folder', `${path} is a folder; name the log file in it.`);
    closeSync(openSync(path, 'r'));
  } catch (error) {
    return cannotRead(path, error);
  }
  const hash = createHash('sha256');
  let digest: string | null = null;
  return usable({
    name: basename(path),
    sha256: () => (digest ??= hash.digest('hex')),
    size: statSync(path).size,
    chunks: decodedChunks(path, (bytes) => hash.update(bytes)),
  });
}

function* decodedChunks(path: string, seen: (bytes: Uint8Array) => void): Generator<string> {
  const file = openSync(path, 'r');
  try {
    const decoding = new TextDecoding();
    const block = new Uint8Array(CHUNK_BYTES);
    for (;;) {
      const length = readSync(file, block, 0, CHUNK_BYTES, null);
      if (length === 0) break;
      const bytes = block.subarray(0, length);
      seen(bytes);
      yield decoding.decode(bytes);
    }
    yield decoding.end();
  } finally {
    closeSync(file);
  }
}
