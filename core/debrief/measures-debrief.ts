import type { Descent, Sustained } from '../approach/descent.ts';
import { momentOf, type FlownApproach } from '../approach/flown-approach.ts';
import type { RecordedNeedle } from '../approach/recorded-needles.ts';
import type { WholeMeasures } from '../approach/whole-measures.ts';
import { utcText } from '../units/utc.ts';
import type { DebriefDescent, DebriefMeasures, DebriefRecordedNeedle } from './debrief.ts';
import { unknownOf } from './known.ts';

const NO_NEEDLE = 'The log holds no such needle, or less than 30 s of it on its scale.';
const HARDLY_MOVED = 'The needle hardly moved.';
const NO_ROLL = 'No roll after a landing on this runway was recorded.';
const TOO_FEW = 'Fewer than three fixes of the roll tell it.';
const TOO_SHORT = 'The roll was recorded over too short a way to have a direction.';
const NO_GATE = 'Final did not descend through 1,000 ft, or began below it.';
const NO_HEIGHT_THERE = 'No height was recorded at the threshold.';
const NO_THRESHOLD = 'The threshold was not crossed below 200 ft.';
const NO_DESCENT =
  'Final was not flown, or its heights were not recorded every 3 s or more often, in steps of less than 25 ft.';
const NOT_FASTER = 'It never sank faster than needed for 5 s.';
const NOT_SLOWER = 'It never sank slower than needed for 5 s.';
const DRAFT = 'The facility is a draft from a landing, and not all of it is confirmed.';
const NO_FINAL = 'Final was not flown, or nothing of it was recorded.';

/**
 * The measures of an approach as a whole, as the answer holds them. What was flown over a threshold or rolled along a
 * runway is not measured from one that is a guess.
 *
 * @param noWind why a wind is not known where the moment was flown
 */
export function measuresDebrief(
  measures: WholeMeasures,
  approach: FlownApproach,
  { noWind, isDraft }: { readonly noWind: string; readonly isDraft: boolean },
): DebriefMeasures {
  const {
    corrections,
    sink,
    descent,
    wind,
    windAt1000,
    windAtThreshold,
    threshold,
    touchdownDistanceFt,
    heightLostFt,
    recordedLocalizer,
    recordedGlidepath,
    rollout,
  } = isDraft ? { ...measures, threshold: null, touchdownDistanceFt: null, rollout: null } : measures;
  const values = {
    correctionsOnFinal: corrections && correctionsDebrief(corrections),
    sinkOnFinal: sink,
    descent: descent && descentDebrief(descent),
    windOnFinal: wind,
    windAt1000,
    windAtThreshold,
    threshold,
    touchdownDistanceFt,
    heightLostInMissedApproachFt: heightLostFt,
    recordedLocalizer: recordedLocalizer && recordedDebrief(recordedLocalizer),
    recordedGlidepath: recordedGlidepath && recordedDebrief(recordedGlidepath),
    rollout: rollout && {
      ...rollout,
      unknown: unknownOf(
        { ...rollout },
        { heightBiasFt: TOO_FEW, offsetFt: TOO_FEW, askewDeg: TOO_SHORT, asideFt: TOO_FEW },
      ),
    },
  };
  const crossedS = momentOf(approach, 'threshold');
  return {
    ...values,
    unknown: unknownOf(values, {
      correctionsOnFinal: NO_FINAL,
      sinkOnFinal: NO_FINAL,
      descent: NO_DESCENT,
      windOnFinal: approach.segments.some(({ kind }) => kind === 'final') ? noWind : NO_FINAL,
      windAt1000: momentOf(approach, 'gate-1000') === null ? NO_GATE : noWind,
      windAtThreshold: crossedS === null ? NO_THRESHOLD : noWind,
      threshold: isDraft ? DRAFT : crossedS === null ? NO_THRESHOLD : NO_HEIGHT_THERE,
      touchdownDistanceFt: isDraft ? DRAFT : 'No touchdown on this runway was recorded.',
      heightLostInMissedApproachFt: 'No missed approach was flown.',
      recordedLocalizer: NO_NEEDLE,
      recordedGlidepath: NO_NEEDLE,
      rollout: isDraft ? DRAFT : NO_ROLL,
    }),
  };
}

function correctionsDebrief(corrections: NonNullable<WholeMeasures['corrections']>) {
  const delays = corrections.delays.map(({ leftS, delayS }) => ({
    leftUtc: utcText(leftS)!,
    delayS,
    unknown: unknownOf({ delayS }, { delayS: 'No change of track followed.' }),
  }));
  return { ...corrections, delays };
}

function recordedDebrief({ bias, rms, overlay, ...rest }: RecordedNeedle): DebriefRecordedNeedle {
  const values = {
    ...rest,
    overlay: overlay.map(({ timeS, computed, recorded }) => ({
      utc: utcText(timeS)!,
      computedFullScale: computed,
      recordedFullScale: recorded,
    })),
    biasFullScale: bias,
    rmsFullScale: rms,
  };
  return { ...values, unknown: unknownOf(values, { correlation: HARDLY_MOVED, gain: HARDLY_MOVED }) };
}

function descentDebrief({
  runs,
  stretches,
  largestExcess,
  largestDeficit,
  ...rest
}: Descent): DebriefDescent {
  const largest = {
    largestExcess: largestExcess && sustainedDebrief(largestExcess),
    largestDeficit: largestDeficit && sustainedDebrief(largestDeficit),
  };
  return {
    ...rest,
    ...largest,
    stretches: stretches.map(({ startS, endS, ...stretch }) => ({
      startUtc: utcText(startS)!,
      endUtc: utcText(endS)!,
      ...stretch,
    })),
    secondBySecond: runs.map((run) => ({
      startUtc: utcText(run[0]!.timeS)!,
      heldFpm: run.map((second) => second.heldFpm),
      neededFpm: run.map((second) => second.neededFpm),
      aboveGlidepathFt: run.map((second) => second.aboveGlidepathFt),
    })),
    unknown: unknownOf(largest, { largestExcess: NOT_FASTER, largestDeficit: NOT_SLOWER }),
  };
}

function sustainedDebrief({ fpm, fromS }: Sustained): { fpm: number; fromUtc: string } {
  return { fpm, fromUtc: utcText(fromS)! };
}
