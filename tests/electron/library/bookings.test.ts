import { describe, expect, it } from 'vitest';
import { bookingsOf } from '../../../electron/library/bookings.ts';

const dates = (...written: string[]) =>
  bookingsOf(['date,aircraft,student', ...written.map((date) => `${date},QQ-ABC,Nils Brambling`)].join('\n'));

describe('bookings', () => {
  it('are read by the words of their header, with what else they tell', () => {
    const text =
      'Student;Instructor;Date;Tail number;Lesson;Objective\n' +
      '"Brambling, Nils";Juniper Crane;03.05.2026;QQ-ABC;7;"needles; both"\nHugo Finch;;2.5.2026 14:30;QQ-XYZ;;\n';
    expect(bookingsOf(text)).toEqual({
      bookings: [
        {
          line: 2,
          date: '2026-05-03',
          aircraft: 'QQ-ABC',
          student: 'Nils Brambling',
          instructor: 'Juniper Crane',
          lessonNumber: '7',
          objective: 'needles; both',
        },
        {
          line: 3,
          date: '2026-05-02',
          aircraft: 'QQ-XYZ',
          student: 'Hugo Finch',
          instructor: null,
          lessonNumber: null,
          objective: null,
        },
      ],
      issues: [],
    });
  });

  it.each([
    ['2026-05-03', '2026-05-03'],
    ['20260503', '2026-05-03'],
    ['2026-05-03T09:00Z', '2026-05-03'],
    ['3.5.2026', '2026-05-03'],
    ['13/5/2026', '2026-05-13'],
    ['5/13/2026', '2026-05-13'],
    ['5/5/2026', '2026-05-05'],
  ])('%s is %s', (written, date) => expect(dates(written).bookings).toMatchObject([{ date }]));

  it('are refused where the days can be read in two ways, and one line settles it', () => {
    expect(dates('5/3/2026')).toMatchObject({
      bookings: [],
      issues: [{ severity: 'refusal', code: 'bookings-unclear-dates' }],
    });
    expect(dates('5/3/2026', '5/14/2026').bookings.map(({ date }) => date)).toEqual([
      '2026-05-03',
      '2026-05-14',
    ]);
  });

  it('leave out a line with a sentence, and go on', () => {
    const text = [
      'date,aircraft,student',
      '2026-02-30,QQ-ABC,Nils Brambling',
      'soon,QQ-ABC,Nils Brambling',
      '2026-05-03,-,Nils Brambling',
      '2026-05-03,QQ-ABC,',
      '2026-05-03x,QQ-ABC,Nils Brambling',
      '2026-05-03,QQ-ABC,Hugo Finch',
    ].join('\n');
    const { bookings, issues } = bookingsOf(text);
    expect(bookings).toMatchObject([{ line: 7, student: 'Hugo Finch' }]);
    expect(issues.map(({ message }) => message)).toEqual([
      'Left out: "2026-02-30" on line 2 is no day.',
      'Left out: "soon" on line 3 is no day.',
      'Left out: line 4 names no aircraft.',
      'Left out: line 5 names no student.',
      'Left out: "2026-05-03x" on line 6 is no day.',
    ]);
  });

  it('are refused without their columns', () => {
    expect(bookingsOf('date,student\n2026-05-03,Nils Brambling\n').issues).toMatchObject([
      { severity: 'refusal', code: 'bookings-no-columns' },
    ]);
  });
});
