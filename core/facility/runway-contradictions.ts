import { issue, type Issue } from '../issue/issue.ts';
import { wrap180 } from '../units/units.ts';
import type { FacilityGeometry } from './derive-geometry.ts';
import type { Facility } from './facility-schema.ts';
import { magneticFromTrue, type MagneticVariation } from './variation.ts';
import { bearingWords, decimal } from './wording.ts';
import { whole } from '../units/whole.ts';

/** How far a designator may lie from the runway's bearing (our own choice). */
const DESIGNATOR_SLACK_DEG = 10;
const DESIGNATOR_SLACK_UNKNOWN_VARIATION_DEG = 30;
/** North of it designators may be true, as compasses are weak there. */
const TRUE_DESIGNATORS_NORTH_OF_DEG = 60;
const LENGTH_SLACK = 0.01;
/** As for a course: farther apart, full scale at the threshold is in question (our own choice). */
const BEARING_SLACK_DEG = 0.3;

export function runwayContradictions(
  facility: Facility,
  geometry: FacilityGeometry,
  variation: MagneticVariation,
): Issue[] {
  return [
    ...designatorAgainstBearing(facility, geometry, variation.usedDeg),
    ...lengthAgainstEnds(facility, geometry),
    ...bearingAgainstEnds(facility, geometry),
  ];
}

function designatorAgainstBearing(
  { runway: { designator, threshold } }: Facility,
  { trueBearingDeg }: FacilityGeometry,
  variationDeg: number | null,
): Issue[] {
  const named = Number.parseInt(designator, 10) * 10;
  const magneticDeg = variationDeg === null ? null : magneticFromTrue(trueBearingDeg, variationDeg);
  const offTrue = Math.abs(wrap180(named - trueBearingDeg));
  const offMagnetic = magneticDeg === null ? Infinity : Math.abs(wrap180(named - magneticDeg));
  const mayBeTrue = threshold.latDeg > TRUE_DESIGNATORS_NORTH_OF_DEG || designator.endsWith('T');
  const agrees =
    offMagnetic <= DESIGNATOR_SLACK_DEG ||
    (mayBeTrue && offTrue <= DESIGNATOR_SLACK_DEG) ||
    (magneticDeg === null && offTrue <= DESIGNATOR_SLACK_UNKNOWN_VARIATION_DEG);
  if (agrees) return [];
  const bearing =
    magneticDeg === null
      ? `${bearingWords(trueBearingDeg)} true (variation unknown)`
      : `${bearingWords(magneticDeg)} magnetic (${bearingWords(trueBearingDeg)} true)`;
  const message = `The designator ${designator} stands for ${bearingWords(named)}, but the runway lies ${bearing}`;
  const reversed = Math.abs(180 - offTrue) <= DESIGNATOR_SLACK_UNKNOWN_VARIATION_DEG;
  const tip = reversed
    ? 'Are the ends exchanged? runway.threshold is the one that is landed over.'
    : 'Check runway.designator, the positions of both ends or runway.trueBearingDeg, and magneticVariationDeg.';
  return [issue('warning', 'facility-designator-disagrees', `${message}.`, { tip })];
}

function lengthAgainstEnds({ runway }: Facility, { lengthFt: measuredFt }: FacilityGeometry): Issue[] {
  const givenFt = runway.lengthFt;
  if (givenFt === undefined || Math.abs(givenFt - measuredFt) <= LENGTH_SLACK * measuredFt) return [];
  const message = `The two ends of the runway lie ${whole(measuredFt)} ft apart, but runway.lengthFt is ${whole(givenFt)}; the ends are used`;
  const tip =
    givenFt > measuredFt
      ? 'Is the threshold displaced, and lengthFt that of the whole runway? If not, check the positions.'
      : 'Check runway.lengthFt, and the positions of runway.threshold and runway.farEnd.';
  return [issue('warning', 'facility-length-disagrees', `${message}.`, { tip })];
}

function bearingAgainstEnds({ runway }: Facility, { trueBearingDeg }: FacilityGeometry): Issue[] {
  const givenDeg = runway.trueBearingDeg;
  if (givenDeg === undefined || Math.abs(wrap180(givenDeg - trueBearingDeg)) <= BEARING_SLACK_DEG) return [];
  const message = `From end to end the runway lies ${bearingWords(trueBearingDeg, 2)} true, but runway.trueBearingDeg is ${decimal(givenDeg, 2)}; the ends are used`;
  const tip = 'Is the given bearing magnetic? If not, check the positions of both ends.';
  return [issue('warning', 'facility-bearing-disagrees', `${message}.`, { tip })];
}
