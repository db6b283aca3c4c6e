import { magneticFromTrue } from '../facility/variation.ts';
import type { RecordVariation } from './bearings.ts';
import { rounded, type Drafting } from './drafting.ts';
import type { FacilityRecords } from './facility-records.ts';
import type { RecordWords } from './record-words.ts';

/** What a localizer is found by. */
export function draftRadio(draft: Drafting, { localizer }: FacilityRecords, words: RecordWords): void {
  const from = words.from(`localizer ${localizer.ident}`);
  draft.set('ident', localizer.ident, from);
  draft.set('frequencyMHz', localizer.frequencyMHz, from);
}

/** The localizer of a facility but for its true course. The antenna's elevation is in no record. */
export function draftLocalizer(draft: Drafting, records: FacilityRecords, words: RecordWords): void {
  const { localizer } = records;
  const { bearing } = localizer;
  const from = words.from(`localizer ${localizer.ident}`);
  draft.setPlace('localizer.antenna', localizer.antenna, from);
  draft.set('localizer.courseWidthDeg', localizer.courseWidthDeg || null, from);
  if (bearing === null) return;
  const variation = assignedVariation(records);
  if (!bearing.isTrue && variation !== 'true-north')
    return draft.set('localizer.courseMagneticDeg', bearing.deg, from);
  if (variation === null || variation === 'true-north') return;
  const magneticDeg = rounded(magneticFromTrue(bearing.deg, variation.eastDeg), 1);
  const origin = words.computed('the true bearing and the assigned variation');
  draft.set('localizer.courseMagneticDeg', magneticDeg, origin);
}

/** The variation that bearings of the localizer go by, which was assigned to it, and not what a model gives for today. */
export function draftVariation(draft: Drafting, records: FacilityRecords, words: RecordWords): void {
  const variation = assignedVariation(records);
  if (variation === null || variation === 'true-north') return;
  const isOwn = records.localizer.variation !== null;
  const origin = words.from(isOwn ? `localizer ${records.localizer.ident}` : 'airport');
  draft.set('magneticVariationDeg', variation.eastDeg, origin);
}

/** The localizer's own declination, else the airport's. */
export function assignedVariation({ localizer, airport }: FacilityRecords): RecordVariation | null {
  return localizer.variation ?? airport?.variation ?? null;
}
