import { describe, expect, it } from 'vitest';
import { geodesicBetween } from '../../../core/earth/geodesic.ts';
import { clip } from '../../../core/numeric/polyline.ts';
import { flownDistanceNm } from '../../../core/track/flown-distance.ts';
import { line } from '../numeric/line.ts';

type Fix = readonly [timeS: number, latDeg: number, lonDeg: number];

function trackOf(fixes: readonly Fix[]) {
  const column = (k: 0 | 1 | 2) => Float64Array.from(fixes, (fix) => fix[k]);
  return { timeS: column(0), latDeg: column(1), lonDeg: column(2) };
}

/** Distances along what a span leaves of a track, as a criterion's parts are cut. */
function flown(fixes: readonly Fix[], startS: number, endS: number) {
  const track = trackOf(fixes);
  return flownDistanceNm(track, clip(track.timeS, track.timeS, { startS, endS }, 20));
}

/** A minute of latitude is a mile within 1 %. */
const NORTH: readonly Fix[] = [
  [0, -10, 4],
  [10, -10 + 1 / 60, 4],
  [20, -10 + 3 / 60, 4],
  [30, -10 + 3 / 60, 4],
];

describe('the distance flown', () => {
  it('is that of the geodesic between fixes, whatever way they lead, also across the antimeridian', () => {
    const fixes: Fix[] = [
      [0, 61.5, 179.99],
      [10, 61.504, 179.997],
      [20, 61.503, -179.992],
      [30, 61.497, -179.992],
    ];
    const [one] = flown(fixes, 0, 30);
    let wholeM = 0;
    for (let i = 1; i < fixes.length; i++) {
      const [from, to] = [fixes[i - 1]!, fixes[i]!].map(([, latDeg, lonDeg]) => ({ latDeg, lonDeg }));
      wholeM += geodesicBetween(from!, to!).distanceM;
      expect(Math.abs(one!.value[i]! * 1852 - wholeM)).toBeLessThan(0.001);
    }
  });

  it('goes on evenly between two fixes, where a line begins and ends', () => {
    const [whole] = flown(NORTH, 0, 30);
    const mile = whole!.value[1]!;
    expect(mile).toBeCloseTo(0.9955, 3);
    const [cut] = flown(NORTH, 5, 12.5);
    expect([...cut!.timeS]).toEqual([5, 10, 12.5]);
    expect(cut!.value[1]).toBeCloseTo(mile / 2, 9);
    expect(cut!.value[2]! - cut!.value[1]!).toBeCloseTo((whole!.value[2]! - mile) / 4, 9);
    const [within] = flown(NORTH, 12, 14);
    expect(within!.value[1]).toBeCloseTo((whole!.value[2]! - mile) / 5, 9);
  });

  it('is none while the position stands', () => {
    const [standing] = flown(NORTH, 20, 30);
    expect([...standing!.value]).toEqual([0, 0]);
  });

  it('has no part across a gap: each line begins anew', () => {
    const parts = flown([...NORTH, [60, -9, 4], [70, -9 + 1 / 60, 4]], 0, 70);
    expect(parts.map(({ timeS }) => [timeS[0], timeS.at(-1)])).toEqual([
      [0, 30],
      [60, 70],
    ]);
    expect(parts[1]!.value[0]).toBe(0);
    expect(parts[1]!.value[1]).toBeCloseTo(0.9955, 3);
  });

  it('of no line is none', () => expect(flownDistanceNm(trackOf(NORTH), [])).toEqual([]));

  it('is the same of a log of ten fixes a second that jitter by a metre, and of one fix a second', () => {
    const fixes = (everyS: number): Fix[] =>
      Array.from({ length: 101 * Math.round(1 / everyS) }, (_, i) => {
        // A fix of each second is where the aircraft was, and those between are a metre to the one side and the other.
        const isWhole = i % Math.round(1 / everyS) === 0;
        return [i * everyS, -10 + (i * everyS) / 2400, 4 + (isWhole ? 0 : i % 2 === 0 ? 1e-5 : -1e-5)];
      });
    const end = ([one]: readonly { value: Float64Array }[]) => one!.value.at(-1)!;
    // A minute in 40 s.
    expect(end(flown(fixes(1), 0, 100))).toBeCloseTo(2.5 * 0.9955, 3);
    expect(end(flown(fixes(0.1), 0, 100))).toBeCloseTo(end(flown(fixes(1), 0, 100)), 6);
  });

  it('goes on evenly over 5 s where there are more fixes', () => {
    const uneven: Fix[] = [0, 1, 4, 4, 5, 5, 6].map((k, i) => [i, -10 + k / 600, 4]);
    const [one] = flown(uneven, 0, 6);
    const steps = [...one!.value].map((nm, i) => nm - (one!.value[i - 1] ?? 0));
    expect(steps[1]).toBeCloseTo(0.09955, 4);
    for (const step of steps.slice(1, 6)) expect(step).toBeCloseTo(steps[1]!, 12);
    // What is left at the end.
    expect(steps[6]).toBeCloseTo(0.09955, 4);
  });

  it('stands at the times of the line that it belongs to', () => {
    const value = line([0, 10, 20], [5, 6, 7]);
    expect(flownDistanceNm(trackOf(NORTH), [value])[0]!.timeS).toBe(value.timeS);
  });
});
