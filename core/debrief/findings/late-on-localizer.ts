import { momentOf } from '../../approach/flown-approach.ts';
import {
  distanceNmAt,
  farthestOver,
  needleColumn,
  needleHalfWidth,
  reachedS,
  valueAtMoment,
  type Asked,
} from './asked.ts';
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

/** Until here the turn is not over, nor what came of it. */
const SETTLED_FULL_SCALE = 0.25;

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
  const { approach } = asked.sitting;
  const aliveS = momentOf(approach, 'localizer-alive');
  if (aliveS === null) return null;
  const column = needleColumn(asked, 'localizer');
  const from = valueAtMoment(asked, column, aliveS);
  // Straight in along the course there was nothing to turn onto.
  if (!(Math.abs(from) >= THRESHOLDS.overshoot.value)) return null;
  const side = from > 0 ? -1 : 1;
  const crossedS = reachedS(asked, column, { startS: aliveS, endS: approach.endS }, { value: 0, side });
  if (crossedS === null) return null;
  const span = { startS: crossedS, endS: Math.min(crossedS + THRESHOLDS.settling.value, approach.endS) };
  const peak = farthestOver(asked, column, span, side);
  if (peak === null) return null;
  if (side * peak.value - needleHalfWidth(asked, 'localizer', peak.s) < THRESHOLDS.overshoot.value)
    return null;
  const after = { startS: peak.s, endS: approach.endS };
  const backS = reachedS(asked, column, after, {
    value: side * SETTLED_FULL_SCALE,
    side: side === 1 ? -1 : 1,
  });
  const evidence = { overshootFullScale: peak.value, distanceNm: distanceNmAt(asked, peak.s) };
  return { startS: crossedS, endS: backS ?? approach.endS, evidence };
}
