import * as library from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { geodesicBetween, geodesicFrom } from '../../../core/earth/geodesic.ts';
import { wrap180 } from '../../../core/units/units.ts';
import ellipsoidLines from '../../reference/geodesic-ellipsoid-lines.json' with { type: 'json' };
import lines from '../../reference/geodesic-lines.json' with { type: 'json' };

const { Geodesic } = (library as unknown as { default: typeof library }).default;

const ends = (row: (typeof lines.rows)[number]) => ({
  from: { latDeg: row.lat1, lonDeg: row.lon1 },
  to: { latDeg: row.lat2, lonDeg: row.lon2 },
});

/** Tolerances: beside each row of the table. An azimuth of null is not part of the source. */
describe('a published line on WGS84 is met within its own tolerance', () => {
  it.each(lines.rows.map((row) => [`${row.source} [${row.status}]`, row] as const))('%s', (_, row) => {
    const { from, to } = ends(row);
    const line = geodesicBetween(from, to);
    expect(Math.abs(line.distanceM - row.s12_m)).toBeLessThanOrEqual(row.tolerance_m);
    if (row.tolerance_deg === null || row.azi1 === null || row.azi2 === null) return;
    expect(Math.abs(wrap180(line.startBearingDeg - row.azi1))).toBeLessThanOrEqual(row.tolerance_deg);
    expect(Math.abs(wrap180(line.endBearingDeg - row.azi2))).toBeLessThanOrEqual(row.tolerance_deg);
  });

  it('Karney 2013, J. Geodesy 87:43, Table 2, as the direct problem it is [second-hand]', () => {
    const row = lines.rows.find(({ id }) => id === 'karney-2013-table-2')!;
    const reached = geodesicFrom(ends(row).from, row.azi1!, row.s12_m);
    expect(reached.latDeg).toBeCloseTo(row.lat2, 10);
    expect(reached.lonDeg).toBeCloseTo(row.lon2, 10);
    expect(reached.endBearingDeg).toBeCloseTo(row.azi2!, 9);
  });
});

/** The library on other ellipsoids: the same code path, so a fault in it would show in five more lines. */
describe('a line of Vincenty 1975 on its own ellipsoid is met within its own tolerance', () => {
  it.each(ellipsoidLines.rows.map((row) => [`${row.source} [${row.status}]`, row] as const))(
    '%s',
    (_, row) => {
      const ellipsoid = new Geodesic.Geodesic(row.a_m, 1 / row.inverse_flattening);
      const line = ellipsoid.Inverse(row.lat1, row.lon1, row.lat2, row.lon2);
      expect(Math.abs(line.s12! - row.s12_m)).toBeLessThanOrEqual(row.tolerance_m);
      const toleranceDeg = row.tolerance_arcsec / 3600;
      expect(Math.abs(wrap180(line.azi1! - row.azi1))).toBeLessThanOrEqual(toleranceDeg);
      expect(Math.abs(wrap180(line.azi2! - row.azi2))).toBeLessThanOrEqual(toleranceDeg);
    },
  );
});

describe('geodesics keep the project’s ranges', () => {
  it('a bearing west of north is given as 180 to 360', () => {
    const line = geodesicBetween({ latDeg: 10, lonDeg: 20 }, { latDeg: 10, lonDeg: 19 });
    expect(line.startBearingDeg).toBeGreaterThan(269);
    expect(line.startBearingDeg).toBeLessThan(271);
    expect(line.endBearingDeg).toBeLessThan(line.startBearingDeg);
  });

  it('a line across the antimeridian takes the short way and arrives at a longitude below 180', () => {
    const from = { latDeg: 5, lonDeg: 179.9 };
    const line = geodesicBetween(from, { latDeg: 5, lonDeg: -179.9 });
    expect(line.distanceM).toBeGreaterThan(22_000);
    expect(line.distanceM).toBeLessThan(22_300);
    const reached = geodesicFrom(from, line.startBearingDeg, line.distanceM);
    expect(reached.lonDeg).toBeCloseTo(-179.9, 9);
    expect(reached.latDeg).toBeCloseTo(5, 9);
  });

  it('a point on the antimeridian lies at -180, never at 180', () => {
    expect(geodesicFrom({ latDeg: 10, lonDeg: 180 }, 0, 1000).lonDeg).toBe(-180);
    expect(geodesicFrom({ latDeg: 10, lonDeg: -180 }, 0, 1000).lonDeg).toBe(-180);
  });

  it('two equal points are no distance apart', () => {
    expect(geodesicBetween({ latDeg: 40, lonDeg: 3 }, { latDeg: 40, lonDeg: 3 }).distanceM).toBe(0);
  });
});
