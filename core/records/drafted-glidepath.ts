import type { Drafting } from './drafting.ts';
import type { FacilityRecords } from './facility-records.ts';
import type { RecordWords } from './record-words.ts';
import { designatorOf } from './runway-names.ts';

/** The glidepath: angle, crossing height, and the antenna where its elevation is known. */
export function draftGlidepath(draft: Drafting, records: FacilityRecords, words: RecordWords): void {
  const { localizer } = records;
  const from = words.from(`glideslope of ${localizer.ident}`);
  draft.set('glidepath.angleDeg', localizer.glidepathAngleDeg, from);
  draftCrossingHeight(draft, records, words);
  if (localizer.glidepathAntenna === null || localizer.glidepathElevationFt === null) return;
  draft.setPlace('glidepath.antenna', localizer.glidepathAntenna, from);
  draft.set('glidepath.antenna.elevationFt', localizer.glidepathElevationFt, from);
}

/** A runway's crossing height is taken only where it is that of the glideslope, and not of lights or of GPS. */
function draftCrossingHeight(
  draft: Drafting,
  { localizer, runway }: FacilityRecords,
  words: RecordWords,
): void {
  const path = 'glidepath.thresholdCrossingHeightFt';
  const designator = designatorOf(localizer.runway);
  const own = localizer.crossingHeightFt || null;
  const runways = runway?.crossingHeightFrom === 'I' ? runway.crossingHeightFt || null : null;
  if (own !== null) draft.set(path, own, words.from(`glideslope of ${localizer.ident}`));
  else if (runways !== null) draft.set(path, runways, words.from(`runway ${designator}`));
  else
    draft.say(
      'records-no-crossing-height',
      `No record gives the threshold crossing height of the glideslope of runway ${designator}`,
      'Enter it from the current chart.',
    );
}
