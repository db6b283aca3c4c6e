import { followedSinkErrorFpm } from '../approach/sink-error.ts';
import { flownDistanceNm } from '../track/flown-distance.ts';
import { endedBy, halfWidthsIn, recordedIn, unfinished, withoutInstructor, type Case } from './case.ts';
import { fromFixOrGate } from './counting.ts';
import type { CriterionJudgement, CriterionUnit } from './judgement.ts';
import { notAssessed } from './not-assessed.ts';
import { promptRule } from './prompt-rule.ts';
import type { OwnCriterion, OwnQuantity } from './standard.ts';
import { withAllowance } from './with-allowance.ts';
import { bandWords } from './words.ts';

/** What an own criterion is told in. */
export const OWN_UNITS: Readonly<Record<OwnQuantity, CriterionUnit & string>> = {
  groundspeedKt: 'kt',
  verticalSpeedFpm: 'ft/min',
  bankDeg: 'deg',
  pitchDeg: 'deg',
};

/** The criteria of a user's own standard: on final, and no excursion from them is small enough to overlook. */
export function ownCriteria(sitting: Case): CriterionJudgement[] {
  return sitting.standard.own.map((criterion) => judgeOwn(sitting, criterion));
}

function judgeOwn(sitting: Case, { id, title, quantity, limit }: OwnCriterion): CriterionJudgement {
  const { track } = sitting.flown;
  const unit = OWN_UNITS[quantity];
  const column =
    quantity === 'groundspeedKt' || quantity === 'verticalSpeedFpm'
      ? track[quantity]
      : track.recorded[quantity];
  if (!column) return notAssessed(id, title, 'the log does not hold it', limit, unit);
  const counting = fromFixOrGate(sitting);
  if ('why' in counting) return notAssessed(id, title, counting.why, limit, unit);
  const counted = withoutInstructor(sitting, counting.span);
  const parts = recordedIn(sitting, column, counted);
  return withAllowance(sitting, {
    id,
    title,
    unit,
    limit,
    limitWords: bandWords(limit.lower, limit.upper, unit),
    counted,
    parts,
    flownNm: flownDistanceNm(track, parts),
    halfWidths:
      quantity === 'verticalSpeedFpm'
        ? halfWidthsIn(sitting, column, (i) => followedSinkErrorFpm(sitting.flown, i), counted)
        : [],
    madeUpToS: null,
    near: 0,
    halfFloor: 0,
    prompt: promptRule(sitting, counting.span, { depth: 0, stop: Infinity }),
    endedBy: endedBy(sitting),
    openEnd: unfinished(sitting),
  });
}
