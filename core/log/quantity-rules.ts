import { HECTOPASCALS_PER_INCH_OF_MERCURY, METRES_PER_FOOT, METRES_PER_NM } from '../units/units.ts';
import type { Quantity } from './log.ts';
import type { Dimension, Unit } from './unit-words.ts';

export interface QuantityRule {
  /** What a person calls it. */
  readonly label: string;
  readonly dimension: Dimension;
  /** Base units of the dimension (see `Unit.factor`) in one unit of the quantity. */
  readonly base: number;
  /** The unit assumed when the file names none, by its name in `unit-words.ts`. */
  readonly usualUnit: string;
  /** Whether a wrong guess at the unit would spoil the answer, so that it is said. */
  readonly unitMatters: boolean;
  /** What is possible, in the quantity's unit: outside stand a recorder's marks for "invalid" (−1, 999, −9999). */
  readonly min: number;
  readonly max: number;
}

const rule = (
  label: string,
  dimension: Dimension,
  base: number,
  usualUnit: string,
  min: number,
  max: number,
  unitMatters = false,
): QuantityRule => ({ label, dimension, base, usualUnit, unitMatters, min, max });

const KNOT = METRES_PER_NM / 3600;
const altitude = (label: string): QuantityRule =>
  rule(label, 'length', METRES_PER_FOOT, 'ft', -2000, 90_000, true);
const speed = (label: string): QuantityRule => rule(label, 'speed', KNOT, 'kt', 0, 990, true);
const bearing = (label: string): QuantityRule => rule(label, 'angle', 1, 'deg', -180, 360);
const accuracy = (label: string): QuantityRule => rule(label, 'length', 1, 'm', 0, 100_000);
const dilution = (label: string): QuantityRule => rule(label, 'other', 1, 'other', 0, 99);

/**
 * What each quantity is measured in and what it can be. The ranges are wide on purpose (computed from what light
 * and transport aircraft can do, no source): they only tell a mark from a value. −1 ft is a value, −1 kt is not.
 */
export const QUANTITY_RULES: Readonly<Record<Quantity, QuantityRule>> = {
  latDeg: rule('latitude', 'angle', 1, 'deg', -90, 90),
  lonDeg: rule('longitude', 'angle', 1, 'deg', -180, 360),
  altitudeGeometricFt: altitude('altitude above sea level (GNSS)'),
  altitudeEllipsoidFt: altitude('height above the ellipsoid'),
  altitudeIndicatedFt: altitude('indicated altitude'),
  altitudePressureFt: altitude('pressure altitude'),
  altitudeTransponderFt: altitude('transponder altitude'),
  altitudeCabinFt: altitude('cabin altitude'),
  altitudeUnnamedFt: altitude('altitude of unnamed kind'),
  geoidHeightM: rule('geoid height', 'length', 1, 'm', -120, 120),
  groundspeedKt: speed('groundspeed'),
  courseTrueDeg: bearing('true track'),
  courseMagneticDeg: bearing('magnetic track'),
  headingMagneticDeg: bearing('magnetic heading'),
  headingTrueDeg: bearing('true heading'),
  airspeedIndicatedKt: speed('indicated airspeed'),
  airspeedTrueKt: speed('true airspeed'),
  verticalSpeedFpm: rule('vertical speed', 'speed', METRES_PER_FOOT / 60, 'ft/min', -30_000, 30_000, true),
  pitchDeg: rule('pitch', 'angle', 1, 'deg', -90, 90),
  bankDeg: rule('bank', 'angle', 1, 'deg', -180, 180),
  altimeterSettingHpa: rule('altimeter setting', 'pressure', 1, 'inHg', 850, 1100),
  outsideTemperatureC: rule('outside temperature', 'temperature', 1, '°C', -100, 70),
  horizontalAccuracyM: accuracy('horizontal accuracy'),
  verticalAccuracyM: accuracy('vertical accuracy'),
  horizontalProtectionM: accuracy('horizontal protection level'),
  verticalProtectionM: accuracy('vertical protection level'),
  hdop: dilution('HDOP'),
  vdop: dilution('VDOP'),
  localizerRecordedFullScale: rule('recorded localizer needle', 'needle', 1, 'full scale', -900, 900),
  glidepathRecordedFullScale: rule('recorded glidepath needle', 'needle', 1, 'full scale', -900, 900),
  powerPercent: rule('power', 'percent', 1, '%', 0, 200),
  engineRpm: rule('engine speed', 'rotation', 1, 'rpm', 0, 100_000),
  manifoldPressureInHg: rule(
    'manifold pressure',
    'pressure',
    HECTOPASCALS_PER_INCH_OF_MERCURY,
    'inHg',
    0,
    100,
  ),
  flapDeg: rule('flaps', 'angle', 1, 'deg', -10, 90),
  gearDown: rule('landing gear', 'other', 1, 'other', 0, 1),
};

export function isQuantity(role: string): role is Quantity {
  return Object.hasOwn(QUANTITY_RULES, role);
}

/** Whether values of a quantity can be in a unit; needles also come in percent of full scale. */
export function unitFits(unit: Unit, quantity: Quantity): boolean {
  const { dimension } = QUANTITY_RULES[quantity];
  return unit.dimension === dimension || (dimension === 'needle' && unit.dimension === 'percent');
}

/** Whether a role is a height of the aircraft itself: the cabin's tells nothing about where it was. */
export function isHeight(role: string): boolean {
  return role.startsWith('altitude') && role !== 'altitudeCabinFt';
}
