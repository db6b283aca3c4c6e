import { describe, expect, it } from 'vitest';
import { FACILITY_FIELDS } from '../../renderer/state/facility-fields.ts';
import { readBack, textOf, valueTyped } from '../../renderer/state/facility-typing.ts';

const named = (path: string) => FACILITY_FIELDS.find((field) => field.path.join('.') === path)!;
const latitude = named('runway.threshold.latDeg');
const longitude = named('runway.threshold.lonDeg');
const variation = named('magneticVariationDeg');
const elevation = named('runway.threshold.elevationFt');

describe('a position as charts print it', () => {
  it.each([
    ['S31 12.5', -(31 + 12.5 / 60)],
    ['s 31 12.5', -(31 + 12.5 / 60)],
    ['S31°12.5′', -(31 + 12.5 / 60)],
    ["31° 12.5' S", -(31 + 12.5 / 60)],
    ['N31 12 30.4', 31 + 12 / 60 + 30.4 / 3600],
    ['N31°12\'30.4"', 31 + 12 / 60 + 30.4 / 3600],
    ['31-12-30.4000N', 31 + 12 / 60 + 30.4 / 3600],
    ['311230.4N', 31 + 12 / 60 + 30.4 / 3600],
    ['N311230', 31 + 12 / 60 + 30 / 3600],
    ['3112.5S', -(31 + 12.5 / 60)],
    ['S0312', -3.2],
    ['-31.2084', -31.2084],
    ['−31.2084', -31.2084],
    ['31.2084 S', -31.2084],
    ['S00 30.0', -0.5],
  ])('latitude %s', (text, degrees) => {
    expect(valueTyped(latitude, text)).toBeCloseTo(degrees, 8);
  });

  it.each([
    ['W016 24.1', -(16 + 24.1 / 60)],
    ['E016 24.1', 16 + 24.1 / 60],
    ['W000 27.1', -27.1 / 60],
    ['W00027.1', -27.1 / 60],
    ['0162406.2W', -(16 + 24 / 60 + 6.2 / 3600)],
    ['016-24-06.2E', 16 + 24 / 60 + 6.2 / 3600],
    ['180 00 00E', -180],
    ['-16.4017', -16.4017],
  ])('longitude %s', (text, degrees) => {
    expect(valueTyped(longitude, text)).toBeCloseTo(degrees, 8);
  });

  it.each([
    'S31 75.1',
    'S31 12 61',
    'E31 12.5',
    'S-31.2',
    '-31.2 S',
    '31.5 12 S',
    'S31 12.5 30',
    'S31x',
    'S',
  ])('is none in %s, which stays as it was typed', (text) => expect(valueTyped(latitude, text)).toBe(text));

  it('is no run of figures without a hemisphere: as a number it is out of range, and that is said', () => {
    expect(valueTyped(latitude, '311230')).toBe(311230);
  });

  it('is read back both ways, with the hemisphere, and never with sixty seconds', () => {
    expect(readBack(latitude, valueTyped(latitude, 'S31 12 30.4'), '')).toBe(
      'S31° 12′ 30.40″\nor S31° 12.507′',
    );
    expect(readBack(longitude, -16.4, '')).toBe('W016° 24′ 00.00″\nor W016° 24.000′');
    expect(readBack(longitude, 15.999999999, '')).toBe('E016° 00′ 00.00″\nor E016° 00.000′');
    expect(readBack(latitude, 95, '')).toBeNull();
    expect(readBack(latitude, 'S31x', 'S31x')).toBeNull();
  });
});

describe('a number as charts print it', () => {
  it.each([
    ['glidepath.angleDeg', '3.00°', 3],
    ['glidepath.thresholdCrossingHeightFt', '52 ft', 52],
    ['frequencyMHz', '110.95 MHz', 110.95],
    ['finalApproachFix.distanceNm', '5.2 NM', 5.2],
    ['finalApproachFix.altitudeFt', '1,700', 1700],
    ['runway.threshold.elevationFt', '-12', -12],
    ['localizer.courseMagneticDeg', '070°', 70],
    ['minimums.rvrFt', '550 m', 1804.5],
    ['runway.lengthFt', '1,650 m', 5413.4],
  ])('%s %s', (path, text, value) => expect(valueTyped(named(path), text)).toBe(value));

  it.each([
    ['finalApproachFix.distanceNm', '5,2'],
    ['finalApproachFix.distanceNm', '5.2 m'],
    ['runway.threshold.elevationFt', '12 NM'],
    ['runway.threshold.elevationFt', 'about 12'],
  ])('%s is none in %s', (path, text) => expect(valueTyped(named(path), text)).toBe(text));

  it('says what metres came to, and nothing of feet', () => {
    expect(readBack(elevation, valueTyped(elevation, '100 m'), '100 m')).toBe('328 ft');
    expect(readBack(elevation, 328, '328')).toBeNull();
  });

  it.each([
    ['3.5 W', -3.5, '3.5 west'],
    ['W3.5', -3.5, '3.5 west'],
    ['3°30′E', 3.5, '3.5 east'],
    ['23.6 west', -23.6, '23.6 west'],
    ['-23.6', -23.6, '23.6 west'],
  ])('takes a variation of %s for what it is', (text, value, words) => {
    expect(valueTyped(variation, text)).toBe(value);
    expect(readBack(variation, value, text)).toBe(words);
  });
});

describe('words', () => {
  it('are kept without the blanks around them, idents in capitals, and nothing is nothing', () => {
    expect(valueTyped(named('name'), ' Duneholm ILS 07 ')).toBe('Duneholm ILS 07');
    expect(valueTyped(named('runway.designator'), '07l')).toBe('07L');
    expect(valueTyped(named('name'), '  ')).toBeUndefined();
    expect(valueTyped(elevation, '')).toBeUndefined();
  });
});

describe('a value of the file', () => {
  it('is shown so that it would be typed as the same value', () => {
    expect(textOf(named('localizer.courseMagneticDeg'), 7)).toBe('007');
    expect(textOf(named('localizer.courseTrueDeg'), 46.49)).toBe('046.49');
    expect(textOf(named('localizer.courseTrueDeg'), 0)).toBe('0');
    expect(textOf(latitude, 0.0000012)).toBe('0.00000120');
    expect(textOf(elevation, undefined)).toBe('');
    const values = [-31.1876762, 0.0000012, 16.4, 0, 7, 359.7, 46.3951];
    for (const field of FACILITY_FIELDS)
      if (!['words', 'lines', 'capitals'].includes(field.kind))
        for (const value of values) expect(valueTyped(field, textOf(field, value))).toBe(value);
  });
});
