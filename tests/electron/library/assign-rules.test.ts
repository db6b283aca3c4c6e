import { describe, expect, it } from 'vitest';
import { ruleFor, type Clues, type Rules, type StudentFrom } from '../../../electron/library/assign-rules.ts';
import type { Booking } from '../../../electron/library/bookings.ts';

const DAY = '2026-05-03';
const STUDENTS = ['Nils Brambling', 'Hugo Finch', 'José Lark'];
const FOLDER: StudentFrom = { by: 'folder' };
const COLUMN: StudentFrom = { by: 'column', header: 'Pilot' };

const booking = (line: number, more: Partial<Booking> = {}): Booking => ({
  line,
  date: DAY,
  aircraft: 'QQ-ABC',
  student: 'Nils Brambling',
  instructor: null,
  lessonNumber: null,
  objective: null,
  ...more,
});

function rule(path: string, rules: Partial<Rules>, clues: Partial<Clues> = {}) {
  return ruleFor(
    { path: path.split('/'), statedDate: null, firstDay: DAY, otherDays: [], column: null, ...clues },
    {
      studentFrom: null,
      bookings: null,
      students: STUDENTS,
      instructors: ['Juniper Crane'],
      addsStudents: false,
      ...rules,
    },
  );
}

describe('a student by folder', () => {
  it.each([
    ['Nils Brambling/a.csv', 'Nils Brambling'],
    ['2026/Brambling, Nils/flights/a.csv', 'Nils Brambling'],
    ['brambling_nils/a.csv', 'Nils Brambling'],
    ['JOSE LARK/a.csv', 'José Lark'],
    ['nils brambling/Brambling Nils/a.csv', 'Nils Brambling'],
  ])('%s is %s', (path, student) => {
    expect(rule(path, { studentFrom: FOLDER })).toMatchObject({ student, date: null, remarks: [] });
  });

  it.each([
    ['a.csv', 'no folder of its path is the name of a student on the roster'],
    // The file's own name is no folder.
    ['Nils Brambling.csv', 'no folder of its path is the name of a student on the roster'],
    ['2026/flights/a.csv', 'no folder of its path is the name of a student on the roster'],
    ['Nils Brambling/Hugo Finch/a.csv', 'its folders can be Nils Brambling or Hugo Finch'],
    ['Hazel Wren/a.csv', '"Hazel Wren" is not on the roster (a folder is named so)'],
  ])('%s is nobody: %s', (path, why) => {
    expect(rule(path, { studentFrom: FOLDER })).toMatchObject({ student: null, why });
  });

  it('is nobody where two on the roster are spelt alike', () => {
    const students = ['José Lark', 'Jose Lark'];
    expect(rule('jose lark/a.csv', { studentFrom: FOLDER, students })).toMatchObject({
      student: null,
      why: 'its folders can be José Lark or Jose Lark',
    });
  });

  it('comes onto the roster where that is asked, if one folder alone can be a name', () => {
    const asked = { studentFrom: FOLDER, addsStudents: true };
    expect(rule('2026/Wren, Hazel/a.csv', asked).student).toBe('Hazel Wren');
    expect(rule('wren_hazel/a.csv', asked).student).toBe('wren hazel');
    expect(rule('flights/a.csv', asked).student).toBeNull();
    expect(rule('second term/Hazel Wren/a.csv', asked).student).toBe('Hazel Wren');
    expect(rule('early spring/Hazel Wren/a.csv', asked).student).toBeNull();
    expect(rule('second term/Hugo Finch/a.csv', asked).student).toBe('Hugo Finch');
  });

  it('never comes onto it by a folder that is farther off, is called after a thing, or was chosen itself', () => {
    const asked = { studentFrom: FOLDER, addsStudents: true };
    expect(rule('Hazel Wren/2026/2026-05-03/a.csv', asked).student).toBe('Hazel Wren');
    expect(rule('Hazel Wren/circuits/a.csv', asked).student).toBeNull();
    for (const folder of ['Spring term', 'Flight Logs', 'new_students of may'])
      expect(rule(`${folder}/a.csv`, asked).student).toBeNull();
    for (const chosenFolder of ['Spring break', 'Hazel Wren'])
      for (const path of ['a.csv', '2026-05-03/a.csv'])
        expect(rule(path, asked, { chosenFolder }).student).toBeNull();
    expect(rule('Hazel Wren/a.csv', asked, { chosenFolder: 'Spring break' }).student).toBe('Hazel Wren');
  });

  it('is whom the chosen folder names if those below are days, and that one is on the roster', () => {
    const asked = { studentFrom: FOLDER, addsStudents: true };
    const chosen = { chosenFolder: 'brambling nils' };
    expect(rule('2026-05-04/a.csv', asked, chosen)).toMatchObject({
      student: 'Nils Brambling',
      date: '2026-05-04',
    });
    expect(rule('Hazel Wren/a.csv', asked, chosen).student).toBe('Hazel Wren');
    expect(rule('circuits/a.csv', asked, chosen).student).toBeNull();
    expect(rule('a.csv', asked, { chosenFolder: '20260504' }).date).toBe('2026-05-04');
  });

  it.each([
    ['2026-05-04/Nils Brambling/a.csv', '2026-05-04'],
    ['Nils Brambling/20260504/a.csv', '2026-05-04'],
    ['20260504/2026-05-04/a.csv', '2026-05-04'],
    ['2026-02-30/a.csv', null],
    ['20260504.csv', null],
  ])('%s is of the day %s', (path, date) => {
    expect(rule(path, { studentFrom: FOLDER }).date).toBe(date);
    expect(rule(path, { studentFrom: COLUMN }).date).toBeNull();
  });

  it('says so where the folders name two days, and takes the log for it', () => {
    expect(rule('2026-05-04/2026-05-05/Nils Brambling/a.csv', { studentFrom: FOLDER })).toMatchObject({
      student: 'Nils Brambling',
      date: null,
      remarks: ["Its folders name several days (2026-05-04, 2026-05-05): the log's own is taken."],
    });
    const stated = { statedDate: '2026-05-06' };
    const asked = { studentFrom: FOLDER };
    expect(rule('2026-05-04/2026-05-05/Nils Brambling/a.csv', asked, stated).remarks).toEqual([]);
  });
});

describe('a student by column', () => {
  it.each([
    [['Brambling, Nils'], 'Nils Brambling', 'its column "Pilot" says so'],
    [['nils brambling', 'BRAMBLING NILS'], 'Nils Brambling', 'its column "Pilot" says so'],
    [['Nils Brambling', 'Hugo Finch'], null, 'its column "Pilot" holds Nils Brambling or Hugo Finch'],
    [[], null, 'its column "Pilot" is empty'],
    [null, null, 'it has no column "Pilot"'],
    [['Hazel Wren'], null, '"Hazel Wren" is not on the roster (its column "Pilot" says so)'],
  ])('%j is %s', (column, student, why) => {
    expect(rule('a.csv', { studentFrom: COLUMN }, { column })).toMatchObject({ student, why });
  });

  it('comes onto the roster where that is asked', () => {
    const asked = { studentFrom: COLUMN, addsStudents: true };
    expect(rule('a.csv', asked, { column: ['Wren, Hazel'] }).student).toBe('Hazel Wren');
  });
});

describe('a student by the bookings', () => {
  const bookings = [
    booking(2, { instructor: 'crane, juniper', lessonNumber: '7', objective: 'needles' }),
    booking(3, { aircraft: 'QQ-XYZ', student: 'Hugo Finch' }),
    booking(4, { date: '2026-05-04', student: 'José Lark' }),
  ];

  it.each(['QQ-ABC/a.csv', 'qqabc_20260503.csv', 'log qq_abc.csv', '2026/Q-QABC/a.csv'])(
    '%s holds the registration',
    (path) => {
      expect(rule(path, { bookings })).toMatchObject({
        student: 'Nils Brambling',
        aircraft: 'QQ-ABC',
        instructor: 'Juniper Crane',
        lessonNumber: '7',
        objective: 'needles',
        why: 'line 2 of the bookings says so of QQ-ABC',
        remarks: [],
      });
    },
  );

  it('is of the day of the lesson: stated, or by its folder, or the log', () => {
    const path = '2026-05-04/QQ-ABC.csv';
    expect(rule(path, { bookings }).student).toBe('Nils Brambling');
    expect(rule(path, { bookings, studentFrom: FOLDER }).student).toBe('José Lark');
    expect(rule(path, { bookings }, { statedDate: '2026-05-04' }).student).toBe('José Lark');
  });

  it.each([
    ['a.csv', 'its file name does not hold the registration of an aircraft that was booked on 2026-05-03'],
    [
      'QQ-ABCD.csv',
      'its file name does not hold the registration of an aircraft that was booked on 2026-05-03',
    ],
    [
      'trainers/xQQ-ABC.csv',
      'neither its folders nor its file name hold the registration of an aircraft that was booked on 2026-05-03',
    ],
    ['QQ-ABC/QQ-XYZ.csv', 'on 2026-05-03 it can be booked for Nils Brambling or Hugo Finch'],
  ])('%s is nobody: %s', (path, why) => {
    expect(rule(path, { bookings })).toMatchObject({ student: null, aircraft: null, objective: null, why });
  });

  it('is nobody on a day without bookings, or without a day', () => {
    expect(rule('QQ-ABC.csv', { bookings }, { firstDay: '2026-06-01' }).why).toBe(
      'there is no booking on 2026-06-01',
    );
    expect(rule('QQ-ABC.csv', { bookings }, { firstDay: null }).why).toContain('names no day');
  });

  it('is nobody where the log may be of two days that are booked for two, unless the day is said', () => {
    const near = { firstDay: '2026-05-04', otherDays: [DAY] };
    expect(rule('QQ-ABC.csv', { bookings }, near)).toMatchObject({
      student: null,
      aircraft: null,
      why:
        'its times do not say whether it is of 2026-05-03 or 2026-05-04, ' +
        'booked for José Lark or Nils Brambling',
    });
    const said = (more: Partial<Clues>) => rule('QQ-ABC.csv', { bookings }, { ...near, ...more }).student;
    expect(said({ statedDate: '2026-05-04' })).toBe('José Lark');
    expect(said({ otherDays: ['2026-05-05'] })).toBe('José Lark');
    const same = [...bookings.slice(2), booking(5, { student: 'lark jose' })];
    expect(rule('QQ-ABC.csv', { bookings: same }, near).student).toBe('José Lark');
    const other = [...bookings.slice(2), booking(5, { aircraft: 'QQ-XYZ' })];
    expect(rule('QQ-ABC.csv', { bookings: other }, near).student).toBe('José Lark');
  });

  it('is not guessed from a single booking of the day, nor from two of one aircraft', () => {
    expect(rule('a.csv', { bookings: [booking(2)] }).student).toBeNull();
    const twice = [booking(2), booking(3, { student: 'Hugo Finch' })];
    expect(rule('QQ-ABC.csv', { bookings: twice }).student).toBeNull();
  });

  it('of two bookings for one student tells the lesson what both say', () => {
    const twice = [
      booking(2, { lessonNumber: '7', objective: 'needles' }),
      booking(3, { lessonNumber: '8', objective: 'needles' }),
    ];
    expect(rule('QQ-ABC.csv', { bookings: twice })).toMatchObject({
      student: 'Nils Brambling',
      lessonNumber: null,
      objective: 'needles',
    });
  });

  it('leaves an instructor out who is not on the roster, and says so', () => {
    const other = [booking(2, { instructor: 'Hazel Wren' })];
    expect(rule('QQ-ABC.csv', { bookings: other })).toMatchObject({
      student: 'Nils Brambling',
      instructor: null,
      remarks: ['The instructor "Hazel Wren" is not on the roster: left out.'],
    });
  });
});

describe('folders and bookings together', () => {
  const both = { studentFrom: FOLDER, bookings: [booking(2)] };

  it('agree, or one of them says nothing', () => {
    expect(rule('brambling nils/QQ-ABC.csv', both)).toMatchObject({
      student: 'Nils Brambling',
      aircraft: 'QQ-ABC',
    });
    expect(rule('Hugo Finch/a.csv', both)).toMatchObject({ student: 'Hugo Finch', aircraft: null });
    // A folder that is nobody's is called after something else.
    expect(rule('second term/QQ-ABC.csv', both)).toMatchObject({ student: 'Nils Brambling' });
  });

  it('that say two people are told, and the log is left', () => {
    expect(rule('Hugo Finch/QQ-ABC.csv', both)).toMatchObject({
      student: null,
      aircraft: null,
      why:
        'it can be Hugo Finch (a folder is named so) and Nils Brambling ' +
        '(line 2 of the bookings says so of QQ-ABC)',
    });
  });
});
