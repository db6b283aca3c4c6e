import { describe, expect, it } from 'vitest';
import { halfWidthsIn, recordedIn } from '../../../core/standard/case.ts';
import { NO_ERROR } from '../../../core/track/position-error.ts';
import { makeFlown } from '../approach/make-flown.ts';

/** A minute in which the glidepath is not known at 20 s and from 40 to 42 s, and a gap from 50 to 60 s. */
const flown = makeFlown({
  timeS: [...Array.from({ length: 51 }, (_, s) => s), ...Array.from({ length: 20 }, (_, s) => 60 + s)],
  glidepath: (s) => (s === 20 || (s >= 40 && s <= 42) ? NaN : 0.3),
  error: { ...NO_ERROR, sideFt: () => 10, heightFt: (i) => 20 + i },
});
const { glidepathFullScale, localizerFullScale } = flown.deviations;

describe('how far off a needle may be', () => {
  it.each([
    ['all of it', 0, 79],
    ['where it is known all along', 5.5, 15.25],
    ['beside what is missing', 19, 21],
    ['over the gap', 45, 70],
    ['of nothing', 30, 30],
  ])('stands in lines of the same times as the needle: %s', (_, startS, endS) => {
    const spans = [{ startS, endS }];
    for (const [column, halfWidth] of [
      [glidepathFullScale, flown.needleError.glidepath],
      [localizerFullScale, flown.needleError.localizer],
    ] as const) {
      const parts = recordedIn({ flown }, column, spans);
      const halves = halfWidthsIn({ flown }, column, halfWidth, spans);
      expect(halves.map(({ timeS }) => [...timeS])).toEqual(parts.map(({ timeS }) => [...timeS]));
      for (const { value } of halves) expect(Math.min(...value)).toBeGreaterThan(0);
    }
  });

  it('is the same whether it is kept or worked out at each fix', () => {
    const { glidepath } = flown.needleError;
    for (const spans of [[{ startS: 3, endS: 18 }], [{ startS: 3, endS: 75 }]])
      expect(halfWidthsIn({ flown }, glidepathFullScale, glidepath, spans)).toEqual(
        halfWidthsIn({ flown }, glidepathFullScale, (i) => glidepath.at(i), spans),
      );
  });
});
