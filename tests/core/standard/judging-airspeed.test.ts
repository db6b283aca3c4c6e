import { describe, expect, it } from 'vitest';
import { judged, swing, type Flying } from './judged.ts';

const TARGET = { targetAirspeedKt: 90 };

/** The airspeed of an approach flown at 90 kt and so many more or less. */
function airspeed(more: (moment: { timeS: number }) => number, flying: Flying = {}) {
  const recorded = { airspeedIndicatedKt: (timeS: number) => 90 + more({ timeS }) };
  return judged({ recorded, stated: TARGET, ...flying }).criterion('airspeed-final');
}

describe('airspeed on final', () => {
  it.each([
    ['exactly at the limit is inside', () => 10, 'met'],
    ['a hair beyond it all the way is not', () => -10.1, 'not-met'],
    ['4.9 s and 5 kt beyond is promptly corrected', swing(200.05, 4.9, 15, 10), 'met'],
    ['4.9 s and 5.1 kt beyond is not', swing(200.05, 4.9, 15.1, 10), 'not-met'],
    ['5.1 s at 1 kt beyond is not', swing(200.05, 5.1, -11, 10), 'not-met'],
    ['3.1 s below 500 ft is not', swing(280.05, 3.1, 11, 10), 'not-met'],
  ])('%s', (_, more, verdict) => {
    expect(airspeed(more, { everyS: 0.1 }).verdict).toBe(verdict);
  });

  it('is told about its target, and well inside within half of the limit', () => {
    expect(airspeed(() => 5)).toMatchObject({
      measured: 5,
      insideHalfShare: 1,
      why: 'within ±10 kt of the target of 90 kt',
    });
    expect(airspeed(() => 5.1).insideHalfShare).toBe(0);
    // Half of ±5 kt would be 2.5: never below 4.
    expect(airspeed(() => 4, { standard: 'skill-test' }).insideHalfShare).toBe(1);
    expect(airspeed(() => 4.1, { standard: 'skill-test' }).insideHalfShare).toBe(0);
  });

  it('is not assessed without a target, and none is taken from Vref or the log', () => {
    expect(airspeed(() => 0, { stated: { vrefKt: 90 } })).toMatchObject({
      verdict: 'not-assessed',
      why: 'no target airspeed was given',
    });
    const stabilized = { standard: 'stabilized-approach' };
    expect(airspeed(() => 0, stabilized)).toMatchObject({
      verdict: 'not-assessed',
      why: 'no Vref was given',
    });
  });

  it('is not assessed without an indicated airspeed: a true one is not used', () => {
    const only = (recorded: Flying['recorded']) => airspeed(() => 0, { recorded: recorded! });
    expect(only({})).toMatchObject({ verdict: 'not-assessed', why: 'the log holds no indicated airspeed' });
    expect(only({ airspeedTrueKt: () => 90 })).toMatchObject({
      verdict: 'not-assessed',
      why: 'the log holds true airspeed only',
      measured: null,
    });
  });

  it('is not assessed where final was not flown to its end', () => {
    expect(airspeed(() => 0, { toNm: 1.5 })).toMatchObject({ verdict: 'not-assessed' });
  });

  it('with room allowed shows both verdicts', () => {
    const allowances = [{ criterion: 'airspeed-final', by: 5, reason: 'gusts' }];
    const found = airspeed(() => 14, { stated: { ...TARGET, allowances } });
    expect([found.verdict, found.allowed!.verdict]).toEqual(['not-met', 'met']);
  });
});

/** Part-FCL Appendix 7 (published): ±5 kt, asymmetric −5/+10 kt. */
describe('airspeed with an engine out', () => {
  const skill = (more: number, engineOut: boolean) =>
    judged({
      standard: 'skill-test',
      recorded: { airspeedIndicatedKt: () => 90 + more },
      stated: { ...TARGET, engineOut },
    });

  it('is held to the wider limit where the standard has one, at the gate too', () => {
    const verdicts = (more: number, engineOut: boolean) => {
      const found = skill(more, engineOut);
      return [found.criterion('airspeed-final').verdict, found.criterion('stability').verdict];
    };
    expect(verdicts(8, false)).toEqual(['not-met', 'not-met']);
    expect(verdicts(8, true)).toEqual(['met', 'met']);
    expect(verdicts(10.1, true)).toEqual(['not-met', 'not-met']);
    expect(verdicts(-5.1, true)).toEqual(['not-met', 'not-met']);
  });

  it('is not, where the standard makes no difference', () => {
    expect(airspeed(() => 10.1, { stated: { ...TARGET, engineOut: true } }).verdict).toBe('not-met');
    expect(
      airspeed(() => 0, { standard: 'stabilized-approach', stated: { vrefKt: 91, engineOut: true } }).verdict,
    ).toBe('not-met');
  });
});

/** FSF ALAR Briefing Note 7.1 (second-hand): Vref to Vref + 20 kt, below the gate. */
describe('airspeed under the stabilized approach', () => {
  const stabilized = (more: (moment: { timeS: number }) => number, vrefKt: number, stated = {}) =>
    airspeed(more, { standard: 'stabilized-approach', stated: { vrefKt, ...stated } });

  it('may be at Vref and 20 kt above, and no more', () => {
    expect(stabilized(() => 0, 90).verdict).toBe('met');
    expect(stabilized(() => 0, 70).verdict).toBe('met');
    expect(stabilized(() => -0.1, 90).verdict).toBe('not-met');
    expect(stabilized(() => 0.1, 70).verdict).toBe('not-met');
    expect(stabilized(() => 0, 80).why).toBe('within −0/+20 kt of a Vref of 80 kt');
  });

  it('is well inside in the middle half of its band: 5 to 15 kt above', () => {
    expect([stabilized(() => 5, 90), stabilized(() => 15, 90)].map((c) => c.insideHalfShare)).toEqual([1, 1]);
    expect([stabilized(() => 4.9, 90), stabilized(() => 15.1, 90)].map((c) => c.insideHalfShare)).toEqual([
      0, 0,
    ]);
  });

  it('counts from its gate: 500 ft, and 1,000 ft in instrument conditions', () => {
    // The gates stand 500 and 1,000 ft above 46 ft: 262.5 and 200.5 s.
    const fast = (fromS: number) => (moment: { timeS: number }) => (moment.timeS < fromS ? 30 : 10);
    expect(stabilized(fast(255), 90).verdict).toBe('met');
    expect(stabilized(fast(255), 90, { conditions: 'vmc' }).verdict).toBe('met');
    expect(stabilized(fast(255), 90, { conditions: 'imc' }).verdict).toBe('not-met');
    expect(stabilized(fast(195), 90, { conditions: 'simulated' }).verdict).toBe('met');
    expect(stabilized(fast(270), 90).verdict).toBe('not-met');
  });
});
