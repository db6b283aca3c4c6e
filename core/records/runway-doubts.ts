import { geodesicBetween } from '../earth/geodesic.ts';
import { bearingWords, decimal } from '../facility/wording.ts';
import { issue, type Issue } from '../issue/issue.ts';
import { FEET_PER_METRE, FEET_PER_NM, wrap180 } from '../units/units.ts';
import { whole } from '../units/whole.ts';
import type { RunwayEnd, RunwayRow } from './runway-table.ts';

/** As a facility's length and ends are held to one another (design, section 6). */
const LENGTH_SLACK = 0.01;
/** A whole degree may be half of one off; much more, and the heading is magnetic, or something else is wrong (ours). */
const HEADING_SLACK_DEG = 3;
/** Positions to 0.0001° may be 18 ft off to the north; coarser ones are told (ours). */
const COARSE_DEG = 0.00005;
const MINUTES = 60;

/** What the values of a row say against one another, and what a draft of it lacks. */
export function runwayDoubts(
  row: RunwayRow,
  near: RunwayEnd,
  far: RunwayEnd,
  threshold: { readonly elevationFt: number | null } | null,
): Issue[] {
  return [
    ...lacking(near.ident, threshold),
    ...coarse(row),
    ...endsAgainstHeading(near, far),
    ...endsAgainstLength(row),
  ];
}

function lacking(ident: string, threshold: { readonly elevationFt: number | null } | null): Issue[] {
  const end = ident === '' ? 'this end' : ident;
  if (threshold === null)
    return [
      issue('warning', 'runway-threshold-unknown', `The row does not tell where the threshold of ${end} is.`),
    ];
  if (threshold.elevationFt !== null) return [];
  const message = `The row does not tell the elevation of the threshold of ${end}.`;
  const tip = 'The glidepath stands on it: take it from the official publication.';
  return [issue('caution', 'runway-elevation-unknown', message, { tip })];
}

function coarse({ halfStepDeg }: RunwayRow): Issue[] {
  if (halfStepDeg < COARSE_DEG) return [];
  const feet = whole(halfStepDeg * MINUTES * FEET_PER_NM);
  const message = `The positions are written to ${decimal(2 * halfStepDeg, 6)}°: they may be off by ${feet} ft north or south for that alone.`;
  return [issue('caution', 'runway-position-coarse', message)];
}

function endsAgainstHeading(near: RunwayEnd, far: RunwayEnd): Issue[] {
  if (near.position === null || far.position === null) return [];
  const betweenDeg = geodesicBetween(near.position, far.position).startBearingDeg;
  const number = Number.parseInt(near.ident, 10) * 10;
  const isOff = (deg: number, slackDeg: number) => Math.abs(wrap180(deg - betweenDeg)) > slackDeg;
  const from = `From end to end ${near.ident} lies ${bearingWords(betweenDeg, 1)} true`;
  if (number > 0 && isOff(number, 90))
    return [
      issue('warning', 'runway-ends-exchanged', `${from}: the positions of the two ends look exchanged.`, {
        tip: 'Is the other end the right one? Check where the numbers stand.',
      }),
    ];
  if (near.headingTrueDeg === null || !isOff(near.headingTrueDeg, HEADING_SLACK_DEG)) return [];
  const message = `${from}, but the row gives it a heading of ${bearingWords(near.headingTrueDeg)}; the ends are used.`;
  return [issue('warning', 'runway-heading-disagrees', message)];
}

function endsAgainstLength({ low, high, lengthFt }: RunwayRow): Issue[] {
  if (low.position === null || high.position === null || lengthFt === null) return [];
  const betweenFt = geodesicBetween(low.position, high.position).distanceM * FEET_PER_METRE;
  const mayBeFt = LENGTH_SLACK * betweenFt;
  if (Math.abs(betweenFt - lengthFt) <= mayBeFt) return [];
  const displacedFt = (low.displacedThresholdFt ?? 0) + (high.displacedThresholdFt ?? 0);
  const isBetweenThresholds = Math.abs(betweenFt - lengthFt + displacedFt) <= mayBeFt;
  const message = `The two ends lie ${whole(betweenFt)} ft apart, but the row gives a length of ${whole(lengthFt)} ft`;
  const tip = isBetweenThresholds
    ? 'That is as far as the displaced thresholds lie apart: the positions may already be theirs.'
    : 'Check the positions of both ends, and the length.';
  return [issue('warning', 'runway-length-disagrees', `${message}.`, { tip })];
}
