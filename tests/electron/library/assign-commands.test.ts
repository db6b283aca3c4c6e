import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { from } from '../../../electron/library/library.ts';
import { listApproaches, listLessons } from '../../../electron/library/lists.ts';
import { sha256Of } from '../../../electron/library/log-files.ts';
import { ROOT } from '../../house/source-files.ts';
import {
  command,
  expectWhole,
  FACILITY,
  libraryOf,
  manyLogs,
  newFolder,
  opened,
  SAMPLE,
} from './some-library.ts';

const TEXT = readFileSync(SAMPLE, 'utf8');
const DAY = '2026-03-14';
const ROSTER = 'name,role\nNils Brambling,student\n"Finch, Hugo",\nJuniper Crane,instructor\n';

let made = 0;
/** A log of its own hash: an empty line more at its end. */
const another = (text = TEXT) => text + '\n'.repeat(++made);

/** The log with a column more, that holds these values in turn. */
function withColumn(header: string, ...values: string[]): string {
  const [names, ...rows] = TEXT.trimEnd().split('\n');
  return [`${names},${header}`, ...rows.map((row, i) => `${row},${values[i % values.length]}`)].join('\n');
}

function written(files: Record<string, string>): string {
  const folder = newFolder();
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  return folder;
}

/** A library with nobody but the roster's people in it. */
async function rosterOnly(): Promise<string> {
  const library = join(newFolder(), 'library');
  const said = await command(library, 'roster', join(written({ 'roster.csv': ROSTER }), 'roster.csv'));
  expect(said.status).toBe(0);
  return library;
}

const lessons = (library: string) => opened(library, (open) => listLessons(open, null));
const imported = (library: string, ...words: string[]) =>
  command(library, 'import', '--facility', FACILITY, ...words);

describe('halfdot roster', () => {
  it('adds who is not there, says who was, and removes nobody', async () => {
    const library = await libraryOf(SAMPLE, 'Hugo Finch');
    const path = join(written({ 'roster.csv': `${ROSTER}Hazel Wren,cook\n` }), 'roster.csv');
    const said = await command(library, 'roster', path);
    expect(said).toEqual({
      status: 0,
      answer:
        'Nils Brambling: added as a student\nJuniper Crane: added as an instructor\n' +
        'Hugo Finch: was a student here already\n2 people added, 1 here already, 1 line left out.\n',
      messages: ['Warning: Left out: "cook" on line 5 is no role. Write student or instructor.'],
    });
    const shorter = join(written({ 'roster.csv': 'name\nnils BRAMBLING\n' }), 'roster.csv');
    expect((await command(library, 'roster', shorter)).answer).toContain('0 people added, 1 here already');
    expect((await command(library, 'list')).answer).toMatch(/Hugo Finch[^]*Nils Brambling/);
  });

  it('reads a file of an older Windows, and refuses what is no roster before there is a library', async () => {
    const library = join(newFolder(), 'library');
    const folder = newFolder();
    writeFileSync(
      join(folder, 'umlaut.csv'),
      Buffer.from('Name;Rolle\r\nJ\xf6rg M\xf6we;Sch\xfcler\r\n', 'latin1'),
    );
    writeFileSync(join(folder, 'none.csv'), 'Nils Brambling\n');
    expect(await command(library, 'roster', join(folder, 'none.csv'))).toMatchObject({
      status: 2,
      messages: [expect.stringContaining('none.csv cannot be used: No line of it is a header')],
    });
    expect((await command(library, 'roster', join(folder, 'gone.csv'))).status).toBe(2);
    expect(existsSync(library)).toBe(false);
    expect((await command(library, 'roster', join(folder, 'umlaut.csv'))).answer).toContain(
      'Jörg Möwe: added',
    );
  });
});

describe('halfdot import with rules', () => {
  it('gives a log to whom its folder is named after, on the day of a folder, and says what is left', async () => {
    const library = await rosterOnly();
    const logs = written({
      'Nils Brambling/a.csv': another(),
      '20260315/finch_hugo/a.csv': another(),
      'Hazel Wren/a.csv': another(),
      'b.csv': another(),
    });
    const said = await imported(library, logs, '--student-from', 'folder');
    expect(said.status).toBe(0);
    expect(said.answer).toContain(
      '4 logs kept, 0 known already, 0 refused. Given to Hugo Finch 1, Nils Brambling 1.\n',
    );
    expect(said.messages).toEqual([
      '2 logs kept with nobody; `halfdot assign` gives them to somebody:',
      '  "Hazel Wren" is not on the roster (a folder is named so): Hazel Wren/a.csv',
      '  no folder of its path is the name of a student on the roster: b.csv',
    ]);
    expect(await lessons(library)).toMatchObject([
      { student: null, date: DAY, logs: 2, approaches: 2 },
      { student: 'Nils Brambling', date: DAY, logs: 1, approaches: 1 },
      { student: 'Hugo Finch', date: '2026-03-15', logs: 1, approaches: 1 },
    ]);
  });

  it('gives a log to whom its own column names, and adds who is not on the roster where that is asked', async () => {
    const library = await rosterOnly();
    const logs = written({
      'a.csv': withColumn('Pilot', '"Brambling, Nils"', '', 'nils brambling'),
      'b.csv': withColumn('Pilot', 'Nils Brambling', 'Hugo Finch'),
      'c.csv': withColumn('PILOT ', 'Hazel Wren'),
      'd.csv': another(),
      'e.gpx': readFileSync(join(ROOT, 'samples/first-approach.gpx'), 'utf8'),
    });
    const asked = ['--student-from', 'column:Pilot', '--add-students', 'yes'];
    const said = await imported(library, logs, ...asked);
    expect(said.answer).toContain('Given to Nils Brambling 1, Hazel Wren 1.');
    expect(said.messages.slice(-3)).toEqual([
      '3 logs kept with nobody; `halfdot assign` gives them to somebody:',
      '  its column "Pilot" holds Nils Brambling or Hugo Finch: b.csv',
      '  it has no column "Pilot": d.csv, e.gpx',
    ]);
  });

  it('gives a log to whom its aircraft was booked for, and tells the lesson what the booking tells', async () => {
    const library = await rosterOnly();
    const folder = written({
      'logs/QQ-ABC/a.csv': another(),
      'logs/b.csv': another(),
      'bookings.csv':
        'date,aircraft,student,instructor,lesson,objective\n' +
        `${DAY},QQ-ABC,Hugo Finch,Juniper Crane,7,needles\nsoon,QQ-ABC,Nils Brambling,,,\n`,
    });
    const said = await imported(library, join(folder, 'logs'), '--bookings', join(folder, 'bookings.csv'));
    expect(said.messages).toEqual([
      'Warning: Left out: "soon" on line 3 is no day.',
      '1 log kept with nobody; `halfdot assign` gives them to somebody:',
      `  its file name does not hold the registration of an aircraft that was booked on ${DAY}: b.csv`,
    ]);
    expect(await lessons(library)).toMatchObject([
      { student: null, logs: 1 },
      { student: 'Hugo Finch', aircraft: 'QQ-ABC', syllabusNumber: '7', objective: 'needles' },
    ]);
    await opened(library, (open) => {
      const flown = open.first(
        from
          .selectFrom('lessons')
          .innerJoin('people', 'people.id', 'lessons.instructor_id')
          .select('people.name'),
      );
      expect(flown).toEqual({ name: 'Juniper Crane' });
    });
  });

  it('takes the day by the clock of the log, which in the evening is not that of UTC', async () => {
    const library = await rosterOnly();
    const evening = ([clock, ...cells]: string[]) => {
      const utcS = Date.parse(clock!) / 1000 + 11 * 3600;
      const local = new Date((utcS - 6 * 3600) * 1000).toISOString();
      return [local.slice(0, 10), local.slice(11, 19), '-06:00', ...cells].join(',');
    };
    const [header, ...rows] = TEXT.trimEnd().split('\n');
    const columns = header!.replace('Date/Time (UTC)', 'Lcl Date,Lcl Time,UTCOfst');
    const folder = written({
      'logs/QQ-XYZ.csv': [columns, ...rows.map((row) => evening(row.split(',')))].join('\n'),
      'bookings.csv': `date,aircraft,student\n${DAY},QQ-XYZ,Nils Brambling\n2026-03-15,QQ-XYZ,Hugo Finch\n`,
    });
    const said = await imported(library, join(folder, 'logs'), '--bookings', join(folder, 'bookings.csv'));
    expect(said.answer).toContain('Given to Nils Brambling 1.');
    expect(await lessons(library)).toMatchObject([{ student: 'Nils Brambling', date: DAY, approaches: 1 }]);
  });

  it('takes the day of a folder for a log that names none', async () => {
    const library = await rosterOnly();
    const low = readFileSync(join(ROOT, 'samples/low-approach.csv'), 'utf8');
    const logs = written({ '2026-05-03/Nils Brambling/a.csv': low, 'Nils Brambling/b.csv': `${low}\n` });
    const facility = join(ROOT, 'samples/choughfell-ils-32.json');
    const said = await imported(library, logs, '--student-from', 'folder', '--facility', facility);
    expect(said.answer).toContain('1 log kept, 0 known already, 1 refused');
    expect(await lessons(library)).toMatchObject([
      { student: 'Nils Brambling', date: '2026-05-03', logs: 1 },
    ]);
  });

  it('refuses what does not go together, before anything is kept', async () => {
    const library = join(newFolder(), 'library');
    const bookings = join(
      written({ 'b.csv': 'date,aircraft,student\n5/3/2026,QQ-ABC,Nils Brambling\n' }),
      'b.csv',
    );
    for (const [words, sentence] of [
      [['--student', 'Nils Brambling', '--student-from', 'folder'], '--student says whose all logs are'],
      [['--student-from', 'column:'], 'folder or "column:HEADER"'],
      [['--add-students', 'yes'], 'goes with --student-from'],
      [['--bookings', bookings], 'the day first or with the month first'],
      [['--bookings', `${bookings}x`], 'cannot be read'],
    ] as const) {
      const said = await imported(library, SAMPLE, ...words);
      expect(said).toMatchObject({ status: 2, messages: [expect.stringContaining(sentence)] });
    }
    expect(existsSync(library)).toBe(false);
  });
});

describe('halfdot list logs', () => {
  it('names each log with its student and the digits by which assign finds it', async () => {
    const library = await libraryOf(manyLogs(2));
    await imported(library, join(written({ 'b.csv': another() }), 'b.csv'));
    const json = (await command(library, 'list', 'logs', '--format', 'json')).answer;
    const rows = JSON.parse(json) as { log: string; hash: string }[];
    expect(rows).toHaveLength(3);
    expect(rows).toContainEqual(
      expect.objectContaining({ log: 'b.csv', student: null, date: DAY, approaches: 1 }),
    );
    const { hash } = rows.find(({ log }) => log === 'b.csv')!;
    await command(library, 'assign', hash, '--student', 'Rowan Teal');
    const text = (await command(library, 'list', 'logs', '--student', 'rowan teal')).answer;
    expect(text).toMatch(new RegExp(`${DAY}  Rowan Teal +1  ${hash}  b\\.csv`));
  });
});

describe('halfdot assign and undo', () => {
  it('give a log to a student by its name or the digits of its hash, and take it back', async () => {
    const logs = manyLogs(3);
    const library = await libraryOf(logs);
    await command(library, 'roster', join(written({ 'roster.csv': ROSTER }), 'roster.csv'));
    const hash = sha256Of(readFileSync(join(logs, 'log-02.csv')));
    const asked = ['log-01.csv', hash.slice(0, 8).toUpperCase(), '--student', 'nils brambling'];
    const said = await command(library, 'assign', ...asked, '--date', '2026-03-15');
    expect(said).toMatchObject({
      status: 0,
      answer: '2 logs given to Nils Brambling on 2026-03-15. `halfdot undo` takes it back.\n',
    });
    expect(await lessons(library)).toMatchObject([
      { student: 'Rowan Teal', date: DAY, logs: 1 },
      { student: 'Nils Brambling', date: '2026-03-15', logs: 2, approaches: 2 },
    ]);
    const more = await command(
      library,
      'assign',
      '--all-of',
      'Nils Brambling',
      '--student',
      'Nils Brambling',
    );
    expect(more).toMatchObject({ status: 0, answer: 'Nothing was moved. 2 logs were there already.\n' });
    const undone = await command(library, 'undo');
    expect(undone.answer).toMatch(
      /^Undone: 2 logs given to Nils Brambling at \d{4}-\d\d-\d\d \d\d:\d\d UTC are back in their lessons\.\n$/,
    );
    expect(await lessons(library)).toMatchObject([{ student: 'Rowan Teal', logs: 3, approaches: 3 }]);
    expect(await command(library, 'undo')).toMatchObject({
      status: 2,
      messages: ['halfdot: There is no move of logs to undo.'],
    });
    await expectWhole(library);
  });

  it("give all that is nobody's, or all of a student's", async () => {
    const library = join(newFolder(), 'library');
    await imported(library, manyLogs(2));
    await command(library, 'roster', join(written({ 'roster.csv': ROSTER }), 'roster.csv'));
    const said = await command(library, 'assign', '--nobody', 'yes', '--student', 'Nils Brambling');
    expect(said.answer).toContain('2 logs given to Nils Brambling on 2026-03-14.');
    const all = await command(library, 'assign', '--all-of', 'nils brambling', '--student', 'Hugo Finch');
    expect(all.answer).toContain('2 logs given to Hugo Finch');
    await opened(library, (open) =>
      expect(listApproaches(open, null)).toMatchObject([
        { student: 'Hugo Finch' },
        { student: 'Hugo Finch' },
      ]),
    );
  });

  it('refuse what may mean two logs, with the choices, and what is not there', async () => {
    const library = join(newFolder(), 'library');
    const logs = written({ 'x/same.csv': another(), 'y/same.csv': another() });
    await imported(library, logs, '--student', 'Nils Brambling');
    const hashes = ['x', 'y'].map((name) => sha256Of(readFileSync(join(logs, name, 'same.csv'))));
    const said = await command(library, 'assign', 'same.csv', '--student', 'Nils Brambling');
    expect(said.status).toBe(2);
    expect(said.messages[0]).toContain('2 logs are meant by "same.csv"');
    for (const hash of hashes)
      expect(said.messages[0]).toContain(`${hash.slice(0, 12)} (same.csv, ${DAY}, Nils Brambling)`);
    const sentence = async (...words: string[]) => {
      const { status, messages } = await command(library, 'assign', ...words);
      expect(status).toBe(2);
      return messages[0];
    };
    const [first] = hashes as [string];
    // Seven digits are too few to mean a hash.
    expect(await sentence(first.slice(0, 7), '--student', 'Nils Brambling')).toContain('There is no log');
    expect(await sentence('%%%%%%%%', '--student', 'Nils Brambling')).toContain('There is no log');
    expect(await sentence(first, '--student', 'Hazel Wren')).toContain('There is no student "Hazel Wren"');
    expect(await sentence(first, '--student', 'Nils Brambling', '--date', '2026-02-30')).toContain(
      'is no day',
    );
    expect(await sentence('--student', 'Nils Brambling')).toContain('needs the names of logs');
    expect(await sentence(first, '--nobody', 'yes', '--student', 'Nils Brambling')).toContain('or --nobody');
    expect((await command(library, 'undo')).status).toBe(2);
  });
});
