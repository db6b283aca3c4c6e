import type { Notes } from '../../electron/bridge/calls.ts';
import type { FacilityReading, FacilityText } from '../worker/protocol.ts';
import type { Analyst } from './analyst.ts';
import { loadFacilities } from './load-facilities.ts';
import type { Store } from './store.ts';

interface Parts {
  readonly store: Store;
  readonly analyst: Analyst;
  readonly saveNotes: (notes: Notes) => Promise<void>;
  /** Debriefs a log anew. */
  readonly judge: (flightId: string) => Promise<void>;
}

/** Long enough that a word is not written to the disk letter by letter. */
const DRAFT_WAIT_MS = 300;

/** What the user can do with facilities of their own: they are kept in the notes, and read by the worker. */
export class OwnFacilities {
  readonly #parts: Parts;
  #draftTimer = 0;

  constructor(parts: Parts) {
    this.#parts = parts;
  }

  /** Reads those of the notes and of the samples. */
  async load(notes: Notes): Promise<void> {
    const { store, analyst } = this.#parts;
    const facilities = await loadFacilities(analyst, store.state().samples, notes);
    store.dispatch({ do: 'facilities', facilities });
  }

  async read(facility: FacilityText): Promise<FacilityReading | null> {
    const done = await this.#parts.analyst.start('facilities', { facilities: [facility] }).done;
    return done.kind === 'done' ? done.value[0]! : null;
  }

  /** Adds or changes one, at its place; what was typed into it is kept with that. */
  async keep(id: string, text: string): Promise<void> {
    const { store, judge } = this.#parts;
    const { notes } = store.state();
    const isNew = !notes.facilities.some((facility) => facility.id === id);
    const facilities = isNew
      ? [...notes.facilities, { id, text }]
      : notes.facilities.map((facility) => (facility.id === id ? { id, text } : facility));
    await this.#save({ ...notes, facilities, drafts: withDraft(notes, id, null) });
    for (const flight of store.state().flights) if (flight.facilityId === id) await judge(flight.id);
  }

  async remove(id: string): Promise<void> {
    const { notes } = this.#parts.store.state();
    const facilities = notes.facilities.filter((facility) => facility.id !== id);
    await this.#save({ ...notes, facilities, drafts: withDraft(notes, id, null) });
  }

  /** Takes over what is typed into one, without changing it yet; null takes it back. */
  draft(id: string, text: string | null): void {
    const { store, saveNotes } = this.#parts;
    const { notes } = store.state();
    store.dispatch({ do: 'notes', notes: { ...notes, drafts: withDraft(notes, id, text) } });
    clearTimeout(this.#draftTimer);
    this.#draftTimer = window.setTimeout(() => void saveNotes(store.state().notes), DRAFT_WAIT_MS);
  }

  async #save(notes: Notes): Promise<void> {
    await this.#parts.saveNotes(notes);
    await this.load(notes);
  }
}

function withDraft({ drafts = {} }: Notes, id: string, text: string | null): NonNullable<Notes['drafts']> {
  const { [id]: _, ...others } = drafts;
  return text === null ? others : { ...others, [id]: text };
}
