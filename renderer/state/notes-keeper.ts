import type { Notes } from '../../electron/bridge/calls.ts';
import { NO_NOTES } from '../../electron/bridge/no-notes.ts';
import { call } from './host.ts';
import { mergeNotes } from './merge-notes.ts';
import type { Store } from './store.ts';

/** How often a change is put to what others have saved meanwhile before it is given up. */
const MOST_TRIES = 5;

/** Keeps the notes: the newest last, one after the other, each change put to what another window has kept. */
export class NotesKeeper {
  readonly #store: Store;
  readonly #tell: (error: unknown) => void;
  readonly #merged: (notes: Notes) => void;
  /** What is kept as far as this page knows, and its revision; null when it has to be fetched. */
  #base: Notes = NO_NOTES;
  #revision: number | null = null;
  #saving: Promise<boolean> = Promise.resolve(true);
  /** What the host was asked to keep and has not answered yet. */
  #underWay: Notes | null = null;

  /** `merged` hears of notes that another window has changed. */
  constructor(store: Store, tell: (error: unknown) => void, merged: (notes: Notes) => void) {
    this.#store = store;
    this.#tell = tell;
    this.#merged = merged;
  }

  /** Fetches what is kept; what was changed before that came is put to it. */
  async fetch(): Promise<void> {
    const { revision, notes: theirs } = await call('notes', {});
    const notes = mergeNotes(this.#base, this.#store.state().notes, theirs);
    this.#base = theirs;
    this.#revision = revision;
    this.#store.dispatch({ do: 'notes', notes });
  }

  change(changed: (notes: Notes) => Notes): Promise<boolean> {
    const { notes } = this.#store.state();
    const next = changed(notes);
    return next === notes ? this.#saving : this.save(next);
  }

  /** Whether it was kept; why not has been told. */
  save(notes: Notes): Promise<boolean> {
    this.#store.dispatch({ do: 'notes', notes });
    this.#saving = this.#saving.then(() => this.#saveNow());
    return this.#saving;
  }

  /** As the page goes: what was changed while a save was under way is sent behind it, since no answer will be heard. */
  saveOnLeaving(): void {
    const { notes } = this.#store.state();
    if (this.#underWay === null || this.#underWay === notes || this.#revision === null) return;
    void call('saveNotes', { revision: this.#revision + 1, notes }).catch(() => {});
  }

  async #saveNow(): Promise<boolean> {
    try {
      for (let tries = 1; ; tries++) {
        await this.#fetchIfStale(tries > 1);
        const { notes } = this.#store.state();
        // The save before this one has taken it along.
        if (notes === this.#base) return true;
        this.#underWay = notes;
        const answer = await call('saveNotes', { revision: this.#revision!, notes });
        this.#underWay = null;
        if (answer.saved) {
          this.#revision = answer.revision;
          this.#base = notes;
          return true;
        }
        if (!answer.isStale || tries === MOST_TRIES) {
          this.#store.dispatch({ do: 'notice', message: `This was not kept: ${answer.why}` });
          return false;
        }
        this.#revision = null;
      }
    } catch (error) {
      this.#underWay = null;
      this.#tell(error);
      return false;
    }
  }

  async #fetchIfStale(isTold: boolean): Promise<void> {
    if (this.#revision !== null) return;
    await this.fetch();
    if (isTold) this.#merged(this.#store.state().notes);
  }
}
