import type { Notes } from '../../electron/bridge/calls.ts';
import type { Store } from './store.ts';

/** Long enough that a word is not written to the disk letter by letter. */
const WAIT_MS = 300;

/** What is typed into facilities and standards of the user's own and not kept yet: it lies in the notes, by their ids. */
export class Drafts {
  readonly #store: Store;
  readonly #saveNotes: (notes: Notes) => Promise<void>;
  /** Null when nothing waits to be saved. */
  #timer: ReturnType<typeof setTimeout> | null = null;

  constructor(store: Store, saveNotes: (notes: Notes) => Promise<void>) {
    this.#store = store;
    this.#saveNotes = saveNotes;
  }

  /** Takes over what is typed into one, without changing it yet; null takes it back. */
  type(id: string, text: string | null): void {
    const { notes } = this.#store.state();
    this.#store.dispatch({ do: 'notes', notes: withDraft(notes, id, text) });
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.saveNow(), WAIT_MS);
  }

  /** Saves what still waits, as when the page goes. */
  saveNow(): void {
    if (this.#timer === null) return;
    clearTimeout(this.#timer);
    this.#timer = null;
    void this.#saveNotes(this.#store.state().notes);
  }
}

/** Notes with what is typed at an id; null takes it out. */
export function withDraft(notes: Notes, id: string, text: string | null): Notes {
  const { [id]: _, ...others } = notes.drafts ?? {};
  return { ...notes, drafts: text === null ? others : { ...others, [id]: text } };
}
