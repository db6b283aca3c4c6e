import { momentOf } from '../../approach/flown-approach.ts';
import {
  distanceNmAt,
  farthestOver,
  needleColumn,
  needleHalfWidth,
  onNeedles,
  reachedS,
  type Asked,
} from './asked.ts';
import { excessSeconds } from './excess.ts';
import { threshold, type FindingRule, type Found } from './rule.ts';
import { miles, scaleFraction, seconds } from './say.ts';
import { whole } from '../../units/whole.ts';

const THRESHOLDS = {
  above: threshold(
    0.25,
    'of full scale',
    'when settled on the localizer, and never below the path till then: it has to come down to it',
  ),
  steep: threshold(300, 'ft/min more than needed', "a gate's own margin: more is a dive, and brings speed"),
  steepFor: threshold(12, 's', 'shorter is a correction; to lose half a scale at 5 NM takes longer (ours)'),
  before: threshold(120, 's', 'a descent to the path from farther up is another matter (ours)'),
};

/** Never below the path, and down to it in a dive. */
export const FROM_ABOVE: FindingRule = {
  id: 'from-above',
  kind: 'fault',
  title: 'Came to the glidepath from above, and dived for it',
  thresholds: THRESHOLDS,
  stoodOff: 'glidepath',
  byHand: false,
  coveredBy: ['unstable-and-continued'],
  find,
  text: ({ highestFullScale, steepS, mostFpm, distanceNm }) =>
    `You were above the glidepath, ${scaleFraction(highestFullScale!)} high ${miles(distanceNm!)} out, and for ${seconds(steepS!)} you sank ` +
    `much faster than it needed, by up to ${whole(mostFpm!)} ft/min. A dive brings the needle in fast, and speed with it.`,
  practise:
    'Ask for lower early, or slow down and configure before the localizer. From above set one rate, at most 300 ft/min more ' +
    'than needed, and take half of that off as the needle comes within half scale.',
};

function find(asked: Asked): Found | null {
  const { approach } = asked.sitting;
  const span = onNeedles(asked.sitting);
  if (span === null) return null;
  const column = needleColumn(asked, 'glidepath');
  const settledS = momentOf(approach, 'localizer-established') ?? span.startS;
  const ahead = { startS: settledS, endS: span.endS };
  const wasBelowS = reachedS(
    asked,
    column,
    { startS: span.startS, endS: settledS + 1 },
    { value: -0.1, side: -1 },
  );
  const highest = farthestOver(asked, column, { startS: settledS, endS: settledS + 1 }, 1);
  if (wasBelowS !== null || highest === null) return null;
  if (highest.value - needleHalfWidth(asked, 'glidepath', settledS) < THRESHOLDS.above.value) return null;
  const metS = reachedS(asked, column, ahead, { value: 0, side: -1 }) ?? span.endS;
  const startS = Math.max(settledS, metS - THRESHOLDS.before.value);
  const dive = excessSeconds(asked, { startS, endS: metS + 20 }, THRESHOLDS.steep.value);
  if (dive.seconds < THRESHOLDS.steepFor.value) return null;
  const most = farthestOver(asked, column, { startS, endS: metS }, 1) ?? highest;
  const evidence = {
    highestFullScale: most.value,
    steepS: dive.seconds,
    mostFpm: dive.mostFpm,
    distanceNm: distanceNmAt(asked, most.s),
  };
  return { startS, endS: Math.min(metS + 60, span.endS), evidence };
}
