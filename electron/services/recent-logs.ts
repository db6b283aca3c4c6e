import type { Input, Output } from '../bridge/calls.ts';
import type { LogCopies } from './log-copies.ts';
import type { NotesFile } from './notes-file.ts';

/**
 * Notes and copies of logs together: a copy is kept only of a log that the saved notes name, and removed only after
 * notes were saved that name it no more. Copies that no list of this program ever named are left alone, since they may
 * belong to notes that could not be read and lie beside, until all are to be forgotten.
 */
export class RecentLogs {
  readonly #notes: NotesFile;
  readonly #copies: LogCopies;

  constructor(notes: NotesFile, copies: LogCopies) {
    this.#notes = notes;
    this.#copies = copies;
  }

  save({ revision, notes }: Input<'saveNotes'>): Output<'saveNotes'> {
    const before = this.#named();
    const answer = this.#notes.save(revision, notes);
    if (!answer.saved) return answer;
    const now = this.#named();
    this.#copies.remove([...before].filter((sha256) => !now.has(sha256)));
    return answer;
  }

  removeCopies(): Output<'removeCopies'> {
    // Another window may have opened one meanwhile.
    if (this.#named().size === 0) this.#copies.removeAll();
    return {};
  }

  keep({ base64 }: Input<'keepLog'>): Promise<Output<'keepLog'>> {
    return this.#copies.keep(base64, (sha256) => this.#named().has(sha256));
  }

  async read({ sha256 }: Input<'readKept'>): Promise<Output<'readKept'>> {
    const { recents } = this.#notes.read().notes;
    const name = recents.find((recent) => recent.sha256 === sha256)?.name ?? 'log';
    return { name, base64: await this.#copies.read(sha256) };
  }

  #named(): Set<string> {
    return new Set(this.#notes.read().notes.recents.map(({ sha256 }) => sha256));
  }
}
