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

  it('takes order, zone and start', () => {
    const said = settings({
      'date-order': ['dmy'],
      'time-zone': ['+02:00'],
      start: ['2026-05-01T09:00:00Z'],
    });
    expect(said).toMatchObject({ value: { dateOrder: 'dmy', timeZone: '+02:00', startS: 1777626000 } });
  });

  it.each(['Alt', '=latDeg', 'Alt=height'])('refuses --column %s', (text) => {
    expect(settings({ column: [text] })).toMatchObject({ ok: false, refusal: { code: 'arguments' } });
  });

  it('refuses a start that is no time', () => {
    expect(settings({ start: ['noon'] })).toMatchObject({ refusal: { message: '--start noon is no time.' } });
  });
});
