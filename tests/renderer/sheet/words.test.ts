import { describe, expect, it } from 'vitest';
import type { SheetExcursion } from '../../../core/sheet/sheet.ts';
import { excursionWords } from '../../../renderer/sheet/words.ts';

const OUT: SheetExcursion = {
  criterionId: 'localizer-final',
  title: 'Localizer on final',
  unit: 'full scale',
  strip: 'localizer',
  startS: 0,
  endS: 39,
  peakS: 0,
  peak: 0.85,
  outsideS: 39,
  prompt: false,
  untilEstablished: false,
};

describe('the words of a time outside', () => {
  it('tell one who had yet to settle from one who was beyond the limit', () => {
    expect(excursionWords(OUT, 2)).toMatch(/, 39 s$/);
    expect(excursionWords({ ...OUT, untilEstablished: true }, 2)).toMatch(/, not established for 39 s$/);
  });
});
