import { LARGEST_KEPT_BYTES } from '../../electron/bridge/kept-limits.ts';
import type { Recent } from '../../electron/bridge/recent.ts';
import type { Flight } from './app-state.ts';
import { base64Of, call, HostProblem } from './host.ts';
import type { NotesKeeper } from './notes-keeper.ts';
import { entryOf, hasNoDebrief, withChanged, withOpened, withoutSummary } from './recent-entry.ts';
import type { Store } from './store.ts';

/**
 * Remembers the logs that are opened, with what is said about them. It looks at every change of the state, so that
 * whatever can be said is kept, by whichever way it was said. Samples are left out: they are always there.
 */
export class RecentFlights {
  readonly #store: Store;
  readonly #notes: NotesKeeper;
  readonly #looked = new WeakSet<Flight>();
  /** Flights that were put on the list; one that was taken off again is not put there by what is said later. */
  readonly #remembered = new Set<string>();
  readonly #hashes = new Map<string, string>();
  #copying: Promise<void> = Promise.resolve();

  constructor(store: Store, notes: NotesKeeper) {
    this.#store = store;
    this.#notes = notes;
    store.subscribe(() => this.#look());
  }

  /** Finds out of which logs a copy is kept. */
  async fetch(): Promise<void> {
    this.#store.dispatch({ do: 'kept', sha256s: await call('keptLogs', {}) });
  }

  /** What is remembered of a log with this content; null where it is not known. */
  known(id: string, sha256: string): Recent | null {
    this.#hashes.set(id, sha256);
    return this.#store.state().notes.recents.find((recent) => recent.sha256 === sha256) ?? null;
  }

  /** The flight that has this log open already; null where none has. */
  open(sha256: string): Flight | null {
    return this.#store.state().flights.find(({ id }) => this.#hashes.get(id) === sha256) ?? null;
  }

  /** Lets the host copy a log that is on the list, one after the other; what cannot be copied is said at the flight. */
  copy(id: string, name: string, bytes: ArrayBuffer): void {
    if (!this.#remembered.has(id)) return;
    if (bytes.byteLength > LARGEST_KEPT_BYTES) {
      const [has, most] = [bytes.byteLength, LARGEST_KEPT_BYTES].map((size) => Math.ceil(size / 1e6));
      this.#say(id, `It is ${has} MB; copies are kept of up to ${most} MB.`);
      return;
    }
    this.#copying = this.#copying.then(() => this.#copyNow(id, name, bytes));
  }

  async forget({ sha256 }: Recent): Promise<void> {
    await this.forgetLogs([sha256]);
  }

  /** Takes logs off the list by their content, and the copies of them away. */
  async forgetLogs(sha256s: readonly string[]): Promise<void> {
    const gone = new Set(sha256s);
    await this.#notes.change((notes) => ({
      ...notes,
      recents: notes.recents.filter(({ sha256 }) => !gone.has(sha256)),
    }));
    await this.fetch();
  }

  /** Takes every log off the list, and every copy away, also those that no list names any more. */
  async forgetAll(): Promise<void> {
    const isSaved = await this.#notes.change((notes) => ({ ...notes, recents: [] }));
    if (isSaved) await call('removeCopies', {});
    await this.fetch();
  }

  async #copyNow(id: string, name: string, bytes: ArrayBuffer): Promise<void> {
    try {
      // The host copies only what the kept notes name; that they could not be kept has been told.
      const isSaved = await this.#notes.change((notes) => notes);
      const { recents } = this.#store.state().notes;
      if (!isSaved || !recents.some(({ sha256 }) => sha256 === this.#hashes.get(id))) return;
      const answer = await call('keepLog', { name, base64: await base64Of(bytes) });
      if (answer.kept) await this.fetch();
      else this.#say(id, answer.why);
    } catch (error) {
      this.#say(id, error instanceof HostProblem ? error.message : 'It could not be copied.');
    }
  }

  #say(id: string, why: string): void {
    const notCopied = `Halfdot has no copy of this log. ${why} Hold on to the file: what you state is kept for it.`;
    this.#store.dispatch({ do: 'change', id, change: { notCopied } });
  }

  #look(): void {
    for (const flight of this.#store.state().flights) {
      if (this.#looked.has(flight)) continue;
      this.#looked.add(flight);
      const entry = flight.isSample ? null : entryOf(flight);
      if (entry !== null) this.#remember(flight, entry);
    }
  }

  #remember(flight: Flight, entry: Recent): void {
    const { id } = flight;
    const isNew = !this.#remembered.has(id);
    this.#remembered.add(id);
    void this.#notes.change((notes) => {
      const before = hasNoDebrief(flight) ? withoutSummary(notes.recents, entry.sha256) : notes.recents;
      const recents = isNew
        ? withOpened(before, entry, new Date().toISOString())
        : withChanged(before, entry);
      return recents === notes.recents ? notes : { ...notes, recents };
    });
  }
}
