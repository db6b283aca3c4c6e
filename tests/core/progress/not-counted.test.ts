import { describe, expect, it } from 'vitest';
import { progressSentence } from '../../../core/progress/sentences.ts';
import { lessonsOf, recordOf } from './made-up.ts';

describe('what an unconfirmed draft judged', () => {
  const BAD = { 'glidepath-final': 'not-met', stability: 'not-met', minimums: 'not-met' } as const;
  const DRAFT = { isByDraft: true, glidepathRms: 0.9, outsideNm: 4, verdicts: BAD } as const;
  // As if it had been graded, as it once was: best of all.
  const drafts = lessonsOf(3, 2, (lesson) => ({
    lesson: lesson + 2,
    log: `draft ${lesson}`,
    level: [5, 5, 5],
    ...DRAFT,
  }));
  const others = lessonsOf(6, 2, (lesson) => ({ glidepathRms: 0.5 - 0.03 * lesson, level: [3, 3, 3] }));

  it('leaves every figure, trend and advice as if it were not there, and says so with its count', () => {
    const { leftOut, ...record } = recordOf([...others, ...drafts]);
    const { leftOut: nothing, ...without } = recordOf(others);
    expect(record).toEqual(without);
    expect(nothing).toEqual([]);
    const sentence =
      '6 not counted: the facility was an unconfirmed draft. Once its values are confirmed and the log is debriefed by it again (in a command: import with --again yes), it counts.';
    expect(leftOut).toEqual([{ why: 'by-draft', count: 6, later: 0, sentence }]);
  });

  it('has no record of it where there is nothing else, and says why', () => {
    const record = recordOf(drafts);
    expect(record).toMatchObject({ compared: null, lessons: [], lines: [], practise: null, shown: null });
    expect(record.leftOut).toMatchObject([{ why: 'by-draft', count: 6, later: 0 }]);
    expect(progressSentence(record)).toBe('No approach of Rowan Teal has been judged yet.');
  });

  it('says which was flown since, and which is told by another debrief', () => {
    const log = 'the same log';
    const record = recordOf([
      { lesson: 1, log },
      { lesson: 1, log, ...DRAFT },
      { lesson: 2, ...DRAFT },
    ]);
    expect(record.leftOut).toMatchObject([{ count: 2, later: 1 }]);
    expect(record.leftOut[0]!.sentence).toContain('1 of them counted above in another debrief.');
    expect(progressSentence(record)).toContain('1 approach flown since is left out.');
  });

  it('counts a pass as a pass', () => {
    const record = recordOf([{}, { minute: 20, kind: 'localizer-pass', isByDraft: true }]);
    expect(record.leftOut).toMatchObject([{ why: 'not-an-approach', count: 1 }]);
  });
});

describe('an approach whose heights seem to be in another unit', () => {
  const others = lessonsOf(6, 2, (lesson) => ({ glidepathRms: 0.5 - 0.03 * lesson, level: [3, 3, 3] }));

  it('is in no figure, and its own sentence says why', () => {
    const { leftOut, ...record } = recordOf([...others, { lesson: 7, isUnitDoubted: true }]);
    expect({ ...record, leftOut: [] }).toEqual(recordOf(others));
    expect(leftOut).toMatchObject([{ why: 'unit-doubted', count: 1, later: 1 }]);
    expect(leftOut[0]!.sentence).toBe(
      '1 not counted: the heights seem to be in another unit than they were read in. Once the unit is stated and the log is debriefed with it again (in a command: import with --unit and --again yes), it counts.',
    );
    expect(progressSentence({ ...record, leftOut })).toContain('1 approach flown since is left out.');
  });

  it('is told by the debrief with the unit stated, where there is one', () => {
    const log = 'the same log';
    const { leftOut } = recordOf([
      { lesson: 1, log },
      { lesson: 1, log, isUnitDoubted: true },
    ]);
    expect(leftOut).toMatchObject([{ why: 'unit-doubted', count: 1, later: 0 }]);
    expect(leftOut[0]!.sentence).toContain('1 of them counted above in another debrief.');
  });
});
