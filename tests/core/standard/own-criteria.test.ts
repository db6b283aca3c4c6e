import { describe, expect, it } from 'vitest';
import type { OwnCriterion } from '../../../core/standard/standard.ts';
import { INSTRUMENT_RATING } from '../../../core/standard/shipped/instrument-rating.ts';
import { judged, type Flying } from './judged.ts';

function own(
  quantity: OwnCriterion['quantity'],
  lower: number | null,
  upper: number | null,
  flying: Flying = {},
) {
  const limit = { lower, upper, code: null, source: 'our school', status: 'own choice' } as const;
  const standard = { ...INSTRUMENT_RATING, own: [{ id: 'ours', title: 'Ours', quantity, limit }] };
  return judged({ standard, ...flying });
}

describe('a criterion of a user’s own', () => {
  it('is judged on final and stands last', () => {
    const found = own('groundspeedKt', 80, 91);
    expect(found.criteria.at(-1)).toMatchObject({ id: 'ours', verdict: 'met', unit: 'kt' });
    expect(found.criteria).toHaveLength(8);
    expect(found.criterion('ours').counted).toEqual(found.criterion('localizer-final').counted);
    expect(own('groundspeedKt', 80, 89).criterion('ours')).toMatchObject({
      verdict: 'not-met',
      why: 'beyond +80/+89 kt for 181 s',
    });
  });

  it('can be of one side', () => {
    expect(own('verticalSpeedFpm', -550, null).criterion('ours').verdict).toBe('met');
    expect(own('verticalSpeedFpm', -450, null).criterion('ours').verdict).toBe('not-met');
  });

  it('of a sink rate is as unclear as a wandering height makes it', () => {
    // 478 ft/min; ± 50 ft with 300 s over 6 s: 50 × √(6 ÷ (5 × 300 × 6)) × 60 = 77 ft/min.
    const sink = (lower: number) =>
      own('verticalSpeedFpm', lower, null, { heightOffFt: 50 }).criterion('ours').verdict;
    expect(sink(-520)).toBe('unclear');
    expect(sink(-600)).toBe('met');
    expect(sink(-370)).toBe('not-met');
  });

  it('looks at what was recorded, and says where that is nothing', () => {
    const bankDeg = (timeS: number) => (timeS > 200 && timeS < 203 ? 12 : 3);
    expect(own('bankDeg', -10, 10, { recorded: { bankDeg } }).criterion('ours').verdict).toBe('not-met');
    expect(own('bankDeg', -13, 13, { recorded: { bankDeg } }).criterion('ours').verdict).toBe('met');
    expect(own('pitchDeg', -5, 5).criterion('ours')).toMatchObject({
      verdict: 'not-assessed',
      why: 'the log does not hold it',
    });
  });

  it('is open where final was not flown to its end, and shows room allowed', () => {
    expect(own('groundspeedKt', 80, 91, { toNm: 1.5 }).criterion('ours').verdict).toBe('not-assessed');
    const allowances = [{ criterion: 'ours', by: 2, reason: 'tail wind' }];
    expect(own('groundspeedKt', 80, 89, { stated: { allowances } }).criterion('ours').allowed!.verdict).toBe(
      'met',
    );
  });
});
