import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Input, Output } from '../bridge/calls.ts';
import { Unusable } from '../bridge/gate.ts';
import { systemReason } from '../files/file-problems.ts';
import { makeFolder, writeAtomically } from '../files/write-atomically.ts';

/** The index of official records in a file of its own: it can be made again from them, and nothing else depends on it. */
export class RecordsFile {
  readonly #folder: string;
  readonly #path: string;

  constructor(folder: string) {
    this.#folder = folder;
    this.#path = join(folder, 'records.json');
  }

  read(): Output<'records'> {
    try {
      return { text: readFileSync(this.#path, 'utf8') };
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') return { text: null };
      throw new Unusable(`${this.#path} cannot be read: ${systemReason(error)}.`);
    }
  }

  keep({ text }: Input<'keepRecords'>): Output<'keepRecords'> {
    const folder = makeFolder(this.#folder);
    const written = folder.ok ? writeAtomically(this.#path, text) : folder;
    return written.ok ? { kept: true } : { kept: false, why: written.refusal.message };
  }
}
