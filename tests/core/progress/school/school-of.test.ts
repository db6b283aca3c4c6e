import { describe, expect, it } from 'vitest';
import type { SchoolFilter } from '../../../../core/progress/school/school-input.ts';
import { madeUpSchool, type MadeUpApproach, NOTHING_ELSE } from './made-up-school.ts';

const ALL: SchoolFilter = { standardKey: null, engineVersion: null, from: null, to: null, mix: {} };

describe('a school', () => {
  it('without approaches says nothing, and keeps what is known of those without', () => {
    const coverage = {
      studentsWithoutLog: ['rowan', 'hazel', 'nobody'],
      lessonsWithoutLog: 3,
      logsWithoutApproach: 2,
      ...NOTHING_ELSE,
    };
    const school = madeUpSchool([], { coverage, groupBy: 'instructor' });
    expect(school).toMatchObject({ compared: null, outcomes: null, groups: null });
    expect(school.students).toEqual([]);
    expect(school.needs).toEqual([]);
    expect(school.distribution).toEqual([]);
    expect(school.leftOut).toEqual([]);
    expect(school.caseMix.flatMap(({ values }) => values)).toEqual([]);
    expect(school.coverage).toEqual({
      ...coverage,
      studentsWithoutLog: ['Hazel Wren', 'nobody', 'Rowan Teal'],
    });
  });

  it('is plain JSON', () => {
    const made = [{ value: 0.2 }, { lesson: 2, value: null }];
    const school = madeUpSchool(made, { groupBy: 'instructor' });
    expect(JSON.parse(JSON.stringify(school))).toEqual(school);
  });

  it('holds students in the order of their names, and their lessons in the order flown', () => {
    const { students, compared } = madeUpSchool([
      { student: 'rowan', lesson: 2, value: 0.4 },
      { student: 'rowan', lesson: 1, value: 0.1 },
      { student: 'rowan', lesson: 1, minute: 10, value: 0.2 },
      { student: 'rowan', lesson: 1, minute: 20, value: 0.9, verdict: 'not-met' },
      { student: 'hazel', lesson: 5, value: null, verdict: 'not-assessed' },
    ]);
    expect(students.map(({ name }) => name)).toEqual(['Hazel Wren', 'Rowan Teal']);
    expect(
      students[1]!.lessons.map(({ ordinal, approaches, value }) => [ordinal, approaches, value]),
    ).toEqual([
      [1, 3, 0.2],
      [2, 1, 0.4],
    ]);
    expect(students[1]!.lessons[0]!.verdicts).toMatchObject({ met: 2, 'not-met': 1 });
    expect(students[0]!.lessons[0]).toMatchObject({ ordinal: 1, value: null, date: '2026-01-05' });
    expect(compared).toMatchObject({
      approaches: 5,
      valued: 4,
      students: 2,
      from: '2026-01-01',
      to: '2026-01-05',
    });
  });

  it('orders stand-ins by their numbers', () => {
    const ids = ['Student 10', 'Student 9', 'student 1', 'Ábel'];
    const { students } = madeUpSchool(ids.map((student) => ({ student })));
    expect(students.map(({ name }) => name)).toEqual(['Ábel', 'student 1', 'Student 9', 'Student 10']);
  });

  it('takes a share of approaches where the measure is one, and the middle otherwise', () => {
    const made = [1, 1, 0].map((value, i) => ({ value, minute: 10 * i }));
    const shares = {
      measure: { id: 'stability', title: 'Stable', measure: 'share-met', unit: 'share', better: 'higher' },
    } as const;
    expect(madeUpSchool(made, shares).students[0]!.lessons[0]!.value).toBeCloseTo(2 / 3, 12);
    expect(madeUpSchool(made).students[0]!.lessons[0]!.value).toBe(1);
  });

  it('spreads the lessons over students, by how manieth they are', () => {
    const made = [0.1, 0.2, 0.3, 0.4, 0.5].map((value, i) => ({ student: `s${i}`, lesson: 3 + i, value }));
    const { distribution } = madeUpSchool([
      ...made,
      { student: 's0', lesson: 20, value: 0.7 },
      { student: 's1', lesson: 20, value: null },
    ]);
    expect(distribution).toEqual([
      {
        ordinal: 1,
        students: 5,
        least: 0.1,
        lowerQuartile: 0.2,
        median: 0.3,
        upperQuartile: 0.4,
        largest: 0.5,
      },
      {
        ordinal: 2,
        students: 1,
        least: 0.7,
        lowerQuartile: 0.7,
        median: 0.7,
        upperQuartile: 0.7,
        largest: 0.7,
      },
    ]);
  });
});

describe('the spread over students', () => {
  it('is in the order of lessons, also where the first student has no figure of the first', () => {
    const { distribution } = madeUpSchool([
      { student: 'hazel', lesson: 1, value: null },
      { student: 'hazel', lesson: 2, value: 0.4 },
      { student: 'rowan', lesson: 1, value: 0.2 },
    ]);
    expect(distribution.map(({ ordinal, median }) => [ordinal, median])).toEqual([
      [1, 0.2],
      [2, 0.4],
    ]);
  });
});

describe('what is compared', () => {
  const other = { judgedBy: { standardKey: 'other', standardTitle: 'Skill test' } };
  const newer = { judgedBy: { engineVersion: '0.2.0' } };
  const changed = { judgedBy: { standardKey: 'changed' } };
  const several = (count: number, what: MadeUpApproach) =>
    Array.from({ length: count }, (_, i) => ({ ...what, minute: 10 * i }));

  it('is the standard and version with the most approaches, and all others are counted', () => {
    const { compared, leftOut, judgedBy } = madeUpSchool([
      ...several(4, {}),
      ...several(3, { ...other, lesson: 2 }),
      ...several(2, { ...newer, log: 'log of rowan, lesson 1' }),
      ...several(1, { ...changed, lesson: 3 }),
    ]);
    expect(compared).toMatchObject({
      standardTitle: 'Instrument rating',
      engineVersion: '0.1.0',
      approaches: 4,
    });
    expect(leftOut.map(({ why, sentence }) => [why, sentence])).toEqual([
      [
        'not-comparable',
        '2 approaches debriefed by version 0.2.0 of the program. 2 of them counted here in another debrief. `halfdot recompute` makes the debriefs of older versions anew.',
      ],
      ['not-comparable', '3 approaches judged by Skill test.'],
      ['not-comparable', '1 approach judged by another version of Instrument rating.'],
    ]);
    expect(
      judgedBy.map(({ standardKey, approaches, students }) => [standardKey, approaches, students]),
    ).toEqual([
      ['key of instrument-rating', 4, 1],
      ['changed', 1, 1],
      ['key of instrument-rating', 2, 1],
      ['other', 3, 1],
    ]);
  });

  it('is what the filter names, and nothing where there is none of it', () => {
    const made = [...several(4, {}), ...several(3, { ...other, lesson: 2 })];
    const named = madeUpSchool(made, { filter: { ...ALL, standardKey: 'other' } });
    expect(named.compared).toMatchObject({ standardTitle: 'Skill test', approaches: 3 });
    const nothing = madeUpSchool(made, { filter: { ...ALL, engineVersion: '9' } });
    expect(nothing.compared).toBeNull();
    expect(nothing.leftOut.map(({ count }) => count)).toEqual([4, 3]);
    expect(nothing.judgedBy).toHaveLength(2);
  });

  it('counts what was debriefed twice once', () => {
    const { compared, leftOut } = madeUpSchool([{ minute: 0 }, { minute: 5 }, { minute: 20 }]);
    expect(compared!.approaches).toBe(2);
    expect(leftOut).toMatchObject([{ why: 'same-approach', count: 1 }]);
  });

  it('lies between the days, both included, with lessons before them still counted as experience', () => {
    const made = [1, 2, 3, 4].map((lesson) => ({ lesson }));
    const school = madeUpSchool(made, { filter: { ...ALL, from: '2026-01-02', to: '2026-01-03' } });
    expect(school.students[0]!.lessons.map(({ ordinal }) => ordinal)).toEqual([2, 3]);
    expect(school.leftOut).toMatchObject([{ why: 'other-days', count: 2 }]);
  });

  it('passes the filter of the case mix, which stays whole to be chosen from', () => {
    const made = [
      { flown: 'coupled', turbulence: ' Light ', localizerFullScaleDeg: 1.95 },
      { flown: null, turbulence: 'light', localizerFullScaleDeg: 1.9999999, student: 'hazel', minute: 10 },
      { flown: 'coupled', turbulence: null, localizerFullScaleDeg: 2.5, student: 'hazel', minute: 20 },
    ] as const;
    const school = madeUpSchool(made, { filter: { ...ALL, mix: { flown: ['coupled'], aircraft: null } } });
    expect(school.compared!.approaches).toBe(2);
    expect(school.leftOut).toMatchObject([{ why: 'other-mix', count: 1 }]);
    const valuesOf = (factor: string) =>
      school.caseMix
        .find((mix) => mix.factor === factor)!
        .values.map(({ key, label, approaches, students }) => [key, label, approaches, students]);
    expect(valuesOf('flown')).toEqual([
      ['coupled', 'flown coupled', 2, 2],
      ['not-stated', 'not stated whether flown by hand or coupled', 1, 1],
    ]);
    expect(valuesOf('aircraft')).toEqual([['QQ-ABC', 'QQ-ABC', 3, 2]]);
    expect(valuesOf('turbulence')).toEqual([
      ['light', 'light', 2, 2],
      ['not-stated', 'not stated', 1, 1],
    ]);
    expect(valuesOf('course-width')).toEqual([
      ['4-to-5', '4° to under 5°', 1, 1],
      ['5-and-more', '5° and more', 1, 1],
      ['under-4', 'under 4°', 1, 1],
    ]);
  });
});

describe('outcomes', () => {
  it('are shares of those decided, with what is not known beside them', () => {
    const of = (
      student: string,
      wentOn: NonNullable<MadeUpApproach['wentOn']>,
      count: number,
    ): MadeUpApproach[] =>
      Array.from({ length: count }, (_, i) => ({
        student,
        wentOn,
        minute: 10 * i,
        log: `${student} ${wentOn}`,
      }));
    const { outcomes } = madeUpSchool([
      ...of('rowan', 'stable', 4),
      ...of('rowan', 'unstable-continued', 1),
      ...of('hazel', 'stable', 2),
      ...of('hazel', 'unstable-went-around', 1),
      ...of('juniper', 'unclear', 2),
      ...of('juniper', 'not-assessed', 3),
    ]);
    expect(outcomes).toMatchObject({ decided: 8, students: 2, unclear: 2, notAssessed: 3 });
    expect(outcomes!.shares.map(({ outcome, count, share }) => [outcome, count, share])).toEqual([
      ['stable', 6, 0.75],
      ['unstable-went-around', 1, 0.125],
      ['unstable-continued', 1, 0.125],
    ]);
    for (const { share, interval } of outcomes!.shares) {
      expect(interval!.low).toBeLessThan(share);
      expect(interval!.high).toBeGreaterThan(share);
    }
  });

  it('of one student have no interval, and of nothing decided no share', () => {
    expect(madeUpSchool([{ wentOn: 'stable' }]).outcomes!.shares[0]).toMatchObject({
      share: 1,
      interval: null,
    });
    expect(madeUpSchool([{ wentOn: 'unclear' }]).outcomes).toMatchObject({
      decided: 0,
      shares: [],
      unclear: 1,
    });
  });
});

describe('who needs what', () => {
  const verdicts = (...given: (readonly NonNullable<MadeUpApproach['verdict']>[])[]) =>
    given.flatMap((lesson, i) =>
      lesson.map((verdict, k): MadeUpApproach => ({ lesson: i + 1, minute: 10 * k, verdict })),
    );

  it('is told by the latest three lessons, from half of at least three decided on', () => {
    const [need] = madeUpSchool(
      verdicts(['not-met', 'not-met'], ['met'], ['not-met', 'unclear'], ['met', 'not-met', 'not-assessed']),
    ).needs;
    expect(need).toEqual({
      studentId: 'rowan',
      name: 'Rowan Teal',
      lessons: 3,
      verdicts: { met: 2, 'not-met': 2, unclear: 1, 'not-assessed': 1 },
      isFlagged: true,
    });
  });

  it('is nothing for fewer than three decided, or fewer than half not met', () => {
    const flagged = (given: MadeUpApproach[]) => madeUpSchool(given).needs[0]!.isFlagged;
    expect(flagged(verdicts(['not-met', 'not-met', 'unclear']))).toBe(false);
    expect(flagged(verdicts(['not-met', 'not-met', 'met', 'met', 'met']))).toBe(false);
    expect(flagged(verdicts(['not-met', 'not-met', 'met']))).toBe(true);
  });
});
