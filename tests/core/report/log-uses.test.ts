import { describe, expect, it } from 'vitest';
import type { ColumnRole } from '../../../core/log/log.ts';
import { logUses } from '../../../core/report/log-uses.ts';
import { buildTrack, type TrackSettings } from '../../../core/track/build-track.ts';
import { flyingNorth, makeLog } from '../track/make-log.ts';

const COUNT = 12;
const all = (value: number) => Array<number>(COUNT).fill(value);

type Values = NonNullable<Parameters<typeof makeLog>[0]['values']>;

/** Each quantity has a column of its own name. */
function usesOf(values: Values, settings: Partial<TrackSettings> = {}) {
  const made = makeLog({ ...flyingNorth(COUNT, 100), values });
  const columns = Object.keys(made.values).map((role, index) => ({
    index,
    header: role,
    unitText: null,
    unitRead: null,
    role: role as ColumnRole,
    confidence: 1,
    why: '',
  }));
  const log = { ...made, columns };
  const track = buildTrack(log, { undulationM: null, ...settings });
  if (!track.ok) throw new Error(track.refusal.message);
  const uses = logUses(log, track.value);
  return (quantity: string) => uses.find((use) => use.quantity === quantity)!;
}

const GEOMETRIC = { altitudeGeometricFt: all(1000) };

describe('what a debrief takes from a log', () => {
  it('names the columns, the receiver and its error', () => {
    const use = usesOf(GEOMETRIC);
    expect(use('position')).toMatchObject({
      from: '"latDeg" and "lonDeg"',
      unit: 'ft',
      errorFrom: 'a phone, as it seems',
    });
    // 20 m of a phone.
    expect(use('height for the beam').halfWidth).toBeCloseTo(65.6, 1);
    expect(use('groundspeed')).toMatchObject({ from: 'positions over 5 s', halfWidth: null });
    expect(use('vertical speed').from).toBe('a line through the heights of 6 s');
    for (const quantity of ['indicated airspeed', 'bank', 'wind', 'recorded localizer', 'recorded glidepath'])
      expect(use(quantity).from).toBeNull();
  });

  it('says what the steps do that heights are written in', () => {
    const stepped = all(0).map((_, i) => 2000 - i * 100);
    const transponder = usesOf({ altitudeTransponderFt: stepped })('vertical speed');
    // 50 ft to either side of the middle of 6 s: 3 × 50 ÷ 6 × 60 ft/min.
    expect(transponder.halfWidth).toBeCloseTo(1500, 6);
    expect(transponder.errorFrom).toBe('the steps that heights are written in');
    const satellite = usesOf({ altitudeGeometricFt: stepped })('vertical speed');
    expect(satellite.errorFrom).toBe('how the height wanders, and the steps it is written in');
    const indicated = usesOf({ ...GEOMETRIC, altitudeIndicatedFt: stepped })('altitude to decide by');
    expect(indicated).toMatchObject({ halfWidth: 50, unit: 'ft', errorFrom: 'the steps it is written in' });
  });

  it('says where the error is known from: a statement, the log itself, an altimeter', () => {
    expect(usesOf(GEOMETRIC, { receiver: 'plain' })('position').errorFrom).toBe('a plain receiver');
    const own = usesOf({ ...GEOMETRIC, verticalAccuracyM: all(2), hdop: all(1) });
    expect(own('height for the beam').errorFrom).toBe("the log's own accuracy");
    expect(own('position').errorFrom).toBe('its dilution of precision');
    const altimeter = usesOf({ altitudeIndicatedFt: all(1000) });
    expect(altimeter('height for the beam')).toMatchObject({
      from: '"altitudeIndicatedFt"',
      halfWidth: 50,
      errorFrom: 'an altimeter and its air',
    });
    expect(altimeter('vertical speed').errorFrom).toBe('an altimeter, off by much the same all along');
  });

  it('tells which altitude decides: shown, worked out, or the height for want of one', () => {
    const decides = (values: Values, settings = {}) => usesOf(values, settings)('altitude to decide by');
    expect(decides({ ...GEOMETRIC, altitudeIndicatedFt: all(990) })).toMatchObject({
      from: '"altitudeIndicatedFt"',
      halfWidth: null,
    });
    const pressure = { ...GEOMETRIC, altitudePressureFt: all(990) };
    expect(decides(pressure, { altimeterSettingHpa: 1003 })).toMatchObject({
      from: '"altitudePressureFt" and an altimeter setting',
      halfWidth: 14,
      errorFrom: 'the setting',
    });
    expect(decides(GEOMETRIC)).toMatchObject({
      from: 'the height for the beam, for want of an altimeter',
      errorFrom: 'as above',
    });
  });

  it('names the geoid where heights above the ellipsoid have it taken off', () => {
    expect(usesOf({ altitudeEllipsoidFt: all(1100) }, { undulationM: 14 })('height for the beam').from).toBe(
      '"altitudeEllipsoidFt" less the geoid',
    );
  });

  it('names what was recorded', () => {
    const use = usesOf({
      ...GEOMETRIC,
      groundspeedKt: all(100),
      verticalSpeedFpm: all(0),
      airspeedIndicatedKt: all(95),
      headingMagneticDeg: all(0),
      bankDeg: all(0),
      localizerRecordedFullScale: all(0),
    });
    expect(use('groundspeed')).toMatchObject({ from: '"groundspeedKt"', halfWidth: 0.4, unit: 'kt' });
    expect(use('vertical speed')).toMatchObject({ from: '"verticalSpeedFpm"', halfWidth: 40 });
    expect(use('indicated airspeed').from).toBe('"airspeedIndicatedKt"');
    expect(use('bank').from).toBe('"bankDeg"');
    expect(use('wind').from).toBe('indicated airspeed, heading, groundspeed and ground track');
    expect(use('recorded localizer').from).toBe('"localizerRecordedFullScale"');
    expect(usesOf({ ...GEOMETRIC, airspeedTrueKt: all(95), headingTrueDeg: all(0) })('wind').from).toMatch(
      /^true airspeed/,
    );
  });
});
