import { existsSync, readFileSync, renameSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { NOTES, type Notes, type Output } from '../bridge/calls.ts';
import { Unusable } from '../bridge/gate.ts';
import { NO_NOTES } from '../bridge/no-notes.ts';
import { systemReason } from '../files/file-problems.ts';
import { makeFolder, writeAtomically } from '../files/write-atomically.ts';

/**
 * The notes of the app in one JSON file, written whole or not at all. A file that cannot be read as notes is never
 * written over: it is moved aside, where its owner finds it.
 */
export class NotesFile {
  readonly #path: string;
  #revision = 0;
  #notes: Notes | null = null;
  /** What stood in the file when it was last read or written here; null where there was none. */
  #text: string | null = null;

  constructor(folder: string) {
    this.#path = join(folder, 'notes.json');
  }

  read(): Output<'notes'> {
    if (this.#notes === null) this.#notes = this.#fromDisk() ?? NO_NOTES;
    else if (this.#onDisk() !== this.#text) {
      // A second host, in a process of its own, counts for itself: only the file tells what it did.
      const theirs = this.#fromDisk();
      // A file that has gone, or is no notes any more, does not take away what is known here.
      if (theirs !== null) this.#revision++;
      this.#notes = theirs ?? this.#notes;
    }
    return { revision: this.#revision, notes: this.#notes };
  }

  save(revision: number, notes: Notes): Output<'saveNotes'> {
    if (revision !== this.read().revision)
      return { saved: false, isStale: true, why: 'Another window has saved since: open this one again.' };
    const folder = makeFolder(dirname(this.#path));
    if (!folder.ok) return { saved: false, isStale: false, why: folder.refusal.message };
    const text = `${JSON.stringify(notes, null, 1)}\n`;
    const written = writeAtomically(this.#path, text);
    if (!written.ok) return { saved: false, isStale: false, why: written.refusal.message };
    this.#notes = notes;
    this.#text = text;
    this.#revision++;
    return { saved: true, revision: this.#revision };
  }

  /** Null where there are none, also when what is there is none and was moved aside. */
  #fromDisk(): Notes | null {
    this.#text = this.#onDisk();
    if (this.#text === null) return null;
    const notes = NOTES.safeParse(parsed(this.#text));
    if (notes.success) return notes.data;
    try {
      renameSync(this.#path, freeName(`${this.#path}.unreadable`));
    } catch (error) {
      throw new Unusable(`${this.#path} cannot be read as notes, nor moved aside: ${systemReason(error)}.`);
    }
    this.#text = null;
    return null;
  }

  #onDisk(): string | null {
    try {
      return readFileSync(this.#path, 'utf8');
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
      throw new Unusable(`${this.#path} cannot be read: ${systemReason(error)}.`);
    }
  }
}

/** The name, or where it is taken already the first with a number behind it that is not. */
function freeName(name: string): string {
  for (let count = 1; ; count++) {
    const candidate = count === 1 ? name : `${name}-${count}`;
    if (!existsSync(candidate)) return candidate;
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
