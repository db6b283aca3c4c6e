import { describe, expect, it } from 'vitest';
import { CRITERION_IDS } from '../../../core/standard/criterion-ids.ts';
import { SHIPPED } from '../../../core/standard/standards.ts';
import { judged, levelIntercept, swing } from './judged.ts';

const PERFECT = {
  heightFt: levelIntercept,
  recorded: { airspeedIndicatedKt: () => 90, bankDeg: () => 0 },
  stated: { targetAirspeedKt: 90, vrefKt: 80, visualReferenceAtMinimums: 'seen' },
} as const;

describe('a perfect approach from a level intercept', () => {
  it.each(SHIPPED.map((standard) => [standard.id, standard] as const))('is met under %s', (_, standard) => {
    const found = judged({ ...PERFECT, standard });
    expect(found.criteria.map(({ id }) => id)).toEqual([...CRITERION_IDS]);
    for (const { id, verdict, why, excursions } of found.criteria) {
      const lacks = standard.lacks?.[id as (typeof CRITERION_IDS)[number]];
      expect([id, verdict]).toEqual([id, lacks === undefined ? 'met' : 'not-assessed']);
      if (lacks !== undefined) expect(why).toBe(lacks);
      expect(excursions).toEqual([]);
    }
    expect(found.gates.map(({ verdict }) => verdict)).toEqual(['met', 'met']);
    expect(found.gates.flatMap(({ items }) => items.filter(({ verdict }) => verdict !== 'met'))).toEqual([]);
    expect(found).toMatchObject({ safety: [], soundGoAround: null, ceiling: null, noLevelBecause: null });
  });
});

describe('a log of few fixes', () => {
  it('up to 3 s apart can have a level, and beyond none', () => {
    expect(judged({ everyS: 3 }).noLevelBecause).toBeNull();
    const found = judged({ everyS: 3.1 });
    expect(found.noLevelBecause).toBe('fixes are more than 3 s apart');
    expect(found.criterion('localizer-final').verdict).toBe('met');
  });

  it('10 s apart, by whatever clock, is a picture only', () => {
    const bad = {
      localizerFullScale: swing(150, 60, 0.95),
      stated: {
        allowances: [{ criterion: 'localizer-final', by: 5, reason: 'none' }],
      },
    };
    const found = judged({ everyS: 10, ...bad });
    for (const { verdict, why } of found.criteria)
      expect({ verdict, why }).toEqual({
        verdict: 'not-assessed',
        why: 'fixes are about 10 s apart or more: a picture only',
      });
    expect(found.safety).toEqual([]);
    expect(found.soundGoAround).toBeNull();
    expect(found.criterion('localizer-final').allowed).toBeNull();
    expect(judged({ everyS: 9.5, ...bad }).criterion('localizer-final').verdict).toBe('not-assessed');
    expect(judged({ everyS: 9.4, ...bad }).criterion('localizer-final').verdict).toBe('not-met');
  });
});
