import { describe, expect, it } from 'vitest';
import type { Wind } from '../../../core/approach/wind.ts';
import type { DebriefMeasures } from '../../../core/debrief/debrief.ts';
import { windSentences } from '../../../core/report/wind-lines.ts';

const NOTHING: DebriefMeasures = {
  correctionsOnFinal: null,
  sinkOnFinal: null,
  descent: null,
  windOnFinal: null,
  windAt1000: null,
  windAtThreshold: null,
  threshold: null,
  touchdownDistanceFt: null,
  heightLostInMissedApproachFt: null,
  recordedLocalizer: null,
  recordedGlidepath: null,
  rollout: null,
  unknown: {},
};
const FRESH: Wind = {
  fromTrueDeg: 359.8,
  speedKt: 15,
  headwindKt: 9,
  crosswindFromRightKt: -12,
  errorKt: 5.5,
};
/** As large as its error. */
const LIGHT: Wind = { ...FRESH, speedKt: 5.5, headwindKt: -3.3, crosswindFromRightKt: 4.4 };

describe('the wind in words', () => {
  it('is not spoken of where it is not known', () => {
    expect(windSentences(NOTHING)).toEqual([]);
  });

  it('has its error, and its components from either side', () => {
    expect(
      windSentences({ ...NOTHING, windOnFinal: FRESH, windAt1000: FRESH, windAtThreshold: FRESH }),
    ).toEqual([
      'Wind on final from 360° true at 15 kt, ± 6 kt: 9 kt headwind, 12 kt from the left.',
      'Wind at the 1,000 ft gate: 9 kt headwind, 12 kt from the left, ± 6 kt.',
      'Wind at the threshold, if flown without a slip: 9 kt headwind, 12 kt from the left, ± 6 kt.',
    ]);
  });

  it('is light where the error is as large', () => {
    expect(windSentences({ ...NOTHING, windOnFinal: LIGHT, windAt1000: LIGHT })).toEqual([
      'Wind on final: light, not told apart from calm (from 360° true at 6 kt, ± 6 kt).',
      'Wind at the 1,000 ft gate: light, not told apart from calm (3 kt tailwind, 4 kt from the right, ± 6 kt).',
    ]);
  });
});
