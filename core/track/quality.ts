import { metresPerDegree } from '../earth/frame.ts';
import { issue, type Issue } from '../issue/issue.ts';
import { KNOTS_PER_METRE_PER_SECOND, wrap180 } from '../units/units.ts';
import { FIX_FLAG, type Track } from './track.ts';

/** Below this a position that stands still is parked (design, section 5). */
const PARKED_KT = 3;
/** Longer than a position may be repeated by a receiver that is slower than its log. */
const FROZEN_S = 3;
/** A step is a jump when it is faster than this many times the speed over its neighbours, and then some. */
const JUMP_RATIO = 2;
const JUMP_MARGIN_KT = 60;

type Positions = Pick<
  Track,
  'timeS' | 'latDeg' | 'lonDeg' | 'groundspeedKt' | 'flags' | 'line' | 'medianIntervalS'
>;

/**
 * Flags frozen fixes in place: the same position for longer than max(3 s, 2 × the median interval), while the
 * aircraft moved on average faster than 3 kt from the fix before to the fix after.
 */
export function flagFrozen(track: Positions): Issue[] {
  const { timeS, latDeg, lonDeg, flags } = track;
  const longestHoldS = Math.max(FROZEN_S, 2 * track.medianIntervalS);
  const frozen: number[] = [];
  let start = 0;
  for (let i = 1; i <= timeS.length; i++) {
    if (i < timeS.length && latDeg[i] === latDeg[start] && lonDeg[i] === lonDeg[start]) continue;
    const heldS = timeS[i - 1]! - timeS[start]!;
    if (heldS > longestHoldS && movedMeanwhile(track, start, i))
      for (let k = start + 1; k < i; k++) {
        flags[k]! |= FIX_FLAG.frozen;
        frozen.push(k);
      }
    start = i;
  }
  return flagged(track, frozen, 'position-frozen', [
    'holds the position before it while the aircraft moves',
    'hold the position before them while the aircraft moves',
  ]);
}

/** Whether the fixes from `start` to before `end` belong to a moving aircraft, by speed logged or covered. */
function movedMeanwhile(track: Positions, start: number, end: number): boolean {
  const { timeS, groundspeedKt } = track;
  if (groundspeedKt[start]! >= PARKED_KT && groundspeedKt[end - 1]! >= PARKED_KT) return true;
  if (start === 0 || end === timeS.length) return false;
  return stepKt(track, start - 1, end) >= PARKED_KT;
}

/**
 * Flags in place the fixes reached with a step that the steps around it do not support. The step back from a
 * single wrong position is not flagged again, and a position held for a while moves from where it was first seen:
 * a receiver slower than its log makes no jumps.
 */
export function flagJumps(track: Positions): Issue[] {
  const moves = newPositions(track);
  const speedKt = new Float64Array(moves.length);
  for (let k = 1; k < moves.length; k++) speedKt[k] = stepKt(track, moves[k - 1]!, moves[k]!);
  const supported = (k: number, kt: number) => isWithin(kt, neighbourKt(speedKt, k));
  const jumped: number[] = [];
  for (let k = 1; k < moves.length; k++) {
    const kt = speedKt[k]!;
    // Two neighbours that support it are enough, and nearly every step has them beside it.
    if (isWithin(kt, speedKt[k - 1]!) && isWithin(kt, speedKt[k + 1]!)) continue;
    if (supported(k, kt)) continue;
    const isReturn = k > 1 && jumped.at(-1) === moves[k - 1];
    if (isReturn && supported(k, stepKt(track, moves[k - 2]!, moves[k]!))) continue;
    track.flags[moves[k]!]! |= FIX_FLAG.jumped;
    jumped.push(moves[k]!);
  }
  return flagged(track, jumped, 'position-jump', [
    'is reached by a jump that no aircraft makes',
    'are reached by jumps that no aircraft makes',
  ]);
}

/** Whether an aircraft that flies at one speed reaches another from fix to fix; not when it is NaN. */
function isWithin(kt: number, besideKt: number): boolean {
  return kt <= JUMP_RATIO * besideKt + JUMP_MARGIN_KT;
}

/** The first fix at each new position. */
function newPositions({ latDeg, lonDeg }: Positions): Uint32Array {
  const moves = new Uint32Array(latDeg.length);
  let count = 1;
  for (let i = 1; i < latDeg.length; i++)
    if (latDeg[i] !== latDeg[i - 1] || lonDeg[i] !== lonDeg[i - 1]) moves[count++] = i;
  return moves.subarray(0, count);
}

/**
 * The second fastest of the two steps before and the two after step `k` (step 0 does not exist): one of the four
 * may be a jump itself. With fewer than two neighbours nothing can be said (Infinity).
 */
function neighbourKt(speedKt: Float64Array, k: number): number {
  let fastest = -1;
  let second = -1;
  for (let n = Math.max(1, k - 2); n <= k + 2 && n < speedKt.length; n++) {
    if (n === k) continue;
    const kt = speedKt[n]!;
    if (kt > fastest) {
      second = fastest;
      fastest = kt;
    } else if (kt > second) second = kt;
  }
  return second < 0 ? Infinity : second;
}

/** The speed, kt, that leads from one fix to another. */
export function stepKt(
  { timeS, latDeg, lonDeg }: Pick<Track, 'timeS' | 'latDeg' | 'lonDeg'>,
  from: number,
  to: number,
): number {
  const degree = metresPerDegree(latDeg[to]!);
  const northM = (latDeg[to]! - latDeg[from]!) * degree.latM;
  const eastM = wrap180(lonDeg[to]! - lonDeg[from]!) * degree.lonM;
  const distanceM = Math.sqrt(northM * northM + eastM * eastM);
  return (distanceM / (timeS[to]! - timeS[from]!)) * KNOTS_PER_METRE_PER_SECOND;
}

function flagged(
  track: Positions,
  fixes: readonly number[],
  code: string,
  [one, many]: readonly [string, string],
): Issue[] {
  if (fixes.length === 0) return [];
  const message =
    fixes.length === 1
      ? `1 fix ${one}; it stays and is marked.`
      : `${fixes.length} fixes ${many}; they stay and are marked.`;
  return [issue('warning', code, message, { count: fixes.length, firstLine: track.line[fixes[0]!]! })];
}
