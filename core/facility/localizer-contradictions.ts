import { issue, type Issue } from '../issue/issue.ts';
import { DEGREES_PER_RADIAN, wrap180 } from '../units/units.ts';
import type { FacilityGeometry } from './derive-geometry.ts';
import type { Facility } from './facility-schema.ts';
import { OFFSET_LOCALIZER_DEG } from './impossible-values.ts';
import { placeOnAxis } from './runway-axis.ts';
import { trueFromMagnetic, type MagneticVariation } from './variation.ts';
import { bearingWords, decimal, variationWords } from './wording.ts';
import { whole } from '../units/whole.ts';

/** Charts give whole degrees. */
const MAGNETIC_COURSE_SLACK_DEG = 1;
/** FAA Order 8260.3 (section from memory): farther off the runway it is no ILS; second-hand. */
const FAA_OFFSET_LIMIT_DEG = 3;
/** ICAO PANS-OPS Vol II III-3-6 6.7.1 (published for GBAS Cat I; the paragraph for ILS from memory). */
const ICAO_OFFSET_LIMIT_DEG = 5;

export function localizerContradictions(
  facility: Facility,
  geometry: FacilityGeometry,
  variation: MagneticVariation,
): Issue[] {
  return [
    ...magneticCourse(facility, geometry, variation.usedDeg),
    ...antennaOffCentreline(facility, geometry),
    ...offsetCourse(geometry),
  ];
}

function magneticCourse(
  facility: Facility,
  geometry: FacilityGeometry,
  variationDeg: number | null,
): Issue[] {
  const magneticDeg = facility.localizer?.courseMagneticDeg;
  if (magneticDeg === undefined || variationDeg === null) return [];
  const asTrueDeg = trueFromMagnetic(magneticDeg, variationDeg);
  const offDeg = Math.abs(wrap180(asTrueDeg - geometry.courseTrueDeg));
  if (offDeg <= MAGNETIC_COURSE_SLACK_DEG) return [];
  const given = facility.localizer?.courseTrueDeg !== undefined;
  const against = given ? 'localizer.courseTrueDeg is' : 'the runway lies';
  const message = `localizer.courseMagneticDeg is ${decimal(magneticDeg)}, with variation ${variationWords(variationDeg)} that is ${bearingWords(asTrueDeg, 1)} true, but ${against} ${bearingWords(geometry.courseTrueDeg, 1)} true: ${decimal(offDeg)} degrees apart`;
  const tip = given
    ? 'Check both courses and magneticVariationDeg.'
    : 'Is the localizer offset? Then give localizer.courseTrueDeg and localizer.antenna. If not, check courseMagneticDeg and magneticVariationDeg.';
  return [issue('warning', 'facility-magnetic-course-disagrees', `${message}.`, { tip })];
}

function antennaOffCentreline(facility: Facility, geometry: FacilityGeometry): Issue[] {
  const { antenna, courseTrueDeg } = facility.localizer ?? {};
  if (antenna === undefined || courseTrueDeg !== undefined) return [];
  const { alongFt, rightFt } = placeOnAxis(geometry, antenna);
  const offDeg = Math.abs(Math.atan2(rightFt, alongFt)) * DEGREES_PER_RADIAN;
  if (offDeg <= OFFSET_LOCALIZER_DEG) return [];
  const side = rightFt < 0 ? 'left' : 'right';
  const message = `localizer.antenna stands ${whole(Math.abs(rightFt))} ft ${side} of the extended centreline, ${decimal(offDeg)} degrees seen from the threshold, and no course is given; the runway's bearing is used`;
  const tip = 'Is the localizer offset? Then give localizer.courseTrueDeg. If not, check localizer.antenna.';
  return [issue('warning', 'facility-antenna-off-centreline', `${message}.`, { tip })];
}

function offsetCourse({ courseOffsetDeg, courseTrueDeg }: FacilityGeometry): Issue[] {
  const offDeg = Math.abs(courseOffsetDeg);
  if (offDeg <= OFFSET_LOCALIZER_DEG) return [];
  const start = `The localizer course ${bearingWords(courseTrueDeg, 1)} true is ${decimal(offDeg, 2)} degrees off the runway`;
  const tip = 'Check localizer.courseTrueDeg: is it perhaps magnetic?';
  if (offDeg > ICAO_OFFSET_LIMIT_DEG) {
    const message = `${start}: outside ICAO's rule for an ILS (${ICAO_OFFSET_LIMIT_DEG}) and FAA's (${FAA_OFFSET_LIMIT_DEG})`;
    return [issue('warning', 'facility-offset-beyond-icao', `${message}.`, { tip })];
  }
  if (offDeg > FAA_OFFSET_LIMIT_DEG) {
    const message = `${start}: outside FAA's rule for an ILS (${FAA_OFFSET_LIMIT_DEG}), inside ICAO's (${ICAO_OFFSET_LIMIT_DEG})`;
    return [issue('warning', 'facility-offset-beyond-faa', `${message}.`, { tip })];
  }
  const message = `${start}: the needle is judged to decision altitude, never the line-up with the runway`;
  return [issue('note', 'facility-offset', `${message}.`)];
}
