import { NEAR_FULL_SCALE } from '../approach/needle-measures.ts';
import { median } from '../numeric/median.ts';
import { constant, largestOf, relativeTo, type Polyline } from '../numeric/polyline.ts';
import { flownDistanceNm } from '../track/flown-distance.ts';
import { airspeedOf } from './airspeed.ts';
import { altitudeBeforeFinal } from './altitude-before-final.ts';
import { endedBy, halfWidthsIn, recordedIn, unfinished, withoutInstructor, type Case } from './case.ts';
import {
  fromFixOrGate,
  glidepathOnFinal,
  joinedByS,
  localizerBeforeFinal,
  localizerOnFinal,
  type Counting,
} from './counting.ts';
import { TIMED_TITLES } from './criterion-ids.ts';
import type { CriterionJudgement } from './judgement.ts';
import { noLimit } from './no-limit.ts';
import { notAssessed } from './not-assessed.ts';
import { ownCriteria } from './own-criteria.ts';
import { promptRule } from './prompt-rule.ts';
import { airspeedLimit, speedTarget } from './speed-target.ts';
import type { Limit } from './standard.ts';
import type { TimedQuestion } from './timed-criterion.ts';
import { withAllowance } from './with-allowance.ts';
import { bandWords, scaleWords } from './words.ts';

/** Why a needle is not assessed where it may be anywhere on its scale: the end of that clause. */
export const MORE_THAN_FULL_SCALE = 'may be off by more than the full scale of the needle';
const tooFarOff = (what: string) => `the ${what} of this log ${MORE_THAN_FULL_SCALE}`;
const NEEDLE_DEPTH = 0.15;
const NEEDLE_FLOOR = 0.2;
const SPEED_DEPTH_KT = 5;
const SPEED_FLOOR_KT = 4;
/** Two spells parted by a speed this near the limit are one; ours, as a needle's 0.05. */
const NEAR_KT = 1;

/** Every tolerance of a standard that is told in time, applied to one approach. */
export function timedCriteria(sitting: Case): CriterionJudgement[] {
  const { standard } = sitting;
  return [
    needle(sitting, 'localizer-before-final', standard.beforeFinal.localizer),
    altitudeBeforeFinal(sitting),
    needle(sitting, 'localizer-final', standard.final.localizer),
    needle(sitting, 'glidepath-final', standard.final.glidepath),
    airspeedOnFinal(sitting),
    ...ownCriteria(sitting),
  ];
}

type NeedleId = 'localizer-before-final' | 'localizer-final' | 'glidepath-final';
const COUNTING: Readonly<Record<NeedleId, (sitting: Case) => Counting>> = {
  'localizer-before-final': localizerBeforeFinal,
  'localizer-final': localizerOnFinal,
  'glidepath-final': glidepathOnFinal,
};

function needle(sitting: Case, id: NeedleId, limit: Limit | null): CriterionJudgement {
  const title = TIMED_TITLES[id];
  if (limit === null) return notAssessed(id, title, noLimit(sitting.standard, id));
  const counting = COUNTING[id](sitting);
  if ('why' in counting) return notAssessed(id, title, counting.why, limit, 'full scale');
  const { deviations, needleError } = sitting.flown;
  const isGlidepath = id === 'glidepath-final';
  const column = isGlidepath ? deviations.glidepathFullScale : deviations.localizerFullScale;
  const counted = withoutInstructor(sitting, counting.span);
  const parts = recordedIn(sitting, column, counted);
  const halfWidth = isGlidepath ? needleError.glidepath : needleError.localizer;
  const halfWidths = halfWidthsIn(sitting, column, halfWidth, counted);
  if (isBlind(halfWidths))
    return notAssessed(id, title, tooFarOff(isGlidepath ? 'heights' : 'positions'), limit, 'full scale');
  const question: TimedQuestion = {
    id,
    title,
    unit: 'full scale',
    limit,
    limitWords: scaleWords(limit.upper ?? -limit.lower!),
    counted,
    parts,
    flownNm: flownDistanceNm(sitting.flown.track, parts),
    halfWidths,
    madeUpToS: id === 'localizer-final' ? joinedByS(sitting) : null,
    near: NEAR_FULL_SCALE,
    halfFloor: NEEDLE_FLOOR,
    prompt: promptRule(sitting, counting.span, { depth: NEEDLE_DEPTH, stop: 1 }),
    endedBy: id === 'localizer-before-final' ? null : endedBy(sitting),
    openEnd: id === 'localizer-before-final' ? openBefore(sitting) : unfinished(sitting),
  };
  return withAllowance(sitting, question);
}

function airspeedOnFinal(sitting: Case): CriterionJudgement {
  const id = 'airspeed-final';
  const title = TIMED_TITLES[id];
  const { standard, stated } = sitting;
  const limit = airspeedLimit(sitting, standard.final.airspeedKt);
  if (limit === null) return notAssessed(id, title, noLimit(standard, id));
  const target = speedTarget(standard.final.speedBasis, stated);
  if ('why' in target) return notAssessed(id, title, target.why, limit, 'kt');
  const airspeed = airspeedOf(sitting);
  if ('why' in airspeed) return notAssessed(id, title, airspeed.why, limit, 'kt');
  const counting = fromFixOrGate(sitting);
  if ('why' in counting) return notAssessed(id, title, counting.why, limit, 'kt');
  const counted = withoutInstructor(sitting, counting.span);
  const parts = relativeTo(recordedIn(sitting, airspeed.column, counted), target.kt);
  const { halfWidthKt } = airspeed;
  return withAllowance(sitting, {
    id,
    title,
    unit: 'kt',
    limit,
    limitWords: `${bandWords(limit.lower, limit.upper, 'kt')} of ${target.words}${airspeed.words}`,
    counted,
    parts,
    flownNm: flownDistanceNm(sitting.flown.track, parts),
    halfWidths: halfWidthKt === 0 ? [] : constant(parts, halfWidthKt),
    madeUpToS: null,
    near: NEAR_KT,
    halfFloor: SPEED_FLOOR_KT,
    prompt: promptRule(sitting, counting.span, { depth: SPEED_DEPTH_KT, stop: Infinity }),
    endedBy: endedBy(sitting),
    openEnd: unfinished(sitting),
  });
}

/** Whether a needle may be off by its full scale for most of the time: then nothing can be said of it. */
function isBlind(halfWidths: readonly Polyline[]): boolean {
  return largestOf(halfWidths) > 1 && median(halfWidths.flatMap(({ value }) => [...value])) > 1;
}

function openBefore({ approach }: Case): string | null {
  return approach.finalBeganS === null ? 'the final approach fix was not reached' : null;
}
