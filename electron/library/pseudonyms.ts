import { randomBytes, randomUUID } from 'node:crypto';
import type { Debrief } from '../../core/debrief/debrief.ts';
import type { LogSettings } from '../../core/log/log.ts';
import type { Standard } from '../../core/standard/standard.ts';
import { standardById } from '../../core/standard/standards.ts';
import type { Stated } from '../../core/standard/stated.ts';
import { documentText } from './documents.ts';
import { from, type Library } from './library.ts';
import { sha256Of } from './log-files.ts';
import type { Pace } from './pace.ts';
import {
  redactedDebrief,
  redactedSettings,
  redactedStated,
  withoutNames,
  type OtherNames,
} from './redacted-debrief.ts';
import { facilityAliases, type FacilityAlias } from './redacted-facility.ts';
import { shuffled } from './shuffled.ts';
import { rowsOf } from './snapshot.ts';
import { StandIns } from './stand-ins.ts';
import type { ApproachRow, Document, KeptDebrief, Lesson, RecordTable, Tables } from './tables.ts';

/** A row as an export has it: a document's JSON stands in the open, and an approach has no number of the file's own. */
export type OpenRow<Table extends RecordTable> = Table extends keyof OpenRows
  ? OpenRows[Table]
  : Tables[Table];
interface OpenRows {
  documents: Omit<Document, 'json_gz'> & { readonly json: Debrief };
  approaches: Omit<ApproachRow, 'id'>;
}

/** What goes out in place of a row; null for nothing. */
type Rules = { readonly [Table in RecordTable]: (row: OpenRow<Table>) => OpenRow<Table> | null };

/** What a log goes by instead. */
type Alias = { readonly name: string; readonly sha256: string };

/**
 * Rows of a library under other names: people and aircraft are numbered by chance, logs are "log 17.csv", ids are new,
 * and what somebody wrote is left out. What stands for what is in memory alone and kept nowhere. Of moments at which
 * something was done the day stays, since the order of them would lead back. Without the logs their hashes go too, which
 * would tell whoever has a log that it is that one. Made from the library as it is at the moment of the rows.
 */
export class Pseudonyms {
  readonly #hasLogs: boolean;
  readonly #people: ReadonlyMap<string, string>;
  readonly #aircraft: ReadonlyMap<string, string>;
  readonly #logs: ReadonlyMap<string, Alias>;
  readonly #facilities: ReadonlyMap<string, FacilityAlias>;
  readonly #names: OtherNames;
  readonly #ids = new Map<string, string>();
  /** What a document's hash is, by what it was. */
  readonly #documents = new Map<string, string>();
  readonly #rules: Rules;

  /** `pace` gets a step for each document: they are read beforehand, since debriefs come out before what they name. */
  static async of(library: Library, hasLogs: boolean, pace: Pace): Promise<Pseudonyms> {
    const made = new Pseudonyms(library, hasLogs);
    for (const { sha256, json_gz } of rowsOf<Document>(library, 'documents')) {
      await pace.step();
      const debrief = JSON.parse(documentText(sha256, json_gz)) as Debrief;
      made.#documents.set(sha256, sha256Of(JSON.stringify(made.#redacted(debrief))));
    }
    return made;
  }

  private constructor(library: Library, hasLogs: boolean) {
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
    const standIns = new StandIns([
      ...people.map(({ id, name }) => [name, this.#people.get(id)!] as const),
      ...logs.map(({ sha256, file_name }) => [file_name, this.#logs.get(sha256)!.name] as const),
      ...this.#aircraft,
    ]);
    this.#names = { standIns, ownIds: ownIdsOf(library) };
    this.#facilities = facilityAliases(library, this.#logs);
    this.#rules = this.#rulesOf();
  }

  /** What goes out in place of a row; null for nothing. */
  row<Table extends RecordTable>(table: Table, row: OpenRow<Table>): OpenRow<Table> | null {
    return this.#rules[table](row);
  }

  #rulesOf(): Rules {
    return {
      people: (row) => ({ ...row, ...this.#named(row), added_utc: dayOf(row.added_utc) }),
      lessons: (row) => this.#lesson(row),
      facilities: (row) => ({ ...row, ...this.#facilities.get(row.sha256), added_utc: dayOf(row.added_utc) }),
      logs: (row) => {
        const { name, sha256 } = this.#logs.get(row.sha256)!;
        const lesson_id = this.#id(row.lesson_id);
        return { ...row, sha256, file_name: name, lesson_id, added_utc: dayOf(row.added_utc) };
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
        standard_id: this.#ownId(row.standard_id),
        summary: this.#names.standIns.in(row.summary),
      }),
      notes: () => null,
      estimates: (row) =>
        row.level === null
          ? null
          : {
              ...row,
              ...this.#refers(row),
              id: this.#id(row.id),
              words: null,
              given_utc: dayOf(row.given_utc),
            },
      goals: () => null,
      signatures: (row) => ({
        ...row,
        ...this.#refers(row),
        id: this.#id(row.id),
        document_sha256: this.#documents.get(row.document_sha256)!,
        person_id: this.#id(row.person_id),
        signed_utc: dayOf(row.signed_utc),
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
      facility_sha256: this.#facilities.get(row.facility_sha256)?.sha256 ?? row.facility_sha256,
      standard_id: this.#ownId(row.standard_id),
      standard: JSON.stringify(withoutNames(JSON.parse(row.standard), this.#names)),
      stated: JSON.stringify(withoutNames(redactedStated(JSON.parse(row.stated) as Stated), this.#names)),
      settings: JSON.stringify(this.#hasLogs ? settings : redactedSettings(settings)),
      document_sha256: this.#documents.get(row.document_sha256)!,
      made_utc: dayOf(row.made_utc),
    };
  }

  #redacted(debrief: Debrief): Debrief {
    const log = this.#logs.get(debrief.log.sha256)!;
    return redactedDebrief(debrief, { ...this.#names, log, hasLogs: this.#hasLogs });
  }

  #ownId(id: string): string {
    return this.#names.ownIds.get(id) ?? id;
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

/** Ids that somebody chose may say whose a standard is. */
function ownIdsOf(library: Library): Map<string, string> {
  const kept = library.all(from.selectFrom('debriefs').select('standard').distinct());
  const own = kept
    .map(({ standard }) => JSON.parse(standard) as Standard)
    .filter(({ id }) => standardById(id) === null);
  const numbered = (ids: readonly string[], word: string) =>
    shuffled([...new Set(ids)]).map((id, i) => [id, `${word}-${i + 1}`] as const);
  const criteria = own.flatMap((standard) => standard.own.map(({ id }) => id));
  return new Map([
    ...numbered(criteria, 'own-criterion'),
    ...numbered(
      own.map(({ id }) => id),
      'own-standard',
    ),
  ]);
}

/** The first moment of the day. */
function dayOf(utc: string): string {
  return `${utc.slice(0, 10)}T00:00:00.000Z`;
}
