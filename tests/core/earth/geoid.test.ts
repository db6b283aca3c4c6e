import { describe, expect, it } from 'vitest';
import { loadGeoid } from '../../../core/earth/geoid.ts';
import { METRES_PER_FOOT } from '../../../core/units/units.ts';
import table from '../../reference/geoid-undulation.json' with { type: 'json' };

const rows = table.rows.map(
  (row) => [`${row.source} at ${row.lat}, ${row.lon} [${row.status}]`, row] as const,
);
const ofKind = (kind: string) => rows.filter(([, row]) => row.kind === kind);

/**
 * The library interpolates the 15-minute grid bilinearly, the published values with a spline: the table's
 * bilinear tolerance applies, and the table's own bilinear value (computed) to its last digit.
 */
describe('EGM96 at the NGA test points agrees within the tolerance of bilinear interpolation', () => {
  it.each(ofKind('nga-test-point'))('%s', async (_, row) => {
    const heightM = await loadGeoid();
    const found = heightM(row.lat, row.lon);
    expect(Math.abs(found - row.egm96_grid_spline_m!)).toBeLessThanOrEqual(row.tolerance_bilinear_m!);
    expect(Math.abs(found - row.egm96_bilinear_15min_m)).toBeLessThanOrEqual(0.0006);
    expect(heightM(row.lat, row.lon_east_360)).toBeCloseTo(found, 6);
  });
});

describe('EGM96 at nodes of its grid is the node, rounded to a centimetre', () => {
  it.each(ofKind('egm96-grid-node'))('%s', async (_, row) => {
    const heightM = await loadGeoid();
    expect(Math.abs(heightM(row.lat, row.lon) - row.egm96_node_m!)).toBeLessThanOrEqual(row.tolerance_m!);
  });
});

/** Another geoid stands behind these heights, so only sign and datum are checked: within 1 m. */
describe('ellipsoid height less elevation of a published threshold is the geoid height', () => {
  it.each(ofKind('threshold-difference'))('%s', async (_, row) => {
    const heightM = await loadGeoid();
    const differenceM = row.ellipsoid_height_m! - row.elevation_ft! * METRES_PER_FOOT;
    expect(differenceM).toBeCloseTo(row.n_from_difference_m!, 2);
    expect(Math.abs(heightM(row.lat, row.lon) - differenceM)).toBeLessThanOrEqual(row.tolerance_m!);
  });
});

describe('EGM96 has no seams', () => {
  it('across the antimeridian and the zero meridian it runs on', async () => {
    const heightM = await loadGeoid();
    for (let latDeg = -89.9; latDeg < 90; latDeg += 0.7) {
      expect(Math.abs(heightM(latDeg, 179.99999) - heightM(latDeg, -180))).toBeLessThan(0.01);
      expect(Math.abs(heightM(latDeg, -0.00001) - heightM(latDeg, 0))).toBeLessThan(0.01);
    }
  });

  it('at the poles it has one value for every longitude', async () => {
    const heightM = await loadGeoid();
    for (const latDeg of [-90, 90]) {
      const values = [-180, -90, 0, 33.3, 179.9].map((lonDeg) => heightM(latDeg, lonDeg));
      expect(Math.max(...values) - Math.min(...values)).toBeLessThan(0.001);
    }
  });

  it('an unknown position has no geoid height', async () => {
    const heightM = await loadGeoid();
    expect(heightM(Number.NaN, 10)).toBeNaN();
  });
});
