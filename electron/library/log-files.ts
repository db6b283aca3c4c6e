import { createHash } from 'node:crypto';
import { copyFileSync, existsSync, linkSync, mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import { flushFile, flushFolder, writeWhole } from '../files/flushed.ts';
import { refuseLibrary } from './refusal.ts';

const COPY = /^([0-9a-f]{64})\.gz$/;

/** By the measure of a log of two hours: well under half of the usual level's time, for 8 % more on the disk. */
const LEVEL = 4;

export type LogState = 'whole' | 'missing' | 'altered';

/** The logs of a library as files by their content, `<sha256>.gz`. Which of them belong to it, its tables say. */
export class LogFiles {
  constructor(readonly folder: string) {}

  /**
   * Puts the bytes there and on the disk, and the name at the next `flush`; what is there already under the name and is
   * not that, is written over. `packed` is what `packLog` made of them, where that is done.
   */
  put(sha256: string, bytes: Uint8Array, packed: Uint8Array | null = null): void {
    if (this.state(sha256) === 'whole') return;
    mkdirSync(this.folder, { recursive: true });
    writeWhole(this.#path(sha256), packed ?? packLog(bytes));
  }

  /** Brings the names of what was put or removed to the disk. */
  flush(): void {
    if (existsSync(this.folder)) flushFolder(this.folder);
  }

  /** The log's bytes; refused with a sentence where the file has gone or is not what it was. */
  read(sha256: string, name: string): Uint8Array {
    const bytes = this.#unpacked(sha256);
    if (bytes !== null && sha256Of(bytes) === sha256) return bytes;
    const what =
      bytes === null && !existsSync(this.#path(sha256)) ? 'is missing' : 'was altered or is damaged';
    return refuseLibrary(
      'library-log',
      `The log ${name} of the library ${what} (${this.#path(sha256)}).`,
      'Everything else of the library can be used.',
    );
  }

  state(sha256: string): LogState {
    if (!existsSync(this.#path(sha256))) return 'missing';
    const bytes = this.#unpacked(sha256);
    return bytes !== null && sha256Of(bytes) === sha256 ? 'whole' : 'altered';
  }

  /** Copies one into another library's folder, on the disk when it returns; false where it is not there to be copied. */
  copyTo(target: LogFiles, sha256: string, { link }: { readonly link: boolean }): boolean {
    if (!existsSync(this.#path(sha256))) return false;
    mkdirSync(target.folder, { recursive: true });
    const to = target.#path(sha256);
    rmSync(to, { force: true });
    // A second name for the same bytes: files here are never changed, only written anew beside and moved.
    if (!(link && linked(this.#path(sha256), to))) copyFileSync(this.#path(sha256), to);
    flushFile(to);
    flushFolder(target.folder);
    return true;
  }

  /** Removes a log's file, and what was left of it by a writing that was cut off. */
  remove(sha256: string): void {
    for (const name of this.#names()) if (name.startsWith(`${sha256}.gz`)) rmSync(join(this.folder, name));
    this.flush();
  }

  /** The hashes of all that are there. */
  list(): string[] {
    return this.#names().flatMap((name) => COPY.exec(name)?.[1] ?? []);
  }

  #names(): string[] {
    return existsSync(this.folder) ? readdirSync(this.folder) : [];
  }

  #unpacked(sha256: string): Uint8Array | null {
    try {
      return gunzipSync(readFileSync(this.#path(sha256)));
    } catch {
      return null;
    }
  }

  /** A name may come from a file that others made: nothing but a hash leads anywhere. */
  #path(sha256: string): string {
    if (!COPY.test(`${sha256}.gz`))
      refuseLibrary('library-log', `A log is named by what is no hash of it (${sha256}).`);
    return join(this.folder, `${sha256}.gz`);
  }
}

/** A log's bytes as they lie in its file. */
export function packLog(bytes: Uint8Array): Uint8Array {
  return gzipSync(bytes, { level: LEVEL });
}

function linked(from: string, to: string): boolean {
  try {
    linkSync(from, to);
    return true;
  } catch {
    return false;
  }
}

export function sha256Of(content: Uint8Array | string): string {
  return createHash('sha256').update(content).digest('hex');
}
