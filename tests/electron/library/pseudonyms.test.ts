import { copyFileSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import type { Debrief } from '../../../core/debrief/debrief.ts';
import { readDocument } from '../../../electron/library/documents.ts';
import { exportLibrary } from '../../../electron/library/export-library.ts';
import { changeLesson } from '../../../electron/library/lessons.ts';
import { from, type Library } from '../../../electron/library/library.ts';
import { sha256Of } from '../../../electron/library/log-files.ts';
import { keepPerson } from '../../../electron/library/people.ts';
import { addEstimate, addNote, agreeGoal, sign } from '../../../electron/library/record.ts';
import { command, everything, FACILITY, newFolder, opened, SAMPLES } from './some-library.ts';

const LOGS: readonly (readonly [sample: string, named: string, student: string])[] = [
  ['first-approach.csv', 'Rowan Teal Saturday.csv', 'Rowan Teal'],
  ['phone.gpx', 'from Hazel.gpx', 'Hazel Wren'],
  ['went-around.csv', 'teal-2.csv', 'Rowan Teal'],
];
const DRAFTED_FROM = 'went-around.csv';
const INSTRUCTOR = 'Juniper Crane';
/** What somebody wrote, each where it can be written. */
const WORDS = {
  note: 'a cross-check that wanders',
  objective: 'glidepath from below',
  goal: 'be down by the fix',
  estimate: 'felt rushed all along',
  turbulence: 'bumpy below the ridge',
  reason: 'gusts over the hangar',
  syllabus: 'lesson of the barbecue',
  aircraft: 'Old Teal One',
  standard: 'As Rowan Teal likes it',
  standardId: 'teal-checkride',
  criterionId: 'junipers-bank',
} as const;

let library = '';
let ids: string[] = [];
beforeAll(async () => {
  library = join(newFolder(), 'library');
  const logs = newFolder();
  const standard = join(logs, 'own.json');
  const own = {
    format: 'halfdot-standard/1',
    id: WORDS.standardId,
    title: WORDS.standard,
    source: 'our plan',
  };
  const criterion = { id: WORDS.criterionId, title: 'Bank', quantity: 'bankDeg', lower: -20, upper: 20 };
  writeFileSync(standard, JSON.stringify({ ...own, basedOn: 'instrument-rating', own: [criterion] }));
  // It names the log that it was drafted from, and no log is judged by its own.
  const drafted = join(logs, 'drafted.json');
  const logSha256 = sha256Of(readFileSync(join(SAMPLES, DRAFTED_FROM)));
  const plain = JSON.parse(readFileSync(FACILITY, 'utf8')) as object;
  writeFileSync(drafted, JSON.stringify({ ...plain, origin: { landing: { logSha256, unconfirmed: [] } } }));
  for (const [sample, named, student] of LOGS) {
    copyFileSync(join(SAMPLES, sample), join(logs, named));
    const words = [
      '--facility',
      sample === DRAFTED_FROM ? FACILITY : drafted,
      '--student',
      student,
      '--standard',
      standard,
    ];
    const stated = ['--turbulence', WORDS.turbulence, '--allow', `airspeed-final=5: ${WORDS.reason}`];
    const target = ['--target-airspeed', '90'];
    const said = await command(library, 'import', join(logs, named), ...words, ...stated, ...target);
    expect(said.answer).toContain('1 log kept');
  }
  await opened(library, writeEverywhere);
  ids = Object.values(await everything(library))
    .flat()
    .flatMap((row) => Object.entries(row as object))
    .flatMap(([key, value]) =>
      /(^|_)id$/.test(key) && key !== 'standard_id' && value !== null ? [String(value)] : [],
    );
});

/** Words wherever a library takes any, and a signature. */
function writeEverywhere(open: Library): void {
  const person_id = open.write(() => keepPerson(open, 'instructor', INSTRUCTOR));
  const { id: lesson_id, student_id } = open.first(from.selectFrom('lessons').selectAll())!;
  changeLesson(open, lesson_id, {
    instructor_id: person_id,
    aircraft: WORDS.aircraft,
    objective: WORDS.objective,
    syllabus_number: WORDS.syllabus,
  });
  agreeGoal(open, { student_id: student_id!, lesson_id, text: WORDS.goal });
  for (const { id } of open.all(from.selectFrom('debriefs').select('id'))) {
    sign(open, { debrief_id: id, person_id, act: 'graded' });
    addEstimate(open, { debrief_id: id, about_utc: null, level: 3, words: WORDS.estimate });
    addEstimate(open, { debrief_id: id, about_utc: null, level: null, words: WORDS.estimate });
  }
  const note = { lesson_id, debrief_id: null, about_utc: null, author_id: person_id, text: WORDS.note };
  addNote(open, note);
}

async function exported(...words: string[]): Promise<{ out: string; answer: string }> {
  const out = join(newFolder(), 'out');
  const said = await command(library, 'export', out, ...words);
  expect(said).toMatchObject({ status: 0, messages: [] });
  return { out, answer: said.answer };
}

function found(folder: string, words: readonly string[]): string[] {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  const held = files
    .filter((name) => name.endsWith('.jsonl'))
    .map((name) => readFileSync(join(folder, name)));
  expect(held.length).toBeGreaterThan(0);
  const all = [...held, Buffer.from(files.join('\n'))].map((bytes) => [
    bytes.toString('utf8').toLowerCase(),
    bytes.toString('latin1').toLowerCase(),
  ]);
  const spellings = (word: string) =>
    [word, Buffer.from(word, 'utf16le').toString('latin1'), JSON.stringify(word).slice(1, -1)].map((text) =>
      text.toLowerCase(),
    );
  return words.filter((word) =>
    spellings(word).some((text) => all.some((texts) => texts.some((held) => held.includes(text)))),
  );
}

const documentStart = (row: Record<string, unknown>) => (row['json'] as Debrief).log.startUtc;
const names = () => [
  ...new Set(LOGS.map(([, , student]) => student)),
  INSTRUCTOR,
  ...LOGS.map(([, named]) => named),
];
const hashes = async () => {
  const { logs, documents } = await everything(library);
  return [...logs!, ...documents!].map((row) => (row as { sha256: string }).sha256);
};
const rows = (out: string) =>
  readFileSync(join(out, 'library.jsonl'), 'utf8')
    .trimEnd()
    .split('\n')
    .slice(1)
    .map((line) => JSON.parse(line) as { table: string; row: Record<string, unknown> });

describe('an export under pseudonyms', () => {
  it('holds no name, no word that somebody wrote, no id and no hash that leads back; a plain one holds them all', async () => {
    const wanted = [...names(), ...Object.values(WORDS), ...ids, ...(await hashes()), String.raw`\"ele\"`];
    const plain = await exported();
    expect(found(plain.out, wanted)).toEqual(wanted);
    const { out } = await exported('--pseudonyms', 'yes');
    expect(
      found(
        out,
        wanted.filter((word) => word !== WORDS.standard),
      ),
    ).toEqual([]);
    expect(found(out, ['As Student'])).toEqual(['As Student']);
    expect(readdirSync(out)).toEqual(['library.jsonl']);
  });

  it('says that logs may hold a name, leaves them out, and takes them with their hashes where that is asked', async () => {
    const without = await exported('--pseudonyms', 'yes');
    expect(without.answer).toContain('The logs are left out, since their lines may hold a name.');
    const { out, answer } = await exported('--pseudonyms', 'yes', '--logs', 'yes');
    expect(answer).toContain('their lines may hold a name. Look into them before you hand them on');
    const { logs } = await everything(library);
    const files = logs!.map((row) => `${(row as { sha256: string }).sha256}.gz`).sort();
    expect(readdirSync(join(out, 'logs')).sort()).toEqual(files);
    expect(found(out, [...names(), ...ids])).toEqual([]);
    const plain = await exported('--logs', 'no');
    expect(existsSync(join(plain.out, 'logs'))).toBe(false);
    expect(plain.answer).not.toContain('name');
  });

  it('tells of no moment at which something was done, and of no order in which it was', async () => {
    const moments = new Set<string>();
    const orders: Record<string, Set<string>> = { logs: new Set(), lessons: new Set(), documents: new Set() };
    const starts = (table: string, row: Record<string, unknown>) =>
      table === 'logs' ? row['start_utc'] : table === 'lessons' ? row['date'] : documentStart(row);
    for (let i = 0; i < 40 && Object.values(orders).some(({ size }) => size < 2); i++) {
      const { out } = await exported('--pseudonyms', 'yes');
      const all = rows(out);
      for (const { row } of all)
        for (const key of ['added_utc', 'made_utc', 'given_utc', 'signed_utc'])
          if (key in row) moments.add(`${key} ${String(row[key]).slice(10)}`);
      for (const [table, found] of Object.entries(orders))
        found.add(all.flatMap((one) => (one.table === table ? [starts(table, one.row)] : [])).join());
    }
    expect([...moments].sort()).toEqual(
      ['added_utc', 'given_utc', 'made_utc', 'signed_utc'].map((key) => `${key} T00:00:00.000Z`),
    );
    for (const found of Object.values(orders)) expect(found.size).toBeGreaterThan(1);
  });

  it('calls a standard of one’s own and its criteria alike wherever they are named', async () => {
    const { out } = await exported('--pseudonyms', 'yes');
    const all = rows(out);
    const of = (table: string) => all.flatMap((one) => (one.table === table ? [one.row] : []));
    for (const { standard_id, standard } of of('debriefs')) {
      expect(standard_id).toBe('own-standard-1');
      const own = [{ id: 'own-criterion-1', title: 'Bank' }];
      expect(JSON.parse(String(standard))).toMatchObject({ id: standard_id, own });
    }
    for (const { standard_id, ...others } of of('approaches')) {
      expect(standard_id).toBe('own-standard-1');
      // By its number in the file it would be told who came first.
      expect(others).not.toHaveProperty('id');
    }
    for (const { json } of of('documents')) {
      const { standard, approaches } = json as Debrief;
      expect(standard.id).toBe('own-standard-1');
      expect(approaches[0]!.criteria.map(({ id }) => id)).toContain('own-criterion-1');
    }
  });

  it('lets others in while it is made, and holds what was there when it began', async () => {
    await opened(library, async (open) => {
      const before = open.all(from.selectFrom('people').select('id')).length;
      let looks = 0;
      const late = async () => {
        if (looks++ === 0) open.write(() => keepPerson(open, 'student', 'Briar Knot'));
      };
      // Every step takes longer than the stretch without a look.
      let now = 0;
      const slow = vi.spyOn(performance, 'now').mockImplementation(() => (now += 30));
      const out = join(newFolder(), 'out');
      await exportLibrary(open, out, { pseudonyms: true, logs: false }, late);
      slow.mockRestore();
      expect(looks).toBeGreaterThan(10);
      expect(rows(out).filter(({ table }) => table === 'people')).toHaveLength(before);
      const { id } = open.first(from.selectFrom('people').select('id').where('name', '=', 'Briar Knot'))!;
      open.write(() => open.run(from.deleteFrom('people').where('id', '=', id)));
    });
  });

  it('keeps dates, figures and what belongs to what', async () => {
    const { out } = await exported('--pseudonyms', 'yes');
    const approaches = (await everything(library))['approaches'] as Record<string, unknown>[];
    const written = rows(out).filter(({ table }) => table === 'approaches');
    const figures = ({ date, start_utc, level, score, outcome, facility }: Record<string, unknown>) =>
      [date, start_utc, level, score, outcome, facility].join();
    expect(written.map(({ row }) => figures(row)).sort()).toEqual(approaches.map(figures).sort());
    const people = rows(out).filter(({ table }) => table === 'people');
    expect(people.map(({ row }) => row['name']).sort()).toEqual(['Instructor 1', 'Student 1', 'Student 2']);
    const files = rows(out).flatMap(({ table, row }) => (table === 'logs' ? [row['file_name']] : []));
    expect(files.sort()).toEqual([expect.stringMatching(/^log [123]\.(csv|gpx)$/), ...files.slice(1).sort()]);
    const shared = written.filter(({ row }) => row['student_id'] === written[0]!.row['student_id']).length;
    expect([1, 2]).toContain(shared);
  });

  it('numbers people by chance, and not as they came', async () => {
    const firsts = new Set<string>();
    for (let i = 0; i < 40 && firsts.size < 2; i++) {
      const { out } = await exported('--pseudonyms', 'yes');
      const all = rows(out);
      const whose = (name: string) => all.find(({ row }) => row['name'] === name)!.row['id'];
      const one = all.filter(
        ({ table, row }) => table === 'lessons' && row['student_id'] === whose('Student 1'),
      );
      firsts.add(one.map(({ row }) => row['date']).join());
    }
    expect(firsts.size).toBe(2);
  });

  it('is read by another library without its logs, whose check then tells that they are missing', async () => {
    const { out } = await exported('--pseudonyms', 'yes');
    const other = join(newFolder(), 'other');
    const said = await command(other, 'import', '--from', out);
    expect(said).toMatchObject({
      status: 0,
      messages: [expect.stringContaining('made without logs, and 3 logs came without the file')],
    });
    expect((await command(other, 'list')).answer).toMatch(/Student 1 .*\nStudent 2 /);
    await opened(other, (open) => {
      for (const { id } of open.all(from.selectFrom('debriefs').select('id'))) {
        const debrief: Debrief = readDocument(open, id);
        expect(debrief.log.file).toMatch(/^log \d\.(csv|gpx)$/);
        expect(debrief.approaches[0]!.stated.allowances).toMatchObject([{ by: 5, reason: 'left out' }]);
      }
    });
    const { status, messages } = await command(other, 'check');
    expect(status).toBe(2);
    expect(messages.filter((line) => line.includes('All 3 logs are missing'))).toHaveLength(1);
    const again = await command(other, 'import', '--from', out);
    expect(again.answer).toContain('0 entries taken in');
  });

  it('is taken in with its logs, whole, and nobody of it is taken for who has that number here', async () => {
    const first = await exported('--pseudonyms', 'yes', '--logs', 'yes');
    const other = join(newFolder(), 'other');
    expect(await command(other, 'import', '--from', first.out)).toMatchObject({ status: 0, messages: [] });
    expect(await command(other, 'check')).toMatchObject({ status: 0, messages: [] });
    const second = await exported('--pseudonyms', 'yes');
    await command(other, 'import', '--from', second.out);
    const { people } = await everything(other);
    expect(people!.map((row) => (row as { name: string }).name).sort()).toEqual([
      'Instructor 1',
      'Instructor 1 (2)',
      'Student 1',
      'Student 1 (2)',
      'Student 2',
      'Student 2 (2)',
    ]);
  });
});
