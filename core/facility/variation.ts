import { magneticDeclinationDeg } from '../earth/magnetic.ts';
import { issue, type Issue } from '../issue/issue.ts';
import { METRES_PER_FOOT, wrap180, wrap360 } from '../units/units.ts';
import type { FacilityGeometry } from './derive-geometry.ts';
import type { Facility } from './facility-schema.ts';
import { variationWords } from './wording.ts';

/** East positive, degrees; null where not known. */
export interface MagneticVariation {
  /** What bearings are turned by: the facility's assigned value, else the model's. */
  readonly usedDeg: number | null;
  readonly modelDeg: number | null;
}

/** An assigned value may be decades old, but the field has not moved farther than this (our own choice). */
const MAX_OFF_MODEL_DEG = 8;

/** @param onDate decimal year for the magnetic model, null when no day is known */
export function magneticVariation(
  facility: Facility,
  { threshold }: FacilityGeometry,
  onDate: number | null,
): MagneticVariation {
  const heightM = threshold.elevationFt * METRES_PER_FOOT;
  const modelDeg = onDate === null ? null : magneticDeclinationDeg(threshold, heightM, onDate);
  return { usedDeg: facility.magneticVariationDeg ?? modelDeg, modelDeg };
}

export function variationContradictions(facility: Facility, variation: MagneticVariation): Issue[] {
  const { magneticVariationDeg: givenDeg } = facility;
  const { usedDeg, modelDeg } = variation;
  if (usedDeg === null) {
    const message =
      'The magnetic variation is not known, so the runway designator is checked roughly and the magnetic course not at all';
    const tip = 'Give magneticVariationDeg, east positive.';
    return [issue('caution', 'facility-variation-unknown', `${message}.`, { tip })];
  }
  if (givenDeg === undefined || modelDeg === null) return [];
  if (Math.abs(wrap180(givenDeg - modelDeg)) <= MAX_OFF_MODEL_DEG) return [];
  const message = `magneticVariationDeg is ${variationWords(givenDeg)}, but the magnetic model gives ${variationWords(modelDeg)} there`;
  const turned = Math.abs(wrap180(-givenDeg - modelDeg)) <= MAX_OFF_MODEL_DEG;
  const tip = turned
    ? 'Is its sign turned round? East is positive, west negative.'
    : 'Check magneticVariationDeg, and the position of runway.threshold.';
  return [issue('warning', 'facility-variation-disagrees', `${message}.`, { tip })];
}

export function trueFromMagnetic(bearingMagneticDeg: number, variationDeg: number): number {
  return wrap360(bearingMagneticDeg + variationDeg);
}

export function magneticFromTrue(bearingTrueDeg: number, variationDeg: number): number {
  return wrap360(bearingTrueDeg - variationDeg);
}
