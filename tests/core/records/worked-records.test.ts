import { describe, expect, it } from 'vitest';
import { decodeLocalizer } from '../../../core/records/localizer-record.ts';
import { decodeRunway } from '../../../core/records/runway-record.ts';
import worked from '../../reference/facility-worked-checks.json' with { type: 'json' };

interface Row {
  readonly id: string;
  readonly source: string;
  readonly inputs: { readonly record: string };
  readonly expected: Record<string, string | number | null>;
}
const rowsOf = (kind: string) =>
  worked.rows
    .filter((row) => row.kind === kind)
    .map((row) => [`${row.id}: ${row.source} [${row.status}]`, row as unknown as Row] as const);

/** Positions are given to eight decimals in the reference; all else is exact. */
const near = (value: number | string | null | undefined) => expect.closeTo(value as number, 8);

describe('a published localizer record, every field', () => {
  it.each(rowsOf('localizer-record-decode'))('%s', (_, { inputs, expected }) => {
    const { loc_lat, loc_lon, gs_lat, gs_lon, ...said } = expected;
    expect(decodeLocalizer(inputs.record)).toEqual({
      ok: true,
      value: {
        airport: said['airport'],
        ident: said['localizer_ident'],
        category: said['category'],
        frequencyMHz: said['frequency_mhz'],
        runway: said['runway'],
        antenna: { latDeg: near(loc_lat), lonDeg: near(loc_lon) },
        bearing: { deg: said['loc_bearing_mag_deg'], isTrue: false },
        glidepathAntenna: { latDeg: near(gs_lat), lonDeg: near(gs_lon) },
        antennaPositionFt: said['loc_position_ft'],
        antennaPositionReference: said['loc_position_reference'],
        glidepathPositionFt: said['gs_position_ft'],
        courseWidthDeg: said['loc_width_deg'],
        glidepathAngleDeg: said['gs_angle_deg'],
        variation: { eastDeg: said['declination_east_deg'] },
        crossingHeightFt: said['tch_ft'],
        glidepathElevationFt: said['gs_elevation_ft'],
        record: said['record'],
        changedInCycle: said['cycle'],
      },
    });
  });
});

describe('a published runway record, every field', () => {
  it.each(rowsOf('runway-record-decode'))('%s', (_, { inputs, expected }) => {
    expect(decodeRunway(inputs.record)).toEqual({
      ok: true,
      value: {
        airport: expected['airport'],
        runway: expected['runway'],
        lengthFt: expected['length_ft'],
        bearing: { deg: expected['bearing_mag_deg'], isTrue: false },
        threshold: { latDeg: near(expected['threshold_lat']), lonDeg: near(expected['threshold_lon']) },
        ellipsoidHeightM: expected['ellipsoid_height_m'],
        thresholdElevationFt: expected['threshold_elevation_ft'],
        displacedThresholdFt: expected['displaced_threshold_ft'],
        crossingHeightFt: expected['tch_ft'],
        crossingHeightFrom: expected['localizer_ident'] === null ? 'R' : 'I',
        widthFt: expected['width_ft'],
        localizer: expected['localizer_ident'] ?? '',
        category: expected['category'] ?? '',
        record: Number(inputs.record.slice(123, 128)),
        changedInCycle: expected['cycle'],
      },
    });
  });

  it('there are seven in all', () => {
    expect(rowsOf('localizer-record-decode').length + rowsOf('runway-record-decode').length).toBe(7);
  });
});
