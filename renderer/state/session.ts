import type { LogSettings } from '../../core/log/log.ts';
import type { Inspection } from '../../core/report/inspection.ts';
import type { Stated } from '../../core/standard/stated.ts';
import type { Notes } from '../../electron/bridge/calls.ts';
import type { Recent } from '../../electron/bridge/recent.ts';
import type { HandOver } from '../hand-over/hand-over.ts';
import type { AskedDebrief, FacilityText, HandedOver, Saved } from '../worker/protocol.ts';
import { Analyst, type Running } from './analyst.ts';
import { lastDebriefed, lastRead, type Flight, type Judged, type NotRead, type Sample } from './app-state.ts';
import { download } from './download.ts';
import { Drafts } from './drafts.ts';
import { GivenLogs } from './given-logs.ts';
import { askToPrint } from './asked-to-print.ts';
import { bytesOf, call, HostProblem, onHostEvent } from './host.ts';
import { KeptSheets } from './kept-sheets.ts';
import { headerKeyOf, remembered, withRemembered, type Mapping } from './mapping.ts';
import { NotesKeeper } from './notes-keeper.ts';
import type { Opening } from './opening.ts';
import { OwnFacilities } from './own-facilities.ts';
import { OwnLibrary } from './own-library.ts';
import { askedStandard, OwnStandards } from './own-standards.ts';
import { nothingSaid, offeredOver, statementsOf, takenOver } from './recent-entry.ts';
import { RecentFlights } from './recent-flights.ts';
import { settingsOfSample, standardOfSample, statedOfSample } from './sample-statements.ts';
import { sha256Of } from './sha256-of.ts';
import { sinceLastOf } from './since-last.ts';
import { Sources } from './sources.ts';
import { Store } from './store.ts';

interface HowToRead {
  /** With what is remembered for its headers, unless something is said of its columns already. */
  readonly isAsRemembered?: boolean;
  /** Settings that it can be read with, where it cannot be with those that are tried. */
  readonly goBackTo?: LogSettings;
  /** It was never read: where a column is still missing, that one is asked for next. */
  readonly asksOn?: boolean;
}

const FAULT = 'This is a fault of Halfdot, not of your file. Nothing of yours was changed.';

const NO_DEBRIEF = new HostProblem(
  'There is no debrief of this log to hand over. Choose a facility for it first.',
);

/** Everything that the user can do, in one place: it changes the state, and asks the worker and the host. */
export class Session {
  readonly store = new Store();
  readonly #analyst = new Analyst();
  /** What is under way for a log, so that it can be stopped. */
  readonly #running = new Map<string, Running<unknown>>();
  readonly #stopped = new Set<string>(); // Before anything was under way for them, as while a hash is taken.
  /** The last debrief asked for of each log, so that an older one never overwrites a newer. */
  readonly #asked = new Map<string, number>();
  readonly #parts = {
    store: this.store,
    analyst: this.#analyst,
    drafts: new Drafts(this.store, (notes) => this.saveNotes(notes)),
    saveNotes: (notes: Notes) => this.saveNotes(notes),
    judge: (id: string) => this.judge(id),
  };
  readonly facilities = new OwnFacilities(this.#parts);
  readonly standards = new OwnStandards(this.#parts);
  readonly #notes = new NotesKeeper(
    this.store,
    (error) => this.#tell(error),
    (notes) => {
      void this.facilities.load(notes);
      void this.standards.load(notes);
    },
  );
  readonly library = new OwnLibrary({
    store: this.store,
    tell: (error) => this.#tell(error),
    open: (name, bytes, opening) => this.open(name, bytes, opening),
    own: () => this.#ready.then(() => this),
    forget: (sha256s) => this.#recents.forgetLogs(sha256s),
    bytes: async (log) => {
      const done = await this.#analyst.start('bytes', { log }).done;
      return done.kind === 'done' ? done.value : null;
    },
    askedDebrief: (id) => this.#askedDebrief(id),
  });
  readonly keptSheets = new KeptSheets(this.#analyst);
  readonly sources = new Sources(this.#parts, this.facilities, (error) => this.#tell(error));
  readonly #given = new GivenLogs({
    tell: (error) => this.#tell(error),
    open: (name, bytes) => void this.open(name, bytes),
  });
  readonly #recents = new RecentFlights(this.store, this.#notes);
  /** Logs that are being fetched from the host, so that a second press does not fetch them twice. */
  readonly #fetching = new Set<string>();
  /** Until the facilities are there, none can be found to have been flown to. */
  #begun: () => void = () => {};
  readonly #ready = new Promise<void>((resolve) => (this.#begun = resolve));

  /** Fetches what the host keeps, and opens what it was started with. */
  async begin(): Promise<void> {
    // What was typed last is kept also when the page is closed in the same moment.
    addEventListener('pagehide', () => this.#parts.drafts.saveNow());
    addEventListener('pagehide', () => this.#notes.saveOnLeaving());
    try {
      await this.#fetchAll().finally(this.#begun);
      onHostEvent(({ kind }) => void (kind === 'print' ? askToPrint() : this.#given.open()));
      await this.#given.open();
    } catch (error) {
      this.#tell(error);
    }
  }

  async #fetchAll(): Promise<void> {
    const [samples] = await Promise.all([call('samples', {}), this.#notes.fetch(), this.#recents.fetch()]);
    this.store.dispatch({ do: 'samples', samples });
    await this.standards.load(this.store.state().notes);
    await this.facilities.load(this.store.state().notes);
    // It waits for no answer: nothing of the first view is the library's.
    void this.library.fetch();
  }

  async openFiles(files: readonly File[]): Promise<void> {
    await Promise.all(files.map(async (file) => this.open(file.name, await file.arrayBuffer())));
  }

  async openSample(sample: Sample): Promise<void> {
    try {
      const { base64 } = await call('readSample', { file: sample.file });
      await this.open(sample.file, bytesOf(base64), {
        isSample: true,
        settings: settingsOfSample(sample),
        stated: statedOfSample(sample),
        standardId: standardOfSample(sample),
        facilityId: sample.facility,
      });
    } catch (error) {
      this.#tell(error);
    }
  }

  /** Opens a log of those opened lately, with what was stated about it; one that is open already is shown. */
  async openRecent({ name, sha256 }: Recent): Promise<void> {
    const open = this.#recents.open(sha256);
    if (open) return this.store.dispatch({ do: 'choose', id: open.id });
    if (this.#fetching.has(sha256)) return;
    this.#fetching.add(sha256);
    try {
      const { base64 } = await call('readKept', { sha256 });
      void this.open(name, bytesOf(base64), { isCopied: true });
    } catch (error) {
      this.#tell(error);
      await this.#recents.fetch().catch(() => {});
    } finally {
      this.#fetching.delete(sha256);
    }
  }

  /** Takes a log off the list of those opened lately, and the copy of it away; all of them where none is named. */
  async forget(recent: Recent | null): Promise<void> {
    try {
      await (recent === null ? this.#recents.forgetAll() : this.#recents.forget(recent));
    } catch (error) {
      this.#tell(error);
    }
  }

  /** Opens a log, and gives its id once it is read and debriefed; null where it was closed before. */
  async open(name: string, bytes: ArrayBuffer, opening: Opening = {}): Promise<string | null> {
    await this.#ready;
    const id = crypto.randomUUID();
    const { isSample = false, isCopied = false, isStated = false, stated = {}, ...said } = opening;
    const fresh = nothingSaid(this.store.state().notes.settings.standard);
    this.store.dispatch({ do: 'opened', id, name, standardId: fresh.standardId, isSample });
    this.#change(id, { ...fresh, ...said, stated: { ...fresh.stated, ...stated } });
    const { asksFirst = false } = this.store.state().notes.settings;
    if (asksFirst && !isStated) this.#change(id, { estimate: 'open' });
    const sha256 = await sha256Of(bytes);
    // Before it is read: reading depends on what was stated.
    const known = isSample ? null : this.#recents.known(id, sha256);
    const begun = this.#flight(id);
    if (begun) this.#change(id, isStated ? offeredOver(known, statementsOf(begun)) : takenOver(known, fresh));
    const flight = this.#flight(id);
    const isStopped = this.#stopped.delete(id);
    // Closed while its hash was taken.
    if (!flight) return null;
    const { settings } = flight;
    const progress = (share: number | null) =>
      this.#change(id, { reading: { kind: 'reading', share, last: null } });
    const running = this.#analyst.start('read', { log: id, name, bytes, sha256, settings }, progress);
    if (isStopped) running.cancel();
    await this.#read(id, running, { isAsRemembered: !isStated });
    if (!isSample && !isCopied) this.#recents.copy(id, name, bytes);
    void this.library.lookUp();
    return this.#flight(id) ? id : null;
  }

  /** Changes between what was stated last time and a fresh start; neither is lost while the log is open. */
  async swapLastTime(id: string): Promise<void> {
    const flight = this.#flight(id);
    if (!flight?.lastTime) return;
    const { isTaken, other } = flight.lastTime;
    const facilityId = other.facilityId ?? flight.fits?.[0] ?? null;
    const lastTime = { isTaken: !isTaken, other: statementsOf(flight) };
    // In one change with the reading: what it is read with is remembered once it could be.
    const reading = { kind: 'reading', share: null, last: lastRead(flight.reading) } as const;
    this.#change(id, { ...other, facilityId, lastTime, reading });
    await this.#reread(id, other.settings, { isAsRemembered: true, goBackTo: flight.settings });
  }

  /** Stops what is being done with a log; one that was being read is closed. */
  cancel(id: string): void {
    const running = this.#running.get(id);
    if (!running) this.#stopped.add(id);
    running?.cancel();
  }

  close(id: string): void {
    this.cancel(id);
    // They hold what was read.
    this.#running.delete(id);
    this.#asked.delete(id);
    void this.#analyst.start('forget', { log: id }).done;
    this.store.dispatch({ do: 'close', id });
  }

  /** Takes columns for what the user says and, where the log can be read so, remembers it for these headers. */
  async mapColumns(id: string, mapping: Mapping): Promise<void> {
    const flight = this.#flight(id);
    if (!flight) return;
    const how = { goBackTo: flight.settings, asksOn: lastRead(flight.reading) === null };
    const wasRead = await this.#reread(id, { ...flight.settings, ...mapping }, how);
    const { settings, reading } = this.#flight(id) ?? flight;
    const key = lastRead(reading)?.headerKey;
    if (wasRead && key) void this.saveNotes(withRemembered(this.store.state().notes, key, settings));
  }

  async setSettings(id: string, settings: LogSettings): Promise<void> {
    const flight = this.#flight(id);
    if (flight) await this.#reread(id, settings, { goBackTo: flight.settings });
  }

  /** What is said of the heights is not read but judged by. */
  async sayHeights(id: string, change: Partial<Pick<Flight, 'heights' | 'antennaHeightFt'>>): Promise<void> {
    this.#change(id, change);
    await this.judge(id);
  }

  async chooseFacility(id: string, facilityId: string): Promise<void> {
    this.#change(id, { facilityId });
    await this.judge(id);
  }

  async chooseStandard(id: string, standardId: string): Promise<void> {
    this.#change(id, { standardId });
    const { notes } = this.store.state();
    void this.saveNotes({ ...notes, settings: { ...notes.settings, standard: standardId } });
    await this.judge(id);
  }

  async state(id: string, change: Partial<Stated>): Promise<void> {
    const flight = this.#flight(id);
    if (!flight) return;
    this.#change(id, { stated: { ...flight.stated, ...change } });
    await this.judge(id);
  }

  /** Debriefs a log at its facility; what was said meanwhile is what counts. */
  async judge(id: string): Promise<void> {
    const opened = this.#flight(id);
    if (!opened) return;
    this.standards.settle(opened);
    this.facilities.settle(opened);
    const flight = this.#flight(id)!;
    if (flight.reading.kind !== 'read') return;
    const mine = (this.#asked.get(id) ?? 0) + 1;
    this.#asked.set(id, mine);
    const asked = this.#askedDebrief(id);
    if (!asked) return this.#change(id, { judged: { kind: 'nothing' } });
    const isLast = () => this.#asked.get(id) === mine;
    const last = lastDebriefed(flight.judged);
    this.#change(id, { judged: { kind: 'working', share: null, last } });
    const running = this.#analyst.start(
      'debrief',
      asked,
      (share) => isLast() && this.#change(id, { judged: { kind: 'working', share, last } }),
    );
    this.#running.set(id, running);
    const done = await running.done;
    if (!isLast()) return;
    const judged: Judged =
      done.kind === 'done'
        ? { kind: 'done', debriefed: done.value }
        : { kind: 'failed', issue: done.kind === 'refused' ? done.issue : { message: FAULT, tip: null } };
    this.#change(id, { judged });
  }

  /** Saves a file of a log's debrief; of its fixes those of one approach. */
  async save(id: string, what: Saved, approach: number): Promise<void> {
    const debrief = this.#handedOver(id);
    if (!debrief) return this.#tell(NO_DEBRIEF);
    const { dots } = this.store.state().notes.settings;
    const done = await this.#analyst.start('save', { ...debrief, what, approach, dots }).done;
    // Without the log's own ending, since what is saved has another.
    const log = (this.#flight(id)?.name ?? 'log').replace(/\.[^.]+$/, '');
    if (done.kind === 'done') download(log, done.value);
    else this.#tell(done.kind === 'refused' ? new HostProblem(done.issue.message) : done);
  }

  /** What the page to hand over is drawn of; null where there is none, which is said. */
  async handOver(id: string): Promise<HandOver | null> {
    const debrief = this.#handedOver(id);
    const done = debrief && (await this.#analyst.start('handOver', debrief).done);
    if (done?.kind === 'done') return done.value;
    this.#tell(done?.kind === 'refused' ? new HostProblem(done.issue.message) : (done ?? NO_DEBRIEF));
    return null;
  }

  #handedOver(id: string): HandedOver | null {
    const debrief = this.#askedDebrief(id);
    return debrief && { ...debrief, sinceLast: sinceLastOf(this.store.state(), this.#flight(id)!) };
  }

  #askedDebrief(id: string): AskedDebrief | null {
    const flight = this.#flight(id);
    const facility = this.#facility(flight?.facilityId ?? null);
    if (!flight || !facility) return null;
    const { stated, heights, antennaHeightFt } = flight;
    const standard = askedStandard(this.store.state(), flight.standardId);
    return { log: id, facility, asked: { standard, stated, heights, antennaHeightFt } };
  }

  /** Keeps notes: the newest last, one after the other. */
  async saveNotes(notes: Notes): Promise<void> {
    await this.#notes.save(notes);
  }

  /** Loads the page anew, unless its host has ended: then it would be lost, with what is open in it. */
  async reload(): Promise<void> {
    try {
      await call('about', {});
      location.reload();
    } catch (error) {
      this.#tell(error);
    }
  }

  /** False when the log cannot be read so. */
  async #reread(id: string, settings: LogSettings, how: HowToRead): Promise<boolean> {
    const flight = this.#flight(id);
    if (!flight) return false;
    const last = lastRead(flight.reading);
    this.#change(id, { settings, reading: { kind: 'reading', share: null, last } });
    return this.#read(id, this.#analyst.start('reread', { log: id, settings }), how);
  }

  async #read(id: string, running: Running<Inspection>, how: HowToRead): Promise<boolean> {
    this.#running.set(id, running);
    const done = await running.done;
    const flight = this.#flight(id);
    // Closed meanwhile, or being read as something was said since.
    if (!flight || this.#running.get(id) !== running) return false;
    const { settings } = flight;
    const isOpen = settings.columns === undefined && settings.units === undefined;
    const mapping = remembered(this.store.state().notes, headerKeyOf(done));
    if (how.isAsRemembered && isOpen && mapping)
      return this.#reread(id, { ...settings, ...mapping }, { goBackTo: settings });
    if (done.kind !== 'done') {
      const issue = done.kind === 'refused' ? done.issue : { message: FAULT, tip: null };
      const isAsked = how.asksOn && 'columns' in issue;
      if (how.goBackTo && !isAsked) await this.#goBack(id, issue, how.goBackTo);
      else this.#change(id, { reading: { kind: 'failed', issue } });
      return false;
    }
    this.#change(id, { reading: { kind: 'read', inspection: done.value } });
    await this.facilities.fit(id);
    await this.judge(id);
    return true;
  }

  async #goBack(id: string, { message, tip }: NotRead, to: LogSettings): Promise<void> {
    const sentences = [message, tip, 'The log is read as before.'].filter((sentence) => sentence !== null);
    this.store.dispatch({ do: 'notice', message: sentences.join(' ') });
    await this.#reread(id, to, {});
  }

  #flight(id: string): Flight | undefined {
    return this.store.state().flights.find((flight) => flight.id === id);
  }

  #facility(id: string | null): FacilityText | null {
    const entry = this.store.state().facilities.find((facility) => facility.id === id);
    return entry ? { id: entry.id, text: entry.text } : null;
  }

  #change(id: string, change: Partial<Omit<Flight, 'id' | 'name'>>): void {
    this.store.dispatch({ do: 'change', id, change });
  }

  #tell(error: unknown): void {
    const message = error instanceof HostProblem ? error.message : FAULT;
    this.store.dispatch({ do: 'notice', message });
  }
}
