import { describe, expect, it } from 'vitest';
import { schoolCsv } from '../../../../core/progress/school/school-csv.ts';
import { schoolText } from '../../../../core/progress/school/school-text.ts';
import { madeUpSchool, type MadeUpApproach, NOTHING_ELSE } from './made-up-school.ts';
import { several } from './school-of-chance.ts';

/** 8 students of 5 approaches with each of two instructors, one of whom has those with the larger values. */
const MADE = [
  ...several(8, (i) => ({ student: `s${i}`, instructor: 'nils', level: 0.2 + 0.01 * i })),
  ...several(8, (i) => ({ student: `t${i}`, instructor: 'ida', level: 0.5 + 0.01 * i })),
].flatMap(({ student, instructor, level }) =>
  several(5, (k): MadeUpApproach => ({
    student,
    instructor,
    minute: 10 * k,
    value: level + 0.001 * k,
    verdict: instructor === 'ida' && k > 1 ? 'not-met' : 'met',
    wentOn: k === 0 ? 'unstable-continued' : 'stable',
  })),
);
const coverage = {
  studentsWithoutLog: ['juniper'],
  lessonsWithoutLog: 2,
  logsWithoutApproach: 1,
  ...NOTHING_ELSE,
};
const school = madeUpSchool([...MADE, { student: 's0', judgedBy: { engineVersion: '0.0.9' }, log: 'old' }], {
  groupBy: 'instructor',
  coverage,
});
const joined = (text: string) => text.replaceAll(/\s+/g, ' ');

describe('the page of a school', () => {
  const text = schoolText(school);
  const page = joined(text);

  it('begins with one sentence, and what it was judged by', () =>
    expect(page).toMatch(
      /^Over 80 approaches of 16 students, on 1 January 2026, 8 students lately did not meet glidepath on final in at least half of three or more that were decided, and 80 % of those decided stayed stable from their gate on\. Judged by Source of instrument-rating; debriefed by version 0\.1\.0\. Measure: glidepath on final, RMS, of full scale, lower is better\./,
    ));

  it('tells who needs what, with a sign and in words', () => {
    expect(text).toContain('  ▲ t0: not met in 3 of 5 approaches in one lesson.\n');
    expect(text).toContain('    s0: not met in 0 of 5 approaches in one lesson.\n');
  });

  it('tells what became of approaches, with intervals', () =>
    expect(page).toMatch(
      /What became of 80 approaches of 16 students, besides 0 unclear and 0 not assessed stable from the gate on: 64, which is 80 % \(between 69 % and 88 %\) unstable, and went around: 0, which is 0 % \(between 0 % and \d+ %\) unstable, and continued: 16,/,
    ));

  it('holds groups against all others, in words, in figures and without adjusting', () =>
    expect(page).toMatch(
      /Groups, by instructor Ida Plover: 8 students, 40 approaches; mean 0\.54, adjusted 0\.54\. Worse than the others by 0\.300 of full scale \(between 0\.3\d\d worse and 0\.2\d\d worse, in full scale\)\. Without adjusting, worse by 0\.300 of full scale\. A student of this group does better than one of the others with 0 % \(0 of 64 pairs\)\. Nils Brambling: .* Better than the others/,
    ));

  it('tells lessons, their spread, what was flown, what was left out and what has no figure', () => {
    expect(page).toContain('RMS, of full scale, lesson by lesson s0: 0.20 s1: 0.21');
    expect(page).toContain('lesson 1 16 0.20 0.24 0.39 0.53 0.57');
    expect(page).toContain('Turbulence: none 80');
    expect(page).toContain('Left out 1 approach debriefed by version 0.0.9 of the program.');
    expect(page).toContain(
      'Of which there is no figure Students without a log: Juniper Crane. 2 lessons without a log. 1 log without an approach.',
    );
  });

  it('says of approaches by an unconfirmed draft that they are not counted, and why', () => {
    const drafts = { ...coverage, byDraft: 3 };
    expect(joined(schoolText(madeUpSchool(MADE, { coverage: drafts })))).toContain(
      '3 approaches not counted: the facility was an unconfirmed draft. Once its values are confirmed and the log is debriefed by it again (in a command: import with --again yes), it counts.',
    );
    expect(page).not.toContain('draft');
  });

  it('says of one approach in a doubted unit that it is not counted, and of one of nobody and one not held the same', () => {
    const said = joined(
      schoolText(
        madeUpSchool(MADE, { coverage: { ...coverage, unitDoubted: 1, approachesOfNobody: 1, notHeld: 1 } }),
      ),
    );
    expect(said).toContain(
      '1 approach not counted: the heights seem to be in another unit than they were read in.',
    );
    expect(said).toContain('1 approach of which nobody said whose it is.');
    expect(said).toContain('1 approach that was not held to ');
  });

  it('says that it is association, what it adjusted for, and how many differences were looked at', () => {
    expect(page).toContain('What goes together need not be cause');
    expect(page).toContain('regression to the mean');
    expect(page).toContain('There was nothing to adjust for; each student counts once.');
    expect(page).toContain('One difference was looked at');
  });

  it('has no line of more than 100 columns', () =>
    expect(text.split('\n').filter((line) => line.length > 100)).toEqual([]));

  it('says of nothing that there is nothing', () =>
    expect(schoolText(madeUpSchool([]))).toMatch(/^No approach of the school is there to compare\.\n/));

  it('says that no difference is sure, why none is told, and that no student is flagged', () => {
    const alike = MADE.map((approach) => ({
      ...approach,
      verdict: 'met' as const,
      value: approach.value! % 0.3,
    }));
    const third = { student: 'hazel', instructor: 'hazel', minute: 0, value: 0.3 };
    const told = joined(schoolText(madeUpSchool([...alike, third], { groupBy: 'instructor' })));
    expect(told).toContain('no student lately did not meet glidepath on final in at least half');
    expect(told).toMatch(
      /No sure difference from the others: between 0\.\d+ (worse|better) and 0\.\d+ better/,
    );
    expect(told).toMatch(/with all differences looked at between/);
    expect(told).toContain('Hazel Wren: 1 student, 1 approach. Not compared, too few');
  });

  it('counts what nobody can decide beside the rest, names the days, and groups by what was flown', () => {
    const verdicts = ['not-met', 'not-met', 'met', 'unclear', 'not-assessed'] as const;
    const made = verdicts.map((verdict, i): MadeUpApproach => ({
      verdict,
      lesson: 1 + (i % 2),
      minute: 10 * i,
      turbulence: i === 0 ? 'light' : null,
      value: verdict === 'not-assessed' ? null : 0.2,
      wentOn: verdict === 'unclear' ? 'unclear' : 'not-assessed',
    }));
    const told = joined(schoolText(madeUpSchool(made, { groupBy: 'turbulence' })));
    expect(told).toMatch(
      /^Over 5 approaches of 1 student, from 1 January 2026 to 2 January 2026, 1 student lately did not meet glidepath on final in at least half of three or more that were decided\. /,
    );
    expect(told).toContain('lower is better. 4 of 5 approaches have a figure.');
    expect(told).toContain(
      '▲ Rowan Teal: not met in 2 of 3 approaches in the latest 2 lessons, besides 1 unclear and 1 not assessed.',
    );
    expect(told).toContain('What became of 0 approaches of 0 students, besides 1 unclear and 4 not assessed');
    expect(told).toMatch(
      /Groups, by turbulence light: 1 student, 1 approach; .* not stated: 1 student, 3 appr/,
    );
  });

  it('has no interval of one student, and says of levels that they were low', () => {
    const measure = {
      id: 'level',
      title: 'Level',
      measure: 'level',
      unit: 'level',
      better: 'higher',
    } as const;
    const low = ['rowan', 'hazel'].flatMap((student) =>
      several(3, (i): MadeUpApproach => ({ student, minute: 10 * i, value: 2, verdict: 'not-met' })),
    );
    const two = joined(schoolText(madeUpSchool(low, { measure })));
    expect(two).toContain('2 students lately were below level 3 in at least half of three or more');
    const one = joined(schoolText(madeUpSchool(low.slice(0, 3), { measure })));
    expect(one).toContain('1 student lately was below level 3');
    expect(one).toContain('stable from the gate on: 3, which is 100 % unstable, and went around: 0');
    expect(schoolCsv(madeUpSchool([{ wentOn: 'stable' }]))).toMatch(/outcome,.*,stable,,,,1,1,,,,,,,,,,,\n/);
  });

  it('tells students who are compared with themselves', () => {
    const both = several(16, (i) =>
      several(6, (k): MadeUpApproach => ({
        student: `s${i}`,
        instructor: k % 2 === 0 ? 'nils' : 'ida',
        minute: 10 * k,
        value: 0.1 * i + (k % 2 === 0 ? 0 : 0.05 + 0.001 * i),
      })),
    ).flat();
    const told = joined(schoolText(madeUpSchool(both, { groupBy: 'instructor' })));
    expect(told).toMatch(/Better than elsewhere by 0\.058 of full scale, by the same 16 students/);
    expect(told).toContain('16 of 16 students did better here than elsewhere.');
  });

  it.each([
    ['share-met', 'share', 1, 'Met, % of those decided, lesson by lesson s: 100'],
    ['inside-by-distance', 'share', 0.876, 'Inside the limit, % of the distance, lesson by lesson s: 88'],
    ['level', 'level', 3, 'Level, lesson by lesson s: 3.0'],
    ['rms', 'kt', 4.26, 'RMS off the target, kt, lesson by lesson s: 4.3'],
  ] as const)('writes %s in %s', (measure, unit, value, words) => {
    const made = { id: 'x', title: 'Something', measure, unit, better: 'higher' } as const;
    expect(joined(schoolText(madeUpSchool([{ student: 's', value }], { measure: made })))).toContain(words);
  });
});

describe('the table of a school', () => {
  const [head, ...rows] = schoolCsv(school).trimEnd().split('\n');
  const cellsOf = (row: string) => {
    const cells = row.split(',');
    return Object.fromEntries(head!.split(',').map((column, i) => [column, cells[i]]));
  };

  it('has a line for each lesson of a student, outcome and group', () => {
    const kinds = rows.map((row) => cellsOf(row)['kind']);
    const count = (kind: string) => kinds.filter((one) => one === kind).length;
    expect([count('lesson'), count('outcome'), count('group'), kinds.length]).toEqual([16, 3, 2, 21]);
    expect(cellsOf(rows[0]!)).toMatchObject({
      standard: 'Instrument rating',
      criterion: 'glidepath-final',
      label: 's0',
      lesson: '1',
      date: '2026-01-01',
      approaches: '5',
      met: '5',
      notMet: '0',
      whyNot: '',
    });
    expect(Number(cellsOf(rows[0]!)['value'])).toBeCloseTo(0.202, 12);
    const ida = cellsOf(rows.find((row) => row.includes('Ida Plover'))!);
    expect(ida).toMatchObject({ students: '8', standing: 'worse', chanceOfDoingBetter: '0' });
    expect(Number(ida['difference'])).toBeCloseTo(0.3, 12);
    expect(cellsOf(rows.find((row) => row.startsWith('outcome'))!)).toMatchObject({
      label: 'stable',
      value: '0.8',
    });
  });

  it('runs nothing that a name says', () => {
    const names = new Map([['rowan', '=HYPERLINK("x")']]);
    expect(schoolCsv(madeUpSchool([{}], { names }))).toContain(`"'=HYPERLINK(""x"")"`);
  });

  it('of nothing is its head', () => expect(schoolCsv(madeUpSchool([]))).toMatch(/^kind,[^\n]*\n$/));
});
