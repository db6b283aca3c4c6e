import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import { CROSSING_HEIGHT_SLACK_FT } from '../facility/glidepath-beam.ts';
import { placeOnAxis } from '../facility/runway-axis.ts';
import { decimal } from '../facility/wording.ts';
import { whole } from '../units/whole.ts';
import type { Drafting } from './drafting.ts';
import type { FacilityRecords } from './facility-records.ts';
import { thresholdLeg } from './procedures.ts';
import type { LegRecord } from './leg-record.ts';

/** Published antennas stand within 5 ft of where their records say, or 160 ft off (our own choice between). */
const ANTENNA_SLACK_FT = 50;
/** Angles are given to a hundredth. */
const ANGLE_SLACK_DEG = 0.005;

/** What in the records of a facility contradicts other records, beyond what the facility's own checks see. */
export function checkRecords(draft: Drafting, records: FacilityRecords, geometry: FacilityGeometry): void {
  antennaAgainstLength(draft, records, geometry);
  for (const procedure of records.procedures) {
    const leg = thresholdLeg(procedure, records.localizer.runway);
    if (leg !== undefined) thresholdAgainstGlideslope(draft, records, geometry, leg);
  }
}

function antennaAgainstLength(
  draft: Drafting,
  { localizer, runway }: FacilityRecords,
  geometry: FacilityGeometry,
): void {
  const { antennaPositionFt, antennaPositionReference } = localizer;
  const isPastStopEnd = antennaPositionReference === ' ' || antennaPositionReference === '@';
  if (runway === null || antennaPositionFt === null || !isPastStopEnd) return;
  const saidFt = runway.lengthFt - runway.displacedThresholdFt + antennaPositionFt;
  const { alongFt } = placeOnAxis(geometry, localizer.antenna);
  if (Math.abs(alongFt - saidFt) <= ANTENNA_SLACK_FT) return;
  const message = `The antenna of ${localizer.ident} stands ${whole(alongFt)} ft from the threshold by its position, but ${whole(saidFt)} ft by the runway's length and its distance past the end`;
  draft.say('records-antenna-disagrees', message, 'The position is used: check localizer.antenna.');
}

function thresholdAgainstGlideslope(
  draft: Drafting,
  { localizer }: FacilityRecords,
  { threshold, thresholdCrossingHeightFt, glidepathAngleDeg }: FacilityGeometry,
  { procedure, verticalAngleDeg, altitudeFt }: LegRecord,
): void {
  if (verticalAngleDeg !== null && Math.abs(-verticalAngleDeg - glidepathAngleDeg) > ANGLE_SLACK_DEG) {
    const message = `Approach ${procedure} goes down ${decimal(-verticalAngleDeg, 2)} degrees, but the glideslope of ${localizer.ident} ${decimal(glidepathAngleDeg, 2)}; the glideslope is used`;
    draft.say('records-angle-disagrees', message, 'Compare glidepath.angleDeg with the current chart.');
  }
  if (altitudeFt === null) return;
  const crossingFt = threshold.elevationFt + thresholdCrossingHeightFt;
  if (Math.abs(altitudeFt - crossingFt) <= CROSSING_HEIGHT_SLACK_FT) return;
  const message = `Approach ${procedure} crosses the threshold at ${whole(altitudeFt)} ft, but the glideslope of ${localizer.ident} at ${whole(crossingFt)} ft; the glideslope is used`;
  const tip = 'Compare glidepath.thresholdCrossingHeightFt with the current chart.';
  draft.say('records-crossing-altitude-disagrees', message, tip);
}
