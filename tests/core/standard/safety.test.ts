import { describe, expect, it } from 'vitest';
import { goAroundFrom, judged, pathFt, swing } from './judged.ts';

const TENTHS = { everyS: 0.1 };

describe('full scale on final', () => {
  it.each([
    ['3.1 s', swing(180.05, 3.1, 1.05, 1), 1],
    ['2.9 s', swing(180.05, 2.9, 1.05, 1), 0],
    ['3.1 s to the other side', swing(180.05, 3.1, -1.05, 1), 1],
    ['3.1 s before the fix', swing(100.05, 3.1, 1.05, 1), 0],
    ['3.1 s below decision altitude', swing(305.05, 3.1, 1.05, 1), 0],
  ])('for %s crosses so many safety limits', (_, localizerFullScale, count) => {
    expect(judged({ localizerFullScale, ...TENTHS }).safety).toHaveLength(count);
  });

  it('is told by needle and seconds', () => {
    const [found] = judged({ glidepathFullScale: swing(180.05, 6, 1.05, 1), ...TENTHS }).safety;
    expect(found).toBe('full scale high on the glidepath for 6 s on final, without going around');
    const told = (fullScale: number) =>
      judged({ localizerFullScale: swing(180.05, 6, fullScale, 1), ...TENTHS }).safety[0]!.slice(0, 36);
    expect([told(1.05), told(-1.05)]).toEqual([
      'full scale right of the localizer fo',
      'full scale left of the localizer for',
    ]);
  });

  it('is unsafe above the gate of a standard, and under one that knows no needles', () => {
    for (const standard of ['stabilized-approach', 'light-aircraft'])
      expect(judged({ localizerFullScale: swing(150, 6, 1.1, 1), standard }).safety).toHaveLength(1);
  });

  it('while the instructor flew is nobody else’s', () => {
    const stated = { instructorFlew: [{ startS: 140, endS: 200 }] };
    expect(judged({ localizerFullScale: swing(150, 6, 1.1, 1), stated }).safety).toEqual([]);
  });

  it('is not excused by leaving it for a circle where the aircraft was low, or still sank', () => {
    const localizerFullScale = swing(270, 200, 6, 1);
    const rising = ({ timeS }: { readonly timeS: number }) => Math.max(0, Math.min(1.5, (timeS - 126) / 50));
    const high = judged({ localizerFullScale, glidepathFullScale: rising });
    const low = judged({ localizerFullScale, glidepathFullScale: swing(160, 200, -1.5, 1) });
    for (const { approach, safety } of [high, low]) {
      expect(approach.outcome).toBe('circled');
      expect(safety.some((clause) => /glidepath/.test(clause))).toBe(true);
    }
  });

  it('in two touches is no 3 s', () => {
    const touch = ({ timeS }: { timeS: number }) =>
      timeS > 180.05 && timeS < 185.05
        ? timeS > 181.65 && timeS < 183.45
          ? 0.97
          : 1.03
        : timeS > 179 && timeS < 186
          ? 0.97
          : 0;
    // 1.6 s and 1.6 s, at 0.97 between: one excursion of 5 s, of which 3.2 s are beyond.
    expect(judged({ localizerFullScale: touch, ...TENTHS }).safety).toHaveLength(1);
    const lighter = ({ timeS }: { timeS: number }) =>
      timeS > 181.45 && timeS < 183.65 ? 0.97 : touch({ timeS });
    expect(judged({ localizerFullScale: lighter, ...TENTHS }).safety).toEqual([]);
  });

  it('answered by a missed approach within 10 s is none, and later is one', () => {
    // From 3.25 NM, 190 s.
    const heightFt = goAroundFrom(pathFt(3.25), 10);
    const soon = judged({ localizerFullScale: swing(184.05, 4, 1.05, 1), heightFt });
    expect(soon.approach.outcome).toBe('missed-approach');
    expect(soon.safety).toEqual([]);
    expect(soon.soundGoAround).toMatch(/^went around [6-9] s after the localizer went outside$/);
    const late = judged({ localizerFullScale: swing(174.05, 4, 1.05, 1), heightFt });
    expect(late.safety).toEqual([
      expect.stringMatching(
        /^full scale right of the localizer for 4 s on final, without going around within 10 s$/,
      ),
    ]);
    expect(late.soundGoAround).toBeNull();
  });
});

describe('unstable at 500 ft', () => {
  const off = swing(257, 14, 0.9);

  it('and continued through 300 ft is a safety limit', () => {
    const found = judged({ localizerFullScale: off });
    expect(found.gate('gate-500').verdict).toBe('not-met');
    expect(found.safety).toEqual(['localizer outside at 500 ft, and continued through 300 ft']);
    expect(found.soundGoAround).toBeNull();
  });

  it('and gone around above 300 ft is a sound decision', () => {
    // 420 ft above the touchdown zone.
    const found = judged({ localizerFullScale: off, heightFt: goAroundFrom(460, 10) });
    expect(found.approach.outcome).toBe('missed-approach');
    expect(found.safety).toEqual([]);
    expect(found.soundGoAround).toMatch(/^went around at 4[012]\d ft, not stable at 500$/);
  });

  it('with the log ending above 300 ft proves nothing', () => {
    // 300 ft above the touchdown zone are passed at 288 s, 0.8 NM.
    expect(judged({ localizerFullScale: off, toNm: 0.82 }).safety).toEqual([]);
    expect(judged({ localizerFullScale: off, toNm: 0.77 }).safety).toHaveLength(1);
  });

  it('for its bank alone, or fast, is no safety limit; below Vref is one', () => {
    const bank = judged({ recorded: { bankDeg: (timeS) => (Math.abs(timeS - 263) < 5 ? 20 : 0) } });
    expect(bank.gate('gate-500').verdict).toBe('not-met');
    expect(bank.safety).toEqual([]);
    const vref = (vrefKt: number) =>
      judged({
        standard: 'stabilized-approach',
        recorded: { airspeedIndicatedKt: () => 90 },
        stated: { vrefKt },
      });
    expect(vref(69).gate('gate-500').verdict).toBe('not-met');
    expect(vref(69).safety).toEqual([]);
    expect(vref(91).safety).toEqual(['airspeed outside at 500 ft, and continued through 300 ft']);
    const slow = judged({ recorded: { airspeedIndicatedKt: () => 70 }, stated: { targetAirspeedKt: 90 } });
    expect(slow.gate('gate-500').verdict).toBe('not-met');
    expect(slow.safety).toEqual([]);
  });
});

describe('a go-around', () => {
  it('within 10 s of losing an item after the gate is a sound decision', () => {
    const found = judged({
      standard: 'light-aircraft',
      recorded: { bankDeg: (timeS) => (timeS > 266 ? 20 : 0) },
      heightFt: goAroundFrom(460, 10),
    });
    expect(found.soundGoAround).toMatch(/^went around \d s after bank was lost$/);
  });

  it('within 10 s of a failed gate at 1,000 ft is one, and later is none', () => {
    // The gate is passed at 201.3 s; 20 s of bank before it leave no item going outside after it.
    const banked = (timeS: number) => (timeS > 180 && timeS < 203.6 ? 20 : 0);
    const from = (distanceNm: number) =>
      judged({
        standard: 'light-aircraft',
        recorded: { bankDeg: banked },
        heightFt: goAroundFrom(pathFt(distanceNm), 10),
      }).soundGoAround;
    // 205 s and 220 s.
    expect(from(2.875)).toMatch(/^went around at 9\d\d ft, not stable at 1,000$/);
    expect(from(2.5)).toBeNull();
  });

  it('above a gate leaves that gate alone, though it sags through it', () => {
    const found = judged({ heightFt: goAroundFrom(545, 30) });
    expect(found.gate('gate-500')).toMatchObject({
      verdict: 'not-assessed',
      why: 'a missed approach was begun above it',
    });
    expect(found.soundGoAround).toBeNull();
  });

  it('there was none of is no decision', () => {
    expect(judged({ localizerFullScale: swing(257, 14, 0.9) }).soundGoAround).toBeNull();
  });
});
