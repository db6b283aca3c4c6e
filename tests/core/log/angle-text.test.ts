import { describe, expect, it } from 'vitest';
import { parseAngle } from '../../../core/log/angle-text.ts';

describe('a latitude or longitude written for people', () => {
  it.each([
    ['47.5', 'lat', 47.5],
    ['47°30\'36"', 'lat', 47.51],
    ["47° 30.6' N", 'lat', 47.51],
    ['47 30 36,0 S', 'lat', -47.51],
    ['N 47:30:36', 'lat', 47.51],
    ['47d30m36s', 'lat', 47.51],
    ['s47,5', 'lat', -47.5],
    ['8°15′00″E', 'lon', 8.25],
    ['W 8 15', 'lon', -8.25],
    ['8.25 W', 'lon', -8.25],
    ['47d30m36s S', 'lat', -47.51],
    ['47 30.6s', 'lat', -47.51],
    ['-0 30', 'lon', -0.5],
  ] as const)('%s is read', (text, axis, degrees) => {
    expect(parseAngle(text, axis)).toBeCloseTo(degrees, 12);
  });

  it.each([
    ['', 'lat'],
    ['N', 'lat'],
    ['north 47', 'lat'],
    ['47 60 00', 'lat'],
    ['47 30 60', 'lat'],
    ['N 47 S', 'lat'],
    ['8.25 O', 'lon'],
    ['E 47', 'lat'],
    ['N 8', 'lon'],
    ['47 30 36 12', 'lat'],
    ['47°30\'36"N extra', 'lat'],
  ] as const)('%j is none', (text, axis) => {
    expect(parseAngle(text, axis)).toBeNaN();
  });
});
