import { describe, expect, it } from 'vitest';
import { codes, issueOf, readUsable } from './reading.ts';

/** A log with the two needles under these headers, one row for each pair of values. */
function withNeedles(
  localizer: string,
  glidepath: string,
  rows: (readonly [number, number])[],
  units?: Record<string, string>,
) {
  const lines = rows.map(([loc, gp], i) => `2024-05-01T10:00:0${i}Z,1,2,3,${loc},${gp}`);
  return readUsable(
    `Time,Lat,Lon,AltMSL (ft),${localizer},${glidepath}\n${lines.join('\n')}`,
    units === undefined ? {} : { units },
  );
}

describe('recorded needles', () => {
  // Full scale: 0.155 DDM localizer, 0.175 DDM glidepath (14 CFR 171.253 and 171.267, published); 150 µA
  // (flight-inspection practice, second-hand).
  it.each([
    ['HCDI (fsd)', 'VCDI (fsd)', 0.5, -1.2],
    ['HCDI (%)', 'VCDI (%)', 50, -120],
    ['LOC dev (DDM)', 'GS dev (DDM)', 0.0775, -0.21],
    ['LOC dev (µA)', 'GS dev (µA)', 75, -180],
    ['LOC dev (2 dots)', 'GS dev (2 dots)', 1, -2.4],
    ['LOC dev (5 dots)', 'GS dev (5 dots)', 2.5, -6],
  ])('%s and %s become fractions of full scale, sign as recorded', async (localizer, glidepath, loc, gp) => {
    const log = await withNeedles(localizer, glidepath, [[loc, gp]]);
    expect(log.values.localizerRecordedFullScale![0]).toBeCloseTo(0.5, 12);
    expect(log.values.glidepathRecordedFullScale![0]).toBeCloseTo(-1.2, 12);
    expect(log.issues).toEqual([]);
  });

  it('dots tell by the largest value how many make full scale', async () => {
    const two = await withNeedles('LOC dev (dots)', 'GS dev (dots)', [
      [1, 2],
      [-2, -1],
    ]);
    const five = await withNeedles('LOC dev (dots)', 'GS dev (dots)', [
      [1, 5],
      [-3, -1],
    ]);
    expect([...two.values.localizerRecordedFullScale!, ...two.values.glidepathRecordedFullScale!]).toEqual([
      0.5, -1, 1, -0.5,
    ]);
    expect([...five.values.localizerRecordedFullScale!, ...five.values.glidepathRecordedFullScale!]).toEqual([
      0.2, -0.6000000000000001, 1, -0.2,
    ]);
    expect([...codes(two), ...codes(five)]).toEqual([]);
  });

  it('a two-dot needle may be recorded beyond its last dot', async () => {
    const log = await withNeedles('LOC dev (dots)', 'GS dev (dots)', [[2.5, -2.6]]);
    expect([...log.values.localizerRecordedFullScale!, ...log.values.glidepathRecordedFullScale!]).toEqual([
      1.25, -1.3,
    ]);
  });

  it('dots that never reach the stop are taken as two, and that is said', async () => {
    const log = await withNeedles('LOC dev (dots)', 'GS dev (dots)', [[0.5, 2]]);
    expect(log.values.localizerRecordedFullScale![0]).toBe(0.25);
    expect(codes(log)).toEqual(['needle-scale-assumed']);
    expect(issueOf(log, 'needle-scale-assumed')!.message).toBe(
      'Column "LOC dev (dots)" is in dots but never reaches the stop (largest 0.5): taken as 2 dots for full scale.',
    );
  });

  it('without a unit, values within full scale are fractions and larger ones dots', async () => {
    const log = await withNeedles('HCDI', 'VCDI', [
      [0.5, 0.5],
      [1, -2],
    ]);
    expect([...log.values.localizerRecordedFullScale!, ...log.values.glidepathRecordedFullScale!]).toEqual([
      0.5, 1, 0.25, -1,
    ]);
    expect(log.issues).toEqual([]);
  });

  it('a scale that nobody can know leaves the column unused', async () => {
    const log = await withNeedles('HCDI', 'VCDI', [[80, 1]]);
    expect(log.values.localizerRecordedFullScale).toBeUndefined();
    expect([...log.values.glidepathRecordedFullScale!]).toEqual([1]);
    expect(log.columns[4]).toMatchObject({
      header: 'HCDI',
      role: null,
      why: 'the scale of its values is not known',
    });
    expect(issueOf(log, 'needle-scale-unknown')!.message).toBe(
      'Column "HCDI" reaches 80, which is no known needle scale: it is not used.',
    );
  });

  it('the user may say the unit', async () => {
    const log = await withNeedles('HCDI', 'VCDI', [[75, 1]], { HCDI: 'µA', VCDI: 'dots of 5' });
    expect([...log.values.localizerRecordedFullScale!, ...log.values.glidepathRecordedFullScale!]).toEqual([
      0.5, 0.2,
    ]);
  });

  it('a mark for "invalid" does not decide the scale', async () => {
    const log = await withNeedles('HCDI', 'VCDI', [
      [999, -999],
      [0.5, 0.25],
    ]);
    expect([...log.values.localizerRecordedFullScale!, ...log.values.glidepathRecordedFullScale!]).toEqual([
      NaN,
      0.5,
      NaN,
      0.25,
    ]);
    expect(codes(log)).toEqual(['value-marked-invalid', 'value-marked-invalid']);
  });

  it('a needle column without a value decides nothing', async () => {
    const log = await readUsable('Time,Lat,Lon,AltMSL (ft),HCDI\n2024-05-01T10:00:00Z,1,2,3,');
    expect(log.values.localizerRecordedFullScale).toBeUndefined();
    expect(log.columns[4]).toMatchObject({ header: 'HCDI', role: null, why: 'no row holds a value of it' });
    expect(log.issues).toEqual([]);
  });
});
