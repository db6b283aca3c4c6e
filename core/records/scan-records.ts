import type { Issue, Outcome } from '../issue/issue.ts';
import { usable } from '../issue/issue.ts';
import type { Job } from '../log/log.ts';
import { TextStream } from '../log/text-stream.ts';
import { whole } from '../units/whole.ts';
import { airacCycle } from '../facility/airac.ts';
import { readHeader, type RecordsHeader } from './header-record.ts';
import { HeldRecords } from './held-records.ts';
import { ilsIn } from './ils-listing.ts';
import { LineCutter } from './line-cutter.ts';
import { isContinuation, kindOfRecord } from './record-kind.ts';
import { recordsIssue, recordsRefused } from './records-issue.ts';
import { RECORDS_FORMAT, type RecordsIndex, type UnreadableRecord } from './records-index.ts';

/** Of so many unreadable records line and reason are kept; more help nobody. */
const UNREADABLE_KEPT = 50;
/** Shorter than any record without its trailing blanks: those end in a number and a cycle. */
const RECORD_MIN_CHARS = 40;
/** A header counts a few lines more or fewer than there are; a file that was cut short lacks more (our own choice). */
const COUNT_SLACK = 0.01;

/**
 * Reads a file of ARINC 424-18 records once, from its beginning to its end, into the index that facilities are made
 * from. Memory stays bounded whatever the size. A record that cannot be read is counted and its line kept, never
 * guessed. Refused is what holds no record, or is packed, and `cancelled` where the job was stopped.
 *
 * @param chunks decoded text in pieces of any size
 * @param size in characters or bytes, for progress; null when unknown
 */
export async function scanRecords(
  chunks: Iterable<string> | AsyncIterable<string>,
  size: number | null,
  job: Job,
): Promise<Outcome<RecordsIndex>> {
  const source = { name: 'records', sha256: () => '', size, chunks };
  const text = await TextStream.open(source, job);
  try {
    const foreign = foreignText(text.head);
    if (foreign !== null) return foreign;
    const pass = new Pass();
    for await (const block of text.blocks()) pass.block(block);
    if (text.cancelled) return recordsRefused('cancelled', 'Reading the records was stopped.');
    return pass.finish();
  } finally {
    await text.close();
  }
}

function foreignText(head: string): Outcome<never> | null {
  if (/^[\s\0]*$/.test(head)) return recordsRefused('records-file-empty', 'The file of records is empty.');
  if (!/^(?:PK[\u0003\u0005]|\u001f[\u2039\u008b])/.test(head)) return null;
  return recordsRefused('records-file-packed', 'The file of records is packed.', {
    tip: 'Unpack it, and open the large text file in it.',
  });
}

/** One pass through the lines of a file. */
class Pass {
  readonly #cutter = new LineCutter();
  readonly #held = new HeldRecords();
  readonly #header: RecordsHeader = { cycle: null, effectiveDay: null, recordCount: null };
  readonly #unreadable: UnreadableRecord[] = [];
  #line = 0;
  #read = 0;
  #unreadableCount = 0;
  #continuations = 0;

  block(block: string): void {
    for (const line of this.#cutter.push(block)) this.#take(line);
  }

  finish(): Outcome<RecordsIndex> {
    this.#take(this.#cutter.end());
    if (this.#read === 0)
      return recordsRefused('records-none', 'The file holds no record of ARINC 424.', {
        tip: 'Official records are lines of 132 columns that begin with S and three letters.',
      });
    const airports = this.#held.airports();
    const { cycle, effectiveDay } = this.#header;
    return usable({
      format: RECORDS_FORMAT,
      cycle,
      effectiveDay: effectiveDay ?? (cycle === null ? null : (airacCycle(cycle)?.firstDay ?? null)),
      recordsRead: this.#read,
      continuations: this.#continuations,
      recordsUnreadable: this.#unreadableCount,
      unreadable: this.#unreadable,
      airports,
      issues: this.#issues(ilsIn({ airports }).some(({ hasGlideslope }) => hasGlideslope)),
    });
  }

  #take(written: string): void {
    this.#line++;
    const line = inCapitals(written);
    if (/^[\s\0\u001a]*$/.test(line)) return;
    const kind = line.length < RECORD_MIN_CHARS ? null : kindOfRecord(line);
    if (line.startsWith('HDR')) readHeader(line, this.#header);
    else if (kind === null) this.#refuse('it is no record');
    else if (isContinuation(line, kind)) {
      this.#read++;
      this.#continuations++;
    } else {
      const fault = this.#held.take(line, kind);
      if (fault === null) this.#read++;
      else this.#refuse(fault);
    }
  }

  #refuse(why: string): void {
    this.#unreadableCount++;
    if (this.#unreadable.length < UNREADABLE_KEPT) this.#unreadable.push({ line: this.#line, why });
  }

  #issues(hasIls: boolean): Issue[] {
    const issues: Issue[] = [];
    const count = this.#unreadableCount;
    const first = this.#unreadable[0];
    if (first !== undefined) {
      const message = `${count === 1 ? 'One record' : `${whole(count)} records`} could not be read and ${count === 1 ? 'is' : 'are'} left out: ${first.why}`;
      issues.push(recordsIssue('records-unreadable', `${message}.`, { count, firstLine: first.line }));
    }
    const said = this.#header.recordCount;
    if (said !== null && this.#read + count < said * (1 - COUNT_SLACK)) {
      const message = `The header counts ${whole(said)} records, and the file holds ${whole(this.#read + count)}: it was cut short, or is a part of another`;
      issues.push(recordsIssue('records-fewer-than-said', `${message}.`));
    }
    if (this.#held.tooMany > 0) {
      const message = `The file holds more records than can be held at a time: ${whole(this.#held.tooMany)} were left out`;
      const tip = 'Use the file of one country.';
      issues.push(recordsIssue('records-too-many', `${message}.`, { count: this.#held.tooMany, tip }));
    }
    if (!hasIls)
      issues.push(
        recordsIssue('records-no-ils', 'No airport in this file has a localizer with a glideslope.'),
      );
    return issues;
  }
}

/** Capitals of ASCII only, so that no letter becomes two and moves the columns behind it. */
function inCapitals(line: string): string {
  return /[a-z]/.test(line) ? line.replaceAll(/[a-z]+/g, (letters) => letters.toUpperCase()) : line;
}
