import { readFileSync, renameSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { NOTES, type Notes, type Output } from '../bridge/calls.ts';
import { Unusable } from '../bridge/gate.ts';
import { NO_NOTES } from '../bridge/no-notes.ts';
import { makeFolder, writeAtomically } from '../files/write-atomically.ts';

/**
 * The notes of the app in one JSON file, written whole or not at all. A file that cannot be read as notes is never
 * written over: it is moved aside, where its owner finds it.
 */
export class NotesFile {
  readonly #path: string;
  #revision = 0;
  #notes: Notes | null = null;

  constructor(folder: string) {
    this.#path = join(folder, 'notes.json');
  }

  read(): Output<'notes'> {
    this.#notes ??= this.#fromDisk();
    return { revision: this.#revision, notes: this.#notes };
  }

  save(revision: number, notes: Notes): Output<'saveNotes'> {
    this.read();
    if (revision !== this.#revision)
      return { saved: false, why: 'Another window has saved since: open this one again to see it.' };
    const folder = makeFolder(dirname(this.#path));
    if (!folder.ok) return { saved: false, why: folder.refusal.message };
    const written = writeAtomically(this.#path, `${JSON.stringify(notes, null, 1)}\n`);
    if (!written.ok) return { saved: false, why: written.refusal.message };
    this.#notes = notes;
    this.#revision++;
    return { saved: true, revision: this.#revision };
  }

  #fromDisk(): Notes {
    let text: string;
    try {
      text = readFileSync(this.#path, 'utf8');
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') return NO_NOTES;
      throw new Unusable(`${this.#path} cannot be read.`);
    }
    const notes = NOTES.safeParse(parsed(text));
    if (notes.success) return notes.data;
    renameSync(this.#path, `${this.#path}.unreadable`);
    return NO_NOTES;
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
