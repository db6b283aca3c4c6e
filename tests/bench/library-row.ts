import { join } from 'node:path';
import { defineFacility } from '../../core/analyze.ts';
import { DEFAULT_STANDARD } from '../../core/standard/standards.ts';
import { NOTHING_STATED } from '../../core/standard/stated.ts';
import { importLog, type ImportAsked } from '../../electron/library/import-log.ts';
import { keepNow } from '../../electron/library/to-keep.ts';
import type { Library } from '../../electron/library/library.ts';
import { EVERY_FLIGHT } from '../../electron/bridge/every-flight.ts';
import type { FlightFilter, FlightOrder } from '../../electron/bridge/library-calls.ts';
import { flightRows } from '../../electron/library/flight-rows.ts';
import { lessonPage } from '../../electron/library/lesson-page.ts';
import { listApproaches } from '../../electron/library/lists.ts';
import { progressOf } from '../../core/progress/progress-of.ts';
import type { SchoolPage } from '../../core/progress/school/school-page.ts';
import { openLibrary } from '../../electron/library/open-library.ts';
import { overviewOf } from '../../electron/library/overview.ts';
import { personNamed } from '../../electron/library/people.ts';
import { progressInput } from '../../electron/library/progress-input.ts';
import { schoolPage } from '../../electron/library/school-page.ts';
import { SAMPLE_FACILITIES, sampleFiles } from '../support/samples/sample-files.ts';
import { timingOf } from './measure.ts';
import { assert, type Row } from './rows.ts';

const APPROACHES = 20_000;
const STUDENTS = 100;
const ROUNDS = 9;
const JOB = { progress: () => {}, cancelled: () => false };

/**
 * A library of 20,000 approaches: opened, listed whole, and what the page asks of it: the first rows in an order that
 * no index has, those with a word, one student's, one lesson. The sample flights are imported as a user would import
 * them, with their debriefs; their rows are multiplied by SQL.
 */
export async function libraryLists(folder: string): Promise<Row> {
  const path = join(folder, 'library');
  await fill(path);
  const times = new Map<string, number[]>();
  for (let round = 0; round < ROUNDS; round++) {
    let library!: Library;
    const time = async (what: string, work: () => unknown) => {
      const ms = await timed(work);
      times.set(what, [...(times.get(what) ?? []), ms]);
    };
    await time('open', async () => void (library = await openLibrary(path, 'existing')));
    for (const [what, work] of asked(library)) await time(what, work);
    library.close();
  }
  const timings = [...times].map(([what, ms]) => ({ what, timing: timingOf(ms) }));
  const slowest = timings.reduce((a, b) => (b.timing.median > a.timing.median ? b : a));
  return {
    what: 'library of 20,000 approaches: the slowest of what a page asks of it, in ms',
    budget: 150,
    ratio: slowest.timing.median,
    spread: slowest.timing,
    detail: timings.map(({ what, timing }) => `${what} ${timing.median.toFixed(1)} ms`).join(', '),
  };
}

const NEWEST = { by: 'flown', isDown: true } as const;
const FIRST = { from: 0, count: 100 };

function asked(library: Library): [what: string, work: () => void][] {
  const { id } = personNamed(library, 'student', 'student 7');
  const student = { ...EVERY_FLIGHT, student: { id } };
  const { lessonId } = flightRows(library, student, NEWEST, FIRST).rows[0]!;
  const some = (filter: FlightFilter, order: FlightOrder = NEWEST) => {
    const { total, rows } = flightRows(library, filter, order, FIRST);
    assert(total > 0 && rows.length === Math.min(total, 100), 'a short list');
    return total;
  };
  return [
    ['all of it', () => assert(listApproaches(library, null).length >= APPROACHES, 'a short list')],
    ['overview', () => assert(overviewOf(library).approaches >= APPROACHES, 'a short overview')],
    [
      'by score',
      () => assert(some(EVERY_FLIGHT, { by: 'score', isDown: true }) >= APPROACHES, 'a short list'),
    ],
    ['with words', () => void some({ ...EVERY_FLIGHT, words: 'glidepath lost' })],
    ['with a word of most files', () => void some({ ...EVERY_FLIGHT, words: 'csv' })],
    [
      'by student',
      () => assert(some(EVERY_FLIGHT, { by: 'student', isDown: false }) >= APPROACHES, 'a short list'),
    ],
    [
      'one student',
      () => {
        const total = some(student);
        assert(total > APPROACHES / STUDENTS / 2 && total < (APPROACHES / STUDENTS) * 2, 'another list');
      },
    ],
    [
      'one student across lessons',
      () => {
        const record = progressOf(progressInput(library, { id, name: 'Student 7' }, []));
        const left = record.leftOut.reduce((sum, { count }) => sum + count, 0);
        assert(record.compared!.approaches + left === some(student), 'another record');
      },
    ],
    ['whole school', () => assertWhole(schoolPage(library, { ...SCHOOL, measure: 'glidepath-final' }))],
    // As when a group is chosen on the page: what was read is used again.
    [
      'the same in groups',
      () => assertWhole(schoolPage(library, { ...SCHOOL, measure: 'glidepath-final', groupBy: 'log-kind' })),
    ],
    ['one lesson', () => assert(lessonPage(library, lessonId)!.approaches.length > 0, 'an empty lesson')],
  ];
}

const SCHOOL = {
  filter: { standardKey: null, engineVersion: null, from: null, to: null, mix: {} },
  groupBy: null,
  isNamed: false,
} as const;

function assertWhole(page: SchoolPage | null): void {
  const { compared, leftOut } = page!.school;
  const left = leftOut.reduce((sum, { count }) => sum + count, 0);
  assert(compared!.students === STUDENTS, `${compared!.students} students`);
  assert(compared!.approaches + left > APPROACHES / 2, 'a small school');
}

async function timed(work: () => unknown): Promise<number> {
  const startMs = performance.now();
  await work();
  return performance.now() - startMs;
}

async function fill(path: string): Promise<void> {
  const library = await openLibrary(path, 'create');
  try {
    const asked = askedOf();
    const logs = [...sampleFiles()].filter(([name]) => /\.(csv|gpx)$/.test(name));
    for (const [i, [name, text]] of logs.entries()) {
      const bytes = Buffer.from(text);
      // Two in a lesson, as many students fly.
      const date = `2026-05-${String(Math.floor(i / 2) + 1).padStart(2, '0')}`;
      const toKeep = await importLog(library, { name, bytes }, { ...asked, date }, JOB);
      const imported = keepNow(library, toKeep);
      assert(imported.ok, `${name} is refused`);
    }
    library.write(() => multiply(library, listApproaches(library, null).length));
  } finally {
    library.close();
  }
}

function askedOf(): ImportAsked {
  const [first, ...others] = [...SAMPLE_FACILITIES].map(([name, facility]) => {
    const defined = defineFacility(JSON.stringify(facility), name);
    assert(defined.ok, `${name} is refused`);
    return defined.value;
  });
  return {
    facilities: [first!, ...others],
    settings: {},
    judging: { standard: DEFAULT_STANDARD, stated: NOTHING_STATED },
    student: null,
    date: null,
  };
}

/** Copies every lesson with its logs, debriefs and approaches, a student and a day to each copy, day after day. */
function multiply(library: Library, flown: number): void {
  const copies = Math.ceil(APPROACHES / flown);
  const student = `'s' || (n % ${STUDENTS})`;
  const day = "date('2020-01-01', '+' || n || ' days')";
  const log = "printf('%.56s%08d', logs.sha256, n)";
  const copied = `JOIN approaches ON approaches.id = approach_id
    JOIN approaches AS copied ON copied.debrief_id = approaches.debrief_id || n AND copied.number = approaches.number`;
  const each = (sql: string) =>
    library.execute(
      `WITH RECURSIVE copy (n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM copy WHERE n < ${copies}) ${sql}`,
    );
  for (let i = 0; i < STUDENTS; i++)
    library.execute(
      "INSERT INTO people VALUES (?, 'student', ?, '2026')",
      `s${i}`,
      i % 2 === 0 ? `Schülerin ${i}` : `Student ${i}`,
    );
  each(`INSERT INTO lessons (id, student_id, date) SELECT id || n, ${student}, ${day} FROM lessons, copy`);
  each(`INSERT INTO logs SELECT ${log}, lesson_id || n, file_name, bytes, kind, fixes, start_utc, end_utc,
    added_utc FROM logs, copy`);
  each(`INSERT INTO debriefs SELECT id || n, ${log}, facility_sha256, standard_id, standard, stated, settings, heights,
    antenna_height_ft, engine_version, document_sha256, made_utc FROM debriefs, copy, logs
    WHERE logs.sha256 = log_sha256`);
  each(`INSERT INTO documents SELECT debrief_id || n, sha256, engine_version, json_gz FROM documents, copy`);
  each(`INSERT INTO approaches SELECT NULL, debrief_id || n, number, lesson_id || n, ${student}, ${day}, start_utc, facility,
    standard_id, kind, outcome, level, level_low, level_high, score, score_low, score_high, summary
    FROM approaches, copy ORDER BY n`);
  each(`INSERT INTO approach_facts SELECT copied.id, printf('%.56s%08d', log_sha256, n), end_utc, standard_sha256,
    engine_version, mix, gate_1000, gate_500, went_on, by_draft FROM approach_facts, copy ${copied}`);
  each(`INSERT INTO measures SELECT copied.id, criterion, place, title, verdict, inside_share, why_no_share, rms, why_no_rms
    FROM measures, copy ${copied}`);
}
