import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointsOf } from '../../../core/grade/points.ts';
import type { CriterionJudgement, GateJudgement } from '../../../core/standard/judgement.ts';
import { ALL_IDS, criterion, gate, item, lost, NOT_ASSESSED } from './make-judgement.ts';

const given = (id: string, but: Partial<CriterionJudgement>, gates: readonly GateJudgement[] = []) =>
  pointsOf(criterion(id, but), gates).given;
const working = (id: string, but: Partial<CriterionJudgement>, gates: readonly GateJudgement[] = []) =>
  pointsOf(criterion(id, but), gates).working;

describe('points possible', () => {
  // Design, section 11 (own choice).
  it.each([
    ['localizer-before-final', 5],
    ['altitude-before-final', 5],
    ['localizer-final', 25],
    ['glidepath-final', 25],
    ['airspeed-final', 15],
    ['stability', 15],
    ['minimums', 10],
  ])('of %s are %d, all given when it was met throughout', (id, possible) => {
    expect(pointsOf(criterion(id), [gate()])).toMatchObject({ id, given: possible, possible });
  });

  it('come to 100 together', () => {
    const all = ALL_IDS.map((id) => pointsOf(criterion(id), []).possible!);
    expect(all.reduce((a, b) => a + b)).toBe(100);
  });

  it.each(['bank-on-final', 'airspeed-before-final', 'constructor'])('of %s are none', (id) => {
    const own = criterion(id, { verdict: 'not-met', outsideS: 40, why: 'beyond 15 deg for 40 s' });
    expect(pointsOf(own, [])).toEqual({
      id,
      given: 0,
      possible: 0,
      working: `${id}: carries no points; beyond 15 deg for 40 s.`,
    });
  });

  it.each(['unclear', 'not-assessed'] as const)('leave both columns when the verdict is %s', (verdict) => {
    const open = pointsOf(criterion('airspeed-final', { ...NOT_ASSESSED, verdict }), []);
    expect(open).toMatchObject({ given: null, possible: null });
    const said = verdict === 'unclear' ? 'unclear' : 'not assessed';
    expect(open.working).toBe(
      `Airspeed on final: ${said} (nothing was said of it); its 15 points are neither given nor possible.`,
    );
  });
});

describe('points for time', () => {
  it('go with the time beyond the limit, against a fifth of the time judged', () => {
    // By hand: 190/5 = 38; 25 × 26/38 = 17.105.
    const one = pointsOf(criterion('localizer-final', { outsideS: 12, assessedS: 190 }), []);
    expect(one.given).toBe(17.1);
    expect(one.working).toBe(
      'Localizer on final: beyond the limit for 12 s of the 190 s judged; 20 % of that is 38 s; ' +
        '25 × (1 − 12/38) = 17.1 points.',
    );
    const joined = {
      startS: 0,
      endS: 12,
      outsideS: 12,
      peak: 1,
      peakS: 0,
      side: 'above',
      prompt: false,
    } as const;
    const late = {
      outsideS: 12,
      assessedS: 190,
      excursions: [{ ...joined, untilEstablished: true } as const],
    };
    expect(working('localizer-final', late)).toMatch(
      /^Localizer on final: not established for 12 s of the 190 s judged; /,
    );
    // 200.3/5 = 40.06; 15 × (1 − 3.4/40.06) = 13.727.
    expect(working('airspeed-final', { outsideS: 3.4, assessedS: 200.3 })).toMatch(
      /for 3\.4 s of the 200\.3 s judged; 20 % of that is 40\.06 s; 15 × \(1 − 3\.4\/40\.06\) = 13\.7 points\.$/,
    );
  });

  it('are all given for no time beyond the limit, however little was judged', () => {
    expect(given('localizer-final', { outsideS: 0, assessedS: 0 })).toBe(25);
    expect(working('localizer-final', {})).toBe(
      'Localizer on final: beyond the limit for 0 s of the 200 s judged, all 25 points.',
    );
  });

  it('are used up at exactly 20 % and beyond it, and not just before', () => {
    expect(given('altitude-before-final', { outsideS: 40 })).toBe(0);
    expect(given('altitude-before-final', { outsideS: 200 })).toBe(0);
    // 5 × (1 − 38/40) = 0.25, to the tenth 0.3; 5 × (1 − 39.9/40) is less than half of a tenth.
    expect(given('altitude-before-final', { outsideS: 38 })).toBe(0.3);
    expect(given('altitude-before-final', { outsideS: 39.9 })).toBe(0);
    expect(given('localizer-final', { outsideS: 39.9 })).toBe(0.1);
    expect(given('localizer-final', { outsideS: 1, assessedS: 0 })).toBe(0);
    expect(working('localizer-final', { outsideS: 40 })).toMatch(
      /for 40 s of the 200 s judged; 20 % of that is 40 s, and it was no less: 0 of 25 points\.$/,
    );
  });

  it('are half at most when it was not met', () => {
    // 25 × (1 − 4/40) = 22.5; 25 × (1 − 20/40) = 12.5; 25 × (1 − 24/40) = 10.
    expect(given('glidepath-final', { verdict: 'not-met', outsideS: 4 })).toBe(12.5);
    expect(given('glidepath-final', { verdict: 'met', outsideS: 4 })).toBe(22.5);
    expect(given('glidepath-final', { verdict: 'not-met', outsideS: 20 })).toBe(12.5);
    expect(given('glidepath-final', { verdict: 'not-met', outsideS: 24 })).toBe(10);
    expect(given('airspeed-final', { verdict: 'not-met', outsideS: 0 })).toBe(7.5);
    expect(working('glidepath-final', { verdict: 'not-met', outsideS: 4 })).toMatch(
      / = 22\.5 points, but not met gives half at most: 12\.5 points\.$/,
    );
    expect(working('glidepath-final', { verdict: 'not-met', outsideS: 20 })).toMatch(/ = 12\.5 points\.$/);
  });

  it('come out of the printed sentence with a pencil', () => {
    const seconds = fc.double({ min: 0.1, max: 600, noNaN: true });
    fc.assert(
      fc.property(seconds, seconds, (outsideS, assessedS) => {
        const { given, working } = pointsOf(criterion('localizer-final', { outsideS, assessedS }), []);
        const sum = /of the ([\d.]+) s judged.*25 × \(1 − ([\d.]+)\/([\d.]+)\) = ([\d.]+) points/.exec(
          working,
        );
        if (sum === null) {
          expect(given).toBe(0);
          return;
        }
        const [judged, beyond, fifth, points] = sum.slice(1).map(Number) as [number, number, number, number];
        expect(fifth).toBeCloseTo(judged / 5, 9);
        expect(points).toBe(given);
        expect(Math.abs(25 * (1 - beyond / fifth) - points)).toBeLessThanOrEqual(0.05 + 1e-9);
      }),
    );
  });

  it('never grow with more time beyond the limit, and stay between none and all', () => {
    const s = fc.double({ min: 0, max: 300, noNaN: true });
    const verdict = fc.constantFrom('met' as const, 'not-met' as const);
    fc.assert(
      fc.property(s, s, s, verdict, (outsideS, moreS, assessedS, verdict) => {
        const some = given('localizer-final', { outsideS, assessedS, verdict })!;
        const fewer = given('localizer-final', { outsideS: outsideS + moreS, assessedS, verdict })!;
        expect(fewer).toBeLessThanOrEqual(some);
        expect(fewer).toBeGreaterThanOrEqual(0);
        expect(some).toBeLessThanOrEqual(25);
      }),
    );
  });
});

describe('points for what is not told in time', () => {
  const notMet = { verdict: 'not-met', why: 'began 20 ft below' } as const;

  it('are none for minimums not met, whatever the gates say', () => {
    const gates = [gate({ lostAfter: [lost('sink')] })];
    expect(given('minimums', notMet, gates)).toBe(0);
    expect(working('minimums', notMet)).toBe('Minimums: not met (began 20 ft below): 0 of 10 points.');
    expect(working('minimums', {})).toBe('Minimums: met, all 10 points.');
  });

  it('are half for stability that held at its gate and was lost afterwards', () => {
    const gates = [
      gate({
        items: [item('localizer', 'met'), item('sink', 'not-assessed')],
        lostAfter: [lost('sink'), lost('localizer'), lost('sink')],
      }),
    ];
    expect(given('stability', notMet, gates)).toBe(7.5);
    expect(working('stability', notMet, gates)).toBe(
      'Stability: held at the gate, and lost afterwards (sink, localizer): half, 7.5 points by our own choice.',
    );
  });

  it('are none for stability that failed at its gate, lost afterwards or not', () => {
    const failed = [item('localizer', 'met'), item('sink', 'not-met')];
    expect(given('stability', notMet, [gate({ items: failed })])).toBe(0);
    expect(given('stability', notMet, [gate({ items: failed, lostAfter: [lost('localizer')] })])).toBe(0);
    expect(working('stability', notMet, [gate({ items: failed })])).toBe(
      'Stability: not met (began 20 ft below): 0 of 15 points.',
    );
  });

  it('are half for stability unclear at its gate and surely lost afterwards, which is said', () => {
    const unclear = [item('localizer', 'unclear')];
    const gates = [gate({ items: unclear, lostAfter: [lost('sink')] })];
    expect(given('stability', notMet, gates)).toBe(7.5);
    expect(working('stability', notMet, gates)).toContain('unclear at the gate, and lost afterwards (sink)');
  });

  it('look only at the gate that counts', () => {
    const shown = gate({ gate: 'gate-1000', counts: false, items: [item('sink', 'not-met')] });
    expect(given('stability', notMet, [shown, gate({ lostAfter: [lost('sink')] })])).toBe(7.5);
    const lostButShown = gate({ counts: false, lostAfter: [lost('sink')] });
    expect(given('stability', notMet, [lostButShown, gate({ items: [item('sink', 'not-met')] })])).toBe(0);
    expect(given('stability', notMet, [lostButShown])).toBe(0);
    expect(given('stability', notMet, [])).toBe(0);
  });
});
