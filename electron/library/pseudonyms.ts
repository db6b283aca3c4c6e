import { randomBytes, randomInt, randomUUID } from 'node:crypto';
import type { Debrief } from '../../core/debrief/debrief.ts';
import type { LogSettings } from '../../core/log/log.ts';
import type { Stated } from '../../core/standard/stated.ts';
import { documentText } from './documents.ts';
import { from, type Library } from './library.ts';
import { sha256Of } from './log-files.ts';
import {
  redactedDebrief,
  redactedSettings,
  redactedStated,
  textWithoutNames,
  withoutNames,
} from './redacted-debrief.ts';
import type { Document, KeptDebrief, Lesson, RecordTable, Tables } from './tables.ts';

/** A row as an export has it: a document's JSON stands in the open. */
export type OpenRow<Table extends RecordTable> = Table extends 'documents' ? OpenDocument : Tables[Table];
type OpenDocument = Omit<Document, 'json_gz'> & { readonly json: Debrief };

/** What goes out in place of a row; null for nothing. */
type Rules = { readonly [Table in RecordTable]: (row: OpenRow<Table>) => OpenRow<Table> | null };

/** What a log goes by instead. */
type Alias = { readonly name: string; readonly sha256: string };

/**
 * Rows of a library under other names: people and aircraft are numbered by chance, logs are "log 17.csv", ids are new,
 * and what somebody wrote is left out. What stands for what is in memory alone and kept nowhere. Without the logs their
 * hashes go too, which would tell whoever has a log that it is that one. Made within the `write` that reads the rows.
 */
export class Pseudonyms {
  readonly #hasLogs: boolean;
  readonly #people: ReadonlyMap<string, string>;
  readonly #aircraft: ReadonlyMap<string, string>;
  readonly #logs: ReadonlyMap<string, Alias>;
  /** For whatever may stand in a text. */
  readonly #standIns: ReadonlyMap<string, string>;
  readonly #ids = new Map<string, string>();
  /** What a document's hash is, by what it was. */
  readonly #documents: ReadonlyMap<string, string>;
  readonly #rules: Rules;

  constructor(library: Library, hasLogs: boolean) {
    this.#hasLogs = hasLogs;
    const people = shuffled(library.all(from.selectFrom('people').select(['id', 'role', 'name'])));
    const numbered = (role: string, word: string) =>
      people.filter((one) => one.role === role).map(({ id }, i) => [id, `${word} ${i + 1}`] as const);
    this.#people = new Map([...numbered('student', 'Student'), ...numbered('instructor', 'Instructor')]);
    this.#aircraft = aircraftOf(library);
    const logs = shuffled(library.all(from.selectFrom('logs').select(['sha256', 'file_name', 'kind'])));
    this.#logs = new Map(
      logs.map(({ sha256, kind }, i) => [
        sha256,
        { name: `log ${i + 1}.${kind}`, sha256: hasLogs ? sha256 : randomBytes(32).toString('hex') },
      ]),
    );
    this.#standIns = new Map([
      ...people.map(({ id, name }) => [name, this.#people.get(id)!] as const),
      ...logs.map(({ sha256, file_name }) => [file_name, this.#logs.get(sha256)!.name] as const),
      ...this.#aircraft,
    ]);
    this.#documents = this.#hashesOf(library);
    this.#rules = this.#rulesOf();
  }

  /** What goes out in place of a row; null for nothing. */
  of<Table extends RecordTable>(table: Table, row: OpenRow<Table>): OpenRow<Table> | null {
    return this.#rules[table](row);
  }

  #rulesOf(): Rules {
    return {
      // The moment would tell who came first.
      people: (row) => ({
        ...row,
        ...this.#named(row),
        added_utc: `${row.added_utc.slice(0, 10)}T00:00:00.000Z`,
      }),
      lessons: (row) => this.#lesson(row),
      facilities: (row) => row,
      logs: (row) => {
        const { name, sha256 } = this.#logs.get(row.sha256)!;
        return { ...row, sha256, file_name: name, lesson_id: this.#id(row.lesson_id) };
      },
      debriefs: (row) => this.#debrief(row),
      documents: ({ debrief_id, engine_version, ...row }) => {
        const json = this.#redacted(row.json);
        return {
          debrief_id: this.#id(debrief_id),
          sha256: sha256Of(JSON.stringify(json)),
          engine_version,
          json,
        };
      },
      approaches: (row) => ({
        ...row,
        ...this.#refers(row),
        lesson_id: this.#id(row.lesson_id),
        student_id: this.#idOrNull(row.student_id),
        summary: textWithoutNames(row.summary, this.#standIns),
      }),
      notes: () => null,
      estimates: (row) =>
        row.level === null ? null : { ...row, ...this.#refers(row), id: this.#id(row.id), words: null },
      goals: () => null,
      signatures: (row) => ({
        ...row,
        ...this.#refers(row),
        id: this.#id(row.id),
        document_sha256: this.#documents.get(row.document_sha256)!,
        person_id: this.#id(row.person_id),
      }),
    };
  }

  #named({ id }: { readonly id: string }): { id: string; name: string } {
    return { id: this.#id(id), name: this.#people.get(id)! };
  }

  #refers({ debrief_id }: { readonly debrief_id: string }): { debrief_id: string } {
    return { debrief_id: this.#id(debrief_id) };
  }

  #lesson(row: Lesson): Lesson {
    const { syllabus_number, aircraft } = row;
    return {
      ...row,
      id: this.#id(row.id),
      student_id: this.#idOrNull(row.student_id),
      instructor_id: this.#idOrNull(row.instructor_id),
      aircraft: aircraft && this.#aircraft.get(aircraft)!,
      // In figures it is one of the syllabus; anything else is somebody's words.
      syllabus_number: syllabus_number && /^[\d./-]+$/.test(syllabus_number) ? syllabus_number : null,
      objective: null,
    };
  }

  #debrief(row: KeptDebrief): KeptDebrief {
    const settings = JSON.parse(row.settings) as LogSettings;
    return {
      ...row,
      id: this.#id(row.id),
      log_sha256: this.#logs.get(row.log_sha256)!.sha256,
      standard: JSON.stringify(withoutNames(JSON.parse(row.standard), this.#standIns)),
      stated: JSON.stringify(redactedStated(JSON.parse(row.stated) as Stated)),
      settings: JSON.stringify(this.#hasLogs ? settings : redactedSettings(settings)),
      document_sha256: this.#documents.get(row.document_sha256)!,
    };
  }

  #redacted(debrief: Debrief): Debrief {
    const log = this.#logs.get(debrief.log.sha256)!;
    return redactedDebrief(debrief, { log, standIns: this.#standIns, hasLogs: this.#hasLogs });
  }

  /** Beforehand, since debriefs come out before the documents that they name. */
  #hashesOf(library: Library): Map<string, string> {
    const hashes = new Map<string, string>();
    for (const { sha256, json_gz } of library.rows<Document>('SELECT sha256, json_gz FROM documents')) {
      const debrief = JSON.parse(documentText(sha256, json_gz)) as Debrief;
      hashes.set(sha256, sha256Of(JSON.stringify(this.#redacted(debrief))));
    }
    return hashes;
  }

  #id(id: string): string {
    const known = this.#ids.get(id) ?? randomUUID();
    this.#ids.set(id, known);
    return known;
  }

  #idOrNull(id: string | null): string | null {
    return id === null ? null : this.#id(id);
  }
}

function aircraftOf(library: Library): Map<string, string> {
  const flown = library.all(from.selectFrom('lessons').select('aircraft').distinct());
  const names = shuffled(flown.flatMap(({ aircraft }) => aircraft ?? []));
  return new Map(names.map((name, i) => [name, `Aircraft ${i + 1}`]));
}

/** In an order of chance that nobody can foretell. */
function shuffled<T>(values: readonly T[]): T[] {
  const order = [...values];
  for (let i = order.length - 1; i > 0; i--) {
    const j = randomInt(i + 1);
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}
