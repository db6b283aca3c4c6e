import { describe, expect, it } from 'vitest';
import { groupOf, madeUpSchool, type MadeUpApproach } from './made-up-school.ts';
import { several } from './school-of-chance.ts';

const aircraft = (approaches: readonly MadeUpApproach[]) => madeUpSchool(approaches, { groupBy: 'aircraft' });
const instructors = (approaches: readonly MadeUpApproach[]) =>
  madeUpSchool(approaches, { groupBy: 'instructor' });

/** A student for each value, with one approach. */
function flownIn(name: string, values: readonly number[], more: MadeUpApproach = {}): MadeUpApproach[] {
  return values.map((value, i) => ({ student: `${name} ${i}`, aircraft: name, value, ...more }));
}

/** A lesson of so many approaches around a value, half of them off by so much to either side. */
function around(value: number, count: number, more: MadeUpApproach): MadeUpApproach[] {
  return several(count, (i) => ({ ...more, minute: 10 * i, value: value + (i % 2 === 0 ? 0.01 : -0.01) }));
}

describe('a group against all others', () => {
  const A = [0.1, 0.2, 0.3, 0.4, 0.5];
  const B = [0.3, 0.4, 0.5, 0.6, 0.7];

  it('is the difference of students by Welch, with the pairs of students counted', () => {
    const school = aircraft([...flownIn('QQ-ABC', A), ...flownIn('QQ-ABD', B)]);
    const one = groupOf(school, 'QQ-ABC');
    expect(one).toMatchObject({ label: 'QQ-ABC', students: 5, approaches: 5, whyNot: null });
    expect(one.mean).toBeCloseTo(0.3, 12);
    expect(one.adjustedMean).toBeCloseTo(0.3, 12);
    const { interval, difference, superiority, standing, how } = one.comparison!;
    expect(difference).toBeCloseTo(-0.2, 12);
    // Variances of 0.025 over 5 students each: an error of 0.1, with 8 degrees of freedom 2.306004 of them.
    expect(interval.low).toBeCloseTo(-0.4306004, 7);
    expect(interval.high).toBeCloseTo(0.0306004, 7);
    expect({ standing, how }).toEqual({ standing: 'not-sure', how: 'between-students' });
    // Lower is better: 5 + 5 + 4 + 3 + 2 pairs ahead, and of the last three one each equal.
    expect(superiority).toEqual({ chance: 0.82, ahead: 19, equal: 3, behind: 3 });
  });

  it('of two is one comparison, which the other one mirrors', () => {
    const school = aircraft([...flownIn('QQ-ABC', A), ...flownIn('QQ-ABD', B)]);
    const [one, other] = school.groups!.groups.map(({ comparison }) => comparison!);
    expect(school.groups).toMatchObject({ comparisons: 1, confidence: { interval: 0.95, together: 0.95 } });
    expect(other!.difference).toBeCloseTo(-one!.difference, 12);
    expect(one!.superiority.chance + other!.superiority.chance).toBeCloseTo(1, 12);
  });

  it('of three is three, and only what holds for all of them is sure', () => {
    // A difference of 0.25 leaves 0 out by itself, at 2.306 errors of 0.1, and not with 98.3 %, at 2.98 of them.
    const third = flownIn('QQ-ABE', [0.31, 0.42, 0.5, 0.6, 0.69]);
    const one = groupOf(aircraft([...flownIn('QQ-ABC', A), ...flownIn('QQ-ABD', B), ...third]), 'QQ-ABC');
    expect(one.comparison).toMatchObject({ standing: 'perhaps-better', students: 5, otherStudents: 10 });
    expect(one.comparison!.interval.high).toBeLessThan(0);
    expect(one.comparison!.together.high).toBeGreaterThan(0);
    const far = flownIn('QQ-ABE', [0.9, 0.95, 1, 1.05, 1.1]);
    const school = aircraft([...flownIn('QQ-ABC', A), ...flownIn('QQ-ABD', B), ...far]);
    expect(groupOf(school, 'QQ-ABE').comparison!.standing).toBe('worse');
    expect(school.groups).toMatchObject({ comparisons: 3 });
    expect(school.groups!.confidence.together).toBeCloseTo(1 - 0.05 / 3, 12);
  });

  it('takes higher for better where it is', () => {
    const measure = {
      id: 'level',
      title: 'Level',
      measure: 'level',
      unit: 'level',
      better: 'higher',
    } as const;
    const far = flownIn('QQ-ABE', [4, 4, 5, 5, 4]);
    const school = madeUpSchool([...flownIn('QQ-ABC', [1, 2, 1, 2, 1]), ...far], {
      groupBy: 'aircraft',
      measure,
    });
    expect(groupOf(school, 'QQ-ABE').comparison).toMatchObject({
      standing: 'better',
      superiority: { chance: 1, ahead: 25, equal: 0, behind: 0 },
    });
  });

  it('stands in the order of labels and not of values', () => {
    const school = aircraft([...flownIn('QQ-ABE', B), ...flownIn('qq-abd', A), ...flownIn('QQ-ABC', B)]);
    expect(school.groups!.groups.map(({ label }) => label)).toEqual(['QQ-ABC', 'qq-abd', 'QQ-ABE']);
  });

  it('leaves out what has no value', () => {
    const without = flownIn('QQ-ABC', A).map((approach) => ({ ...approach, minute: 10, value: null }));
    const one = groupOf(aircraft([...flownIn('QQ-ABC', A), ...without, ...flownIn('QQ-ABD', B)]), 'QQ-ABC');
    expect(one).toMatchObject({ students: 5, approaches: 5 });
    const { groups, notes } = aircraft(without);
    expect(groups).toMatchObject({ groups: [], comparisons: 0 });
    expect(notes[0]).toBe('5 approaches without a figure of this measure.');
  });

  it('counts a student who flew in both in each, with what was flown there', () => {
    const school = aircraft([
      ...flownIn('QQ-ABC', A),
      ...flownIn('QQ-ABD', B),
      { student: 'QQ-ABC 0', aircraft: 'QQ-ABD', minute: 20, value: 0.9 },
    ]);
    expect(groupOf(school, 'QQ-ABC')).toMatchObject({ students: 5, comparison: { how: 'between-students' } });
    expect(groupOf(school, 'QQ-ABD')).toMatchObject({ students: 6, comparison: { otherStudents: 5 } });
    expect(groupOf(school, 'QQ-ABC').mean).toBeCloseTo(0.3, 12);
    expect(groupOf(school, 'QQ-ABD').mean).toBeCloseTo(3.4 / 6, 12);
  });
});

describe('students on both sides', () => {
  it('are held against themselves where they are more than a fifth', () => {
    const gains = [0.1, 0.2, 0.3, 0.4, 0.5];
    const both = gains.flatMap((gain, i): MadeUpApproach[] => [
      { student: `both ${i}`, aircraft: 'QQ-ABC', minute: 0, value: 0.2 * i },
      { student: `both ${i}`, aircraft: 'QQ-ABD', minute: 10, value: 0.2 * i + gain },
    ]);
    const school = aircraft([...both, ...flownIn('QQ-ABD', [9])]);
    const { comparison } = groupOf(school, 'QQ-ABC');
    expect(comparison).toMatchObject({
      how: 'within-students',
      students: 5,
      otherStudents: 5,
      approaches: 5,
    });
    expect(comparison!.difference).toBeCloseTo(-0.3, 12);
    // A variance of 0.025 over 5 students, with 4 degrees of freedom 2.776445 errors of 0.0707107.
    expect(comparison!.interval.low).toBeCloseTo(-0.3 - 2.776445 * Math.sqrt(0.005), 6);
    expect(comparison!.superiority).toEqual({ chance: 1, ahead: 5, equal: 0, behind: 0 });
    expect(school.notes.join(' ')).toContain('compared with themselves');
  });
});

describe('students of whom a fifth flew on both sides', () => {
  it.each([
    [4, 'between-students'],
    [5, 'within-students'],
  ])('%i of 20 are compared %s', (both, how) => {
    const made = several(20, (i): MadeUpApproach => ({
      student: `s${i}`,
      aircraft: i % 2 === 0 ? 'QQ-ABC' : 'QQ-ABD',
      value: 0.1 + 0.01 * ((7 * i) % 20),
    }));
    const again = several(both, (i): MadeUpApproach => ({
      student: `s${i}`,
      aircraft: i % 2 === 0 ? 'QQ-ABD' : 'QQ-ABC',
      minute: 10,
      value: 0.2 + 0.01 * i,
    }));
    expect(groupOf(aircraft([...made, ...again]), 'QQ-ABC').comparison!.how).toBe(how);
  });
});

describe('adjusting', () => {
  /** Each student in calm air and in turbulence, which is worth 0.1; one side flew more of it. */
  const students = (name: string, levels: readonly number[], calm: number, rough: number, more = {}) =>
    levels.flatMap((level, i): MadeUpApproach[] => {
      const student = { student: `${name} ${i}`, aircraft: name, ...more };
      return [
        ...around(level, calm, { ...student, log: `calm ${name} ${i}` }),
        ...around(level + 0.1, rough, { ...student, log: `rough ${name} ${i}`, turbulence: 'moderate' }),
      ];
    });
  const LEVELS = [0.2, 0.3, 0.4, 0.5, 0.6];

  it('takes away what comes with the mix, told by each student alone', () => {
    const school = aircraft([...students('QQ-ABC', LEVELS, 2, 6), ...students('QQ-ABD', LEVELS, 6, 2)]);
    const { comparison, adjustedMean, mean } = groupOf(school, 'QQ-ABC');
    expect(comparison!.plainDifference).toBeCloseTo(0.05, 12);
    expect(comparison!.difference).toBeCloseTo(0, 12);
    // Of 8 approaches 6 in turbulence, and of all half: less by a quarter of 0.1.
    expect(mean! - adjustedMean!).toBeCloseTo(0.025, 12);
    expect(school.groups!.adjustment).toContainEqual({
      factor: 'turbulence',
      title: 'Turbulence',
      adjusted: 'yes',
      why: null,
    });
  });

  it('is a part of how far a difference may be off', () => {
    const width = (calm: number, rough: number) => {
      const school = aircraft([
        ...students('QQ-ABC', LEVELS, calm, rough),
        ...students('QQ-ABD', LEVELS, 4, 4),
      ]);
      const { low, high } = groupOf(school, 'QQ-ABC').comparison!.interval;
      return high - low;
    };
    // What nobody flew differently needs no adjusting.
    expect(width(2, 6)).toBeGreaterThan(width(4, 4) + 1e-6);
  });

  it('compares nothing where the sides differ in what no student flew both ways', () => {
    const made = [
      ...flownIn('QQ-ABC', [0.1, 0.2, 0.3, 0.4, 0.5], { flown: 'coupled' }),
      ...flownIn('QQ-ABD', [0.6, 0.7, 0.8, 0.9, 1]),
    ];
    const school = aircraft(made);
    const { comparison, whyNot } = groupOf(school, 'QQ-ABC');
    expect(comparison).toBeNull();
    expect(whyNot).toBe(
      'Not compared: the two sides differ too much in what could not be adjusted for, which is by hand or coupled.',
    );
    expect(school.groups).toMatchObject({ comparisons: 0 });
    expect(school.notes.join(' ')).toMatch(
      /Not adjusted for\. By hand or coupled \(.*\): no student flew both/,
    );
  });

  it('compares all the same where they differ in it by a fifth at most', () => {
    const made = [
      ...flownIn('QQ-ABC', [0.1, 0.2, 0.3, 0.4, 0.5]).map((approach, i) =>
        i === 0 ? { ...approach, flown: 'coupled' as const } : approach,
      ),
      ...flownIn('QQ-ABD', [0.6, 0.7, 0.8, 0.9, 1]),
    ];
    expect(groupOf(aircraft(made), 'QQ-ABC').comparison).not.toBeNull();
  });

  it('takes a factor along that goes with another one in every approach', () => {
    const log = { logKind: 'gpx' };
    const together = (approaches: MadeUpApproach[]) =>
      approaches.map((approach) => (approach.turbulence === 'moderate' ? { ...approach, ...log } : approach));
    const school = aircraft(
      together([...students('QQ-ABC', LEVELS, 2, 6), ...students('QQ-ABD', LEVELS, 6, 2)]),
    );
    expect(groupOf(school, 'QQ-ABC').comparison!.difference).toBeCloseTo(0, 12);
    expect(school.groups!.adjustment).toContainEqual({
      factor: 'log-kind',
      title: 'Kind of log',
      adjusted: 'no',
      why: 'Kind of log (gpx): within students it changes only together with something else.',
    });
  });

  it('leaves to the group what changes only together with it', () => {
    // Each student flew the one by hand and the other coupled: nobody can tell which of the two it is.
    const both = LEVELS.flatMap((level, i): MadeUpApproach[] => [
      ...around(level, 2, { student: `s${i}`, aircraft: 'QQ-ABC', flown: 'coupled', log: `one ${i}` }),
      ...around(level + 0.2, 2, { student: `s${i}`, aircraft: 'QQ-ABD', lesson: 1, log: `other ${i}` }),
    ]);
    const { whyNot } = groupOf(aircraft(both), 'QQ-ABC');
    expect(whyNot).toMatch(/could not be adjusted for, which is by hand or coupled/);
  });

  it('counts lessons before as experience, also those that a filter leaves out', () => {
    const lessons = (name: string, from: number) =>
      LEVELS.flatMap((level, i) =>
        several(8, (k): MadeUpApproach => ({
          student: `${name} ${i}`,
          lesson: k + 1,
          minute: i,
          aircraft: k >= from ? name : 'QQ-OLD',
          value: level - 0.02 * k + (k % 3 === 0 ? 0.001 : 0),
        })),
      );
    const filter = {
      standardKey: null,
      engineVersion: null,
      from: null,
      to: null,
      mix: { aircraft: ['QQ-ABC', 'QQ-ABD'] },
    };
    const school = madeUpSchool([...lessons('QQ-ABC', 0), ...lessons('QQ-ABD', 5)], {
      groupBy: 'aircraft',
      filter,
    });
    const { comparison } = groupOf(school, 'QQ-ABD');
    expect(comparison!.plainDifference).toBeCloseTo(-0.05, 2);
    expect(comparison!.difference).toBeCloseTo(0, 2);
  });
});

describe('what is not compared', () => {
  it('is an instructor with fewer than 8 students or 40 approaches, or with fewer elsewhere', () => {
    const made = (students: number, approaches: number, instructor: string) =>
      several(students, (i) =>
        around(0.1 * i, approaches, { student: `${instructor} ${i}`, instructor, lesson: 1 }),
      ).flat();
    const whyNot = (one: MadeUpApproach[], other: MadeUpApproach[]) =>
      groupOf(instructors([...one, ...other]), 'nils').whyNot;
    expect(whyNot(made(8, 5, 'nils'), made(8, 5, 'ida'))).toBeNull();
    expect(whyNot(made(7, 6, 'nils'), made(8, 5, 'ida'))).toBe(
      'Not compared, too few: 7 students with 42 approaches here and 8 students with 40 approaches elsewhere; 8 students and 40 approaches are needed on each side.',
    );
    expect(whyNot(made(8, 5, 'nils'), made(9, 4, 'ida'))).toMatch(/^Not compared, too few/);
  });

  it('is a group of one student, and what is the only group', () => {
    const many = flownIn('QQ-ABC', [0.1, 0.2, 0.3, 0.4, 0.5, 0.6]);
    expect(groupOf(aircraft([...many, ...flownIn('QQ-ABD', [0.9])]), 'QQ-ABD')).toMatchObject({
      mean: 0.9,
      comparison: null,
      whyNot: expect.stringMatching(/too few: 1 student with 1 approach here and 6 students/),
    });
    const only = groupOf(aircraft(many), 'QQ-ABC');
    expect(only.whyNot).toBe('Not compared: there is no other group.');
  });

  it('is what nobody stated, which is no part of the others either', () => {
    const school = aircraft([
      ...flownIn('QQ-ABC', [0.1, 0.2, 0.3, 0.4, 0.5]),
      ...flownIn('QQ-ABD', [0.1, 0.2, 0.3, 0.4, 0.6]),
      ...several(5, (i): MadeUpApproach => ({ student: `nobody ${i}`, aircraft: null, value: 9 + i })),
    ]);
    expect(groupOf(school, 'not-stated')).toMatchObject({
      label: 'not stated',
      students: 5,
      comparison: null,
    });
    expect(groupOf(school, 'QQ-ABC').comparison).toMatchObject({ otherStudents: 5 });
    expect(school.groups!.comparisons).toBe(1);
  });

  it('is what does not differ at all', () => {
    const equal = [0.3, 0.3, 0.3, 0.3, 0.3];
    const school = aircraft([...flownIn('QQ-ABC', equal), ...flownIn('QQ-ABD', equal)]);
    expect(groupOf(school, 'QQ-ABC').whyNot).toMatch(/students do not differ at all/);
  });

  it('is what takes more adjusting than there are approaches', () => {
    const two = (name: string) =>
      several(5, (i): MadeUpApproach[] => [
        { student: `${name} ${i}`, aircraft: name, value: 0.1 * i },
        {
          student: `${name} ${i}`,
          aircraft: name,
          minute: 10,
          value: 0.2 * i,
          turbulence: `kind ${name} ${i}`,
        },
      ]).flat();
    const school = aircraft([...two('QQ-ABC'), ...two('QQ-ABD')]);
    expect(groupOf(school, 'QQ-ABC').whyNot).toBe(
      'Not compared: too few approaches to tell what else made them differ.',
    );
  });
});
