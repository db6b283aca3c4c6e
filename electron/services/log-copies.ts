import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { gunzip, gzip } from 'node:zlib';
import { LARGEST_KEPT_BYTES } from '../bridge/kept-limits.ts';
import type { Output } from '../bridge/calls.ts';
import { Unusable } from '../bridge/gate.ts';
import { systemReason } from '../files/file-problems.ts';
import { makeFolder, writeAtomically } from '../files/write-atomically.ts';

const COPY = /^([0-9a-f]{64})\.gz$/;
const packed = promisify(gzip);
const unpacked = promisify(gunzip);

/**
 * Copies of logs by their content: `logs/<sha256>.gz` in the user's folder, each written whole or not at all. Which of
 * them are wanted is the notes' to say.
 */
export class LogCopies {
  readonly #folder: string;

  constructor(userFolder: string) {
    this.#folder = join(userFolder, 'logs');
  }

  /** Keeps the bytes if they are `wanted`. One that is there already is written anew: it may be damaged. */
  async keep(base64: string, wanted: (sha256: string) => boolean): Promise<Output<'keepLog'>> {
    const bytes = Buffer.from(base64, 'base64');
    const sha256 = sha256Of(bytes);
    if (bytes.length > LARGEST_KEPT_BYTES) return { kept: false, why: 'It is too large.' };
    const content = await packed(bytes);
    // Asked after the packing: meanwhile it may have been taken off the list.
    if (!wanted(sha256)) return { kept: false, why: 'It is not on the list of logs opened lately.' };
    const folder = makeFolder(this.#folder);
    if (!folder.ok) return { kept: false, why: folder.refusal.message };
    const written = writeAtomically(this.#path(sha256), content);
    return written.ok ? { kept: true, sha256 } : { kept: false, why: written.refusal.message };
  }

  /** The hashes of all that are kept; of none where there is no folder, or it cannot be read. */
  list(): Output<'keptLogs'> {
    return this.#files().flatMap((name) => COPY.exec(name)?.[1] ?? []);
  }

  /** The bytes as base64, if they are still what their name says; else a sentence that says what became of them. */
  async read(sha256: string): Promise<string> {
    let content: Buffer;
    try {
      content = readFileSync(this.#path(sha256));
    } catch (error) {
      const isGone = (error as NodeJS.ErrnoException).code === 'ENOENT';
      const why = isGone ? 'is not there any more' : `cannot be read: ${systemReason(error)}`;
      throw new Unusable(`The copy of this log ${why}. Open the file itself.`);
    }
    const bytes = await unpacked(content, { maxOutputLength: LARGEST_KEPT_BYTES }).catch(() => null);
    if (bytes === null || sha256Of(bytes) !== sha256)
      throw new Unusable(
        'The copy of this log is damaged: it is not what was kept, and is not used. Open the file itself.',
      );
    return bytes.toString('base64');
  }

  /** Removes copies; one that cannot be removed stays, and is named by nothing. */
  remove(sha256s: readonly string[]): void {
    for (const sha256 of sha256s) this.#remove(`${sha256}.gz`);
  }

  /** Removes every copy, and what an interrupted writing left of one. */
  removeAll(): void {
    for (const name of this.#files()) if (/^[0-9a-f]{64}\.gz(?:\.\d+\.part)?$/.test(name)) this.#remove(name);
  }

  #remove(name: string): void {
    try {
      rmSync(join(this.#folder, name), { force: true });
    } catch {
      // Held open by another program, as on Windows.
    }
  }

  #files(): string[] {
    try {
      return readdirSync(this.#folder);
    } catch {
      return [];
    }
  }

  #path(sha256: string): string {
    return join(this.#folder, `${sha256}.gz`);
  }
}

function sha256Of(bytes: Buffer): string {
  return createHash('sha256').update(bytes).digest('hex');
}
