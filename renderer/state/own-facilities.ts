import { whole } from '../../core/units/whole.ts';
import type { Notes } from '../../electron/bridge/calls.ts';
import { OWN_FACILITIES } from '../../electron/bridge/own-facilities-bounds.ts';
import type { FacilityReading, FacilityText } from '../worker/protocol.ts';
import { withDraft } from './drafts.ts';
import { loadFacilities } from './load-facilities.ts';
import type { OwnParts } from './own-parts.ts';
import { textOfFile } from './text-of-file.ts';

const BOUND = `a facility has at most ${whole(OWN_FACILITIES.characters)} characters.`;

/** What the user can do with facilities of their own: they are kept in the notes, and read by the worker. */
export class OwnFacilities {
  readonly #parts: OwnParts;

  constructor(parts: OwnParts) {
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

  /** Keeps what a file holds, whether it can be used already or not; null where it cannot be kept. */
  async bringIn(file: File): Promise<string | null> {
    const text = await textOfFile(file, OWN_FACILITIES.characters);
    if (text !== null) return this.add(text);
    this.#tell(`${file.name} was not brought in: ${BOUND} Is it a track log?`);
    return null;
  }

  /** Keeps a new one; its id, or null where it cannot be kept. */
  async add(text: string): Promise<string | null> {
    if (this.#parts.store.state().notes.facilities.length >= OWN_FACILITIES.count) {
      this.#tell(`${OWN_FACILITIES.count} facilities of your own are kept already: remove one first.`);
      return null;
    }
    const id = crypto.randomUUID();
    return (await this.keep(id, text)) ? id : null;
  }

  /** Adds or changes one, at its place; what was typed into it is kept with that. False where it cannot be kept. */
  async keep(id: string, text: string): Promise<boolean> {
    if (this.#isTooLong(text)) return false;
    const { notes } = this.#parts.store.state();
    const isNew = !notes.facilities.some((facility) => facility.id === id);
    const facilities = isNew
      ? [...notes.facilities, { id, text }]
      : notes.facilities.map((facility) => (facility.id === id ? { id, text } : facility));
    await this.#save(id, { ...notes, facilities });
    return true;
  }

  async remove(id: string): Promise<void> {
    const { notes } = this.#parts.store.state();
    await this.#save(id, { ...notes, facilities: notes.facilities.filter((facility) => facility.id !== id) });
  }

  /** Takes over what is typed into one, without changing it yet; null takes it back. */
  type(id: string, text: string | null): void {
    if (text === null || !this.#isTooLong(text)) this.#parts.drafts.type(id, text);
  }

  /** Saves notes in which one was changed, and debriefs anew what was debriefed at it. */
  async #save(id: string, notes: Notes): Promise<void> {
    const { store, saveNotes, judge } = this.#parts;
    await saveNotes(withDraft(notes, id, null));
    // Not what was saved here alone: another window may have kept its own meanwhile.
    await this.load(store.state().notes);
    for (const flight of store.state().flights) if (flight.facilityId === id) await judge(flight.id);
  }

  /** Says so: notes with one that is too long could not be kept any more. */
  #isTooLong(text: string): boolean {
    if (text.length <= OWN_FACILITIES.characters) return false;
    this.#tell(`This was not taken over: ${BOUND}`);
    return true;
  }

  #tell(message: string): void {
    this.#parts.store.dispatch({ do: 'notice', message });
  }
}
