import { describe, expect, it } from 'vitest';
import { kindOf } from '../../../core/approach/kind.ts';
import { makeFlown, wholeOf, type Making } from './make-flown.ts';

/** Down from 2,500 ft at 7.5 ft/s, 94 % of what 90 kt on 3° need, for 200 s; the fix passed at 20 s unless said. */
const kind = (making: Making, fixS: number | null = 20) => {
  const flown = makeFlown({ untilS: 200, heightFt: (s) => 2500 - 7.5 * s, ...making });
  return kindOf(flown, wholeOf(flown), fixS).kind;
};
/** Off the glidepath's middle, so that it is never intercepted, yet on its scale. */
const NOT_INTERCEPTED = 0.8;

describe('established at 3 NM', () => {
  /** Half scale exactly from 40 s on, full scale before: established on the fix at 40 s. */
  const settlingAt40 = (s: number) => (s >= 40 ? 0.5 : 1);
  const nmAt40 = (nm: number) => (s: number) => nm + (40 - s) / 80;

  it('or farther is an approach, exactly there included', () => {
    const making = { localizer: settlingAt40, glidepath: NOT_INTERCEPTED };
    expect(kind({ ...making, distanceNm: nmAt40(3) }, null)).toBe('approach');
    expect(kind({ ...making, distanceNm: nmAt40(3.5) }, null)).toBe('approach');
  });

  it('a step closer is a visual final', () => {
    const making = { localizer: settlingAt40, glidepath: NOT_INTERCEPTED, untilS: 180 };
    expect(kind({ ...making, distanceNm: nmAt40(2.999) }, null)).toBe('visual-final');
    expect(kind({ ...making, distanceNm: nmAt40(1.8) }, null)).toBe('visual-final');
  });
});

describe('held to the last part of final', () => {
  /** From 10 NM at 0.05 NM a second to 1 NM: 4 NM is passed at 120 s. Off half scale but for one fix. */
  const onceAt = (onS: number, fullScale = 0.5): Making => ({
    untilS: 180,
    distanceNm: (s) => 10 - s / 20,
    glidepath: NOT_INTERCEPTED,
    localizer: (s) => (s < 30 ? 0 : s === onS ? fullScale : 0.7),
  });

  it('is within half scale once at 4 NM or inside it', () => {
    expect(kind(onceAt(120))).toBe('approach');
    expect(kind(onceAt(120, -0.5))).toBe('approach');
    expect(kind(onceAt(180))).toBe('approach');
  });

  it('is not farther out, and not beyond half scale', () => {
    expect(kind(onceAt(119))).toBe('localizer-pass');
    expect(kind(onceAt(120, 0.501))).toBe('localizer-pass');
  });

  it('does not count what was flown outbound', () => {
    const outbound = (s: number) => (s === 120 ? 180 : 0);
    expect(kind({ ...onceAt(120), courseAngleDeg: outbound })).toBe('localizer-pass');
  });
});

describe('left earlier', () => {
  /** Both needles centred from the start: intercepted there, and 300 ft lower at 40 s. Off the needle at other times. */
  const onceAt = (onS: number, fullScale = 0.25, making: Making = {}): Making => ({
    distanceNm: (s) => 10.5 - s / 40,
    localizer: (s) => (s <= 12 ? 0 : s === onS ? fullScale : 0.4),
    ...making,
  });

  it('is an approach when within a quarter scale 300 ft lower than at the intercept', () => {
    expect(kind(onceAt(40))).toBe('approach');
    expect(kind(onceAt(40, -0.25))).toBe('approach');
    expect(kind(onceAt(39))).toBe('localizer-pass');
    expect(kind(onceAt(40, 0.251))).toBe('localizer-pass');
  });

  it('counts inside 10 NM only', () => {
    expect(kind(onceAt(40, 0.25, { distanceNm: (s) => 10.99 - s / 40 }))).toBe('approach');
    expect(kind(onceAt(40, 0.25, { distanceNm: (s) => 11.01 - s / 40 }))).toBe('localizer-pass');
  });

  it('is none when the glidepath was never intercepted', () => {
    expect(kind(onceAt(40, 0.25, { glidepath: NOT_INTERCEPTED }))).toBe('localizer-pass');
  });
});

describe('never established', () => {
  const trying: Making = { untilS: 60, localizer: 0.9, courseAngleDeg: 12, heightFt: (s) => 1200 - 8 * s };

  it('is an approach all the same after a minute on the scale that passes the fix', () => {
    expect(kind(trying)).toBe('approach');
    expect(kind({ ...trying, untilS: 59 })).toBe('none');
  });

  it('is nothing when the fix was not passed, or passed off the scale', () => {
    expect(kind(trying, null)).toBe('none');
    const offAtFix = (s: number) => (s === 20 ? 1.001 : 0.9);
    expect(kind({ ...trying, untilS: 90, localizer: offAtFix })).toBe('none');
    expect(kind({ ...trying, untilS: 90, localizer: (s) => (s === 20 ? -1 : 0.9) })).toBe('approach');
  });
});

describe('a final that the log begins on', () => {
  const why = (making: Making) => {
    const flown = makeFlown({ heightFt: (s) => 1100 - 8 * s, ...making });
    const verdict = kindOf(flown, { ...wholeOf(flown), first: making.timeS ? 3 : 0 }, null);
    return verdict.kind === 'approach' ? null : [verdict.kind, verdict.why];
  };
  it('was joined nobody knows where', () => {
    expect(why({ distanceNm: (s) => 2.8 - s / 40 })).toEqual([
      'visual-final',
      'the log begins on final, 2.8 NM out',
    ]);
    expect(why({ distanceNm: (s) => 1.4 - s / 80 })).toEqual(['none', 'the log begins on final, 1.4 NM out']);
  });

  it('after a gap is no other', () => {
    const timeS = [0, 1, 2, ...Array.from({ length: 90 }, (_, k) => 30 + k)];
    expect(why({ timeS, distanceNm: (s) => 3.55 - s / 40 })).toEqual([
      'visual-final',
      'the log goes on after a gap on final, 2.8 NM out',
    ]);
  });

  it('may have been seen to settle', () => {
    const settling: Making = { distanceNm: (s) => 3 - s / 40, localizer: (s) => (s < 20 ? 0.9 : 0) };
    expect(why(settling)).toEqual(['visual-final', 'it settled on the localizer 2.5 NM out']);
  });
});

describe('no approach', () => {
  it('is a level flight over the field, however well it held the localizer', () => {
    const over: Making = { heightFt: 5000, glidepath: (s) => s - 100, distanceNm: (s) => 8 - s / 40 };
    expect(kind(over)).toBe('localizer-pass');
    expect(kind({ ...over, localizer: 0.9 })).toBe('none');
  });

  it('is a circuit with a final of one mile', () => {
    expect(kind({ distanceNm: 1, heightFt: (s) => 700 - 3 * s }, null)).toBe('none');
  });

  it('is a pass of which no height is known', () => {
    expect(kind({ heightFt: NaN, glidepath: NaN, distanceNm: (s) => 8 - s / 40 })).not.toBe('approach');
  });
});
