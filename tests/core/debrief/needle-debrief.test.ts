import { expect, it } from 'vitest';
import { LOCALIZER_SIDES, needleDebrief } from '../../../core/debrief/needle-debrief.ts';
import { constant } from '../../../core/numeric/polyline.ts';
import { every } from '../numeric/line.ts';

it('what the needle showed is off by the position and the beam together, which are independent', () => {
  // From 0 to full scale in 100 s: 1 s for a hundredth. 0.06 and 0.08 make 0.10.
  const parts = [every(50, [0, 0.5, 1])];
  const limit = { lower: -0.75, upper: 0.75, code: null, source: 'made', status: 'own choice' } as const;
  const needle = needleDebrief(
    { parts, halfWidths: constant(parts, 0.06), hiddenS: () => 3 },
    { limit, sides: LOCALIZER_SIDES, beam: 0.08, judged: [] },
    1,
  );
  const [own, shown] = [needle.timeOutsideS!, needle.shownOutsideS!];
  expect(own.best).toBeCloseTo(25, 9);
  expect(own.atLeast).toBeCloseTo(19, 9);
  expect(own.atMost).toBeCloseTo(31 + 3, 9);
  expect(shown.best).toBeCloseTo(25, 9);
  expect(shown.atLeast).toBeCloseTo(15, 9);
  expect(shown.atMost).toBeCloseTo(35 + 3, 9);
});
