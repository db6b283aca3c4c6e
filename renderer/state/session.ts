import type { LogSettings } from '../../core/log/log.ts';
import type { Inspection } from '../../core/report/inspection.ts';
import type { Stated } from '../../core/standard/stated.ts';
import type { Notes } from '../../electron/bridge/calls.ts';
import type { HandOver } from '../hand-over/hand-over.ts';
import type { AskedDebrief, FacilityText, Saved } from '../worker/protocol.ts';
import { Analyst, type Running } from './analyst.ts';
import type { FacilityEntry, Flight, Judged, Sample } from './app-state.ts';
import { download } from './download.ts';
import { bytesOf, call, HostProblem, onHostEvent } from './host.ts';
import { settingsOfSample, standardOfSample, statedOfSample } from './sample-statements.ts';
import { Store } from './store.ts';

/** What a log may be opened with besides its bytes. */
interface Opening {
  readonly settings?: LogSettings;
  readonly stated?: Partial<Stated>;
  readonly standardId?: string;
  readonly facilityId?: string;
}

const FAULT = 'This is a fault of Halfdot, not of your file. Nothing of yours was changed.';
const utf8 = new TextDecoder();

/** Everything that the user can do, in one place: it changes the state, and asks the worker and the host. */
export class Session {
  readonly store = new Store();
  readonly #analyst = new Analyst();
  /** What is under way for a log, so that it can be stopped. */
  readonly #running = new Map<string, Running<unknown>>();
  /** The last debrief asked for of each log, so that an older one never overwrites a newer. */
  readonly #asked = new Map<string, number>();
  #saving: Promise<void> = Promise.resolve();
  #revision = 0;

  /** Fetches what the host keeps, and opens what it was started with. */
  async begin(): Promise<void> {
    try {
      const [samples, { revision, notes }] = await Promise.all([call('samples', {}), call('notes', {})]);
      this.#revision = revision;
      this.store.dispatch({ do: 'samples', samples });
      this.store.dispatch({ do: 'notes', notes });
      await this.#loadFacilities(samples, notes);
      onHostEvent(() => void this.#openGiven());
      await this.#openGiven();
    } catch (error) {
      this.#tell(error);
    }
  }

  async openFiles(files: readonly File[]): Promise<void> {
    await Promise.all(files.map(async (file) => this.open(file.name, await file.arrayBuffer())));
  }

  async openSample(sample: Sample): Promise<void> {
    try {
      const { base64 } = await call('readSample', { file: sample.file });
      await this.open(sample.file, bytesOf(base64), {
        settings: settingsOfSample(sample),
        stated: statedOfSample(sample),
        standardId: standardOfSample(sample),
        facilityId: sample.facility,
      });
    } catch (error) {
      this.#tell(error);
    }
  }

  async open(name: string, bytes: ArrayBuffer, opening: Opening = {}): Promise<void> {
    const id = crypto.randomUUID();
    const { notes } = this.store.state();
    const standardId = opening.standardId ?? notes.settings.standard;
    this.store.dispatch({ do: 'opened', id, name, standardId });
    const { settings = {}, stated = {} } = opening;
    this.#change(id, { settings, stated: { ...this.#flight(id)!.stated, ...stated } });
    const progress = (share: number | null) => this.#change(id, { reading: { kind: 'reading', share } });
    const running = this.#analyst.start('read', { log: id, name, bytes, settings }, progress);
    await this.#read(id, running, opening.facilityId ?? null);
  }

  /** Stops what is being done with a log; one that was being read is closed. */
  cancel(id: string): void {
    this.#running.get(id)?.cancel();
  }

  close(id: string): void {
    this.cancel(id);
    void this.#analyst.start('forget', { log: id }).done;
    this.store.dispatch({ do: 'close', id });
  }

  /** Takes columns for what the user says, remembers it for logs with these headers, and reads anew. */
  async mapColumns(id: string, columns: NonNullable<LogSettings['columns']>): Promise<void> {
    const flight = this.#flight(id);
    if (flight?.reading.kind !== 'read') return;
    const { headerKey } = flight.reading.inspection;
    const { notes } = this.store.state();
    void this.saveNotes({ ...notes, mappings: { ...notes.mappings, [headerKey]: columns } });
    await this.#reread(id, { ...flight.settings, columns });
  }

  async setSettings(id: string, settings: LogSettings): Promise<void> {
    await this.#reread(id, settings);
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
    const flight = this.#flight(id);
    const facility = this.#facility(flight?.facilityId ?? null);
    if (!flight || flight.reading.kind !== 'read' || !facility) return;
    const mine = (this.#asked.get(id) ?? 0) + 1;
    this.#asked.set(id, mine);
    const isLast = () => this.#asked.get(id) === mine;
    const last = lastOf(flight.judged);
    this.#change(id, { judged: { kind: 'working', share: null, last } });
    const { standardId, stated } = flight;
    const running = this.#analyst.start(
      'debrief',
      { log: id, facility, asked: { standardId, stated, heights: null } },
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
    const debrief = this.#askedDebrief(id);
    if (!debrief) return;
    const { dots } = this.store.state().notes.settings;
    const done = await this.#analyst.start('save', { ...debrief, what, approach, dots }).done;
    if (done.kind === 'done') download(this.#flight(id)?.name ?? 'log', done.value);
    else this.#tell(done.kind === 'refused' ? new HostProblem(done.issue.message) : done);
  }

  /** What the page to hand over is drawn of; null where there is none. */
  async handOver(id: string): Promise<HandOver | null> {
    const debrief = this.#askedDebrief(id);
    if (!debrief) return null;
    const done = await this.#analyst.start('handOver', debrief).done;
    if (done.kind === 'done') return done.value;
    this.#tell(done.kind === 'refused' ? new HostProblem(done.issue.message) : done);
    return null;
  }

  #askedDebrief(id: string): AskedDebrief | null {
    const flight = this.#flight(id);
    const facility = this.#facility(flight?.facilityId ?? null);
    if (!flight || !facility) return null;
    const { standardId, stated } = flight;
    return { log: id, facility, asked: { standardId, stated, heights: null } };
  }

  /** Keeps notes: the newest last, one after the other. */
  saveNotes(notes: Notes): Promise<void> {
    this.store.dispatch({ do: 'notes', notes });
    this.#saving = this.#saving.then(() => this.#saveNow());
    return this.#saving;
  }

  async #saveNow(): Promise<void> {
    try {
      const { notes } = this.store.state();
      const answer = await call('saveNotes', { revision: this.#revision, notes });
      if (answer.saved) this.#revision = answer.revision;
      else this.store.dispatch({ do: 'notice', message: `This was not kept: ${answer.why}` });
    } catch (error) {
      this.#tell(error);
    }
  }

  /** Adds or changes a facility of the user's own. */
  async keepFacility(id: string, text: string): Promise<void> {
    const { notes, samples } = this.store.state();
    const others = notes.facilities.filter((facility) => facility.id !== id);
    const kept = { ...notes, facilities: [...others, { id, text }] };
    await this.saveNotes(kept);
    await this.#loadFacilities(samples, kept);
    await this.#judgeAll(id);
  }

  async removeFacility(id: string): Promise<void> {
    const { notes, samples } = this.store.state();
    const kept = { ...notes, facilities: notes.facilities.filter((facility) => facility.id !== id) };
    await this.saveNotes(kept);
    await this.#loadFacilities(samples, kept);
  }

  async readFacility(facility: FacilityText) {
    const done = await this.#analyst.start('facilities', { facilities: [facility] }).done;
    return done.kind === 'done' ? done.value[0]! : null;
  }

  /** Debriefs anew what was debriefed at a facility that has changed. */
  async #judgeAll(facilityId: string): Promise<void> {
    for (const flight of this.store.state().flights)
      if (flight.facilityId === facilityId) await this.judge(flight.id);
  }

  async #openGiven(): Promise<void> {
    try {
      for (const { token } of await call('given', {})) {
        // Asked at each: another event may have opened it while this waited.
        if (this.#opened.has(token)) continue;
        this.#opened.add(token);
        await this.#openOneGiven(token);
      }
    } catch (error) {
      this.#tell(error);
    }
  }

  /** A file that cannot be read is told, and does not keep those after it from being opened. */
  async #openOneGiven(token: string): Promise<void> {
    try {
      const { name, base64 } = await call('readGiven', { token });
      void this.open(name, bytesOf(base64));
    } catch (error) {
      this.#tell(error);
    }
  }
  readonly #opened = new Set<string>();

  async #loadFacilities(samples: readonly Sample[], notes: Notes): Promise<void> {
    const files = [...new Set(samples.map(({ facility }) => facility))];
    const shipped = await Promise.all(
      files.map(async (id) => {
        const { base64 } = await call('readSample', { file: id });
        return { id, text: utf8.decode(bytesOf(base64)), isSample: true };
      }),
    );
    const own = notes.facilities.map((facility) => ({ ...facility, isSample: false }));
    const all = [...own, ...shipped];
    const done = await this.#analyst.start('facilities', {
      facilities: all.map(({ id, text }) => ({ id, text })),
    }).done;
    const readings = done.kind === 'done' ? done.value : [];
    const entries: FacilityEntry[] = all.map((facility) => ({
      ...facility,
      reading: readings.find(({ id }) => id === facility.id) ?? null,
    }));
    this.store.dispatch({ do: 'facilities', facilities: entries });
  }

  async #reread(id: string, settings: LogSettings): Promise<void> {
    this.#change(id, { settings, reading: { kind: 'reading', share: null } });
    await this.#read(
      id,
      this.#analyst.start('reread', { log: id, settings }),
      this.#flight(id)?.facilityId ?? null,
    );
  }

  async #read(id: string, running: Running<Inspection>, facilityId: string | null): Promise<void> {
    this.#running.set(id, running);
    const done = await running.done;
    const flight = this.#flight(id);
    if (!flight) return;
    if (done.kind !== 'done') {
      const issue = done.kind === 'refused' ? done.issue : { message: FAULT, tip: null };
      this.#change(id, { reading: { kind: 'failed', issue } });
      return;
    }
    const inspection = done.value;
    const { notes, facilities } = this.store.state();
    const remembered = notes.mappings[inspection.headerKey] as LogSettings['columns'];
    if (remembered && flight.settings.columns === undefined) {
      await this.#reread(id, { ...flight.settings, columns: remembered });
      return;
    }
    this.#change(id, { reading: { kind: 'read', inspection } });
    this.#remember(inspection.file, inspection.sha256);
    const texts = facilities.map(({ id: own, text }) => ({ id: own, text }));
    const fits = await this.#analyst.start('fit', { log: id, facilities: texts }).done;
    const fitting = fits.kind === 'done' ? fits.value : [];
    this.#change(id, { fits: fitting, facilityId: facilityId ?? fitting[0] ?? null });
    await this.judge(id);
  }

  #remember(name: string, sha256: string): void {
    const { notes } = this.store.state();
    const recents = [{ name, sha256 }, ...notes.recents.filter((recent) => recent.sha256 !== sha256)].slice(
      0,
      20,
    );
    void this.saveNotes({ ...notes, recents });
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

function lastOf(judged: Judged) {
  if (judged.kind === 'done') return judged.debriefed;
  return judged.kind === 'working' ? judged.last : null;
}
