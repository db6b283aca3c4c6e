import type { LogSettings } from '../../core/log/log.ts';
import type { Stated } from '../../core/standard/stated.ts';
import { LARGEST_KEPT_BYTES } from '../../electron/bridge/kept-limits.ts';
import type { CallName, Input, Output } from '../../electron/bridge/calls.ts';
import type { FlightFilter } from '../../electron/bridge/library-calls.ts';
import type { AskedDebrief } from '../worker/protocol.ts';
import { lastRead, type Bringing, type Flight, type KeptAs } from './app-state.ts';
import { NOTHING_BROUGHT, withOneMore, type Brought } from './brought.ts';
import { base64Of, bytesOf, call, HostProblem } from './host.ts';
import { isOfLibrary } from './kept-mark.ts';
import type { OwnFacilities } from './own-facilities.ts';
import { askedStandard, type OwnStandards } from './own-standards.ts';
import { askSinceLast, statementText } from './since-last.ts';
import type { Opening } from './opening.ts';
import type { Store } from './store.ts';
import { textOfFile } from './text-of-file.ts';

/** Whose the logs are that are brought in. */
export type Whose = Input<'keepInLibrary'>['student'];

interface Parts {
  readonly store: Store;
  readonly tell: (error: unknown) => void;
  /** What is read of an open log; null where it is closed. */
  readonly bytes: (flightId: string) => Promise<ArrayBuffer | null>;
  readonly askedDebrief: (flightId: string) => AskedDebrief | null;
  readonly open: (name: string, bytes: ArrayBuffer, opening: Opening) => Promise<string | null>;
  /** Once it is known what is here: what a debrief was kept by is found there, or put beside the others. */
  readonly own: () => Promise<{
    readonly facilities: Pick<OwnFacilities, 'entryFor'>;
    readonly standards: Pick<OwnStandards, 'entryFor'>;
  }>;
  /** Takes logs off the list of those opened lately, with the copies of them. */
  readonly forget: (sha256s: readonly string[]) => Promise<void>;
}

/** So many logs are on their way to the host at a time: while one is debriefed, the next is handed over. */
const AT_ONCE = 2;

/** What the user can do with the library; the host keeps it. */
export class OwnLibrary {
  readonly #parts: Parts;
  #isStopping = false;
  /** Which open log shows which debrief of the library. */
  readonly #opened = new Map<string, string>();
  /** Debriefs that are being fetched, so that a second press does not fetch them twice. */
  readonly #opening = new Set<string>();

  constructor(parts: Parts) {
    this.#parts = parts;
  }

  /** Says what did not work. */
  readonly tell = (error: unknown): void => this.#parts.tell(error);

  /** Asks what the library holds; lists are asked for anew. */
  async fetch(): Promise<void> {
    const { store, tell } = this.#parts;
    try {
      const overview = await call('library', {});
      const { changes } = store.state().library;
      store.dispatch({ do: 'library', library: { overview, changes: changes + 1 } });
      await this.#lookUp();
    } catch (error) {
      tell(error);
    }
  }

  /** Makes a change at the host and asks for what the library holds then; null where it was refused, which is told. */
  async change<N extends CallName>(name: N, input: Input<N>): Promise<Output<N> | null> {
    try {
      return await call(name, input);
    } catch (error) {
      this.#parts.tell(error);
      return null;
    } finally {
      await this.fetch();
    }
  }

  /**
   * Keeps an open log with its debrief as it is stated now. A debrief of it that is there already is left as it is, but
   * where it is to be made anew. False where it was refused, which is told.
   */
  async keep(
    flightId: string,
    how: 'keep' | 'anew',
    student: string | null,
    date: string | null,
  ): Promise<boolean> {
    const { store, askedDebrief, bytes, tell } = this.#parts;
    const flight = this.#flight(flightId);
    const asked = askedDebrief(flightId);
    const statements = flight ? statementText(store.state(), flight) : null;
    const content = await bytes(flightId);
    if (!flight || !asked || !content) return false;
    const kept = await this.change('keepInLibrary', {
      name: flight.name,
      folders: [],
      base64: await base64Of(content),
      facilities: [asked.facility.text],
      asked: { ...asked.asked, settings: flight.settings },
      student: student === null ? { by: 'nobody' } : { by: 'name', name: student },
      date,
      how,
    });
    if (kept === null) return false;
    if (kept.became === 'refused') {
      tell(new HostProblem(kept.why));
      return false;
    }
    const isThere = kept.became === 'known';
    if (isThere || kept.stays) tell(new HostProblem(staysWords(flight, kept)));
    const as = keptAs(kept, isThere ? null : statements);
    store.dispatch({ do: 'change', id: flightId, change: { kept: as } });
    await this.#sinceLast(flightId);
    if (kept.became === 'kept' && !kept.stays) await this.#keepEstimate(flight, kept.debriefId);
    return true;
  }

  /** Opens a kept debrief with everything that it was made of; one that is open already is shown. */
  async open(debriefId: string): Promise<void> {
    const { store, tell } = this.#parts;
    const there = this.#flight(this.#opened.get(debriefId));
    if (there) return store.dispatch({ do: 'choose', id: there.id });
    if (this.#opening.has(debriefId)) return;
    this.#opening.add(debriefId);
    try {
      await this.#openNow(debriefId);
    } catch (error) {
      tell(error);
    } finally {
      this.#opening.delete(debriefId);
    }
  }

  async #openNow(debriefId: string): Promise<void> {
    const { store, open, own } = this.#parts;
    const kept = await call('readDebrief', { debriefId });
    const { stated, settings, heights, antennaHeightFt } = kept;
    const { facilities, standards } = await own();
    const id = await open(kept.name, bytesOf(kept.base64), {
      isStated: true,
      isCopied: true,
      stated: stated as Partial<Stated>,
      settings: settings as LogSettings,
      heights,
      antennaHeightFt,
      standardId: standards.entryFor(kept.standardId, kept.standard),
      facilityId: await facilities.entryFor(kept.facility),
    });
    const flight = this.#flight(id ?? undefined);
    if (!flight) return;
    this.#opened.set(debriefId, flight.id);
    const as = keptAs(kept, statementText(store.state(), flight));
    store.dispatch({ do: 'change', id: flight.id, change: { kept: as } });
    await this.#sinceLast(flight.id);
  }

  async #sinceLast(id: string): Promise<void> {
    const { store } = this.#parts;
    const flight = this.#flight(id);
    const sinceLast = flight ? await askSinceLast(store.state(), flight) : [];
    store.dispatch({ do: 'change', id, change: { sinceLast } });
  }

  /** Finds out where the logs that are open are kept: they may have been moved, or gone with their student. */
  async #lookUp(): Promise<void> {
    const { store } = this.#parts;
    const open = store.state().flights.flatMap((flight) => {
      const read = lastRead(flight.reading);
      return read ? [{ id: flight.id, sha256: read.sha256 }] : [];
    });
    if (open.length === 0) return;
    const places = await call('whereKept', { sha256s: open.map(({ sha256 }) => sha256) });
    for (const { id, sha256 } of open) {
      const before = this.#flight(id)?.kept ?? null;
      const place = places.find((one) => one.sha256 === sha256);
      const { lessonId, student, date } = place ?? {};
      const kept =
        place === undefined
          ? null
          : { lessonId: lessonId!, student: student!, date: date!, statements: before?.statements ?? null };
      if (JSON.stringify(kept) !== JSON.stringify(before))
        store.dispatch({ do: 'change', id, change: { kept } });
    }
  }

  /** The same for one that was just opened. */
  async lookUp(): Promise<void> {
    await this.#lookUp().catch(this.tell);
  }

  #flight(id: string | undefined): Flight | undefined {
    return this.#parts.store.state().flights.find((flight) => flight.id === id);
  }

  /** Brings logs in, one after the other; what is there already is told and passed over, so that it can be gone on. */
  async bringIn(files: readonly File[], whose: Whose): Promise<void> {
    const { store } = this.#parts;
    if (isUnderWay(store.state().library.bringing)) return;
    this.#isStopping = false;
    this.#bringing({ ...NOTHING_BROUGHT, total: files.length });
    const waiting = [...files];
    const next = async () => {
      for (let file = waiting.shift(); file && !this.#isStopping; file = waiting.shift())
        this.#count(await this.#bringOne(file, whose));
    };
    await Promise.all(Array.from({ length: AT_ONCE }, next));
    const bringing = store.state().library.bringing!;
    const isWhole = bringing.done === bringing.total;
    this.#bringing({ ...bringing, state: isWhole ? 'done' : 'stopped' });
    await this.fetch();
  }

  /** Hashes of all logs on a list. */
  async logsOf(filter: FlightFilter): Promise<readonly string[]> {
    try {
      return await call('libraryLogs', { filter });
    } catch (error) {
      this.tell(error);
      return [];
    }
  }

  async deleteStudent(studentId: string, name: string): Promise<boolean> {
    const deleted = await this.change('deleteStudent', { studentId });
    if (deleted === null) return false;
    const { store, forget } = this.#parts;
    store.unsaid.forget(studentId);
    // Copies of the logs that were opened lately are the student's as well.
    await forget(deleted.logs);
    const { left } = deleted;
    if (left.length === 0)
      store.dispatch({
        do: 'done',
        message: `${name} was deleted. Nothing of theirs is left in the library.`,
      });
    else store.dispatch({ do: 'notice', message: `${name} was deleted. ${left.join(' ')}` });
    return true;
  }

  /** Adds the people of a file; what came of it in words. */
  async readRoster(file: File): Promise<string | null> {
    const text = await textOfFile(file, LARGEST_ROSTER);
    if (text === null) return `${file.name} is too long for a roster. Is it a track log?`;
    const read = await this.change('readRoster', { text });
    if (read === null) return null;
    const { added, known, refused } = read;
    const names = added.length === 0 ? 'Nobody was added' : `Added: ${added.join(', ')}`;
    return [`${names}; ${known} ${known === 1 ? 'was' : 'were'} here already.`, ...refused].join(' ');
  }

  async backUp(): Promise<string | null> {
    const made = await this.change('backUpLibrary', {});
    return made && `Backed up with ${made.logs} logs to ${made.folder}.${missingWords(made.missing)}`;
  }

  async exportAll(isPseudonymous: boolean): Promise<string | null> {
    const made = await this.change('exportLibrary', { isPseudonymous });
    return made && `Exported ${made.rows} entries to ${made.folder}.${missingWords(made.missing)}`;
  }

  async recompute(): Promise<Output<'recomputeLibrary'> | null> {
    return this.change('recomputeLibrary', {});
  }

  async restore(name: string): Promise<string | null> {
    const restored = await this.change('restoreLibrary', { name });
    return restored && restored.words;
  }

  /** Ends bringing in with the logs that are on their way. */
  stop(): void {
    const { bringing } = this.#parts.store.state().library;
    if (!isUnderWay(bringing)) return;
    this.#isStopping = true;
    this.#bringing({ ...bringing, state: 'stopping' });
  }

  /** Puts away what was told of the last bringing in. */
  putAway(): void {
    this.#parts.store.dispatch({ do: 'library', library: { bringing: null } });
  }

  /** Once, with the flight: what is thought later is no estimate. */
  async #keepEstimate({ estimate, kept }: Flight, debriefId: string | null): Promise<void> {
    if (kept !== null || debriefId === null || estimate === null || estimate === 'open') return;
    const { level, words } = estimate;
    await this.change('giveEstimate', { debriefId, aboutUtc: null, level, words: words || null });
  }

  async #bringOne(file: File, whose: Whose): Promise<Brought> {
    // Logs of several folders have one name.
    const name = file.webkitRelativePath || file.name;
    if (file.size > LARGEST_KEPT_BYTES) return { became: 'refused', why: tooLarge(file.size), name };
    const { facilities, notes } = this.#parts.store.state();
    const usable = facilities.filter((one) => one.reading?.refusal === null && !isOfLibrary(one));
    if (usable.length === 0)
      return { became: 'refused', why: 'No facility is known that it could be tried at.', name };
    try {
      const kept = await call('keepInLibrary', {
        name: file.name,
        ...foldersOf(file),
        base64: await base64Of(await file.arrayBuffer()),
        facilities: usable.map(({ text }) => text),
        asked: {
          standard: askedStandard(this.#parts.store.state(), notes.settings.standard),
          stated: {},
          settings: {},
          heights: null,
          antennaHeightFt: null,
        },
        student: whose,
        date: null,
        how: 'bring-in',
      });
      return { ...kept, name };
    } catch (error) {
      const why = error instanceof HostProblem ? error.message : 'It could not be read from the disk.';
      return { became: 'refused', why, name };
    }
  }

  #count(kept: Brought): void {
    const before = this.#parts.store.state().library.bringing!;
    this.#bringing(withOneMore(before, kept));
  }

  #bringing(bringing: Bringing): void {
    this.#parts.store.dispatch({ do: 'library', library: { bringing } });
  }
}

function isUnderWay(bringing: Bringing | null): bringing is Bringing {
  return bringing?.state === 'going' || bringing?.state === 'stopping';
}

/** A log that is in the library stays whose it is, as it was stated: to change that is a step of its own. */
function staysWords({ name }: Flight, { student, date }: { student: string | null; date: string }): string {
  const whose = student === null ? 'with nobody' : `as ${student}’s`;
  return `${name} was in the library already, ${whose}, lesson of ${date}: nothing of it was changed. On the page of that lesson it can be given to somebody else.`;
}

/** Characters: a school has no more people. */
const LARGEST_ROSTER = 1_000_000;

function missingWords(missing: readonly string[]): string {
  return missing.length === 0 ? '' : ` Lost or damaged, and not in it: ${missing.join(', ')}.`;
}

/** The folder that was chosen, null where a file was, and those of a file below it. */
function foldersOf({ webkitRelativePath }: File): { chosenFolder: string | null; folders: string[] } {
  const [chosenFolder = null, ...folders] = webkitRelativePath.split('/').slice(0, -1);
  return { chosenFolder, folders };
}

function tooLarge(bytes: number): string {
  const [has, most] = [bytes, LARGEST_KEPT_BYTES].map((size) => Math.ceil(size / 1e6));
  return `It is ${has} MB; here logs of up to ${most} MB are brought in. \`halfdot import\` takes larger ones.`;
}

/** A log's place in the library, and nothing else that is known of it. */
function keptAs({ lessonId, student, date }: Omit<KeptAs, 'statements'>, statements: string | null): KeptAs {
  return { lessonId, student, date, statements };
}
