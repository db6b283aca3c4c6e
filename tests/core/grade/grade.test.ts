import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gradeOf, type Grade, type NotGraded } from '../../../core/grade/grade.ts';
import type { ApproachJudgement, CriterionJudgement } from '../../../core/standard/judgement.ts';
import { anyJudgement } from './any-judgement.ts';
import {
  criteria,
  criterion,
  excursion,
  gate,
  item,
  judgement,
  lost,
  NOT_ASSESSED,
} from './make-judgement.ts';

type Changes = Readonly<Record<string, Partial<CriterionJudgement>>>;

function graded(but: Changes, rest: Partial<ApproachJudgement> = {}): Grade {
  const grade = gradeOf(judgement({ criteria: criteria(but), ...rest }));
  if (grade.level === null) throw new Error(grade.notGradedBecause);
  return grade;
}

const isGraded = (grade: Grade | NotGraded): grade is Grade => grade.level !== null;

describe('the grade of an approach', () => {
  it('all met and well inside is 5 and 100 %', () => {
    expect(graded({})).toMatchObject({
      level: 5,
      levelLow: 5,
      levelHigh: 5,
      score: 100,
      scoreLow: 100,
      scoreHigh: 100,
      words: 'well inside',
    });
  });

  it('adds the points up and shows the whole arithmetic', () => {
    const grade = graded(
      {
        'altitude-before-final': NOT_ASSESSED,
        'localizer-final': { outsideS: 12, assessedS: 190, verdict: 'not-met', why: 'outside for 12 s' },
        'glidepath-final': { outsideS: 4, excursions: [excursion(4, true)] },
        stability: { verdict: 'not-met', why: 'sink was lost' },
      },
      { gates: [gate({ lostAfter: [lost('sink', 1, 9)] })] },
    );
    // By hand: 5 + 12.5 + 25 × (1 − 4/40) + 15 + 7.5 + 10 = 72.5 of 95; 76.3 %.
    expect(grade).toMatchObject({
      level: 2,
      levelLow: 2,
      levelHigh: 2,
      score: 76,
      scoreLow: 76,
      scoreHigh: 76,
    });
    expect(grade.points.map(({ given, possible }) => [given, possible])).toEqual([
      [5, 5],
      [null, null],
      [12.5, 25],
      [22.5, 25],
      [15, 15],
      [7.5, 15],
      [10, 10],
    ]);
    expect(grade.working).toEqual([
      "This scale is this program's own and no authority's. Points given = points possible × (1 − time beyond the " +
        'limit ÷ 20 % of the time judged), never below 0, and half at most where not met.',
      'Localizer before final: beyond the limit for 0 s of the 200 s judged, all 5 points.',
      'Altitude before final: not assessed (nothing was said of it); its 5 points are neither given nor possible.',
      'Localizer on final: beyond the limit for 12 s of the 190 s judged; 20 % of that is 38 s; ' +
        '25 × (1 − 12/38) = 17.1 points, but not met gives half at most: 12.5 points.',
      'Glidepath on final: beyond the limit for 4 s of the 200 s judged; 20 % of that is 40 s; ' +
        '25 × (1 − 4/40) = 22.5 points.',
      'Airspeed on final: beyond the limit for 0 s of the 200 s judged, all 15 points.',
      'Stability: held at the gate, and lost afterwards (sink): half, 7.5 points by our own choice.',
      'Minimums: met, all 10 points.',
      'Sum: 72.5 of 95 points assessed, 76 %.',
      'Level 2, and not 3: Localizer on final was not met (outside for 12 s); Stability was not met (sink was lost).',
    ]);
  });

  it('rounds the score to a whole percent, a half upwards', () => {
    // 100 − 12.5 = 87.5.
    expect(graded({ 'glidepath-final': { verdict: 'not-met' } }).score).toBe(88);
    // 24.4 of 25 (1 − 1/40): 99.4.
    expect(graded({ 'localizer-final': { outsideS: 1 } }).score).toBe(99);
  });

  it('does not drift where tenths are added', () => {
    // 4.1 + 4.1 + 20.3 + 20.3 + 12.2 (by hand from 7.5/40) + 25: 86.0 exactly.
    const each = { outsideS: 7.5, excursions: [excursion(7.5, true)] };
    const ids = ['localizer-before-final', 'altitude-before-final', 'localizer-final', 'glidepath-final'];
    const but = Object.fromEntries([...ids, 'airspeed-final'].map((id) => [id, each]));
    expect(graded(but).working).toContain('Sum: 86 of 100 points assessed, 86 %.');
  });

  it('a go-around that was a sound decision keeps its points and is 3', () => {
    const grade = graded(
      { 'glidepath-final': { verdict: 'not-met', outsideS: 40 } },
      { soundGoAround: 'begun at once' },
    );
    expect(grade).toMatchObject({ level: 3, words: 'went around: a sound decision', score: 75 });
  });
});

describe('with unclear criteria', () => {
  it('the score leaves them out, and the ranges take them as not met and as met', () => {
    const grade = graded({ 'glidepath-final': { verdict: 'unclear', why: 'the band is as wide' } });
    // Left out: 75 of 75. Not met: 87.5 of 100; met: 100 of 100.
    expect(grade).toMatchObject({
      level: 5,
      levelLow: 2,
      levelHigh: 5,
      score: 100,
      scoreLow: 88,
      scoreHigh: 100,
      words: 'at best well inside',
    });
    expect(grade.working.slice(4, 5)).toEqual([
      'Glidepath on final: unclear (the band is as wide); its 25 points are neither given nor possible.',
    ]);
    expect(grade.working.slice(8)).toEqual([
      'Sum: 75 of 75 points assessed, 100 %.',
      'With what is unclear taken as met: 100 of 100 points assessed, 100 %.',
      'Glidepath on final: beyond the limit for 0 s of the 200 s judged, all 25 points.',
      expect.stringMatching(/^Level 5, the highest/),
      'With what is unclear taken as not met: 87.5 of 100 points assessed, 88 %.',
      'Glidepath on final: beyond the limit for 0 s of the 200 s judged, all 25 points, but not met gives half ' +
        'at most: 12.5 points.',
      'Level 2, and not 3: Glidepath on final was not met (unclear: the band is as wide).',
    ]);
  });

  it('the level is never above what they allow at best', () => {
    const unclear = { verdict: 'unclear', outsideS: 20, excursions: [excursion(20, false)] } as const;
    const grade = graded({ 'airspeed-final': unclear });
    // Left out: 85 of 85; met and not met: 15 × (1 − 20/40) = 7.5, so 92.5 of 100 both ways.
    expect(grade).toMatchObject({
      level: 3,
      levelLow: 2,
      levelHigh: 3,
      score: 100,
      scoreLow: 93,
      scoreHigh: 100,
    });
  });

  it('one that may never have been beyond its limit is as good as that at best, and as bad as it may be', () => {
    const unclear = {
      verdict: 'unclear',
      outsideS: 20,
      outsideRangeS: { atLeast: 0, atMost: 30 },
      excursions: [excursion(20, false)],
    } as const;
    const grade = graded({ 'glidepath-final': unclear });
    // Met: 0 s, 100 of 100. Not met: 25 × (1 − 30/40) = 6.3 (a half is rounded up), 81.3 of 100.
    expect(grade).toMatchObject({ level: 5, levelLow: 2, levelHigh: 5, scoreLow: 81, scoreHigh: 100 });
    expect(grade.working.join(' ')).not.toContain('corrected promptly');
    expect(grade.working.join(' ')).toContain('beyond the limit for 30 s of the 200 s judged');
  });

  it('what was not recorded is no more than the time judged', () => {
    const unclear = {
      verdict: 'unclear',
      assessedS: 100,
      outsideRangeS: { atLeast: 0, atMost: 130 },
    } as const;
    expect(graded({ 'glidepath-final': unclear }).working.join(' ')).toContain(
      'for 100 s of the 100 s judged',
    );
  });

  it.each([
    // Left out: 75 of 85; met: 90 of 100; not met: 75 or 82.5 of 100.
    ['none at worst where the gate is', gate({ items: [item('sink', 'unclear')] }), 75],
    [
      'none at worst where the gate is, and what was lost after it',
      gate({ items: [item('sink', 'unclear')], lostAfter: [{ ...lost('sink'), isProven: false }] }),
      75,
    ],
    ['half at worst where the gate held', gate({ doubtedAfter: ['glidepath'] }), 83],
    ['half at worst where the gate held and something was not recorded', gate(), 83],
  ])('stability that is unclear is worth %s', (_, counting, scoreLow) => {
    const grade = graded(
      { stability: { verdict: 'unclear' }, minimums: { verdict: 'not-met' } },
      { gates: [counting] },
    );
    expect(grade).toMatchObject({ score: 88, scoreLow, scoreHigh: 90, level: 2, levelLow: 2, levelHigh: 2 });
    expect(grade.words).toBe('not met');
  });

  it("one of the user's own makes a range of levels and none of scores", () => {
    const own = criterion('bank', { verdict: 'unclear' });
    const grade = gradeOf(judgement({ criteria: [...criteria(), own] }));
    expect(grade).toMatchObject({ levelLow: 2, levelHigh: 5, score: 100, scoreLow: 100, scoreHigh: 100 });
  });
});

describe('in any approach', () => {
  it('the ranges hold level and score, and points and score stay in their bounds', () => {
    fc.assert(
      fc.property(anyJudgement(), (any) => {
        const grade = gradeOf(any);
        if (!isGraded(grade)) return;
        expect(grade.levelLow).toBeLessThanOrEqual(grade.level);
        expect(grade.levelHigh).toBeGreaterThanOrEqual(grade.level);
        expect(grade.scoreLow).toBeLessThanOrEqual(grade.score);
        expect(grade.scoreHigh).toBeGreaterThanOrEqual(grade.score);
        expect(grade.scoreLow).toBeGreaterThanOrEqual(0);
        expect(grade.scoreHigh).toBeLessThanOrEqual(100);
        expect(Number.isInteger(grade.score)).toBe(true);
      }),
    );
  });

  it('without an unclear criterion the ranges are one value', () => {
    fc.assert(
      fc.property(anyJudgement(['met', 'not-met']), (any) => {
        const { level, levelLow, levelHigh, score, scoreLow, scoreHigh } = gradeOf(any) as Grade;
        expect([levelLow, levelHigh]).toEqual([level, level]);
        expect([scoreLow, scoreHigh]).toEqual([score, score]);
      }),
    );
  });

  it('more time outside never raises the score', () => {
    const moreS = fc.double({ min: 0, max: 60, noNaN: true });
    fc.assert(
      fc.property(anyJudgement(['met', 'not-met', 'unclear']), moreS, (any, moreS) => {
        const [before, after] = [any, withMoreOutside(any, moreS)].map(gradeOf);
        if (!isGraded(before!) || !isGraded(after!)) return;
        expect(after.score).toBeLessThanOrEqual(before.score);
        expect(after.scoreLow).toBeLessThanOrEqual(before.scoreLow);
      }),
    );
  });

  it('the same judgement gives the same bytes, and is left as it was', () => {
    fc.assert(
      fc.property(anyJudgement(), (any) => {
        const before = JSON.stringify(any);
        const first = JSON.stringify(gradeOf(any));
        expect(JSON.stringify(gradeOf(JSON.parse(before) as ApproachJudgement))).toBe(first);
        expect(JSON.stringify(any)).toBe(before);
      }),
    );
  });
});

function withMoreOutside(any: ApproachJudgement, moreS: number): ApproachJudgement {
  const longer = (one: CriterionJudgement) => ({
    ...one,
    outsideS: one.outsideS === null ? null : one.outsideS + moreS,
  });
  return { ...any, criteria: any.criteria.map(longer) };
}
