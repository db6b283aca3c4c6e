import { firstAtOrAfter, valueAt } from '../numeric/polyline.ts';
import { findClimb, type Climb } from './climb.ts';
import { after } from './established.ts';
import type { Flown } from './flown.ts';
import { leavingS } from './leaving.ts';
import { findLanding, thresholdPassage, type Landing, type ThresholdPassage } from './on-ground.ts';
import { INBOUND_DEG, type Pass } from './passes.ts';

export type Outcome =
  | 'touch-and-go'
  | 'landed'
  | 'low-approach'
  | 'missed-approach'
  | 'sidestepped'
  | 'circled'
  | 'broken-off'
  | 'incomplete';

/** How an approach ended, and the facts that say so. */
export interface Ending {
  readonly outcome: Outcome;
  readonly leftS: number | null;
  readonly passage: ThresholdPassage | null;
  readonly landing: Landing | null;
  /** Of a missed or low approach, and of a touch-and-go. */
  readonly climb: Climb | null;
}

const WITHIN_S = 120;
const NEVER_BELOW_KT = 20;
/** Below decision altitude by this much: a low approach and not a late missed approach. */
const BELOW_DECISION_FT = 50;
/** A climb that starts below this above the touchdown zone is a missed approach wherever it leads. */
const LOW_FT = 1000;
/** A climb belongs to the approach when it starts no later than this after the localizer was left. Ours. */
const CLIMB_AFTER_LEAVING_S = 10;
const SIDESTEP_DEG = 30;
const BESIDE_BELOW_FT = 100;
const ROLLING_KT = 40;

/**
 * Tells the outcome of a pass; the first that fits (design, section 7).
 *
 * @param finalS when final began; null when it never did: what climbs then is no missed approach
 */
export function findEnding(
  flown: Flown,
  pass: Pass,
  finalS: number | null,
  decisionFt: number | null,
): Ending {
  const { first } = after(flown, { first: pass.first, last: pass.until }, finalS ?? -Infinity);
  const stretch = { first, last: pass.until };
  const passage = thresholdPassage(flown, stretch);
  // However high it crossed: one who dives at the far half of the runway lands all the same.
  const landing = passage ? findLanding(flown, passage, pass.until) : null;
  const climb = finalS === null ? null : findClimb(flown, stretch);
  const leftS = leavingS(flown, pass);
  const facts =
    leftS === null || flewOn(flown, leftS, landing, climb)
      ? { leftS: null, passage, landing, climb }
      : { leftS, passage: null, landing: null, climb: belongsTo(leftS, climb) ? climb : null };
  return { ...facts, outcome: outcomeOf(flown, pass, facts, decisionFt) };
}

function belongsTo(leftS: number, climb: Climb | null): boolean {
  return climb !== null && climb.lowestS <= leftS + CLIMB_AFTER_LEAVING_S;
}

/**
 * Who flies on inbound beyond full scale, and then lands there or goes around, has lost the localizer and not left it.
 * Ours: to the letter it is a circling, of which nobody judges the leaving.
 */
function flewOn(flown: Flown, leftS: number, landing: Landing | null, climb: Climb | null): boolean {
  const { track, courseAngleDeg } = flown;
  if (landing === null && (climb === null || belongsTo(leftS, climb))) return false;
  const untilS = landing?.touchdownS ?? climb!.lowestS;
  for (let i = firstAtOrAfter(track.timeS, leftS); track.timeS[i]! <= untilS; i++)
    if (!(Math.abs(courseAngleDeg.at(i)) <= INBOUND_DEG)) return false;
  return true;
}

function outcomeOf(
  flown: Flown,
  pass: Pass,
  { leftS, landing, climb }: Omit<Ending, 'outcome'>,
  decisionFt: number | null,
): Outcome {
  const { deviations, facility } = flown;
  if (landing) return isTouchAndGo(flown, landing, climb) ? 'touch-and-go' : 'landed';
  if (climb) {
    const lowestFt = flown.decidingAltitudeFt[climb.lowestFix]!;
    if (decisionFt !== null && lowestFt < decisionFt - BELOW_DECISION_FT) return 'low-approach';
    const isLow = climb.lowestFt < facility.touchdownZoneElevationFt + LOW_FT;
    if (isLow || stayedOnLocalizer(flown, climb)) return 'missed-approach';
  }
  if (leftS === null) return 'incomplete';
  const heightFt = valueAt(
    flown.track.timeS,
    deviations.heightAboveThresholdFt,
    leftS,
    flown.track.gapLimitS,
  );
  const touchdownZoneFt = facility.touchdownZoneElevationFt - facility.threshold.elevationFt;
  if (!(heightFt < touchdownZoneFt + LOW_FT)) return 'broken-off';
  return landedBeside(flown, pass, leftS) ? 'sidestepped' : 'circled';
}

function isTouchAndGo({ track }: Flown, { roll }: Landing, climb: Climb | null): boolean {
  if (!climb || climb.clearS - climb.lowestS > WITHIN_S) return false;
  for (let i = roll.first; i <= roll.last; i++) if (track.groundspeedKt[i]! < NEVER_BELOW_KT) return false;
  return true;
}

function stayedOnLocalizer({ track, deviations }: Flown, climb: Climb): boolean {
  for (let i = climb.lowestFix; track.timeS[i]! <= climb.clearS; i++)
    if (Math.abs(deviations.localizerFullScale[i]!) > 1) return false;
  return true;
}

/**
 * First on the ground beside this runway's outline, with the track within 30° of the course. What is taxied afterwards
 * says nothing, and standing still the track is the receiver's noise.
 */
function landedBeside(
  { track, deviations, facility, courseAngleDeg }: Flown,
  pass: Pass,
  leftS: number,
): boolean {
  for (let i = pass.last; i <= pass.until; i++) {
    if (track.timeS[i]! < leftS) continue;
    const beside = Math.abs(deviations.centrelineOffsetFt[i]!) > facility.widthFt / 2;
    const onGround =
      deviations.heightAboveThresholdFt[i]! < BESIDE_BELOW_FT && track.groundspeedKt[i]! < ROLLING_KT;
    if (onGround) return beside && Math.abs(courseAngleDeg.at(i)) <= SIDESTEP_DEG;
  }
  return false;
}
