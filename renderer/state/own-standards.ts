import { ownCopy } from '../../core/standard/own-copy.ts';
import type { Standard } from '../../core/standard/standard.ts';
import { DEFAULT_STANDARD, standardById } from '../../core/standard/standards.ts';
import { whole } from '../../core/units/whole.ts';
import type { Notes } from '../../electron/bridge/calls.ts';
import { OWN_STANDARDS } from '../../electron/bridge/own-standards-bounds.ts';
import type { StandardAsked, StandardReading } from '../worker/protocol.ts';
import type { AppState, Flight, StandardEntry } from './app-state.ts';
import { contentOf, inOneOrder } from './content-of.ts';
import { withDraft } from './drafts.ts';
import type { OwnParts } from './own-parts.ts';
import { textOfFile } from './text-of-file.ts';

/** What the user can do with standards of their own: they are kept in the notes, and read by the worker. */
export class OwnStandards {
  readonly #parts: OwnParts;

  constructor(parts: OwnParts) {
    this.#parts = parts;
  }

  /** Reads the standards that the notes hold. */
  async load({ standards }: Notes): Promise<void> {
    const { store, analyst } = this.#parts;
    const done = await analyst.start('standards', { standards }).done;
    const readings = done.kind === 'done' ? done.value : [];
    const entries = standards.map((standard): StandardEntry => ({
      ...standard,
      reading: readings.find(({ id }) => id === standard.id) ?? null,
    }));
    store.dispatch({ do: 'standards', standards: entries });
  }

  /**
   * The one by which a debrief was kept; put beside the others where none that is here says the same, since one's own
   * may have been changed or removed. A shipped one is the present program's.
   */
  entryFor(standardId: string, text: string): string {
    if (standardById(standardId)) return standardId;
    const { store } = this.#parts;
    const { standards, keptStandards } = store.state();
    const content = contentOf(text);
    const own = standards.find(
      ({ reading }) => reading?.standard && inOneOrder(reading.standard) === content,
    );
    const same = own ?? keptStandards.find((kept) => contentOf(kept.text) === content);
    if (same) return same.id;
    const id = `kept-${crypto.randomUUID()}`;
    // Written by this program, from a standard that it had checked.
    const standard = JSON.parse(text) as Standard;
    store.dispatch({ do: 'kept-standard', kept: { id, text, standard } });
    return id;
  }

  /** What a text says, before it is kept. */
  readonly read = async (text: string): Promise<StandardReading | null> => {
    const done = await this.#parts.analyst.start('standards', { standards: [{ id: '', text }] }).done;
    return done.kind === 'done' ? done.value[0]! : null;
  };

  /** Keeps what a file holds, whether it can be used already or not; null where it cannot be kept. */
  async bringIn(file: File): Promise<string | null> {
    const text = await textOfFile(file, OWN_STANDARDS.characters);
    return text === null ? this.#refuse(tooLongWords(file.name)) : this.#add(text);
  }

  /** Keeps a shipped standard under a new id and title, to be changed. */
  async makeFrom(shipped: Standard): Promise<string | null> {
    const taken = this.#parts.store.state().standards.flatMap(({ reading }) => reading?.standard ?? []);
    return this.#add(ownCopy(shipped, taken));
  }

  /** What is being typed at a standard; null when nothing is. It is kept when that is asked for. */
  type(id: string, text: string | null): void {
    if (text !== null && text.length > OWN_STANDARDS.characters) this.#refuse(TOO_LONG_TYPED);
    else this.#parts.drafts.type(id, text);
  }

  /** Keeps a changed text, and debriefs anew what is held to it. */
  async keep(id: string, text: string): Promise<boolean> {
    const { store, saveNotes, judge } = this.#parts;
    if (text.length > OWN_STANDARDS.characters) return this.#refuse(TOO_LONG_TYPED) !== null;
    const kept = withStandard(store.state().notes, id, text);
    await saveNotes(kept);
    // Not what was saved here alone: another window may have kept its own meanwhile.
    await this.load(store.state().notes);
    for (const flight of store.state().flights) if (flight.standardId === id) await judge(flight.id);
    return true;
  }

  /** Takes a standard away; logs that were held to it are held to the default, and that is said. */
  async remove(id: string): Promise<void> {
    const { store, saveNotes, judge } = this.#parts;
    const { standards, flights } = store.state();
    const removed = standards.find((entry) => entry.id === id);
    const held = flights.filter(({ standardId }) => standardId === id);
    for (const flight of held)
      store.dispatch({ do: 'change', id: flight.id, change: { standardId: DEFAULT_STANDARD.id } });
    if (removed && held.length > 0) store.dispatch({ do: 'notice', message: removedWords(removed, held) });
    const kept = withoutStandard(store.state().notes, id);
    await saveNotes(kept);
    await this.load(store.state().notes);
    for (const flight of held) await judge(flight.id);
  }

  /**
   * Holds a log to the default standard where the one that was chosen is not there any more, and says so: it may have
   * been removed since the log was opened last, or in another window.
   */
  settle({ id, name, standardId }: Pick<Flight, 'id' | 'name' | 'standardId'>): void {
    const { store } = this.#parts;
    if (isKnown(store.state(), standardId)) return;
    const message = `The standard that was chosen for ${name} is not here any more: it is judged by "${DEFAULT_STANDARD.title}".`;
    store.dispatch({ do: 'change', id, change: { standardId: DEFAULT_STANDARD.id } });
    store.dispatch({ do: 'notice', message });
  }

  async #add(text: string): Promise<string | null> {
    if (this.#parts.store.state().notes.standards.length >= OWN_STANDARDS.count)
      return this.#refuse(`${OWN_STANDARDS.count} standards of your own are kept already: remove one first.`);
    const id = crypto.randomUUID();
    return (await this.keep(id, text)) ? id : null;
  }

  #refuse(message: string): null {
    this.#parts.store.dispatch({ do: 'notice', message });
    return null;
  }
}

const BOUND = `a standard has at most ${whole(OWN_STANDARDS.characters)} characters.`;
const TOO_LONG_TYPED = `This was not taken over: ${BOUND}`;

function tooLongWords(name: string): string {
  return `${name} was not kept: ${BOUND} Is it a track log?`;
}

function removedWords({ reading }: StandardEntry, held: readonly { readonly name: string }[]): string {
  const names = held.map(({ name }) => name).join(', ');
  const are = held.length === 1 ? 'is' : 'are';
  return `"${reading?.standard?.title ?? 'The standard'}" was removed: ${names} ${are} now judged by "${DEFAULT_STANDARD.title}".`;
}

/** Notes with a standard's text, in the place that it had, else as the last; what was typed at it is kept with that. */
export function withStandard(notes: Notes, id: string, text: string): Notes {
  const isThere = notes.standards.some((standard) => standard.id === id);
  const standards = isThere
    ? notes.standards.map((standard) => (standard.id === id ? { id, text } : standard))
    : [...notes.standards, { id, text }];
  return withDraft({ ...notes, standards }, id, null);
}

/** Notes without a standard, which is then nobody's choice for the next log either. */
export function withoutStandard(notes: Notes, id: string): Notes {
  const { settings } = notes;
  const left = {
    ...notes,
    standards: notes.standards.filter((standard) => standard.id !== id),
    settings: settings.standard === id ? { ...settings, standard: DEFAULT_STANDARD.id } : settings,
  };
  return withDraft(left, id, null);
}

type Known = Pick<AppState, 'standards' | 'keptStandards'>;

function isKnown({ standards, keptStandards }: Known, id: string): boolean {
  return standardById(id) !== null || [...standards, ...keptStandards].some((entry) => entry.id === id);
}

/** The standard of that id: shipped, one's own, or a kept debrief's; null where it cannot be used, or is not there. */
export function standardNamed({ standards, keptStandards }: Known, id: string): Standard | null {
  const own = standards.find((entry) => entry.id === id)?.reading?.standard;
  return standardById(id) ?? own ?? keptStandards.find((kept) => kept.id === id)?.standard ?? null;
}

/** How the worker is asked for it: one's own, or a kept debrief's, by the text that is kept. */
export function askedStandard({ standards, keptStandards }: Known, id: string): StandardAsked {
  const own = standards.find((entry) => entry.id === id);
  if (own) return { kind: 'own', text: own.text };
  const kept = keptStandards.find((entry) => entry.id === id);
  return kept ? { kind: 'kept', text: kept.text } : { kind: 'shipped', id };
}
