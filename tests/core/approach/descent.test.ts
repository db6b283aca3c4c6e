import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DescentSeconds, findDescent, type Descent } from '../../../core/approach/descent.ts';
import { issue } from '../../../core/issue/issue.ts';
import { makeFlown, type Making } from './make-flown.ts';

/** 90 kt are 151.90 ft a second; 3° of it are 7.961 ft a second or 477.7 ft/min, at the threshold. */
const NEEDED_FT_PER_S = ((90 * 1852) / 0.3048 / 3600) * Math.tan((3 * Math.PI) / 180);
const FINAL = { startS: 20, endS: 80 };

/** A flight at 90 kt whose height above the glidepath is drawn; the made flight stands at the threshold all along. */
function drawn(aboveFt: (s: number) => number, making: Making = {}) {
  return makeFlown({
    distanceNm: 0,
    glidepath: (s) => aboveFt(s) / 250,
    heightFt: (s) => 2000 - NEEDED_FT_PER_S * s + aboveFt(s),
    ...making,
  });
}

const descent = (aboveFt: (s: number) => number, making?: Making, span = FINAL): Descent =>
  findDescent(drawn(aboveFt, making), span)!;
const ramp = (s: number, fromS: number, toS: number) => Math.min(1, Math.max(0, (s - fromS) / (toS - fromS)));

describe('the descent against the rate needed', () => {
  it('of a flight that stays where it is to the path has no excess and no stretch', () => {
    const found = descent(() => 35);
    expect(found.runs.flat()).toHaveLength(61);
    expect(found.runs.flat()[0]).toMatchObject({ timeS: 20 });
    for (const { heldFpm, neededFpm, aboveGlidepathFt } of found.runs.flat()) {
      expect(heldFpm).toBeCloseTo(477.66, 1);
      expect(neededFpm).toBeCloseTo(477.66, 1);
      expect(aboveGlidepathFt).toBeCloseTo(35, 9);
    }
    expect(found.meanExcessFpm).toBeCloseTo(0, 6);
    expect(found).toMatchObject({ largestExcess: null, largestDeficit: null, steepS: 0, stretches: [] });
    expect(found.changeFt).toBeCloseTo(0, 9);
  });

  it('tells the stretch in which 60 ft were made up', () => {
    // 60 ft in 20 s are 180 ft/min less than needed, and over the whole minute 60.
    const { stretches, ...found } = descent((s) => -60 + 60 * ramp(s, 40, 60));
    expect(stretches).toHaveLength(1);
    expect(stretches[0]).toMatchObject({ startS: 40, endS: 60 });
    expect(stretches[0]!.fromFt).toBeCloseTo(-60, 9);
    expect(stretches[0]!.toFt).toBeCloseTo(0, 9);
    expect(stretches[0]!.gainedFt).toBeCloseTo(60, 9);
    expect(stretches[0]!.meanExcessFpm).toBeCloseTo(-180, 6);
    expect(found.meanExcessFpm).toBeCloseTo(-60, 0);
    expect(found.largestDeficit!.fpm).toBeCloseTo(180, 6);
    // The fit of ± 3 s is all inside the stretch from 43 s on.
    expect(found.largestDeficit!.fromS).toBeGreaterThanOrEqual(43);
    expect(found.largestExcess).toBeNull();
    expect(found.restFt).toBeCloseTo(0, 9);
  });

  it('tells two stretches where it rested between them, and one where it went on', () => {
    const rested = descent((s) => -40 * ramp(s, 25, 35) - 40 * ramp(s, 60, 70));
    expect(rested.stretches.map(({ startS, endS }) => [startS, endS])).toEqual([
      [25, 35],
      [60, 70],
    ]);
    const bent = descent((s) => -60 * ramp(s, 25, 35) - 60 * ramp(s, 35, 50));
    expect(bent.stretches.map(({ startS, endS }) => [startS, endS])).toEqual([[25, 50]]);
    expect(bent.stretches[0]!.meanExcessFpm).toBeCloseTo((60 * 120) / 25, 6);
  });

  it('leaves what is small or short to the rest', () => {
    const small = descent((s) => 19 * ramp(s, 40, 60));
    expect(small.stretches).toEqual([]);
    expect(small.restFt).toBeCloseTo(19, 9);
    const short = descent((s) => 30 * ramp(s, 40, 44));
    expect(short.stretches).toEqual([]);
    expect(short.restFt).toBeCloseTo(30, 9);
    expect(descent((s) => 30 * ramp(s, 40, 45)).stretches).toHaveLength(1);
  });

  it('counts the seconds that were steep, and the excess that lasted 5 s', () => {
    // 140 ft in 20 s are 420 ft/min. The fits at the two ends of the stretch look half outside it.
    const found = descent((s) => 140 - 140 * ramp(s, 40, 60));
    expect(found.largestExcess!.fpm).toBeCloseTo(420, 6);
    expect(found.largestExcess!.fromS).toBeGreaterThanOrEqual(40);
    expect(found.largestExcess!.fromS).toBeLessThanOrEqual(52);
    expect(Math.abs(found.steepS - 20)).toBeLessThan(3);
    expect(descent((s) => 140 - 140 * ramp(s, 30, 60)).steepS).toBe(0);
    // A difference of a few seconds is not sustained: of 4 s at 420 ft/min the fits keep less for 5 s.
    const jerk = descent((s) => -28 * ramp(s, 40, 44));
    expect(jerk.largestExcess!.fpm).toBeLessThan(300);
  });

  it('holds heights against the path, not a recorded vertical speed', () => {
    const found = descent(() => 0, { verticalSpeedFpm: 5000, recorded: { verticalSpeedFpm: 5000 } });
    expect(found.meanExcessFpm).toBeCloseTo(0, 6);
  });

  it('needs what the groundspeed along the course needs, more where the beam is steeper to the sea', () => {
    const at = (making: Making) => descent(() => 0, making).runs.flat()[30]!.neededFpm;
    expect(at({ groundspeedKt: 120 })).toBeCloseTo((477.66 * 120) / 90, 1);
    expect(at({ courseAngleDeg: 60 })).toBeCloseTo(477.66 / 2, 1);
    // At 5 NM the sea has fallen away by 5 / 3,443.9 of a radian: 9,114.2 ft/min × 0.0014518 = 13.2 ft/min.
    expect(at({ distanceNm: 5 })).toBeCloseTo(477.66 + 13.23, 1);
  });

  it('leaves a gap out of the seconds and puts what went in it to the rest', () => {
    const timeS = Array.from({ length: 101 }, (_, s) => s).filter((s) => s <= 40 || s >= 60);
    const found = descent((s) => -100 * ramp(s, 42, 58) + 30 * ramp(s, 65, 75), { timeS });
    expect(found.runs.flat().map((second) => second.timeS)).toEqual(
      timeS.filter((s) => s >= FINAL.startS && s <= FINAL.endS),
    );
    expect(found.stretches).toHaveLength(1);
    expect(found.stretches[0]!.gainedFt).toBeCloseTo(30, 9);
    expect(found.restFt).toBeCloseTo(-100, 9);
    expect(found.changeFt).toBeCloseTo(-70, 9);
  });

  it('is the same at ten fixes a second, between whole seconds too', () => {
    const span = { startS: 20.3, endS: 80.3 };
    const above = (s: number) => -60 * ramp(s, 25.3, 40.3) + 80 * ramp(s, 58.3, 73.3);
    const tenths = Array.from({ length: 1001 }, (_, i) => i / 10);
    const [one, ten] = [descent(above, {}, span), descent(above, { timeS: tenths }, span)];
    expect(ten.runs.flat().map(({ timeS }) => timeS)).toEqual(one.runs.flat().map(({ timeS }) => timeS));
    expect(ten.stretches).toHaveLength(2);
    for (const [i, { startS, endS, gainedFt }] of ten.stretches.entries()) {
      expect(Math.abs(one.stretches[i]!.startS - startS)).toBeLessThanOrEqual(1);
      expect(Math.abs(one.stretches[i]!.endS - endS)).toBeLessThanOrEqual(1);
      expect(Math.abs(one.stretches[i]!.gainedFt - gainedFt)).toBeLessThan(4);
    }
    expect(Math.abs(one.meanExcessFpm - ten.meanExcessFpm)).toBeLessThan(1);
  });

  it('is not known without heights, without a groundspeed, at a fix in 4 s, or in steps of 25 ft', () => {
    expect(
      findDescent(
        drawn(() => NaN),
        FINAL,
      ),
    ).toBeNull();
    expect(
      findDescent(
        drawn(() => 0, { groundspeedKt: NaN }),
        FINAL,
      ),
    ).toBeNull();
    const flown = drawn(() => 0);
    const track = (over: object) => ({ ...flown, track: { ...flown.track, ...over } });
    expect(findDescent(track({ medianIntervalS: 4 }), FINAL)).toBeNull();
    expect(findDescent(track({ medianIntervalS: 3 }), FINAL)).not.toBeNull();
    expect(findDescent(track({ issues: [issue('warning', 'altitude-coarse', 'x')] }), FINAL)).toBeNull();
  });

  it('parts where a height is missing', () => {
    const found = descent((s) => (s === 50 ? NaN : 0));
    expect(
      found.runs
        .flat()
        .map(({ timeS }) => timeS)
        .filter((s) => s > 48 && s < 52),
    ).toEqual([49, 51]);
  });
});

describe('the account of where height above the path went', () => {
  const walk = fc.array(fc.integer({ min: -12, max: 12 }), { minLength: 101, maxLength: 101 });
  const holes = fc.array(fc.integer({ min: 25, max: 70 }), { maxLength: 2 });

  it('adds up, whatever was flown and wherever it was not recorded', () => {
    fc.assert(
      fc.property(walk, holes, (steps, gaps) => {
        const above: number[] = [];
        for (const step of steps) above.push((above.at(-1) ?? 0) + step);
        const timeS = above.map((_, s) => s).filter((s) => !gaps.some((from) => s > from && s < from + 8));
        const found = descent((s) => above[s]!, { timeS });
        const toldFt = found.stretches.reduce((sum, { gainedFt }) => sum + gainedFt, 0);
        const [from, to] = [found.runs.flat()[0]!, found.runs.flat().at(-1)!];
        expect(toldFt + found.restFt).toBeCloseTo(above[to.timeS]! - above[from.timeS]!, 6);
        expect(found.changeFt).toBeCloseTo(above[to.timeS]! - above[from.timeS]!, 6);
        let beforeS = -Infinity;
        for (const { startS, endS, gainedFt, fromFt, toFt, meanExcessFpm } of found.stretches) {
          expect(startS).toBeGreaterThanOrEqual(beforeS);
          expect(endS - startS).toBeGreaterThanOrEqual(5);
          expect(Math.abs(gainedFt)).toBeGreaterThanOrEqual(20);
          expect([fromFt, toFt]).toEqual([
            expect.closeTo(above[startS]!, 6),
            expect.closeTo(above[endS]!, 6),
          ]);
          expect(meanExcessFpm).toBeCloseTo((-60 * (above[endS]! - above[startS]!)) / (endS - startS), 6);
          beforeS = endS;
        }
      }),
    );
  });
});

describe('the seconds of a descent', () => {
  /** Without a groundspeed at 40 and at 43 s the second between the two stands alone. */
  const seconds = () => {
    const unknown = new Set([40, 43]);
    const flown = drawn(() => 35, { groundspeedKt: (s) => (unknown.has(s) ? NaN : 90) });
    return new DescentSeconds(flown, FINAL);
  };
  const times = (span: { startS: number; endS: number }, of = seconds()) =>
    of.within(span).map(({ timeS }) => timeS);

  it('are the same asked for piece by piece, at once, and as runs', () => {
    const all = seconds();
    const pieces = [20, 35, 50, 65].flatMap((s) => times({ startS: s, endS: s + 14.5 }, all));
    expect(pieces).toEqual(times({ startS: 20, endS: 79 }));
    expect([...pieces, 80]).toEqual(
      all
        .runs()
        .flat()
        .map(({ timeS }) => timeS),
    );
    expect(pieces).toHaveLength(60 - 5);
  });

  it('leave out one that stands alone', () => {
    expect(times({ startS: 38, endS: 45 })).toEqual([38, 44, 45]);
    expect(times({ startS: 41, endS: 41 })).toEqual([]);
  });
});
