import { issue, type Issue } from '../issue/issue.ts';
import { cycleCautions } from './cycle-cautions.ts';
import type { FacilityGeometry } from './derive-geometry.ts';
import { draftWarnings } from './drafted-from.ts';
import type { Facility } from './facility-schema.ts';
import { fixContradictions } from './fix-contradictions.ts';
import { CROSSING_HEIGHT_SLACK_FT } from './glidepath-beam.ts';
import { localizerContradictions } from './localizer-contradictions.ts';
import { runwayContradictions } from './runway-contradictions.ts';
import { unusualValues } from './unusual-values.ts';
import { magneticVariation, variationContradictions } from './variation.ts';
import { decimal } from './wording.ts';
import { whole } from '../units/whole.ts';

/**
 * Everything in a facility that contradicts something else in it, or that looks like a slip, as warnings; that it is a
 * draft, or of records of another day; and what was assumed. Nothing is guessed away: each sentence gives both numbers, each tip the field to look at.
 *
 * @param onDate decimal year for the magnetic model and the cycle of records; null when no day is known, and then neither is asked
 */
export function checkFacility(
  facility: Facility,
  geometry: FacilityGeometry,
  onDate: number | null,
): Issue[] {
  const variation = magneticVariation(facility, geometry, onDate);
  return [
    ...draftWarnings(facility),
    ...cycleCautions(facility, onDate),
    ...runwayContradictions(facility, geometry, variation),
    ...localizerContradictions(facility, geometry, variation),
    ...glidepathContradictions(geometry),
    ...fixContradictions(facility, geometry),
    ...variationContradictions(facility, variation),
    ...unusualValues(facility, geometry),
  ];
}

function glidepathContradictions(geometry: FacilityGeometry): Issue[] {
  const { impliedCrossingHeightFt: impliedFt, thresholdCrossingHeightFt: givenFt } = geometry;
  if (impliedFt === null || Math.abs(impliedFt - givenFt) <= CROSSING_HEIGHT_SLACK_FT) return [];
  const message = `From its antenna the glidepath crosses the threshold at ${whole(impliedFt)} ft, but glidepath.thresholdCrossingHeightFt is ${decimal(givenFt)}; the antenna is not used`;
  const tip =
    'Check glidepath.antenna, its elevation above all. On sloping ground the published crossing height is right: leave the antenna out.';
  return [issue('warning', 'facility-crossing-height-disagrees', `${message}.`, { tip })];
}
