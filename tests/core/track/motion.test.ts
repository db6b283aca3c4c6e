import { describe, expect, it } from 'vitest';
import { motionFromPositions } from '../../../core/track/motion.ts';

/** 1 kt along the equator and along a meridian there, degrees a second (WGS84: 111,319.49 and 110,574.28 m). */
const EAST_DEG = 1852 / 3600 / 111_319.4908;
const NORTH_DEG = 1852 / 3600 / 110_574.2758;

function fly(times: number[], east: number, north: number, lon0 = 10) {
  const start = times[0]!;
  return [
    Float64Array.from(times),
    Float64Array.from(times, (t) => (t - start) * north * NORTH_DEG),
    Float64Array.from(times, (t) => ((lon0 + (t - start) * east * EAST_DEG + 540) % 360) - 180),
  ] as const;
}
const seconds = (n: number) => Array.from({ length: n }, (_, i) => i);

describe('motionFromPositions', () => {
  it.each([
    ['north', 0, 120, 120, 0],
    ['east', 120, 0, 120, 90],
    ['south-west', -60, -60, 84.853, 225],
    ['north-west', -30, 40, 50, 323.1301],
  ])('gives speed and true track flying %s', (_name, east, north, speed, track) => {
    const motion = motionFromPositions(...fly(seconds(12), east, north), []);
    for (let i = 0; i < 12; i++) {
      expect(motion.groundspeedKt[i]).toBeCloseTo(speed, 2);
      expect(motion.trackTrueDeg[i]).toBeCloseTo(track, 2);
    }
  });

  it('holds across the antimeridian', () => {
    const motion = motionFromPositions(...fly(seconds(10), 90, 0, 179.999), []);
    for (const speed of motion.groundspeedKt) expect(speed).toBeCloseTo(90, 2);
    for (const track of motion.trackTrueDeg) expect(track).toBeCloseTo(90, 2);
  });

  it('takes positions 2.5 s to each side, so a corner is seen from 2 s before it at 1 Hz', () => {
    const [timeS] = fly(seconds(20), 0, 0);
    const lat = timeS.map((t) => Math.min(t, 10) * 100 * NORTH_DEG);
    const lon = timeS.map((t) => Math.max(0, t - 10) * 100 * EAST_DEG);
    const { trackTrueDeg } = motionFromPositions(timeS, lat, lon, []);
    expect(trackTrueDeg[7]).toBeCloseTo(0, 6);
    // Half a second of 5 s is flown east at fix 8, half of it at the corner.
    expect(trackTrueDeg[8]).toBeCloseTo((Math.atan2(0.5, 4.5) * 180) / Math.PI, 2);
    expect(trackTrueDeg[10]).toBeCloseTo(45, 2);
    expect(trackTrueDeg[13]).toBeCloseTo(90, 6);
  });

  it('does not look across a gap, and knows nothing of a fix alone between two', () => {
    const times = [0, 1, 2, 60, 120, 121, 122];
    const east = [0, 1, 2, 500, 900, 901, 902].map((s) => s * 100 * EAST_DEG);
    const gaps = [
      { beforeIndex: 2, startS: 2, endS: 60 },
      { beforeIndex: 3, startS: 60, endS: 120 },
    ];
    const motion = motionFromPositions(
      Float64Array.from(times),
      new Float64Array(7),
      Float64Array.from(east),
      gaps,
    );
    expect(motion.groundspeedKt[2]).toBeCloseTo(100, 2);
    expect(motion.groundspeedKt[3]).toBeNaN();
    expect(motion.trackTrueDeg[3]).toBeNaN();
    expect(motion.groundspeedKt[4]).toBeCloseTo(100, 2);
  });

  it('gives no direction to an aircraft that stands', () => {
    const motion = motionFromPositions(...fly(seconds(5), 0, 0.4), []);
    expect(motion.groundspeedKt[2]).toBeCloseTo(0.4, 3);
    expect(motion.trackTrueDeg[2]).toBeNaN();
  });

  it('works on fixes 10 s apart', () => {
    const motion = motionFromPositions(...fly([0, 10, 20, 30], 0, 100), []);
    for (const speed of motion.groundspeedKt) expect(speed).toBeCloseTo(100, 2);
  });
});
