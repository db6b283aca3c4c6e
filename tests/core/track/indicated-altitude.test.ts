import { describe, expect, it } from 'vitest';
import { indicatedAltitude } from '../../../core/track/indicated-altitude.ts';
import { makeLog } from './make-log.ts';

type Values = NonNullable<Parameters<typeof makeLog>[0]['values']>;
const found = (values: Values, settingHpa: number | null = null) => {
  const { altitudeFt, issues } = indicatedAltitude(
    makeLog({ timeS: [0, 1], latDeg: [1, 1.001], lonDeg: [2, 2], values }),
    settingHpa,
  );
  return { feet: altitudeFt && [...altitudeFt], codes: issues.map(({ code }) => code) };
};

describe('the indicated altitude', () => {
  it('is the logged one, whatever setting is stated', () => {
    const values = { altitudeIndicatedFt: [500, 510], altitudePressureFt: [900, 910] };
    expect(found(values, 980)).toEqual({ feet: [500, 510], codes: [] });
  });

  it('is worked out from pressure altitude and a stated setting', () => {
    // 980 hPa stands 920.38 ft up in the standard atmosphere (computed, ICAO Doc 7488).
    const { feet, codes } = found({ altitudePressureFt: [1420.38, NaN] }, 980);
    expect(feet![0]).toBeCloseTo(500, 1);
    expect(feet![1]).toBeNaN();
    expect(codes).toEqual(['altitude-indicated-derived']);
  });

  it('is worked out from the setting in the log, row by row, when none is stated', () => {
    const values = { altitudePressureFt: [1420.38, 774.2], altimeterSettingHpa: [980, 1003.25] };
    const { feet, codes } = found(values);
    expect(feet![0]).toBeCloseTo(500, 1);
    expect(feet![1]).toBeCloseTo(500, 1);
    expect(codes).toEqual(['altitude-indicated-derived']);
    expect(found(values, 1013.25).feet![0]).toBeCloseTo(1420.38, 6);
  });

  it('is not told by pressure altitude without a setting, and that is said', () => {
    expect(found({ altitudePressureFt: [900, 910] })).toEqual({
      feet: null,
      codes: ['altimeter-setting-unknown'],
    });
    const empty = { altitudePressureFt: [900, 910], altimeterSettingHpa: [NaN, NaN] };
    expect(found(empty).feet).toBeNull();
  });

  it('is none without an altimeter in the log', () => {
    expect(found({ altitudeGeometricFt: [900, 910] }, 980)).toEqual({ feet: null, codes: [] });
    const empty = {
      altitudeGeometricFt: [900, 910],
      altitudePressureFt: [NaN, NaN],
      altitudeIndicatedFt: [NaN, NaN],
    };
    expect(found(empty, 980)).toEqual({ feet: null, codes: [] });
  });
});
