import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { levelOf } from '../../../core/grade/level.ts';
import type { ApproachJudgement, CriterionJudgement } from '../../../core/standard/judgement.ts';
import { anyJudgement } from './any-judgement.ts';
import { criteria, criterion, excursion, judgement, NOT_ASSESSED } from './make-judgement.ts';

const found = (
  but: Readonly<Record<string, Partial<CriterionJudgement>>>,
  rest: Partial<ApproachJudgement> = {},
) => levelOf(judgement({ criteria: criteria(but), ...rest }));

const PROMPT = { excursions: [excursion(2, true)], outsideS: 2 };
const NOT_MET = { verdict: 'not-met', why: 'beyond ¾ scale for 30 s' } as const;

describe('level 5', () => {
  it('is for all met, no excursion and 95 % of final inside half of each limit', () => {
    expect(found({})).toEqual({
      level: 5,
      words: 'well inside',
      because:
        'Level 5, the highest: all that was assessed was met without an excursion, and needles and airspeed on ' +
        'final, as far as assessed, were within half of each limit for 95 % of the time or more.',
    });
  });

  it.each(['localizer-final', 'glidepath-final', 'airspeed-final'])(
    'holds at exactly 95 %% of %s and not a hair below',
    (id) => {
      expect(found({ [id]: { insideHalfShare: 0.95 } }).level).toBe(5);
      const below = found({ [id]: { insideHalfShare: 0.9499999 } });
      expect(below).toMatchObject({ level: 4, words: 'met' });
      expect(below.because).toMatch(
        /^Level 4, and not 5: \w+ on final was within half of its limit for 94\.9 % of the time, and 95 % are asked\.$/,
      );
    },
  );

  it('asks for half of the limit on final only', () => {
    expect(found({ 'altitude-before-final': { insideHalfShare: 0.2 } }).level).toBe(5);
    expect(found({ 'localizer-before-final': { insideHalfShare: 0.2 } }).level).toBe(5);
    const own = criterion('bank', { insideHalfShare: 0 });
    expect(levelOf(judgement({ criteria: [...criteria(), own] })).level).toBe(5);
  });

  it('is not given where the share is not known', () => {
    const unknown = found({ 'localizer-final': { insideHalfShare: null } });
    expect(unknown.level).toBe(4);
    expect(unknown.because).toContain(
      'how long Localizer on final was within half of its limit is not known',
    );
  });

  it('is not kept away by what was not assessed', () => {
    expect(found({ 'airspeed-final': NOT_ASSESSED, minimums: NOT_ASSESSED }).level).toBe(5);
    expect(found({ 'airspeed-final': { ...NOT_ASSESSED, ...PROMPT } }).level).toBe(5);
  });
});

describe('levels 3 and 2', () => {
  it.each(['localizer-before-final', 'altitude-before-final', 'localizer-final', 'airspeed-final'])(
    'are 3 for %s met with a prompt correction',
    (id) => {
      expect(found({ [id]: PROMPT })).toMatchObject({ level: 3, words: 'met with prompt corrections' });
    },
  );

  it('say what keeps the level from being higher', () => {
    expect(
      found({ 'glidepath-final': PROMPT, 'localizer-final': PROMPT, stability: { verdict: 'met' } }).because,
    ).toBe(
      'Level 3, and not 4: Localizer on final went beyond its limit and was corrected promptly; ' +
        'Glidepath on final went beyond its limit and was corrected promptly.',
    );
    expect(found({ 'glidepath-final': NOT_MET, 'localizer-final': PROMPT }).because).toBe(
      'Level 2, and not 3: Glidepath on final was not met (beyond ¾ scale for 30 s).',
    );
  });

  it.each(['altitude-before-final', 'glidepath-final', 'stability', 'minimums'])(
    'are 2 for %s not met',
    (id) => {
      expect(found({ [id]: NOT_MET })).toMatchObject({ level: 2, words: 'not met' });
    },
  );

  it("are 2 for a criterion of the user's own not met, though it carries no points", () => {
    expect(levelOf(judgement({ criteria: [...criteria(), criterion('bank', NOT_MET)] })).level).toBe(2);
  });
});

describe('level 1', () => {
  it('is for a safety limit crossed, whatever else was met', () => {
    expect(found({}, { safety: ['full scale low for 4 s', 'sink failed at 500 ft'] })).toEqual({
      level: 1,
      words: 'a safety limit was crossed',
      because:
        'Level 1, and not 2: a safety limit was crossed: full scale low for 4 s; ' +
        'a safety limit was crossed: sink failed at 500 ft.',
    });
    expect(found({ minimums: NOT_MET }, { safety: ['x'] }).level).toBe(1);
  });
});

describe('a go-around that was a sound decision', () => {
  const sound = { soundGoAround: 'begun 4 s after the glidepath went outside' };

  it('is never below level 3, and says why not lower and why not higher', () => {
    expect(found({ 'glidepath-final': NOT_MET }, sound)).toEqual({
      level: 3,
      words: 'went around: a sound decision',
      because:
        'Level 3, and not lower: the go-around was a sound decision (begun 4 s after the glidepath went outside), ' +
        'and not 4: Glidepath on final was not met (beyond ¾ scale for 30 s).',
    });
    expect(found({}, { ...sound, safety: ['x'] }).level).toBe(3);
    expect(found({}, { ...sound, ceiling: { level: 2, why: 'x' } }).level).toBe(3);
  });

  it('keeps the level that it earned from 3 upwards', () => {
    expect(found({ 'glidepath-final': PROMPT }, sound)).toEqual({
      level: 3,
      words: 'went around: a sound decision',
      because: 'Level 3, and not 4: Glidepath on final went beyond its limit and was corrected promptly.',
    });
    expect(found({ 'glidepath-final': { insideHalfShare: 0.5 } }, sound)).toMatchObject({
      level: 4,
      words: 'met',
    });
    expect(found({}, sound).level).toBe(5);
  });

  it('is never below 3 in any approach', () => {
    fc.assert(
      fc.property(anyJudgement(), (any) => {
        expect(levelOf({ ...any, soundGoAround: 'begun in time' }).level).toBeGreaterThanOrEqual(3);
      }),
    );
  });
});

describe('a ceiling', () => {
  const ceiling = (level: 2 | 4) => ({ ceiling: { level, why: 'it was vectored inside the fix' } });

  it('caps the level and says why', () => {
    expect(found({}, ceiling(4))).toEqual({
      level: 4,
      words: 'met',
      because: 'Level 4, and not 5: it was vectored inside the fix.',
    });
    expect(found({}, ceiling(2)).level).toBe(2);
  });

  it('never lifts it', () => {
    expect(found({ minimums: NOT_MET }, ceiling(4)).level).toBe(2);
    expect(found({}, { ...ceiling(4), safety: ['x'] }).level).toBe(1);
  });
});

it('adding a criterion met and well inside never lowers the level', () => {
  fc.assert(
    fc.property(anyJudgement(), fc.constantFrom('bank', 'minimums', 'airspeed-final'), (any, id) => {
      const more = { ...any, criteria: [...any.criteria, criterion(id)] };
      expect(levelOf(more).level).toBeGreaterThanOrEqual(levelOf(any).level);
    }),
  );
});
