import { describe, expect, it } from 'vitest';
import { logSettings } from '../../../electron/cli/log-options.ts';

const settings = (options: Record<string, string[]>) => logSettings({ files: [], options });

describe('logSettings', () => {
  it('is empty when nothing is said', () =>
    expect(settings({})).toMatchObject({ ok: true, value: { columns: {} } }));

  it('takes columns by header, also one with an equals sign in it', () => {
    expect(settings({ column: ['Alt=altitudeIndicatedFt', 'a=b=none'] })).toMatchObject({
      value: { columns: { Alt: 'altitudeIndicatedFt', 'a=b': null } },
    });
  });

  it('takes units by header in any spelling, also of a header with an equals sign or a colon in it', () => {
    expect(settings({ unit: ['Alt=metres', 'Speed (kt)=KM/H', 'a=b=dots of 5', 'c:d=°F'] })).toMatchObject({
      value: { columns: {}, units: { Alt: 'm', 'Speed (kt)': 'km/h', 'a=b': 'dots of 5', 'c:d': '°F' } },
    });
    expect(settings({})).not.toMatchObject({ value: { units: expect.anything() } });
  });

  it('leaves a column as it was written before there were units, a colon being part of its header', () => {
    expect(settings({ column: ['Alt:m=altitudeIndicatedFt'] })).toMatchObject({
      value: { columns: { 'Alt:m': 'altitudeIndicatedFt' } },
    });
  });

  it.each(['Alt', '=m', 'Alt=', 'Alt=parsec', 'Alt=psi'])('refuses --unit %s', (text) => {
    expect(settings({ unit: [text] })).toMatchObject({
      ok: false,
      refusal: {
        code: 'arguments',
        message: `--unit "${text}" names no column and its unit.`,
        tip: expect.stringContaining('ft, m, km'),
      },
    });
  });

  it('takes order, zone and start', () => {
    const said = settings({
      'date-order': ['dmy'],
      'time-zone': ['+02:00'],
      start: ['2026-05-01T09:00:00Z'],
    });
    expect(said).toMatchObject({ value: { dateOrder: 'dmy', timeZone: '+02:00', startS: 1777626000 } });
  });

  it('takes the receiver', () => {
    expect(settings({ receiver: ['plain'] })).toMatchObject({ value: { receiver: 'plain' } });
    expect(settings({})).not.toMatchObject({ value: { receiver: expect.anything() } });
  });

  it.each(['geometric', 'ellipsoid', 'indicated', 'pressure'])('takes the kind of altitude %s', (kind) => {
    expect(settings({ 'altitude-kind': [kind] })).toMatchObject({ value: { altitudeKind: kind } });
  });

  it('takes the altimeter setting in hPa or inches, and the temperature', () => {
    expect(settings({ qnh: ['987'], temperature: ['-12.5'] })).toMatchObject({
      value: { altimeterSettingHpa: 987, temperatureC: -12.5 },
    });
    const inches = settings({ qnh: ['29.92'] });
    expect(inches.ok && inches.value.altimeterSettingHpa).toBeCloseTo(1013.2, 1);
    expect(inches).not.toMatchObject({ value: { temperatureC: expect.anything() } });
  });

  it.each([
    [{ qnh: ['500'] }, '--qnh is a number from 950 to 1060; "500" is none.'],
    [{ qnh: ['27'] }, '--qnh is a number from 28 to 31.3; "27" is none.'],
    [{ qnh: [''] }, '--qnh is a number from 28 to 31.3; "" is none.'],
    [{ temperature: ['61'] }, '--temperature is a number from -60 to 60; "61" is none.'],
    [{ temperature: ['cold'] }, '--temperature is a number from -60 to 60; "cold" is none.'],
  ])('refuses %j', (options, message) => {
    expect(settings(options)).toMatchObject({ ok: false, refusal: { message } });
  });

  it.each(['Alt', '=latDeg', 'Alt=height'])('refuses --column %s', (text) => {
    expect(settings({ column: [text] })).toMatchObject({ ok: false, refusal: { code: 'arguments' } });
  });

  it.each(['noon', '2026-02-30T09:00:00Z', '2026-05-01', '1.5.2026 09:00', ''])(
    'refuses the start %j, which is no time',
    (start) => {
      expect(settings({ start: [start] })).toMatchObject({
        refusal: { message: `--start ${start} is no time.` },
      });
    },
  );
});
