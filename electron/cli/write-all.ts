import { writeSync } from 'node:fs';

const RETRY_MS = 5;

type Write = (file: number, bytes: Uint8Array, from: number) => number;

/**
 * Writes a text to an open file or pipe, however slowly the other end reads. False when it is read no more, or the
 * disk is full.
 */
export function writeAll(file: number, text: string, write: Write = writeSync): boolean {
  const bytes = Buffer.from(text);
  let at = 0;
  while (at < bytes.length) {
    try {
      at += write(file, bytes, at);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') return false;
      pause();
    }
  }
  return true;
}

function pause(): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, RETRY_MS);
}
