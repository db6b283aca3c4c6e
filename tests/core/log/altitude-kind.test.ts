import { describe, expect, it } from 'vitest';
import type { AltitudeKind, Quantity } from '../../../core/log/log.ts';
import { codes, issueOf, readUsable } from './reading.ts';

const FT_PER_M = 1 / 0.3048;
const csv = (altitudes: string, cells: string) =>
  `Time,Lat,Lon,${altitudes}\n2024-05-01T10:00:00Z,47,8,${cells}\n2024-05-01T10:00:01Z,47.1,8,${cells}\n`;
const gpx = (inside: string) =>
  `<gpx><trk><trkseg><trkpt lat="47" lon="8">${inside}<time>2024-05-01T10:00:00Z</time></trkpt></trkseg></trk></gpx>`;
const KINDS: readonly (readonly [AltitudeKind, Quantity])[] = [
  ['geometric', 'altitudeGeometricFt'],
  ['ellipsoid', 'altitudeEllipsoidFt'],
  ['indicated', 'altitudeIndicatedFt'],
  ['pressure', 'altitudePressureFt'],
];

describe('a stated kind of altitude', () => {
  it.each(KINDS)('%s is what a header that says only "altitude" holds', async (altitudeKind, quantity) => {
    const log = await readUsable(csv('Altitude (ft)', '1500'), { altitudeKind });
    expect([...log.values[quantity]!]).toEqual([1500, 1500]);
    expect(log.values.altitudeUnnamedFt).toBeUndefined();
    expect(log.columns[3]).toMatchObject({ role: quantity, confidence: 1, why: 'the user said so' });
    expect(log.issues).toEqual([]);
  });

  it.each(KINDS)('%s is what the "ele" of GPX holds', async (altitudeKind, quantity) => {
    const log = await readUsable(gpx('<ele>100</ele><geoidheight>48</geoidheight>'), { altitudeKind });
    expect(log.values[quantity]![0]).toBeCloseTo(100 * FT_PER_M, 9);
    expect([Object.keys(log.values).filter((name) => name.startsWith('altitude')), log.issues]).toEqual([
      [quantity],
      [],
    ]);
    expect(log.columns[3]).toMatchObject({ header: 'ele', role: quantity, why: 'the user said so' });
    expect(log.values.geoidHeightM![0]).toBe(48);
  });

  it('leaves the height of a two-dimensional fix unknown, whatever its kind', async () => {
    const flat = '<ele>100</ele><fix>2d</fix>';
    const text = gpx('<ele>100</ele>').replace(
      '</trkseg>',
      `<trkpt lat="48" lon="8">${flat}<time>2024-05-01T10:00:01Z</time></trkpt></trkseg>`,
    );
    const log = await readUsable(text, { altitudeKind: 'pressure' });
    expect(log.values.altitudePressureFt![1]).toBeNaN();
    expect(codes(log)).toEqual(['height-of-2d-fix']);
  });

  it('leaves columns alone whose header says what they hold, and says that it changed nothing', async () => {
    const log = await readUsable(csv('GPS altitude (ft)', '1500'), { altitudeKind: 'pressure' });
    expect([...log.values.altitudeGeometricFt!]).toEqual([1500, 1500]);
    expect(issueOf(log, 'altitude-kind-unused')).toMatchObject({ severity: 'caution', count: 1 });
    expect(issueOf(log, 'altitude-kind-unused')!.message).toBe(
      "The altitude was stated to be the altimeter's at 1013.25 hPa. That changed nothing: " +
        'no altitude of this log leaves its kind open.',
    );
  });

  it('gives way to a column that names that kind itself', async () => {
    const text = csv('Altitude (ft),Pressure altitude (ft)', '1500,1400');
    const log = await readUsable(text, { altitudeKind: 'pressure' });
    expect([log.values.altitudePressureFt![0], log.values.altitudeUnnamedFt![0]]).toEqual([1400, 1500]);
    expect(codes(log)).toEqual(['altitude-kind-unused', 'altitude-kind-assumed']);
    expect(issueOf(log, 'altitude-kind-unused')!.message).toContain('a column of this log says that');
  });

  it('stands beside a column of another kind', async () => {
    const text = csv('Altitude (ft),Pressure altitude (ft)', '1500,1400');
    const log = await readUsable(text, { altitudeKind: 'indicated' });
    expect([log.values.altitudePressureFt![0], log.values.altitudeIndicatedFt![0]]).toEqual([1400, 1500]);
    expect(log.issues).toEqual([]);
  });

  it('changed nothing where no row holds a value of the column', async () => {
    const log = await readUsable(csv('Altitude (ft),GPS altitude (ft)', ',1500'), {
      altitudeKind: 'indicated',
    });
    expect([log.values.altitudeIndicatedFt, log.columns[3]!.role]).toEqual([undefined, null]);
    expect(codes(log)).toEqual(['altitude-kind-unused']);
  });

  it('yields to what the user says of a column by name', async () => {
    const byName = { columns: { Altitude: 'altitudeIndicatedFt', ele: 'altitudeIndicatedFt' } } as const;
    for (const text of [csv('Altitude', '1500'), gpx('<ele>100</ele>')]) {
      const log = await readUsable(text, { ...byName, altitudeKind: 'ellipsoid' });
      expect(log.values.altitudeIndicatedFt).toBeDefined();
      expect(log.values.altitudeEllipsoidFt).toBeUndefined();
      expect(codes(log)).toContain('altitude-kind-unused');
    }
  });

  it('of an element that the user names leaves "ele" as it was', async () => {
    const log = await readUsable(gpx('<ele>100</ele><alt2>90</alt2>'), {
      columns: { alt2: 'altitudePressureFt' },
      altitudeKind: 'pressure',
    });
    expect(log.values.altitudePressureFt![0]).toBeCloseTo(90 * FT_PER_M, 9);
    expect(log.values.altitudeGeometricFt![0]).toBeCloseTo(100 * FT_PER_M, 9);
  });
});
