import { deriveGeometry } from '../facility/derive-geometry.ts';
import type { Facility } from '../facility/facility-schema.ts';
import { OFFSET_LOCALIZER_DEG } from '../facility/impossible-values.ts';
import { placeOnAxis } from '../facility/runway-axis.ts';
import { DEGREES_PER_RADIAN } from '../units/units.ts';
import { trueOf } from './bearings.ts';
import { rounded, type Drafting } from './drafting.ts';
import { assignedVariation } from './drafted-localizer.ts';
import type { FacilityRecords } from './facility-records.ts';
import type { RecordWords } from './record-words.ts';

/**
 * Bearings stand in records to a tenth at best and often to a degree, and declinations to a degree, so a course this
 * near to the runway's is the runway's unless the antenna stands aside as well (our own choice).
 */
const ROUNDING_DEG = 1;

/**
 * The true course, where the localizer is offset. One on the centreline is better known by the runway's two ends, which
 * are given to a foot, and gets none.
 *
 * @param facility what was drafted, complete but for the course
 */
export function draftCourse(
  draft: Drafting,
  records: FacilityRecords,
  facility: Facility,
  words: RecordWords,
): void {
  const { localizer } = records;
  const variation = assignedVariation(records);
  const trueDeg = localizer.bearing === null ? null : trueOf(localizer.bearing, variation);
  if (trueDeg === null) return;
  const courseTrueDeg = rounded(trueDeg, 2);
  const geometry = deriveGeometry({ ...facility, localizer: { ...facility.localizer, courseTrueDeg } });
  const offDeg = Math.abs(geometry.courseOffsetDeg);
  if (offDeg <= OFFSET_LOCALIZER_DEG) return;
  const { alongFt, rightFt } = placeOnAxis(geometry, localizer.antenna);
  const asideDeg = Math.abs(Math.atan2(rightFt, alongFt)) * DEGREES_PER_RADIAN;
  if (offDeg <= ROUNDING_DEG && asideDeg <= OFFSET_LOCALIZER_DEG) return;
  const isRead = localizer.bearing!.isTrue || variation === 'true-north';
  const origin = isRead
    ? words.from(`localizer ${localizer.ident}`)
    : words.computed('the magnetic bearing of the localizer and the variation that it was assigned');
  draft.set('localizer.courseTrueDeg', courseTrueDeg, origin);
}
