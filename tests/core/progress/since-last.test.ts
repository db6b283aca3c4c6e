import { describe, expect, it } from 'vitest';
import { sinceLast } from '../../../core/progress/since-last.ts';
import { madeUp as facts, type MadeUp } from './made-up.ts';

/** The last of some approaches against those before it. */
function told(...flown: readonly MadeUp[]) {
  const all = flown.flatMap((one) => facts(one));
  return sinceLast(all.at(-1)!, all);
}

describe('what was better than the last time', () => {
  it('is told with both figures, of the lesson before', () => {
    const last = told(
      { lesson: 1, glidepathRms: 0.2 },
      { lesson: 2, glidepathRms: 0.5 },
      { lesson: 3, glidepathRms: 0.28 },
    );
    expect(last?.lastDate).toBe('2026-05-02');
    expect(last?.sentence).toBe(
      'Against the approach of 2026-05-02: glidepath on final 0.28 of full scale RMS after 0.50. One approach against one is no trend yet.',
    );
  });

  it('is nothing where the difference is one that approaches have anyway, or it was worse', () => {
    expect(told({ lesson: 1, glidepathRms: 0.5 }, { lesson: 2, glidepathRms: 0.31 })).toBeNull();
    expect(told({ lesson: 1, glidepathRms: 0.2 }, { lesson: 2, glidepathRms: 0.6 })).toBeNull();
  });

  it('is a verdict that was not met and is, and a level', () => {
    const unstable = { lesson: 1, verdicts: { stability: 'not-met' }, level: [2, 2, 2] } as const;
    expect(told(unstable, { lesson: 2, level: [4, 4, 4] })?.sentence).toContain(
      ': level 4 after level 2 and stable from 1,000 ft: met, and not then.',
    );
    expect(told({ ...unstable, level: [2, 1, 2] }, { lesson: 2, level: [3, 3, 3] })?.sentence).not.toContain(
      'level 3',
    );
    expect(
      told({ ...unstable, verdicts: { stability: 'unclear' }, level: null }, { lesson: 2, level: null }),
    ).toBeNull();
  });

  it('is a share of the way inside the limit', () => {
    const before = { lesson: 1, outsideNm: 3 };
    expect(told(before, { lesson: 2, outsideNm: 0.5 })?.sentence).toContain(
      'within the limit for 90 % of the way after 40 %',
    );
    expect(told(before, { lesson: 2, outsideNm: 2.5 })).toBeNull();
  });

  it('is never of what an unconfirmed draft judged, nor against it', () => {
    const poor = { glidepathRms: 0.9, verdicts: { stability: 'not-met' }, level: [1, 1, 1] } as const;
    expect(told({ lesson: 1, ...poor }, { lesson: 2, isByDraft: true })).toBeNull();
    expect(told({ lesson: 1, isByDraft: true, ...poor }, { lesson: 2 })).toBeNull();
    // The one before it is the last that can be compared.
    const between = told({ lesson: 1, ...poor }, { lesson: 2, isByDraft: true }, { lesson: 3 });
    expect(between?.lastDate).toBe('2026-05-01');
  });

  it('is told of three things at most', () => {
    const poor = {
      lesson: 1,
      glidepathRms: 0.9,
      outsideNm: 4,
      level: [1, 1, 1],
      verdicts: { stability: 'not-met', minimums: 'not-met' },
    } as const;
    const { sentence } = told(poor, { lesson: 2, level: [4, 4, 4] })!;
    expect(sentence.split(',').length + sentence.split(' and ').length).toBeLessThan(8);
    expect(sentence).not.toContain('minimums');
  });

  it.each<[string, MadeUp, MadeUp]>([
    ['of the same day', { lesson: 1, minute: 0 }, { lesson: 1, minute: 20 }],
    ['by another standard', { lesson: 1, standardKey: 'other' }, { lesson: 2 }],
    ['by another version', { lesson: 1, engine: '0.0.9' }, { lesson: 2 }],
    ['flown coupled', { lesson: 1, flown: 'coupled' }, { lesson: 2, flown: 'hand-flown' }],
    ['that was a pass', { lesson: 1, kind: 'localizer-pass' }, { lesson: 2 }],
  ])('is not told against one %s', (_, before, now) => {
    expect(told({ glidepathRms: 0.9, ...before }, { glidepathRms: 0.1, ...now })).toBeNull();
    expect(told({ lesson: 1, glidepathRms: 0.9 }, { lesson: 2, glidepathRms: 0.1 })).not.toBeNull();
  });

  it('names the other aerodrome', () => {
    const { sentence } = told(
      { lesson: 1, glidepathRms: 0.9, facility: 'Dunmouth ILS 18' },
      { lesson: 2, glidepathRms: 0.1 },
    )!;
    expect(sentence).toContain('Against the approach of 2026-05-01 at Dunmouth ILS 18: ');
  });
});
