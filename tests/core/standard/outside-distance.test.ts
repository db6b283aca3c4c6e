import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Polyline } from '../../../core/numeric/polyline.ts';
import { INSTRUMENT_RATING } from '../../../core/standard/shipped/instrument-rating.ts';
import { judgeTimed, type TimedQuestion } from '../../../core/standard/timed-criterion.ts';
import { every, line } from '../numeric/line.ts';
import { judged, levelIntercept, swing, type Flying } from './judged.ts';

/** Lines of the same times, with so many miles flown in each interval. */
function flying(parts: readonly Polyline[], miles: readonly (readonly number[])[]): Polyline[] {
  return parts.map(({ timeS }, k) => {
    let nm = 0;
    return { timeS, value: Float64Array.from(timeS, (_, i) => (nm += i === 0 ? 0 : miles[k]![i - 1]!)) };
  });
}

/** A value against ± 1, from the beginning of its first part to the end of its last. */
function question(
  parts: readonly Polyline[],
  flownNm: readonly Polyline[],
  more: Partial<TimedQuestion> = {},
): TimedQuestion {
  return {
    id: 'made',
    title: 'Made',
    unit: 'kt',
    limit: { lower: -1, upper: 1, code: null, source: 'made for this test', status: 'own choice' },
    limitWords: '±1 kt',
    counted: parts.length === 0 ? [] : [{ startS: parts[0]!.timeS[0]!, endS: parts.at(-1)!.timeS.at(-1)! }],
    parts,
    flownNm,
    halfWidths: [],
    madeUpToS: null,
    near: 0,
    halfFloor: 0,
    prompt: { depth: 0, stop: Infinity, lowFromS: Infinity, decisionS: null, finalS: 1000 },
    endedBy: null,
    openEnd: null,
    ...more,
  };
}

/** Of a value each ten seconds, with the miles flown in each ten. */
function miles(values: readonly number[], nm: readonly number[], more: Partial<TimedQuestion> = {}) {
  const parts = [every(10, values)];
  return milesIn(parts, [nm], more);
}

function milesIn(
  parts: readonly Polyline[],
  nm: readonly number[][] | readonly (readonly number[])[],
  more = {},
) {
  const { assessedNm, outsideNm } = judgeTimed(question(parts, flying(parts, nm), more));
  return [assessedNm, outsideNm].map((one) => (one === null ? null : Math.round(one * 1e9) / 1e9));
}

describe('the distance beyond a limit', () => {
  it('is that of the seconds beyond it, at the speed flown there', () => {
    // Beyond from 5 s to 15 s: half of 0.4 NM and half of 0.2.
    expect(miles([0, 2, 0, 0], [0.4, 0.2, 0.1])).toEqual([0.7, 0.3]);
    expect(miles([0, -2, 0, 0], [0.4, 0.2, 0.1])).toEqual([0.7, 0.3]);
    expect(miles([2, 3, 2], [0.4, 0.2])).toEqual([0.6, 0.6]);
  });

  it('is none exactly at the limit', () => expect(miles([1, 1, -1], [0.4, 0.2])).toEqual([0.6, 0]));

  it('of one side is that side’s alone', () => {
    const limit = { lower: null, upper: 1, code: null, source: 'made for this test', status: 'own choice' };
    // Beyond from 0 to 5 s.
    expect(miles([3, -1, -3, -3], [0.4, 0.2, 0.1], { limit } as Partial<TimedQuestion>)).toEqual([0.7, 0.2]);
  });

  it('leaves out the moment within an excursion in which the value came back', () => {
    const values = [2, 0.5, 2, 2];
    // Two thirds of the first two tens, and all of the third; one excursion, since 0.5 is near.
    expect(
      judgeTimed(question([every(10, values)], [every(10, [0, 1, 2, 3])], { near: 0.5 })).excursions,
    ).toHaveLength(1);
    expect(miles(values, [0.3, 0.6, 0.5], { near: 0.5 })).toEqual([1.4, 1.1]);
  });

  it('is counted by the best figure, and not by how far off the value may be', () => {
    const halfWidths = [every(10, [0.5, 0.5, 0.5])];
    expect(miles([0.8, 0.8, 0.8], [0.4, 0.2], { halfWidths })).toEqual([0.6, 0]);
    expect(miles([1.2, 1.2, 1.2], [0.4, 0.2], { halfWidths })).toEqual([0.6, 0.6]);
    expect(miles([0.8, 0.8, 0.8], [0.4, 0.2], { halfWidths, madeUpToS: 15 })).toEqual([0.6, 0]);
  });

  it('counts nothing across a gap', () => {
    const parts = [line([0, 10], [2, 2]), line([60, 70], [2, 0])];
    expect(milesIn(parts, [[0.4], [0.2]])).toEqual([0.6, 0.5]);
  });

  it('of an excursion that is made up is all that was flown and recorded until its end', () => {
    // Until 15 s all of 0.1 and half of 0.2, though it was within for a while; then the other half of 0.2.
    expect(miles([2, 0, 2, 2, 2], [0.1, 0.2, 0, 0], { madeUpToS: 15 })).toEqual([0.3, 0.3]);
    // From 15 s, at 1, it is within until 20 s.
    expect(miles([2, 2, 0, 0], [0.1, 0.2, 0.4], { madeUpToS: 15 })).toEqual([0.7, 0.2]);
    const parts = [line([0, 10], [2, 0]), line([60, 70], [0, 0])];
    expect(milesIn(parts, [[0.4], [0.2]], { madeUpToS: 65 })).toEqual([0.6, 0.5]);
    // Nothing is made up where it was within.
    expect(miles([1, 0, 0], [0.1, 0.2], { madeUpToS: 15 })).toEqual([0.3, 0]);
  });

  it('leaves out the leaving itself, whose miles are assessed as its seconds are', () => {
    expect(miles([2, 0, 2, 2], [0.4, 0.2, 0.1], { endedBy: 'leaving' })).toEqual([0.7, 0.2]);
  });

  it('is not known where nothing was recorded', () => {
    const counted = [{ startS: 0, endS: 30 }];
    expect(judgeTimed(question([], [], { counted }))).toMatchObject({ assessedNm: null, outsideNm: null });
  });
});

/** Values, the miles to each from the one before, and where a gap parts them. */
const anyFlown = fc
  .array(
    fc.record({
      value: fc.double({ min: -3, max: 3, noNaN: true }),
      nm: fc.double({ min: 0.01, max: 1, noNaN: true }),
    }),
    { minLength: 4, maxLength: 12 },
  )
  .chain((steps) =>
    fc.record({
      steps: fc.constant(steps),
      gapBefore: fc.integer({ min: 2, max: steps.length - 2 }),
      near: fc.constantFrom(0, 0.3),
      madeUpToS: fc.option(fc.double({ min: 1, max: 10 * (steps.length - 1) - 1, noNaN: true })),
      endedBy: fc.constantFrom(null, 'leaving' as const),
    }),
  );

describe('any flight', () => {
  it('is judged in miles as it would be if they were its seconds', () => {
    fc.assert(
      fc.property(anyFlown, ({ steps, gapBefore, near, madeUpToS, endedBy }) => {
        const timeS = steps.map((_, i) => 10 * i);
        let nm = 0;
        const alongNm = steps.map((step, i) => (nm += i === 0 ? 0 : step.nm));
        const values = steps.map(({ value }) => value);
        const parted = (x: readonly number[], y: readonly number[]) => [
          line(x.slice(0, gapBefore), y.slice(0, gapBefore)),
          line(x.slice(gapBefore), y.slice(gapBefore)),
        ];
        const at = Math.floor((madeUpToS ?? 0) / 10);
        const madeUpToNm = alongNm[at]! + (((madeUpToS ?? 0) % 10) / 10) * (alongNm[at + 1]! - alongNm[at]!);
        const inTime = judgeTimed(
          question(parted(timeS, values), parted(timeS, alongNm), { near, endedBy, madeUpToS }),
        );
        const parts = parted(alongNm, values);
        const inMiles = judgeTimed(
          question(parts, parts, { near, endedBy, madeUpToS: madeUpToS === null ? null : madeUpToNm }),
        );
        expect(inTime.assessedNm).toBeCloseTo(inMiles.assessedS, 9);
        expect(inTime.outsideNm).toBeCloseTo(inMiles.outsideS!, 9);
        expect(inTime.outsideNm).toBeGreaterThanOrEqual(0);
        expect(inTime.outsideNm).toBeLessThanOrEqual(inTime.assessedNm! + 1e-9);
      }),
      { numRuns: 500 },
    );
  });
});

/** Drawn at 90 kt over the ground: 40 s a mile. */
describe('a flight at one speed', () => {
  const OWN = { ...INSTRUMENT_RATING, own: [ownSpeed(89)] };
  const recorded = { airspeedIndicatedKt: () => 90 };
  const flying: Flying = {
    standard: OWN,
    recorded,
    stated: { targetAirspeedKt: 90 },
    heightFt: levelIntercept,
  };

  it.each([
    'localizer-before-final',
    'altitude-before-final',
    'localizer-final',
    'glidepath-final',
    'airspeed-final',
    'ours',
  ])('has a mile for each 40 s in which %s counted, and none across a gap', (id) => {
    const whole = judged(flying).criterion(id);
    expect(whole.assessedS).toBeGreaterThan(70);
    expect(whole.assessedNm).toBeCloseTo(whole.assessedS / 40, 3);
    const parted = judged({
      ...flying,
      gaps: [
        [80, 100],
        [200, 220],
      ],
    }).criterion(id);
    expect(parted.assessedS).toBeCloseTo(whole.assessedS - 20, 6);
    expect(parted.assessedNm).toBeCloseTo(parted.assessedS / 40, 3);
  });

  it('is outside for the same share of the time and of the distance', () => {
    const { assessedS, outsideS, assessedNm, outsideNm } = judged({
      glidepathFullScale: swing(200.05, 20, 0.9),
      everyS: 0.1,
    }).criterion('glidepath-final');
    expect(outsideS).toBeCloseTo(20, 2);
    expect(outsideNm).toBeCloseTo(0.5, 3);
    expect(outsideNm! / assessedNm!).toBeCloseTo(outsideS! / assessedS, 4);
    const ours = judged(flying).criterion('ours');
    expect(ours.outsideNm).toBe(ours.assessedNm);
  });

  it('joins inside the fix beyond the limit for all of the miles until established', () => {
    const joining = ({ timeS }: { readonly timeS: number }) =>
      timeS < 120 ? 2 : Math.max(0, 1 - (timeS - 130) / 80);
    const { outsideS, outsideNm } = judged({ localizerFullScale: joining }).criterion('localizer-final');
    expect(outsideS).toBeCloseTo(40, 0);
    // A mile on the way in and a sixth of one across, by the drawing: 1.01 miles in 40 s.
    expect(outsideNm).toBeGreaterThan(1.005);
    expect(outsideNm).toBeLessThan(1.02);
  });
});

function ownSpeed(upper: number) {
  const limit = { lower: null, upper, code: null, source: 'our school', status: 'own choice' } as const;
  return { id: 'ours', title: 'Ours', quantity: 'groundspeedKt', limit } as const;
}
