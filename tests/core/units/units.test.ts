import { describe, expect, it } from 'vitest';
import * as units from '../../../core/units/units.ts';

describe('conversion factors', () => {
  it('are the definitions (ICAO Annex 5; check-values.md, units: from memory, computed)', () => {
    expect(units.FEET_PER_NM).toBeCloseTo(6076.1155, 4);
    expect(1 / units.KNOTS_PER_METRE_PER_SECOND).toBeCloseTo(0.514444, 6);
    // 1 kt = 101.26859 ft/min
    expect(units.FPM_PER_METRE_PER_SECOND / units.KNOTS_PER_METRE_PER_SECOND).toBeCloseTo(101.26859, 5);
    expect(units.FEET_PER_METRE).toBeCloseTo(3.28084, 5);
  });
});

describe('wrap180 keeps −180 ≤ angle < 180', () => {
  it.each([
    [0, 0],
    [180, -180],
    [-180, -180],
    [179.5, 179.5],
    [540, -180],
    [-190, 170],
    [725, 5],
  ])('%d becomes %d', (angle, wrapped) => expect(units.wrap180(angle)).toBe(wrapped));
  it('leaves what is not a number alone', () => expect(units.wrap180(NaN)).toBeNaN());
});

it.each([71.025, -16.4099, 0.1])('an angle in range, %d, comes back to the last digit', (angle) => {
  expect(units.wrap180(angle)).toBe(angle);
  expect(units.wrap360(Math.abs(angle))).toBe(Math.abs(angle));
});

describe('wrap360 keeps 0 ≤ angle < 360', () => {
  it.each([
    [0, 0],
    [360, 0],
    [-1, 359],
    [725, 5],
    // So small that 360 − x rounds to 360 itself.
    [-1e-20, 0],
  ])('%d becomes %d', (angle, wrapped) => expect(units.wrap360(angle)).toBe(wrapped));
});
