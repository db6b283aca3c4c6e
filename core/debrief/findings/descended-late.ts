import type { Span } from '../../numeric/polyline.ts';
import {
  distanceNmAt,
  farthestOver,
  needleColumn,
  onNeedles,
  reachedS,
  valueAtMoment,
  type Asked,
} from './asked.ts';
import { secondsIn, sinkOver } from './excess.ts';
import { threshold, type FindingRule, type Found } from './rule.ts';
import { miles, scaleFraction } from './say.ts';
import { whole } from '../../units/whole.ts';

const THRESHOLDS = {
  level: threshold(
    0.5,
    'of the needed sink',
    'less before the path is level flight towards it (design, section 7)',
  ),
  share: threshold(
    0.5,
    'of the needed sink',
    'the least that counts as held at the intercept (design, section 7)',
  ),
  from: threshold(
    4,
    's after the path was met',
    'a change of rate takes that long (ours); no tidy flight of 200 was late by it',
  ),
  to: threshold(14, 's after the path was met', 'ten seconds, as the intercept is held (design, section 7)'),
  high: threshold(0.5, 'of full scale', 'above it the path has to be caught from above'),
  begun: threshold(
    10,
    's of half the needed sink within half scale below',
    'as an intercept is held (design, section 7): then the descent was begun, and the rate is what went wrong',
  ),
};

/** How long after the path was met its highest is looked for. */
const AFTERWARDS_S = 60;

/** Slower than this is said to be level. */
const LEVEL_FPM = 75;

/** Level through the path. */
export const DESCENDED_LATE: FindingRule = {
  id: 'descended-late',
  kind: 'fault',
  title: 'Began the descent late',
  thresholds: THRESHOLDS,
  stoodOff: 'glidepath',
  byHand: false,
  coveredBy: ['descended-early'],
  find,
  text: ({ sinkFpm, neededFpm, highestFullScale, distanceNm }) =>
    `You met the glidepath ${miles(distanceNm!)} out and ${sinkFpm! < LEVEL_FPM ? 'stayed level' : `sank only ${whole(sinkFpm!)} ft/min`} where it needed ` +
    `${whole(neededFpm!)} ft/min, and went to ${scaleFraction(highestFullScale!)} high. Start down as the needle reaches the middle.`,
  practise:
    'Say the rate for your groundspeed before the glidepath is alive, reduce power just before the needle is centred, and check the ' +
    'rate five seconds later. Five intercepts.',
};

function find(asked: Asked): Found | null {
  const span = onNeedles(asked.sitting);
  if (span === null) return null;
  const column = needleColumn(asked, 'glidepath');
  const belowS = reachedS(asked, column, span, { value: -0.2, side: -1 });
  if (belowS === null) return null;
  const metS = reachedS(asked, column, { startS: belowS, endS: span.endS }, { value: 0, side: 1 });
  if (metS === null) return null;
  const before = sinkOver(asked, { startS: metS - 10, endS: metS });
  const after = sinkOver(asked, { startS: metS + THRESHOLDS.from.value, endS: metS + THRESHOLDS.to.value });
  if (before === null || after === null) return null;
  if (before.heldFpm > THRESHOLDS.level.value * before.neededFpm) return null;
  if (after.heldFpm > THRESHOLDS.share.value * after.neededFpm) return null;
  if (wasBegun(asked, { startS: belowS, endS: metS })) return null;
  const found = { startS: metS, endS: Math.min(metS + AFTERWARDS_S, span.endS) };
  const highest = farthestOver(asked, column, found, 1);
  if (highest === null) return null;
  const evidence = {
    sinkFpm: after.heldFpm,
    neededFpm: after.neededFpm,
    highestFullScale: highest.value,
    distanceNm: distanceNmAt(asked, metS),
  };
  return { ...found, evidence };
}

/** Whether a descent like the path's was held close below it: a needle that is off by a little meets it late. */
function wasBegun(asked: Asked, span: Span): boolean {
  const column = needleColumn(asked, 'glidepath');
  let downS = 0;
  return secondsIn(asked, span).some(({ timeS, heldFpm, neededFpm }) => {
    const isDown =
      heldFpm >= THRESHOLDS.share.value * neededFpm &&
      Math.abs(valueAtMoment(asked, column, timeS)) <= THRESHOLDS.high.value;
    downS = isDown ? downS + 1 : 0;
    return downS >= THRESHOLDS.begun.value;
  });
}
