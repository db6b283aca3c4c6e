import { momentOf } from '../../approach/flown-approach.ts';
import { resample, swingsOf } from '../../approach/swings.ts';
import { at, type Flown } from '../../approach/flown.ts';
import type { Case } from '../../standard/case.ts';
import { goAroundBegunS } from '../../standard/go-around-begun.ts';
import { fallsToS } from '../../standard/falling.ts';
import { descentBelowS } from '../../standard/minimums.ts';
import { neededSinkFpm } from '../../approach/glidepath-intercept.ts';
import { criterionOf, fixAt, over, type Asked } from './asked.ts';
import { threshold, type FindingRule, type Found } from './rule.ts';
import { seconds, feet } from './say.ts';
import { whole } from '../../units/whole.ts';

const MINIMUMS = {
  limit: threshold(
    3,
    's, or as the standard has it',
    "the standard's own rule for minimums (its verdict, proven)",
  ),
};

/** Below decision altitude before anything was done. */
export const MISSED_LATE: FindingRule = {
  id: 'missed-late',
  kind: 'fault',
  title: 'Went around late, below decision altitude',
  thresholds: MINIMUMS,
  stoodOff: null,
  byHand: false,
  coveredBy: ['missed-sank'],
  find: ({ sitting, judgement }) => {
    const begunS = goAroundBegunS(sitting);
    const decisionS = momentOf(sitting.approach, 'decision-altitude');
    const minimums = judgement.criteria.find(({ id }) => id === 'minimums');
    if (begunS === null || decisionS === null || minimums?.verdict !== 'not-met') return null;
    const { flown } = sitting;
    const belowFt = flown.facility.decisionAltitudeFt! - at(flown, flown.decidingAltitudeFt, begunS);
    return { startS: decisionS, endS: begunS, evidence: { belowFt, lateS: begunS - decisionS } };
  },
  text: ({ belowFt, lateS }) =>
    `You began the missed approach ${feet(belowFt!)} below decision altitude, ${seconds(lateS!)} after passing it. Decide at decision ` +
    'altitude: with nothing in sight, go around.',
  practise:
    'Brief "minimums, nothing seen, going around" before each approach. Look up at 100 above, and move power and pitch on the ' +
    'word "minimums". Five in a row under the hood.',
};

/** On down without the runway. */
export const CONTINUED_UNSEEN: FindingRule = {
  id: 'continued-unseen',
  kind: 'fault',
  title: 'Went on below decision altitude without the runway',
  thresholds: MINIMUMS,
  stoodOff: null,
  byHand: false,
  coveredBy: [],
  find: (asked) => {
    const { sitting } = asked;
    const decisionS = momentOf(sitting.approach, 'decision-altitude');
    if (decisionS === null || goAroundBegunS(sitting) !== null) return null;
    if (criterionOf(asked, 'minimums')?.verdict !== 'not-met') return null;
    const { surelyS } = descentBelowS(sitting, decisionS);
    return { startS: decisionS, endS: decisionS + surelyS, evidence: { descendedS: surelyS } };
  },
  text: ({ descendedS }) =>
    `You went on down for ${seconds(descendedS!)} below decision altitude with the runway not in sight. No runway at minimums means ` +
    'going around.',
  practise:
    'Fly approaches on which your instructor lifts the hood at minimums only sometimes. Whenever it stays on, go around.',
};

const SANK = {
  left: threshold(
    0.75,
    'of the needed sink',
    'less, over 8 s, is no longer the approach: something was done',
  ),
  stopped: threshold(
    0.6,
    'of the needed sink, where heights leave open when decision altitude was passed',
    'more may be a correction above it: no tidy go-around of 1,500 by phone lost 40 ft from there (measured)',
  ),
  near: threshold(50, 'ft above decision altitude', 'as what counts as begun at minimums'),
  lost: threshold(
    40,
    'ft',
    'from there, or from decision altitude where that was passed later: no tidy go-around of 80 lost so much (measured)',
  ),
};

const AROUND_S = 4;

/** Decided, and sank on. */
export const MISSED_SANK: FindingRule = {
  id: 'missed-sank',
  kind: 'fault',
  title: 'Sank on while going around',
  thresholds: SANK,
  stoodOff: null,
  byHand: false,
  coveredBy: [],
  find: findSank,
  text: ({ lostFt, lastsS }) =>
    `You broke off the descent, and then sank another ${feet(lostFt!)} in ${seconds(lastsS!)} before you climbed. Power and pitch go ` +
    'together: full power and the climb attitude in one movement.',
  practise:
    'At a safe altitude descend at your approach rate, call "going around", and lose less than 30 ft. Ten times, saying "power, ' +
    'pitch, flaps, trim".',
};

/** A low pass along the runway is none, unless the runway was not in sight. */
function isGoAround({ approach, stated }: Case): boolean {
  if (approach.outcome === 'missed-approach') return true;
  return approach.outcome === 'low-approach' && stated.visualReferenceAtMinimums === 'not-seen';
}

/** From where the descent of the approach was left for good to the lowest point. */
function findSank(asked: Asked): Found | null {
  const { flown, approach } = asked.sitting;
  const lowestS = momentOf(approach, 'lowest-point');
  if (lowestS === null || !isGoAround(asked.sitting)) return null;
  const decisionS = momentOf(approach, 'decision-altitude');
  const asLogged = sunkFrom(flown, leftAt(asked, lowestS, SANK.left.value), decisionS, lowestS);
  if (asLogged !== null) return asLogged;
  // Lower than logged, decision altitude may have been passed so much earlier.
  const span = { startS: approach.startS, endS: lowestS };
  const { decisionAltitudeFt } = flown.facility;
  const lowFt = flown.decidingOffFt.low;
  const earliestS = decisionAltitudeFt === null ? null : fallsToS(flown, span, lowFt, decisionAltitudeFt);
  return sunkFrom(flown, leftAt(asked, lowestS, SANK.stopped.value), earliestS, lowestS);
}

/** The fix at which the sink was last so large a share of the needed one. */
function leftAt({ sitting: { flown, approach } }: Asked, lowestS: number, share: number): number {
  const { timeS, groundspeedKt } = flown.track;
  let i = fixAt(flown, lowestS);
  const isApproach = (k: number) =>
    sinkAroundFpm(flown, timeS[k]!) >= share * neededSinkFpm(flown, groundspeedKt[k]!);
  while (i > 0 && timeS[i]! > approach.startS && !isApproach(i)) i--;
  return i;
}

/** What was lost from where the descent was left, if that was near minimums, and it is as much as to be told. */
function sunkFrom(flown: Flown, left: number, decisionS: number | null, lowestS: number): Found | null {
  const { altitudeFt, timeS } = flown.track;
  // What is lost above decision altitude is still the approach's.
  const startS = Math.max(timeS[left]!, decisionS ?? -Infinity);
  const lostFt = at(flown, altitudeFt, startS) - at(flown, altitudeFt, lowestS);
  // Higher up a sink that shrinks is no decision.
  const nearFt = (flown.facility.decisionAltitudeFt ?? -Infinity) + SANK.near.value;
  if (flown.decidingAltitudeFt[left]! - flown.error.decidingFt(left) > nearFt) return null;
  if (!(lostFt >= SANK.lost.value)) return null;
  return { startS, endS: lowestS, evidence: { lostFt, lastsS: lowestS - startS } };
}

/** Mean sink over the seconds around a moment: a gust is no descent. */
function sinkAroundFpm(flown: Flown, s: number): number {
  const { altitudeFt } = flown.track;
  return (60 * (at(flown, altitudeFt, s - AROUND_S) - at(flown, altitudeFt, s + AROUND_S))) / (2 * AROUND_S);
}

const WANDERED = {
  swing: threshold(10, 'degrees of track from side to side', 'no tidy climb of 80 swung so far (measured)'),
  swings: threshold(2, 'swings', 'one is a turn, which a procedure may ask for'),
  within: threshold(60, 's', 'the climb to a safe height (ours)'),
};

/** The heading was forgotten over the power. */
export const MISSED_WANDERED: FindingRule = {
  id: 'missed-wandered',
  kind: 'fault',
  title: 'Let the track wander after going around',
  thresholds: WANDERED,
  stoodOff: null,
  byHand: true,
  coveredBy: [],
  find: findWander,
  text: ({ swings, largestDeg }) =>
    `In the minute after you went around your track swung ${whole(swings!)} times, by up to ${whole(largestDeg!)} degrees. Full power swings the ` +
    'nose: bring the rudder in with it, and hold the heading first.',
  practise:
    'Name a heading before you go around, and hold it within 5 degrees for the first 500 ft. Three times with the needles covered.',
};

function findWander(asked: Asked): Found | null {
  const { approach, flown } = asked.sitting;
  const startS = momentOf(approach, 'missed-approach-start');
  if (startS === null || !isGoAround(asked.sitting)) return null;
  const span = {
    startS,
    endS: Math.min(startS + WANDERED.within.value, flown.track.timeS[flown.track.count - 1]!),
  };
  const swings = over(asked, flown.courseAngleDeg, span).flatMap((part) =>
    swingsOf(resample(part, 1), WANDERED.swing.value),
  );
  if (swings.length < WANDERED.swings.value) return null;
  const largestDeg = Math.max(...swings.map(({ from, to }) => Math.abs(to - from)));
  return { startS, endS: swings.at(-1)!.endS, evidence: { swings: swings.length, largestDeg } };
}
