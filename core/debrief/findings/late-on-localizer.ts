import type { Span } from '../../numeric/polyline.ts';
import { momentOf } from '../../approach/flown-approach.ts';
import {
  distanceNmAt,
  farthestOver,
  needleColumn,
  needleHalfWidth,
  over,
  reachedS,
  type Asked,
  type Reading,
} from './asked.ts';
import { threshold, type FindingRule, type Found } from './rule.ts';
import { miles, scaleFraction, sideWords } from './say.ts';

const THRESHOLDS = {
  overshoot: threshold(
    0.5,
    'of full scale',
    'where a needle stands off at all; of 60 tidy turns none went more than 0.13 through the course (measured)',
  ),
  settling: threshold(
    40,
    's',
    'a turn onto the course is over by then; what comes later is another fault (ours)',
  ),
};

/** So long before the localizer is alive its side is looked for. */
const BEFORE_S = 90;
/** So long after it the course is reached by who turns onto it at all. */
const INBOUND_S = 120;
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
    `You turned onto the localizer late and went through it, to ${scaleFraction(overshootFullScale!)} ` +
    `${sideWords(overshootFullScale!, 'localizer')} of it, ${miles(distanceNm!)} out. Start the turn while the needle is still coming in.`,
  practise:
    'Fly five intercepts at 30 and 45 degrees. Before each, say where on the scale you will start the turn: the faster the needle ' +
    'moves, the earlier.',
};

function find(asked: Asked): Found | null {
  const { approach } = asked.sitting;
  const aliveS = momentOf(approach, 'localizer-alive');
  if (aliveS === null) return null;
  const column = needleColumn(asked, 'localizer');
  // It is alive only once the track points inbound, and by then a steep intercept is through.
  const entry = firstOff(asked, { startS: aliveS - BEFORE_S, endS: aliveS });
  // Straight in along the course there was nothing to turn onto.
  if (entry === null) return null;
  const side = entry.value > 0 ? -1 : 1;
  const inbound = { startS: entry.s, endS: Math.min(aliveS + INBOUND_S, approach.endS) };
  const crossedS = reachedS(asked, column, inbound, { value: 0, side });
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
  // The sheet begins where the localizer is alive.
  return { startS: Math.max(crossedS, approach.startS), endS: backS ?? approach.endS, evidence };
}

/** The first moment of a span at which the localizer was well off to a side. */
function firstOff(asked: Asked, span: Span): Reading | null {
  for (const { timeS, value } of over(asked, needleColumn(asked, 'localizer'), span))
    for (let i = 0; i < timeS.length; i++)
      if (Math.abs(value[i]!) >= THRESHOLDS.overshoot.value) return { s: timeS[i]!, value: value[i]! };
  return null;
}
