import { describe, expect, it } from 'vitest';
import { allowanceFrom } from '../../renderer/state/allowance-text.ts';

const AIRSPEED = { id: 'airspeed-final', title: 'Airspeed on final', unit: 'kt' } as const;
const LOCALIZER = { id: 'localizer-final', title: 'Localizer on final', unit: 'full scale' } as const;

describe('an allowance as it is typed', () => {
  it.each([
    [AIRSPEED, '5', 5],
    [AIRSPEED, ' 2.5 ', 2.5],
    [LOCALIZER, '0,25', 0.25],
    [LOCALIZER, '.1', 0.1],
    [LOCALIZER, '1', 1],
  ])('on %j by "%s" is one', (criterion, by, room) => {
    expect(allowanceFrom(criterion, by, ' gusts ')).toEqual({
      allowance: { criterion: criterion.id, by: room, reason: 'gusts' },
    });
  });

  it.each(['', '0', '-5', '51', 'five', '5 kt', '1e1', 'Infinity'])(
    'by "%s" is none, and that is said',
    (by) => {
      expect(allowanceFrom(AIRSPEED, by, 'gusts')).toEqual({
        allowance: null,
        by: 'A number above 0, and at most 50.',
        reason: null,
      });
    },
  );

  it('needs a reason, which is not blank and not a page long', () => {
    for (const reason of ['', '   ', 'x'.repeat(201)])
      expect(allowanceFrom(LOCALIZER, '0.1', reason)).toMatchObject({ allowance: null, by: null });
    expect(allowanceFrom(LOCALIZER, '2', '')).toEqual({
      allowance: null,
      by: 'A number above 0, and at most 1.',
      reason: 'Say why: it is shown beside the verdict.',
    });
  });
});
