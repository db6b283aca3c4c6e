import { describe, expect, it } from 'vitest';
import { gradeOf } from '../../../core/grade/grade.ts';
import type { ApproachJudgement, CriterionJudgement } from '../../../core/standard/judgement.ts';
import { ALL_IDS, criteria, judgement, NOT_ASSESSED } from './make-judgement.ts';

function because(
  but: Readonly<Record<string, Partial<CriterionJudgement>>>,
  rest: Partial<ApproachJudgement> = {},
): string | null {
  const grade = gradeOf(judgement({ criteria: criteria(but), ...rest }));
  return grade.level === null ? grade.notGradedBecause : null;
}

const open = (why: string) => ({ ...NOT_ASSESSED, why });
const WHOLE_FINAL =
  ' A level needs final flown to decision altitude and recorded with a fix every 3 s or oftener: where the log was ' +
  'thinned or cut, export it whole.';

describe('no level and no score', () => {
  it('below 70 points assessed, with what to say', () => {
    expect(
      because({
        'airspeed-final': open('no target speed was given'),
        stability: open('no airspeed'),
        'altitude-before-final': open('no altitude was assigned'),
      }),
    ).toBe(
      'not graded: this log holds too little: 65 of 100 points were assessed, and 70 are needed. Left out: Altitude ' +
        'before final (no altitude was assigned); Airspeed on final (no target speed was given); Stability (no ' +
        'airspeed). If you know it, state the airspeed flown for (Vref, where the standard asks for it).',
    );
  });

  it('asks for all that the user may know', () => {
    const said = because({ 'airspeed-final': NOT_ASSESSED, stability: NOT_ASSESSED, minimums: NOT_ASSESSED });
    expect(said).toMatch(
      /60 of 100 points.* asks for it\); and whether the runway was in sight at decision altitude\.$/,
    );
  });

  it('asks for better heights, not for a whole log, where a needle may be anywhere on its scale', () => {
    const off = open('the heights of this log may be off by more than the full scale of the needle');
    expect(because({ 'glidepath-final': off })).toMatch(
      /A level needs positions and heights that are nearer/,
    );
    const cut = open('final was not flown to decision altitude');
    expect(because({ 'glidepath-final': off, 'localizer-final': cut })).toContain(WHOLE_FINAL);
  });

  it('counts what is unclear as assessed, as long as something is clear', () => {
    const unclear = { verdict: 'unclear', why: 'as it may be off' } as const;
    const fewer = {
      'localizer-before-final': open('a'),
      'altitude-before-final': open('b'),
      stability: open('c'),
    };
    expect(because({ ...fewer, 'airspeed-final': unclear })).toBeNull();
    expect(because({ 'glidepath-final': unclear, 'localizer-final': unclear })).toBeNull();
    const nothing = because(Object.fromEntries(ALL_IDS.map((id) => [id, unclear])));
    expect(nothing).toMatch(/too little: nothing is clear enough to make a score of\.$/);
  });

  it('counts the criteria that a standard does not have as not assessed', () => {
    const few = criteria().filter(
      ({ id }) => id !== 'minimums' && id !== 'airspeed-final' && id !== 'stability',
    );
    expect(because({}, { criteria: few })).toMatch(/60 of 100 points were assessed, and 70 are needed\.$/);
    expect(because({}, { criteria: [] })).toBe(
      'not graded: this log holds too little: Localizer on final was not assessed; Glidepath on final was not ' +
        `assessed.${WHOLE_FINAL}`,
    );
  });

  it("does not count a user's own criterion, nor name it among what is left out", () => {
    const own = [{ ...criteria()[0]!, ...NOT_ASSESSED, id: 'bank', title: 'Bank' }];
    const but = {
      'airspeed-final': NOT_ASSESSED,
      stability: NOT_ASSESSED,
      'altitude-before-final': NOT_ASSESSED,
    };
    const said = because({}, { criteria: [...criteria(but), ...own] });
    expect(said).toMatch(/: 65 of 100/);
    expect(said).not.toMatch(/Bank/);
  });

  it.each([
    ['localizer-final', 'Localizer on final'],
    ['glidepath-final', 'Glidepath on final'],
  ])('without %s, though 75 points were assessed', (id, title) => {
    expect(because({ [id]: open('40 s were not recorded') })).toBe(
      `not graded: this log holds too little: ${title} was not assessed (40 s were not recorded).${WHOLE_FINAL}`,
    );
  });

  it('where the judgement says that none can be given', () => {
    expect(because({}, { noLevelBecause: 'its fixes are 5 s apart' })).toBe(
      `not graded: this log holds too little: its fixes are 5 s apart.${WHOLE_FINAL}`,
    );
  });

  it('says all the same what is sure', () => {
    const rest = { noLevelBecause: 'its fixes are 5 s apart' };
    expect(because({}, { ...rest, safety: ['full scale low for 12 s'] })).toMatch(
      / Sure all the same: a safety limit was crossed: full scale low for 12 s\.$/,
    );
    expect(because({}, { ...rest, soundGoAround: 'begun at once' })).toMatch(
      / Sure all the same: the go-around was a sound decision \(begun at once\)\.$/,
    );
  });

  it('keeps the points of what was assessed', () => {
    const grade = gradeOf(judgement({ noLevelBecause: 'its fixes are 5 s apart' }));
    expect(grade).toMatchObject({ level: null });
    expect(grade.points.map(({ given }) => given)).toEqual([5, 5, 25, 25, 15, 15, 10]);
  });
});

describe('a level and a score', () => {
  it('stand at exactly 70 points', () => {
    expect(because({ 'airspeed-final': NOT_ASSESSED, stability: NOT_ASSESSED })).toBeNull();
  });

  it('stand with an unclear needle, which makes a range', () => {
    expect(because({ 'localizer-final': { verdict: 'unclear' } })).toBeNull();
  });
});
