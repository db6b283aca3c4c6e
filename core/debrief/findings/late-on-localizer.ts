import { momentOf } from '../../approach/flown-approach.ts';
import { farthestOver, needleColumn, needleHalfWidth, over, valueAtMoment, type Asked } from './asked.ts';
import { threshold, type FindingRule, type Found } from './rule.ts';
import { miles, scaleFraction, sideWords } from './say.ts';

const THRESHOLDS = {
  overshoot: threshold(
    0.6,
    'of full scale',
    'beyond half scale and an error of the beam: a tidy turn stays within 0.3 on the other side (measured)',
  ),
  settling: threshold(
    60,
    's',
    'a turn onto the course is over by then; what comes later is another fault (ours)',
  ),
};

/** Turned late onto the localizer, and through it. */
export const LATE_ON_LOCALIZER: FindingRule = {
  id: 'late-on-localizer',
  kind: 'fault',
  title: 'Turned late onto the localizer, and through it',
  thresholds: THRESHOLDS,
  stoodOff: 'localizer',
  byHand: false,
  coveredBy: [],
  find,
  text: ({ overshootFullScale, distanceNm }) =>
    `The turn onto the localizer came late: you went through the course and ${scaleFraction(overshootFullScale!)} ` +
    `${sideWords(overshootFullScale!, 'localizer')} of it, ${miles(distanceNm!)} out. The turn has to begin while the needle still moves in.`,
  practise:
    'Fly five intercepts at 30 and 45 degrees, and say before each at which needle the turn will begin; begin it earlier the ' +
    'faster the needle moves.',
};

function find(asked: Asked): Found | null {
  const { sitting } = asked;
  const aliveS = momentOf(sitting.approach, 'localizer-alive');
  if (aliveS === null) return null;
  const column = needleColumn(asked, 'localizer');
  const from = valueAtMoment(asked, column, aliveS);
  // Straight in along the course there was nothing to turn onto.
  if (Number.isNaN(from) || Math.abs(from) < THRESHOLDS.overshoot.value) return null;
  const side = from > 0 ? -1 : 1;
  const crossedS = crossingS(asked, column, aliveS, side);
  if (crossedS === null) return null;
  const span = {
    startS: crossedS,
    endS: Math.min(crossedS + THRESHOLDS.settling.value, sitting.approach.endS),
  };
  const peak = farthestOver(asked, column, span, side);
  if (peak === null) return null;
  const surely = side * peak.value - needleHalfWidth(asked, 'localizer', peak.s);
  if (surely < THRESHOLDS.overshoot.value) return null;
  const distanceNm = valueAtMoment(asked, sitting.flown.deviations.distanceToThresholdNm, peak.s);
  return { ...span, endS: peak.s, evidence: { overshootFullScale: peak.value, distanceNm } };
}

/** When the course was first reached from the other side; null when it never was. */
function crossingS(asked: Asked, column: Float64Array, fromS: number, side: 1 | -1): number | null {
  for (const { timeS, value } of over(asked, column, { startS: fromS, endS: asked.sitting.approach.endS }))
    for (const [i, s] of timeS.entries()) if (side * value[i]! >= 0) return s;
  return null;
}
