import { usable, type Outcome } from '../../core/issue/issue.ts';
import { whole } from '../../core/units/whole.ts';
import type { Notes } from '../../electron/bridge/calls.ts';
import { OWN_FACILITIES } from '../../electron/bridge/own-facilities-bounds.ts';
import type { AskedBriefing, BriefingMade, FacilityReading, FacilityText } from '../worker/protocol.ts';
import type { AppState, FacilityEntry, Flight } from './app-state.ts';
import { contentOf } from './content-of.ts';
import { withDraft } from './drafts.ts';
import { isOfLibrary } from './kept-mark.ts';
import { loadFacilities } from './load-facilities.ts';
import type { OwnParts } from './own-parts.ts';
import { settled } from './recent-entry.ts';
import { textOfFile } from './text-of-file.ts';

const BOUND = `a facility has at most ${whole(OWN_FACILITIES.characters)} characters.`;

/** What the user can do with facilities of their own: they are kept in the notes, and read by the worker. */
export class OwnFacilities {
  readonly #parts: OwnParts;
  /** Of debriefs of the library that were opened, where they are none of those that are here. */
  readonly #kept: FacilityText[] = [];

  constructor(parts: OwnParts) {
    this.#parts = parts;
  }

  /** The one with this content, whichever way it is written; put beside the others if there is none. */
  async entryFor(text: string): Promise<string> {
    const { store } = this.#parts;
    const content = contentOf(text);
    const same = store.state().facilities.find((facility) => contentOf(facility.text) === content);
    if (same) return same.id;
    const id = `kept-${crypto.randomUUID()}`;
    this.#kept.push({ id, text });
    await this.load(store.state().notes);
    return id;
  }

  /** Reads those of the notes and of the samples; what was debriefed at one that changed or went is debriefed anew. */
  async load(notes: Notes): Promise<void> {
    const { store, analyst, judge } = this.#parts;
    const facilities = await loadFacilities(analyst, store.state().samples, notes, this.#kept);
    const before = store.state().facilities;
    store.dispatch({ do: 'facilities', facilities });
    if (areTheSame(before, facilities)) return;
    for (const { id, facilityId } of store.state().flights) {
      await this.fit(id);
      const { facilityId: now = null } = flightOf(store.state(), id) ?? {};
      if (textOf(before, facilityId) !== textOf(facilities, now)) await judge(id);
    }
  }

  /** Looks to which of them a log was flown once it is read: the best of those is taken where none was chosen. */
  async fit(flightId: string): Promise<void> {
    const { store, analyst } = this.#parts;
    if (flightOf(store.state(), flightId)?.reading.kind !== 'read') return;
    const { facilities } = store.state();
    const texts = facilities.map(({ id, text }) => ({ id, text }));
    const done = await analyst.start('fit', { log: flightId, facilities: texts }).done;
    // One that was kept meanwhile would be taken for one that it was not flown to.
    if (!areTheSame(facilities, store.state().facilities)) return this.fit(flightId);
    const read = flightOf(store.state(), flightId);
    if (!read) return;
    // What another log was kept at is no choice for this one.
    const others = facilities.filter((one) => isOfLibrary(one) && one.id !== read.facilityId);
    const all = done.kind === 'done' ? done.value : [];
    const fits = all.filter((fit) => !others.some(({ id }) => id === fit));
    this.settle(read, fits);
    const now = flightOf(store.state(), flightId)!;
    store.dispatch({ do: 'change', id: flightId, change: settled(now, fits) });
  }

  /**
   * Where a log's facility is not there any more the best of those that it was flown to stands in, which is said;
   * where it was flown to no other, none is chosen.
   */
  settle(flight: Flight, fits = flight.fits): void {
    const { store } = this.#parts;
    const { facilities } = store.state();
    const isThere = (id: string) => facilities.some((facility) => facility.id === id);
    // Until it is known where it was flown, nothing can stand in.
    if (flight.facilityId === null || fits === null || isThere(flight.facilityId)) return;
    const facilityId = fits.find(isThere) ?? null;
    store.dispatch({ do: 'change', id: flight.id, change: { facilityId } });
    const next = facilityId === null ? 'choose another' : 'look at the one chosen now';
    this.#tell(`The facility at which ${flight.name} was debriefed is not there any more: ${next}.`);
  }

  /** What a text says, before it is kept. */
  readonly read = async (text: string): Promise<FacilityReading | null> => {
    const done = await this.#parts.analyst.start('facilities', { facilities: [{ id: '', text }] }).done;
    return done.kind === 'done' ? done.value[0]! : null;
  };

  /** What is briefed of one, or why nothing is; null where the worker failed. */
  readonly brief = async (asked: AskedBriefing): Promise<Outcome<BriefingMade> | null> => {
    const done = await this.#parts.analyst.start('brief', asked).done;
    if (done.kind === 'refused') return { ok: false, refusal: done.issue, issues: [] };
    return done.kind === 'done' ? usable(done.value) : null;
  };

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

  /** Saves notes in which one was changed. */
  async #save(id: string, notes: Notes): Promise<void> {
    const { store, saveNotes } = this.#parts;
    await saveNotes(withDraft(notes, id, null));
    // Not what was saved here alone: another window may have kept its own meanwhile.
    await this.load(store.state().notes);
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

function flightOf({ flights }: AppState, id: string): Flight | undefined {
  return flights.find((flight) => flight.id === id);
}

function areTheSame(some: readonly FacilityEntry[], others: readonly FacilityEntry[]): boolean {
  const areAsMany = some.length === others.length;
  return areAsMany && some.every(({ id, text }, at) => others[at]!.id === id && others[at]!.text === text);
}

function textOf(facilities: readonly FacilityEntry[], id: string | null): string | null {
  return facilities.find((facility) => facility.id === id)?.text ?? null;
}
