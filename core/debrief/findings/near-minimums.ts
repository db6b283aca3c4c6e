import { momentOf } from '../../approach/flown-approach.ts';
import type { Span } from '../../numeric/polyline.ts';
import { fixAt, over, reachedS, valueAtMoment, type Asked } from './asked.ts';
import { changeHalfWidthFt, halfScaleFt } from './path-change.ts';
import { threshold, type FindingRule, type Found } from './rule.ts';
import { feet } from './say.ts';

const THRESHOLDS = {
  from: threshold(150, 'ft above decision altitude', 'from where the runway is looked for (ours)'),
  to: threshold(
    100,
    'ft above the threshold',
    'lower down a landing is flared (the standards stop there too)',
  ),
  off: threshold(
    30,
    'ft, and half of full scale there',
    'as much as a path with another aiming point differs by',
  ),
  change: threshold(25, 'ft', 'what was low or high all along is told as such'),
};

/** A descent is being stopped for so long before its end shows. */
const STOPPING_S = 3;

const DUCKED = {
  ...THRESHOLDS,
  surely: threshold(
    0,
    'ft below the path with all of the error',
    'else it may have come down to the path from above',
  ),
};

const LEVELLED = {
  ...THRESHOLDS,
  surely: threshold(
    25,
    'ft above the path with all of the error',
    'who comes back up to the path from below stops the descent as well',
  ),
};

const FROM_PATH = { stoodOff: null, byHand: false, kind: 'fault' } as const;

/** Below the path for the runway. */
export const DUCKED_BELOW_PATH: FindingRule = {
  ...FROM_PATH,
  id: 'ducked-below-path',
  thresholds: DUCKED,
  coveredBy: ['unstable-and-continued'],
  title: 'Ducked below the glidepath near minimums',
  find: (asked) => find(asked, -1, DUCKED.surely.value),
  text: ({ offFt, changeFt, heightFt }) =>
    `With the runway near you went below the glidepath: ${feet(offFt!)} low at ${feet(heightFt!)} above the threshold, ${feet(changeFt!)} of it in the last seconds. ` +
    'Keep the rate that held the path: you have least clearance there.',
  practise:
    'With the runway in sight leave power and rate alone until the threshold, and have your instructor call the glidepath down to ' +
    '100 ft. Three approaches without going low.',
};

/** Levelled off where the runway should appear. */
export const LEVELLED_NEAR_MINIMUMS: FindingRule = {
  ...FROM_PATH,
  id: 'levelled-near-minimums',
  thresholds: LEVELLED,
  coveredBy: ['unstable-and-continued', 'missed-sank', 'missed-late'],
  title: 'Levelled off near minimums',
  find: (asked) => (isLowPass(asked) ? null : find(asked, 1, LEVELLED.surely.value)),
  text: ({ offFt, heightFt }) =>
    `Near minimums you stopped the descent, and were ${feet(offFt!)} above the glidepath at ${feet(heightFt!)} above the threshold. ` +
    'Do not level off at decision altitude: stay on the glidepath to land, or go around.',
  practise:
    'Call "100 above" and "minimums" aloud, and answer "minimums" at once with "landing" or "going around", your hands moving ' +
    'with the word. Five times from 300 ft above.',
};

/** Along the runway with it in sight, or nobody said: that was meant. */
function isLowPass({ sitting: { approach, stated } }: Asked): boolean {
  return approach.outcome === 'low-approach' && stated.visualReferenceAtMinimums !== 'not-seen';
}

function find(asked: Asked, side: 1 | -1, surelyFt: number): Found | null {
  const span = spanNearMinimums(asked);
  if (span === null) return null;
  const { flown } = asked.sitting;
  const { deviations } = flown;
  let farthest: { s: number; offFt: number; changeFt: number; startS: number } | null = null;
  for (const { timeS, value } of over(asked, deviations.heightAboveGlidepathFt, span)) {
    let [nearest, nearestS] = [Infinity, timeS[0]!];
    for (let i = 0; i < timeS.length; i++) {
      const s = timeS[i]!;
      const offFt = side * value[i]!;
      if (offFt < nearest) [nearest, nearestS] = [offFt, s];
      // What only brought it back to the path, from the other side, is no part of it.
      const changeFt = offFt - Math.max(nearest, 0);
      const isOff =
        offFt >= THRESHOLDS.off.value &&
        offFt >= halfScaleFt(asked, s) &&
        offFt - nearest - changeHalfWidthFt(flown, s, s - nearestS) >= THRESHOLDS.change.value &&
        offFt - flown.error.heightFt(fixAt(flown, s)) >= surelyFt;
      if (isOff && offFt > (farthest?.offFt ?? 0)) farthest = { s, offFt, changeFt, startS: nearestS };
    }
  }
  if (farthest === null) return null;
  const { s, offFt, changeFt, startS } = farthest;
  const heightFt = valueAtMoment(asked, deviations.heightAboveThresholdFt, s);
  return { startS, endS: s, evidence: { offFt, changeFt, heightFt } };
}

/** From 150 ft above decision altitude to 100 ft above the threshold, or to where a missed approach was begun. */
function spanNearMinimums(asked: Asked): Span | null {
  const { approach, flown } = asked.sitting;
  const { decisionAltitudeFt } = flown.facility;
  if (decisionAltitudeFt === null || approach.finalBeganS === null) return null;
  const begunS = momentOf(approach, 'missed-approach-start');
  const overS = momentOf(approach, 'threshold') ?? approach.endS;
  const untilS = begunS === null ? overS : Math.min(begunS - STOPPING_S, overS);
  const all = { startS: approach.finalBeganS, endS: Math.max(approach.finalBeganS, untilS) };
  const startS = reachedS(asked, flown.decidingAltitudeFt, all, {
    value: decisionAltitudeFt + THRESHOLDS.from.value,
    side: -1,
  });
  if (startS === null) return null;
  const lowS = reachedS(
    asked,
    flown.deviations.heightAboveThresholdFt,
    { startS, endS: all.endS },
    { value: THRESHOLDS.to.value, side: -1 },
  );
  return { startS, endS: lowS ?? all.endS };
}
