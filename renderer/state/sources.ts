import type { Issue } from '../../core/issue/issue.ts';
import type { RecordsSummary, SourceWork } from '../worker/sources-protocol.ts';
import type { Running } from './analyst.ts';
import { call, HostProblem } from './host.ts';
import type { OwnFacilities } from './own-facilities.ts';
import type { OwnParts } from './own-parts.ts';

type Out<J extends keyof SourceWork> = SourceWork[J]['out'];

type Parts = Pick<OwnParts, 'store' | 'analyst'>;

/** What became of reading a file that facilities are made of. */
export type SourceRead<T> =
  { readonly kind: 'read'; readonly value: T } | { readonly kind: 'refused'; readonly issue: Issue };

/** What facilities are made of without typing: official records, a table of runways, a landing. */
export class Sources {
  readonly #parts: Parts;
  readonly #facilities: OwnFacilities;
  readonly #tell: (error: unknown) => void;
  /** Of the records that the worker holds. */
  #summary: RecordsSummary | null = null;

  constructor(parts: Parts, facilities: OwnFacilities, tell: (error: unknown) => void) {
    this.#parts = parts;
    this.#facilities = facilities;
    this.#tell = tell;
  }

  /** What is known of the records that were read before; null where none were. */
  async records(): Promise<RecordsSummary | null> {
    if (this.#summary) return this.#summary;
    try {
      const { text } = await call('records', {});
      if (text === null) return null;
      const read = await this.#parts.analyst.start('records', { from: text, day: today() }).done;
      if (read.kind === 'done') this.#summary = read.value.summary;
    } catch (error) {
      this.#tell(error);
    }
    return this.#summary;
  }

  /** Reads a file of records. Its index is kept, so that the file is needed no more. */
  scan(file: File, progress: (share: number | null) => void): Running<Out<'records'>> {
    const running = this.#parts.analyst.start('records', { from: file, day: today() }, progress);
    void running.done.then((done) => (done.kind === 'done' ? this.#keep(done.value) : undefined));
    return running;
  }

  /** Reads a table of runways; of an airport's runways it keeps none but those. */
  runways(
    file: File,
    airport: string | null,
    progress: (share: number | null) => void,
  ): Running<Out<'runways'>> {
    return this.#parts.analyst.start('runways', { file, airport }, progress);
  }

  /** Keeps a draft as a facility of the user's own, and shows it to be confirmed. */
  async takeOver(text: string): Promise<void> {
    const id = await this.#facilities.add(text);
    if (id === null) return;
    this.#parts.store.dispatch({ do: 'look-at', facilityId: id });
    this.#parts.store.dispatch({ do: 'show', view: 'facilities' });
  }

  /** What the worker answers; null where it cannot, which is told. */
  async ask<J extends keyof SourceWork>(job: J, input: SourceWork[J]['in']): Promise<Out<J> | null> {
    const read = await this.read(job, input);
    if (read?.kind === 'read') return read.value;
    if (read) this.#tell(new HostProblem([read.issue.message, read.issue.tip].filter(Boolean).join(' ')));
    return null;
  }

  /** The same with the reason where it cannot; null after a fault of the program, which is told. */
  async read<J extends keyof SourceWork>(
    job: J,
    input: SourceWork[J]['in'],
  ): Promise<SourceRead<Out<J>> | null> {
    const done = await this.#parts.analyst.start(job, input as never).done;
    if (done.kind === 'done') return { kind: 'read', value: done.value as Out<J> };
    if (done.kind === 'refused') return { kind: 'refused', issue: done.issue };
    this.#tell(done);
    return null;
  }

  async #keep({ summary, text }: Out<'records'>): Promise<void> {
    this.#summary = summary;
    try {
      const kept = await call('keepRecords', { text });
      if (!kept.kept)
        this.#tell(
          new HostProblem(`The records were read, and cannot be kept for the next time: ${kept.why}`),
        );
    } catch (error) {
      this.#tell(error);
    }
  }
}

/** As 2026-05-03, where the user is. */
export function today(): string {
  const now = new Date();
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
