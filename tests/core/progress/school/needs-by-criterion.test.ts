import { describe, expect, it } from 'vitest';
import type { Verdict } from '../../../../core/standard/judgement.ts';
import { latestApproaches } from '../../../../core/progress/school/latest-approaches.ts';
import {
  needsByCriterion,
  needsSentence,
  type LatestVerdict,
} from '../../../../core/progress/school/needs-by-criterion.ts';
import { needsText } from '../../../../core/progress/school/needs-text.ts';
import type { SchoolApproach, SchoolMeasure } from '../../../../core/progress/school/school-input.ts';

const MEASURES = [
  { id: 'level', title: 'Level' },
  { id: 'localizer-final', title: 'Localizer on final' },
  { id: 'glidepath-final', title: 'Glidepath on final' },
] as unknown as readonly SchoolMeasure[];
const NAMES = new Map([
  ['r', 'Rowan Teal'],
  ['h', 'Hazel Wren'],
]);

const told = (studentId: string, criterion: string, verdict: Verdict, count: number): LatestVerdict => ({
  studentId,
  criterion,
  verdict,
  count,
});

describe('who needs what', () => {
  const latest = [
    told('r', 'glidepath-final', 'not-met', 2),
    told('r', 'glidepath-final', 'met', 2),
    told('r', 'localizer-final', 'not-met', 2),
    told('r', 'localizer-final', 'unclear', 4),
    told('h', 'glidepath-final', 'not-met', 3),
    told('h', 'localizer-final', 'not-met', 1),
    told('h', 'localizer-final', 'met', 2),
  ];
  const needs = needsByCriterion(latest, MEASURES, NAMES);

  it('stands by names and by criteria, and marks half or more of three or more decided', () => {
    expect(needs.map(({ name }) => name)).toEqual(['Hazel Wren', 'Rowan Teal']);
    expect(needs.map(({ criteria }) => criteria.map(({ id, isFlagged }) => [id, isFlagged]))).toEqual([
      [
        ['localizer-final', false],
        ['glidepath-final', true],
      ],
      // Two of two decided are too few, though neither was met.
      [
        ['localizer-final', false],
        ['glidepath-final', true],
      ],
    ]);
    expect(needs[1]!.criteria[0]!.verdicts).toEqual({ met: 0, 'not-met': 2, unclear: 4, 'not-assessed': 0 });
  });

  it('is first one sentence, of what most need, and then whose it is', () => {
    expect(needsSentence(needs, MEASURES)).toBe('Glidepath on final is to be practised by 2 of 2 students.');
    expect(needsText(needs, MEASURES)).toBe(
      'Glidepath on final is to be practised by 2 of 2 students.\n\n' +
        'To practise, by the latest three lessons\n' +
        '  Hazel Wren: glidepath on final (not met in 3 of 3).\n' +
        '  Rowan Teal: glidepath on final (not met in 2 of 4).\n',
    );
  });

  it('names all that are needed as often, and says where too little is decided, and where there is nobody', () => {
    const both = needsByCriterion(
      [...latest, told('h', 'localizer-final', 'not-met', 5), told('r', 'localizer-final', 'not-met', 1)],
      MEASURES,
      NAMES,
    );
    expect(needsSentence(both, MEASURES)).toBe(
      'Localizer on final is to be practised by 2 of 2 students; glidepath on final by 2.',
    );
    const two = needsByCriterion([told('r', 'glidepath-final', 'not-met', 2)], MEASURES, NAMES);
    expect(needsSentence(two, MEASURES)).toContain('Of all of them too little is decided to tell.');
    const open = [told('r', 'localizer-final', 'met', 3), told('r', 'glidepath-final', 'unclear', 4)];
    expect(needsSentence(needsByCriterion(open, MEASURES, NAMES), MEASURES)).toMatch(
      / Mostly unclear: glidepath on final\.$/,
    );
    expect(needsSentence([], MEASURES)).toBe('Nobody has a judged approach among what is let in.');
  });

  it('says that nobody needs anything where that is so', () => {
    const fine = needsByCriterion([told('r', 'glidepath-final', 'met', 3)], MEASURES, NAMES);
    expect(needsText(fine, MEASURES)).toBe(
      'Of 1 student, nobody has a criterion that was not met in half of three or more that were decided\nlately.\n',
    );
  });
});

describe('the latest lessons', () => {
  it('are three of each student, in the order flown, also where two are of one day', () => {
    const flown = (studentId: string, lesson: number) =>
      ({ studentId, lessonId: `${studentId}${lesson}`, ref: lesson }) as SchoolApproach;
    // The first lesson goes on after the second, on the same day.
    const order = [1, 2, 1, 3, 4].map((lesson) => flown('r', lesson));
    const latest = latestApproaches([...order, flown('h', 2)]);
    expect(latest.map(({ lessonId }) => lessonId)).toEqual(['r1', 'r1', 'r3', 'r4', 'h2']);
  });
});
