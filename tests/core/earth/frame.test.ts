import { describe, expect, it } from 'vitest';
import { earthCentred, eastNorthUp, localFrame, metresPerDegree } from '../../../core/earth/frame.ts';
import { FEET_PER_METRE } from '../../../core/units/units.ts';
import frames from '../../reference/earth-frames.json' with { type: 'json' };

/** Two micrometres: what double precision leaves of 6.4 million metres after a few steps. */
const METRES_TOLERANCE = 2e-6;

describe('earth-centred coordinates, against PROJ 9.1.1 (computed)', () => {
  it.each(frames.earthCentred)('of $latDeg, $lonDeg at $heightM m', (row) => {
    const point = new Float64Array(3);
    earthCentred(row.latDeg, row.lonDeg, row.heightM, point);
    expect(Math.abs(point[0]! - row.xM)).toBeLessThan(METRES_TOLERANCE);
    expect(Math.abs(point[1]! - row.yM)).toBeLessThan(METRES_TOLERANCE);
    expect(Math.abs(point[2]! - row.zM)).toBeLessThan(METRES_TOLERANCE);
  });
});

describe('east, north and up, against PROJ 9.1.1 (computed)', () => {
  it.each(frames.eastNorthUp)('of $latDeg, $lonDeg seen from $originLatDeg, $originLonDeg', (row) => {
    const point = new Float64Array(3);
    const local = new Float64Array(3);
    const frame = localFrame({
      latDeg: row.originLatDeg,
      lonDeg: row.originLonDeg,
      elevationFt: row.originHeightM * FEET_PER_METRE,
    });
    earthCentred(row.latDeg, row.lonDeg, row.heightM, point);
    eastNorthUp(frame, point, local);
    expect(Math.abs(local[0]! - row.eastM)).toBeLessThan(METRES_TOLERANCE);
    expect(Math.abs(local[1]! - row.northM)).toBeLessThan(METRES_TOLERANCE);
    expect(Math.abs(local[2]! - row.upM)).toBeLessThan(METRES_TOLERANCE);
  });
});

describe('metres per degree', () => {
  it.each([
    // A degree of latitude and of longitude on WGS84 (published: any geodesy table; from memory, to the metre).
    [0, 110574, 111320],
    [45, 111132, 78847],
    [90, 111694, 0],
  ])('at latitude %d', (latDeg, latM, lonM) => {
    const degree = metresPerDegree(latDeg);
    expect(Math.abs(degree.latM - latM)).toBeLessThan(1);
    expect(Math.abs(degree.lonM - lonM)).toBeLessThan(1);
  });
});
