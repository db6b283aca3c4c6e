import { createReadStream, existsSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { gzipSync } from 'node:zlib';
import type { NamedLog } from './backup.ts';
import { EXPORT_FILE, EXPORT_FORMAT, type ExportHead } from './export-library.ts';
import { findDebrief } from './keep-flight.ts';
import { from, type Library } from './library.ts';
import { LogFiles, sha256Of } from './log-files.ts';
import { writeWithLogs } from './pending-logs.ts';
import { peopleNamed } from './people.ts';
import { refuseLibrary } from './refusal.ts';
import { RECORD_TABLES, type KeptDebrief, type Lesson, type Person, type RecordTable } from './tables.ts';
import type { Watch } from './watch.ts';

type Value = null | number | string | Uint8Array;
type Row = Record<string, Value>;

interface Merged {
  readonly added: number;
  /** Logs whose files came not whole, or not. */
  readonly missing: readonly string[];
  /** The export was made without the logs: none of those is lost. */
  readonly withoutLogs: boolean;
}

/**
 * Adds what another library exported; what is here already stays as it is. People of one name and role are one person,
 * and a log that is here is not taken twice. All of it comes in one commit or nothing; a log whose file the export has
 * not whole comes without it, and `missing` names it.
 */
export async function mergeExport(library: Library, folder: string, watch: Watch): Promise<Merged> {
  const { head, rows } = await readRows(library, join(folder, EXPORT_FILE));
  const logFiles = new LogFiles(join(folder, 'logs'));
  const logs = rows.filter(([table]) => table === 'logs').map(([, row]) => row as unknown as NamedLog);
  const coming = logs.filter(({ sha256 }) => !isHere(library, sha256));
  const missing: string[] = [];
  const whole: string[] = [];
  for (const [i, { sha256, file_name }] of coming.entries()) {
    await watch(i / coming.length);
    if (logFiles.state(sha256) === 'whole') whole.push(sha256);
    else missing.push(file_name);
  }
  return writeWithLogs(library, whole, () => {
    for (const sha256 of whole) library.logFiles.put(sha256, logFiles.read(sha256, sha256));
    const added = new Merging(library, rows, head.pseudonyms === true).all(folder);
    return { added, missing, withoutLogs: head.logs === false };
  });
}

async function readRows(
  library: Library,
  path: string,
): Promise<{ head: ExportHead; rows: [RecordTable, Row][] }> {
  if (!existsSync(path))
    refuseLibrary('export-unreadable', `${path} is not there: it is no exported library.`);
  const rows: [RecordTable, Row][] = [];
  let head: ExportHead | null = null;
  let number = 0;
  for await (const text of createInterface({ input: createReadStream(path), crlfDelay: Infinity })) {
    number++;
    const line = parsed(text);
    if (number === 1) head = headOf(library, path, line);
    else {
      const read = rowOf(line);
      if (read === null)
        refuseLibrary('export-unreadable', `${path} cannot be used: line ${number} is no row of a library.`);
      rows.push(read);
    }
  }
  if (head === null) refuseLibrary('export-unreadable', `${path} is empty.`);
  return { head, rows };
}

function headOf(library: Library, path: string, line: Record<string, unknown>): ExportHead {
  if (line['format'] !== EXPORT_FORMAT) refuseLibrary('export-unreadable', `${path} is no exported library.`);
  if (typeof line['version'] !== 'number' || line['version'] > library.version())
    refuseLibrary('library-newer', `${path} was exported by a newer version of Halfdot.`);
  return line as unknown as ExportHead;
}

function parsed(text: string): Record<string, unknown> {
  try {
    const value = JSON.parse(text) as unknown;
    return value !== null && typeof value === 'object' ? (value as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}

/** A row with its table; null for anything else, and for a debrief that is not what its hash says. */
function rowOf({ table, row }: Record<string, unknown>): [RecordTable, Row] | null {
  const known = RECORD_TABLES.find((name) => name === table);
  if (!known || row === null || typeof row !== 'object') return null;
  const { json, ...rest } = row as Record<string, unknown>;
  if (known === 'documents') {
    const text = JSON.stringify(json);
    if (text === undefined || sha256Of(text) !== rest['sha256']) return null;
    rest['json_gz'] = gzipSync(text);
  }
  // A number of the other file's own, which here is another's.
  if (known === 'approaches') delete rest['id'];
  const values = Object.values(rest);
  const isPlain = (value: unknown) =>
    value === null || ['string', 'number'].includes(typeof value) || value instanceof Uint8Array;
  const names = Object.keys(rest);
  if (!values.every(isPlain) || !names.every((name) => /^[a-z0-9_]+$/.test(name))) return null;
  return [known, rest as Row];
}

/** Rows of another library on their way into this one. Within a `write`. */
class Merging {
  readonly #library: Library;
  readonly #rows: readonly (readonly [RecordTable, Row])[];
  /** Its "Student 1" is nobody else's. */
  readonly #hasPseudonyms: boolean;
  /** Ids of the other library, and what the same goes by here. */
  readonly #ids = new Map<Value, string>();
  /** People who came: two of the other library stay two, however alike their names are. */
  readonly #came = new Set<string>();
  /** Debriefs that were here before: their approaches stay, and of the other's documents come those that were signed. */
  readonly #known = new Set<Value>();
  readonly #signed: ReadonlySet<Value>;

  constructor(library: Library, rows: readonly (readonly [RecordTable, Row])[], hasPseudonyms: boolean) {
    this.#library = library;
    this.#rows = rows;
    this.#hasPseudonyms = hasPseudonyms;
    this.#signed = new Set(
      rows.flatMap(([table, row]) => (table === 'signatures' ? [row['document_sha256']!] : [])),
    );
  }

  /** Adds what is not here, and says how many rows that were. */
  all(folder: string): number {
    this.#knowLessons();
    let added = 0;
    try {
      for (const [table, row] of this.#rows) if (this.#add(table, row)) added++;
    } catch (error) {
      // A constraint that does not hold, or a column that there is not.
      if (![1, 19].includes(((error as { errcode?: number }).errcode ?? 0) & 0xff)) throw error;
      refuseLibrary('export-unreadable', `${folder} cannot be used: its rows do not fit together.`);
    }
    this.#followLogs();
    return added;
  }

  /**
   * A lesson goes by the one that is here where all of its logs are in that, or where a log of it is and both are the
   * same student's of the same day. Any other comes as it is: its other logs are no matter of whose lesson is here.
   */
  #knowLessons(): void {
    const names = new Map(this.#of('people').map(({ id, name }) => [id!, String(name)]));
    const logs = new Map<Value, Value[]>();
    for (const { lesson_id, sha256 } of this.#of('logs'))
      logs.set(lesson_id!, [...(logs.get(lesson_id!) ?? []), sha256!]);
    for (const { id, student_id, date } of this.#of('lessons')) {
      if (this.#lessonHere(id!)) continue;
      const found = (logs.get(id!) ?? []).map((sha256) => this.#lessonOfLog(sha256));
      const student = this.#studentHere(student_id!, names);
      const [first] = found;
      const holdsAll = first && found.every((lesson) => lesson?.id === first.id);
      const isSame = (lesson: Lesson | null) => lesson?.student_id === student && lesson.date === date;
      const here = holdsAll ? first : found.find(isSame);
      if (here) this.#ids.set(id!, here.id);
    }
  }

  /** Who it is here; null where nobody is named. */
  #studentHere(id: Value, names: ReadonlyMap<Value, string>): Value {
    const name = names.get(id);
    if (name === undefined) return null;
    return this.#hasPseudonyms ? id : (this.#personHere('student', name)?.id ?? 'new');
  }

  /** Null as well where it can be two: somebody more is put together by hand, and one too few is not parted again. */
  #personHere(role: Person['role'], name: string): Person | null {
    const [one = null, ...others] = peopleNamed(this.#library, role, name);
    return others.length > 0 ? null : one;
  }

  #of(wanted: RecordTable): Row[] {
    return this.#rows.flatMap(([table, row]) => (table === wanted ? [row] : []));
  }

  #lessonHere(id: Value): boolean {
    return this.#library.first(from.selectFrom('lessons').select('id').where('id', '=', String(id))) !== null;
  }

  #lessonOfLog(sha256: Value): Lesson | null {
    return this.#library.first(
      from
        .selectFrom('logs')
        .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
        .selectAll('lessons')
        .where('logs.sha256', '=', String(sha256)),
    );
  }

  /** A log that was here already keeps its lesson, and what came for it follows. */
  #followLogs(): void {
    const lesson =
      'FROM debriefs JOIN logs ON logs.sha256 = debriefs.log_sha256 JOIN lessons ON lessons.id = logs.lesson_id';
    this.#library.execute(
      'UPDATE approaches SET (lesson_id, student_id, date) = ' +
        `(SELECT lessons.id, lessons.student_id, lessons.date ${lesson} WHERE debriefs.id = approaches.debrief_id)`,
    );
    this.#library.execute(
      `UPDATE notes SET lesson_id = (SELECT lessons.id ${lesson} WHERE debriefs.id = notes.debrief_id) ` +
        'WHERE debrief_id IS NOT NULL',
    );
  }

  #add(table: RecordTable, theirs: Row): boolean {
    const row = Object.fromEntries(
      Object.entries(theirs).map(([name, value]) => [name, this.#ids.get(value) ?? value]),
    );
    const here = this.#idHere(table, row);
    if (here !== null) {
      if (here !== row['id']) this.#ids.set(row['id']!, here);
      if (table === 'debriefs') this.#known.add(here);
      return false;
    }
    if (this.#known.has(row['debrief_id']!)) {
      if (table === 'approaches') return false;
      if (table === 'documents' && !this.#signed.has(row['sha256']!)) return false;
    }
    if (table === 'people' && this.#hasPseudonyms) row['name'] = this.#freeName(row as unknown as Person);
    const names = Object.keys(row);
    const values = names.map(() => '?').join(', ');
    const added = this.#library.execute(
      `INSERT INTO ${table} (${names.join(', ')}) VALUES (${values}) ON CONFLICT DO NOTHING`,
      ...Object.values(row),
    );
    return added > 0;
  }

  /** "Student 1", or "Student 1 (2)" where that is the first of another export. */
  #freeName({ role, name }: Person): string {
    let free = name;
    for (let n = 2; peopleNamed(this.#library, role, free).length > 0; n++) free = `${name} (${n})`;
    return free;
  }

  #idHere(table: RecordTable, row: Row): string | null {
    if (table === 'people') {
      const { id, role, name } = row as unknown as Person;
      const person = this.#hasPseudonyms
        ? this.#library.first(from.selectFrom('people').select('id').where('id', '=', id))
        : this.#personHere(role, String(name));
      if (person && !this.#came.has(person.id)) return person.id;
      this.#came.add(id);
      return null;
    }
    if (table !== 'debriefs') return null;
    const { log_sha256, facility_sha256, standard_id } = row as unknown as KeptDebrief;
    return findDebrief(this.#library, log_sha256, facility_sha256, standard_id);
  }
}

function isHere(library: Library, sha256: string): boolean {
  return library.first(from.selectFrom('logs').select('sha256').where('sha256', '=', sha256)) !== null;
}
