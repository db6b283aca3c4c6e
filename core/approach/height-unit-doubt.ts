import { issue, type Issue } from '../issue/issue.ts';
import type { Log, Quantity } from '../log/log.ts';
import { leftOf, straightLine } from '../numeric/straight-line.ts';
import type { AltitudeSource } from '../track/track.ts';
import { FEET_PER_METRE } from '../units/units.ts';
import type { FlownApproach } from './flown-approach.ts';
import type { Flown } from './flown.ts';
import { OFF_HEIGHT_FT, rolloutOf } from './rollout.ts';

/** Heights whose unit nothing named, and which an approach shows to have been read in the wrong one. */
export interface HeightUnitDoubt {
  /** One sentence that stands in place of a verdict. */
  readonly summary: string;
  readonly notGradedBecause: string;
  readonly issue: Issue;
}

/** Units that heights may be in, and what a value read in one is to be taken times if it is in the other. */
const OTHERS = [
  { read: 'ft', inWords: 'feet', other: 'm', otherInWords: 'metres', factor: FEET_PER_METRE },
  { read: 'm', inWords: 'metres', other: 'ft', otherInWords: 'feet', factor: 1 / FEET_PER_METRE },
] as const;

const COLUMNS: Readonly<Record<AltitudeSource, readonly Quantity[]>> = {
  geometric: ['altitudeGeometricFt'],
  'ellipsoid-less-geoid': ['altitudeEllipsoidFt'],
  unnamed: ['altitudeUnnamedFt'],
  indicated: ['altitudeIndicatedFt', 'altitudePressureFt'],
  pressure: ['altitudePressureFt'],
  transponder: ['altitudeTransponderFt'],
};

/** The last miles to the threshold: who follows the glidepath anywhere follows it there. Limits here are ours. */
const WITHIN_NM = 4;
const LEAST_NM = 1.5;
/** Of the glidepath's descent: what one flies by who means to follow it. A foot for a metre is far beyond either. */
const LEAST_SHARE = 0.75;
const MOST_SHARE = 1.35;
/** One who truly is low flies level and then descends: a straight line leaves more than this of the descent. */
const CROOKED_SHARE = 0.1;
/** Slower than this nothing flies. */
const SLOW_KT = 40;

/**
 * Whether the heights are in another unit than they were read in: nothing in the file names it, an approach descends
 * along the glidepath in the other unit and nowhere near it in this one, no approach follows it in this one, and no
 * roll stands on the runway in this one alone. Null where there is no such doubt.
 */
export function heightUnitDoubt(
  log: Log,
  flown: Flown,
  approaches: readonly FlownApproach[],
): HeightUnitDoubt | null {
  const roles = COLUMNS[flown.track.altitudeSource];
  const column = log.columns.find(({ role }) => roles.some((quantity) => quantity === role));
  const { name, from } = column?.unitRead ?? {};
  const units = OTHERS.find(({ read }) => read === name);
  if (!column || !units || (from !== 'assumed' && from !== 'others')) return null;
  const descents = approaches.flatMap((approach) => {
    const descent = descentOf(flown, approach);
    return descent === null ? [] : [{ ...descent, approach }];
  });
  if (descents.some(({ share }) => isAlongPath(share))) return null;
  const telling = descents.find(
    ({ share, isStraight, approach }) =>
      isStraight && isAlongPath(share * units.factor) && !groundForbids(flown, approach, units.factor),
  );
  return telling ? doubtOf(column.header, units, telling.share) : null;
}

function isAlongPath(share: number): boolean {
  return share >= LEAST_SHARE && share <= MOST_SHARE;
}

/** The height lost over that of the glidepath; null where too little of the last miles was flown. */
function descentOf(
  flown: Flown,
  approach: FlownApproach,
): { readonly share: number; readonly isStraight: boolean } | null {
  const { distanceToThresholdNm, heightAboveThresholdFt, heightAboveGlidepathFt } = flown.deviations;
  const fixes = lastMiles(flown, approach);
  const [first, last] = [fixes[0], fixes.at(-1)];
  if (first === undefined || last === undefined) return null;
  if (distanceToThresholdNm[first]! - distanceToThresholdNm[last]! < LEAST_NM) return null;
  const heightFt = fixes.map((i) => heightAboveThresholdFt[i]!);
  const pathFt = fixes.map((i) => heightAboveThresholdFt[i]! - heightAboveGlidepathFt[i]!);
  const line = straightLine(pathFt, heightFt);
  const left = leftOf(line, pathFt, heightFt);
  const leftFt = Math.sqrt(left.reduce((sum, ft) => sum + ft * ft, 0) / left.length);
  const lostFt = line.slope * (pathFt[0]! - pathFt.at(-1)!);
  return { share: line.slope, isStraight: leftFt <= CROOKED_SHARE * lostFt };
}

/** The fixes of the last miles before the threshold, down to the lowest: one who goes around may climb there. */
function lastMiles({ track, deviations }: Flown, { startS, endS }: FlownApproach): number[] {
  const { distanceToThresholdNm, heightAboveThresholdFt } = deviations;
  const fixes: number[] = [];
  let lowest = 0;
  for (let i = 0; i < track.count; i++) {
    const isFlown = track.timeS[i]! >= startS && track.timeS[i]! <= endS;
    const isNear = distanceToThresholdNm[i]! > 0 && distanceToThresholdNm[i]! <= WITHIN_NM;
    if (!isFlown || !isNear || Number.isNaN(heightAboveThresholdFt[i]!)) continue;
    fixes.push(i);
    if (heightAboveThresholdFt[i]! <= heightAboveThresholdFt[fixes[lowest]!]!) lowest = fixes.length - 1;
  }
  return fixes.slice(0, lowest + 1);
}

/**
 * Whether a roll stands on the runway as it was read, and does not in the other unit; at sea level it stands in both.
 * One that never slowed down tells nothing: in metres taken for feet a low pass looks like a touch-and-go.
 */
function groundForbids(flown: Flown, approach: FlownApproach, factor: number): boolean {
  const { roll } = approach;
  const biasFt = rolloutOf(flown, approach)?.heightBiasFt ?? null;
  if (roll === null || biasFt === null) return false;
  const slowestKt = flown.track.groundspeedKt
    .subarray(roll.first, roll.last + 1)
    .reduce((least, kt) => Math.min(least, kt), Infinity);
  const { threshold, farEnd } = flown.facility;
  const groundFt = (threshold.elevationFt + farEnd.elevationFt) / 2 + flown.antennaHeightFt;
  const otherBiasFt = (groundFt + biasFt) * factor - groundFt;
  return slowestKt < SLOW_KT && Math.abs(biasFt) <= OFF_HEIGHT_FT && Math.abs(otherBiasFt) > OFF_HEIGHT_FT;
}

function doubtOf(
  header: string,
  { other, inWords, otherInWords }: (typeof OTHERS)[number],
  share: number,
): HeightUnitDoubt {
  const probably = `the heights are probably ${otherInWords}`;
  const unnamed = `column "${header}" names no unit and was read as ${inWords}`;
  const remedy = `ay so with --unit "${header}=${other}", or in the app under "What was recognised"`;
  const message =
    `${capital(unnamed)}, but in ${inWords} this flight came down ${share.toFixed(2)} times as much as the glidepath: ` +
    `${probably}, and nothing was judged.`;
  return {
    summary: `Not judged: ${probably} (${unnamed}); s${remedy}.`,
    notGradedBecause: `not graded: ${probably}, and were read as ${inWords}`,
    issue: issue('warning', 'height-unit-doubtful', message, { tip: `S${remedy}.` }),
  };
}

function capital(words: string): string {
  return `${words[0]!.toUpperCase()}${words.slice(1)}`;
}
