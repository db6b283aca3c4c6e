import { geodesicBetween, geodesicFrom } from '../earth/geodesic.ts';
import { FEET_PER_METRE, METRES_PER_FOOT } from '../units/units.ts';
import { whole } from '../units/whole.ts';
import { trueOf } from './bearings.ts';
import { rounded, type Drafting } from './drafting.ts';
import type { FacilityRecords } from './facility-records.ts';
import type { RecordWords } from './record-words.ts';
import { designatorOf } from './runway-names.ts';
import type { RunwayRecord } from './runway-record.ts';

/**
 * The runway of a facility: its threshold is the landing threshold, and it ends where the pavement does. A "PG"
 * record has the landing threshold of either direction, so the far end lies behind the opposite one by that one's
 * displacement.
 */
export function draftRunway(draft: Drafting, records: FacilityRecords, words: RecordWords): void {
  const { localizer, runway, opposite } = records;
  const designator = designatorOf(localizer.runway);
  draft.set('runway.designator', designator, words.from(`localizer ${localizer.ident}`));
  if (runway === null) {
    const message = `The file has no readable record of runway ${designator}: its threshold is not known`;
    draft.say('records-no-runway', message, 'Enter the runway from the current chart.');
    return;
  }
  const from = words.from(`runway ${designator}`);
  draft.setPlace('runway.threshold', runway.threshold, from);
  draft.set('runway.threshold.elevationFt', runway.thresholdElevationFt, from);
  if (runway.thresholdElevationFt === null)
    draft.say(
      'records-no-elevation',
      `The record of runway ${designator} has no elevation of the threshold`,
      'Enter it from the current chart.',
    );
  draft.set('runway.widthFt', runway.widthFt || null, from);
  draftLength(draft, runway, from, words);
  if (opposite === null) draftBearing(draft, records, runway, words);
  else draftFarEnd(draft, runway, opposite, words);
}

/** From the landing threshold on; the ends are compared with it when the facility is checked. */
function draftLength(draft: Drafting, runway: RunwayRecord, from: string, words: RecordWords): void {
  const { lengthFt, displacedThresholdFt } = runway;
  const origin =
    displacedThresholdFt === 0
      ? from
      : words.computed(
          `the runway's ${whole(lengthFt)} ft and the threshold displaced by ${whole(displacedThresholdFt)} ft`,
        );
  draft.set('runway.lengthFt', lengthFt - displacedThresholdFt, origin);
}

function draftFarEnd(
  draft: Drafting,
  runway: RunwayRecord,
  opposite: RunwayRecord,
  words: RecordWords,
): void {
  const other = designatorOf(opposite.runway);
  const displacedFt = opposite.displacedThresholdFt;
  if (displacedFt === 0) {
    const from = words.from(`threshold of runway ${other}`);
    draft.setPlace('runway.farEnd', opposite.threshold, from);
    draft.set('runway.farEnd.elevationFt', opposite.thresholdElevationFt, from);
    return;
  }
  const line = geodesicBetween(runway.threshold, opposite.threshold);
  const end = geodesicFrom(opposite.threshold, line.endBearingDeg, displacedFt * METRES_PER_FOOT);
  const behind = words.computed(
    `the threshold of runway ${other}, which is displaced by ${whole(displacedFt)} ft`,
  );
  draft.setPlace('runway.farEnd', end, behind);
  const slope = words.computed('the elevations of both thresholds, the slope carried on to the end');
  draft.set('runway.farEnd.elevationFt', endElevationFt(runway, opposite, line.distanceM), slope);
}

/** On the straight line through both thresholds, so that it is right at both; to a tenth of a foot. */
function endElevationFt(runway: RunwayRecord, opposite: RunwayRecord, apartM: number): number | null {
  const fromFt = runway.thresholdElevationFt;
  const toFt = opposite.thresholdElevationFt;
  const apartFt = apartM * FEET_PER_METRE;
  if (fromFt === null || toFt === null || apartFt === 0) return toFt;
  return rounded(toFt + ((toFt - fromFt) / apartFt) * opposite.displacedThresholdFt, 1);
}

/** Without the other end: by the record's bearing, which is mostly one of whole degrees. */
function draftBearing(
  draft: Drafting,
  { airport, localizer }: FacilityRecords,
  runway: RunwayRecord,
  words: RecordWords,
): void {
  const designator = designatorOf(runway.runway);
  const variation = airport?.variation ?? localizer.variation;
  const bearingDeg = runway.bearing === null ? null : trueOf(runway.bearing, variation);
  const origin = runway.bearing?.isTrue
    ? words.from(`runway ${designator}`)
    : words.computed(`the magnetic bearing of runway ${designator} and the assigned variation`);
  draft.set('runway.trueBearingDeg', bearingDeg === null ? null : rounded(bearingDeg, 2), origin);
  const message =
    bearingDeg === null
      ? `The file has no record of the other end of runway ${designator}, nor its bearing`
      : `The file has no record of the other end of runway ${designator}: it is placed by the bearing, which is good to about a degree`;
  draft.say('records-no-far-end', message, 'Enter runway.farEnd from the current chart.');
}
