import { momentOf } from '../../approach/flown-approach.ts';
import { firstAfter, type Span } from '../../numeric/polyline.ts';
import { needleColumn, onNeedles, valueAtMoment, distanceNmAt, type Asked } from './asked.ts';
import { secondsIn } from './excess.ts';
import { threshold, type FindingRule, type Found } from './rule.ts';
import { miles, scaleFraction } from './say.ts';
import { whole } from '../../units/whole.ts';

const THRESHOLDS = {
  below: threshold(
    0.4,
    'of full scale',
    'a descent is begun at 0.1 or 0.2 below, so that the aircraft sinks as it is met; four times that is early (ours)',
  ),
  share: threshold(0.6, 'of the needed sink', 'less closes with the path from below'),
  lasts: threshold(12, 's', 'a dip is no descent (ours)'),
  underFix: threshold(
    100,
    'ft below the altitude at the fix',
    "the standards' own limit before final; a step down to it is no descent on the path",
  ),
};

/** What comes of it is over by then. */
const AFTERWARDS_S = 60;

/** Down before the path. */
export const DESCENDED_EARLY: FindingRule = {
  id: 'descended-early',
  kind: 'fault',
  title: 'Began the descent before the glidepath',
  thresholds: THRESHOLDS,
  stoodOff: 'glidepath',
  byHand: false,
  coveredBy: [],
  find,
  text: ({ belowFullScale, sinkFpm, distanceNm }) =>
    `You left your altitude ${miles(distanceNm!)} out with the glidepath still ${scaleFraction(belowFullScale!)} above you, sinking ${whole(sinkFpm!)} ft/min. ` +
    'Hold the altitude until the needle is almost centred: below the glidepath nothing protects you from the ground.',
  practise:
    'Hold the intercept altitude within 50 ft. Call "glidepath alive", "half" and "intercept" as the needle comes down, and move the ' +
    'power only at the last. Five intercepts.',
};

function find(asked: Asked): Found | null {
  const { sitting } = asked;
  const span = onNeedles(sitting);
  if (span === null) return null;
  // What costs little is asked of the fixes first.
  if (!mayBeEarly(asked, span)) return null;
  const column = needleColumn(asked, 'glidepath');
  let spell: { startS: number; endS: number; sink: number[] } | null = null;
  for (const { timeS, heldFpm, neededFpm } of secondsIn(asked, span)) {
    const needle = valueAtMoment(asked, column, timeS);
    if (needle > -THRESHOLDS.below.value / 2) break;
    const isEarly = needle < -THRESHOLDS.below.value && heldFpm >= THRESHOLDS.share.value * neededFpm;
    if (!isEarly) {
      if (spell !== null && spell.endS - spell.startS >= THRESHOLDS.lasts.value) break;
      spell = null;
      continue;
    }
    spell ??= { startS: timeS, endS: timeS, sink: [] };
    spell.endS = timeS;
    spell.sink.push(heldFpm);
  }
  if (spell === null || spell.endS - spell.startS < THRESHOLDS.lasts.value || !isUnderFix(asked, spell.endS))
    return null;
  const evidence = {
    belowFullScale: valueAtMoment(asked, column, spell.startS),
    sinkFpm: spell.sink.reduce((sum, fpm) => sum + fpm, 0) / spell.sink.length,
    distanceNm: distanceNmAt(asked, spell.startS),
  };
  return { startS: spell.startS, endS: Math.min(spell.endS + AFTERWARDS_S, span.endS), evidence };
}

/** Whether any fix was so low, and under the fix's altitude, before the needle came up: what every such descent does. */
function mayBeEarly(asked: Asked, { startS, endS }: Span): boolean {
  const { track, decidingAltitudeFt, facility } = asked.sitting.flown;
  const { timeS, gapLimitS } = track;
  const column = needleColumn(asked, 'glidepath');
  const fixS = momentOf(asked.sitting.approach, 'final-approach-fix') ?? Infinity;
  const underFt = (facility.finalApproachFix.altitudeFt ?? -Infinity) - THRESHOLDS.underFix.value;
  let upSinceS = Infinity;
  for (let i = Math.max(1, firstAfter(timeS, startS)); i < track.count && timeS[i - 1]! < endS; i++) {
    const fromS = timeS[i - 1]!;
    const toS = timeS[i]!;
    // Between two fixes a needle is nowhere lower than at one of them.
    const low = column[i - 1]! < -THRESHOLDS.below.value || column[i]! < -THRESHOLDS.below.value;
    if (low && (toS > fixS || decidingAltitudeFt[i - 1]! < underFt || decidingAltitudeFt[i]! < underFt))
      return true;
    const isUp = column[i - 1]! > -THRESHOLDS.below.value / 2 && column[i]! > -THRESHOLDS.below.value / 2;
    upSinceS = isUp && toS - fromS <= gapLimitS ? Math.min(upSinceS, Math.max(fromS, startS)) : Infinity;
    // A second that is looked at lies there, unless nothing is known of its descent.
    if (toS - upSinceS > 2) return false;
  }
  return false;
}

/** Whether this was no step down to the altitude of the fix. */
function isUnderFix(asked: Asked, s: number): boolean {
  const { approach, flown } = asked.sitting;
  const fixS = momentOf(approach, 'final-approach-fix');
  if (fixS !== null && s > fixS) return true;
  const { altitudeFt } = flown.facility.finalApproachFix;
  return (
    altitudeFt !== null &&
    valueAtMoment(asked, flown.decidingAltitudeFt, s) < altitudeFt - THRESHOLDS.underFix.value
  );
}
