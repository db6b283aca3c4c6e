import { magneticDeclinationDeg } from '../earth/magnetic.ts';
import type { Position } from '../earth/geodesic.ts';
import { RUNWAY_LENGTH_FT } from '../facility/facility-schema.ts';
import { magneticFromTrue } from '../facility/variation.ts';
import { bearingWords, decimal } from '../facility/wording.ts';
import { issue, type Issue } from '../issue/issue.ts';
import type { AltitudeSource } from '../track/track.ts';
import { METRES_PER_FOOT, RADIANS_PER_DEGREE } from '../units/units.ts';
import { whole } from '../units/whole.ts';
import type { Drafted, DraftedLanding } from './drafted.ts';
import { AIMING_FT, FLOAT_FT, type LandedRunway } from './landed-runway.ts';
import { draftedFrom, type Leaf } from './leaves.ts';

/** A log that something was drafted from. */
export interface DraftedLog {
  readonly name: string;
  readonly sha256: string;
}

/** A draft that a landing left behind. It never grades the log that it comes from. */
export interface LandingDraft extends Drafted {
  readonly log: DraftedLog;
  /** With the paths of all its values: until each of them is confirmed, the facility is a draft. */
  readonly landing: DraftedLanding;
  /** Seconds since 1970. */
  readonly touchdownS: number;
  readonly touchdown: Position;
  readonly rollFt: number;
  readonly bearingHalfWidthDeg: number;
  /** What the number of the runway may be, by its magnetic bearing on that day; null where no model tells it. */
  readonly suggestedDesignator: string | null;
}

/** What is usual, where a landing cannot tell it (AIM 1-1-9 d.3; Annex 10 3.1.5.1.4, second-hand). */
const USUAL_ANGLE_DEG = 3;
const USUAL_CROSSING_FT = 50;

/** What the aiming distance is in height on such a path. */
const PATH_FT = AIMING_FT * Math.tan(USUAL_ANGLE_DEG * RADIANS_PER_DEGREE);

/** What is known of a landing besides its runway. */
export interface LandingFacts {
  readonly log: DraftedLog;
  readonly altitudeSource: AltitudeSource;
  /** Decimal year for the magnetic model; null when no day is known. */
  readonly onDate: number | null;
  /** Rolls on this runway in the log, of which this is the longest. */
  readonly rolls: number;
}

/** Puts a draft together from what a roll shows. */
export function landingDraft(runway: LandedRunway, facts: LandingFacts): LandingDraft {
  const { threshold, touchdown, touchdownS, rollFt, bearingHalfWidthDeg } = runway;
  const leaves = leavesOfLanding(runway, 'from a landing: to be confirmed');
  const drafted = draftedFrom(leaves, {
    issues: issuesOf(runway, facts),
    mayBeOff: {
      'runway.threshold': { alongFt: FLOAT_FT, acrossFt: acrossFt(runway) },
      'runway.trueBearingDeg': bearingHalfWidthDeg,
      'runway.lengthFt': RUNWAY_LENGTH_FT.max,
      ...(runway.elevation && { 'runway.threshold.elevationFt': runway.elevation.halfWidthFt }),
    },
  });
  return {
    ...drafted,
    log: facts.log,
    landing: { logSha256: facts.log.sha256, unconfirmed: leaves.map(({ path }) => path) },
    touchdownS,
    touchdown,
    rollFt,
    bearingHalfWidthDeg,
    suggestedDesignator: designatorOf(threshold, runway, facts.onDate),
  };
}

function leavesOfLanding(runway: LandedRunway, origin: string): Leaf[] {
  const aimed = `${origin}; assumed ${whole(AIMING_FT)} ft before the touchdown`;
  const { latDeg, lonDeg } = runway.threshold;
  const leaf = (path: string, value: number, from = origin): Leaf => ({ path, value, origin: from });
  const elevation = runway.elevation;
  return [
    leaf('runway.threshold.latDeg', Number(latDeg.toFixed(7)), aimed),
    leaf('runway.threshold.lonDeg', Number(lonDeg.toFixed(7)), aimed),
    ...(elevation === null ? [] : [leaf('runway.threshold.elevationFt', Math.round(elevation.thresholdFt))]),
    leaf('runway.trueBearingDeg', Number(runway.trueBearingDeg.toFixed(2)) % 360),
    leaf(
      'runway.lengthFt',
      Math.floor(AIMING_FT + runway.rollFt),
      `${origin}; at least, as far as it rolled`,
    ),
    leaf('glidepath.angleDeg', USUAL_ANGLE_DEG, `${origin}; assumed, as is usual`),
    leaf('glidepath.thresholdCrossingHeightFt', USUAL_CROSSING_FT, `${origin}; assumed, as is usual`),
  ];
}

/** At the threshold, which lies farther back on a line whose direction may be off. */
function acrossFt({ sideHalfWidthFt, bearingHalfWidthDeg }: LandedRunway): number {
  return sideHalfWidthFt + AIMING_FT * Math.tan(bearingHalfWidthDeg * RADIANS_PER_DEGREE);
}

function issuesOf(runway: LandedRunway, { log, altitudeSource, rolls }: LandingFacts): Issue[] {
  const { trueBearingDeg, bearingHalfWidthDeg, rollFt, elevation } = runway;
  const bearing = `${bearingWords(trueBearingDeg, 1)} true to within ${decimal(bearingHalfWidthDeg)}°`;
  const longest = rolls === 1 ? '' : `, the longest of ${rolls} on it`;
  const issues = [
    issue(
      'warning',
      'landing-draft',
      `This is a draft from a landing in ${log.name}: it grades no approach of that log.`,
      {
        tip: 'Confirm every value by the official publication of the aerodrome.',
      },
    ),
    issue(
      'caution',
      'landing-bearing',
      `The roll of ${whole(rollFt)} ft${longest} gives the runway ${bearing}.`,
    ),
    issue(
      'caution',
      'landing-threshold-assumed',
      `The threshold lies before the touchdown, nobody knows how far: ${whole(AIMING_FT)} ft were assumed, and ${whole(AIMING_FT)} ft along the runway are ${whole(PATH_FT)} ft in the height of the path.`,
    ),
    issue(
      'caution',
      'landing-length-at-least',
      'The runway is at least as long as the roll: its true length, or the course width, is needed for the localizer.',
    ),
    issue(
      'caution',
      'landing-glidepath-assumed',
      `A landing does not tell the glidepath: ${decimal(USUAL_ANGLE_DEG, 2)}° and ${USUAL_CROSSING_FT} ft over the threshold were assumed.`,
    ),
  ];
  return elevation === null
    ? [...issues, noElevation(altitudeSource)]
    : [...issues, elevationIssue(elevation)];
}

function elevationIssue({ halfWidthFt }: { readonly halfWidthFt: number }): Issue {
  const message = `The elevation is that of the heights on the ground, less the antenna: to within ${whole(halfWidthFt)} ft.`;
  return issue('caution', 'landing-elevation', message);
}

function noElevation(source: AltitudeSource): Issue {
  const kind = source === 'pressure' ? 'pressure altitudes' : "a transponder's";
  const message = `The heights of the log are ${kind}: they tell no elevation.`;
  return issue('warning', 'landing-elevation-unknown', message);
}

function designatorOf(
  threshold: Position,
  { trueBearingDeg, elevation }: LandedRunway,
  onDate: number | null,
): string | null {
  if (onDate === null) return null;
  const heightM = (elevation?.thresholdFt ?? 0) * METRES_PER_FOOT;
  const variationDeg = magneticDeclinationDeg(threshold, heightM, onDate);
  if (variationDeg === null) return null;
  const number = Math.round(magneticFromTrue(trueBearingDeg, variationDeg) / 10) % 36;
  return String(number === 0 ? 36 : number).padStart(2, '0');
}
