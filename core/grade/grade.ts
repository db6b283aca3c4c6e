import type { ApproachJudgement, CriterionJudgement } from '../standard/judgement.ts';
import { levelOf, type Level, type LevelFinding } from './level.ts';
import { pointsOf, type CriterionPoints } from './points.ts';
import { scoreInWords, scoreOf, sumOf, type Sum } from './score.ts';
import { whyNotGraded } from './why-not-graded.ts';

/** Level and score of one approach. The scale is this program's own and no authority's. */
export interface Grade {
  readonly level: Level;
  /** With every unclear criterion taken as not met, and as met; the level itself when none is unclear. */
  readonly levelLow: Level;
  readonly levelHigh: Level;
  /** Whole percent of the points assessed. */
  readonly score: number;
  readonly scoreLow: number;
  readonly scoreHigh: number;
  readonly words: string;
  /** The complete arithmetic, in sentences. */
  readonly working: readonly string[];
  readonly points: readonly CriterionPoints[];
}

export interface NotGraded {
  readonly level: null;
  readonly notGradedBecause: string;
  /** Of the criteria that were assessed; no score is made of them. */
  readonly points: readonly CriterionPoints[];
}

/** Held to a guess, nothing is sure enough to be given points. */
export const NOT_GRADED_AT_A_DRAFT: NotGraded = {
  level: null,
  notGradedBecause: 'not graded: the facility is a draft from a landing, and not all of it is confirmed.',
  points: [],
};

const THE_SCALE =
  "This scale is this program's own and no authority's. Points given = points possible × (1 − time beyond the " +
  'limit ÷ 20 % of the time judged), never below 0, and half at most where not met.';

/**
 * The grade of an approach (design, section 11). Unclear criteria are left out of the score, and never lift the level:
 * it is the one that holds when they are met. The ranges show what they can change, and hold the score itself too.
 */
export function gradeOf(judgement: ApproachJudgement): Grade | NotGraded {
  const points = pointsOfAll(judgement);
  const sum = sumOf(points);
  const notGradedBecause = whyNotGraded(judgement, sum.possible);
  if (notGradedBecause !== null) return { level: null, notGradedBecause, points };
  const low = taken(judgement, 'not-met');
  const high = taken(judgement, 'met');
  const score = scoreOf(sum);
  return {
    level: high.level,
    levelLow: low.level,
    levelHigh: high.level,
    score,
    scoreLow: Math.min(score, scoreOf(low.sum)),
    scoreHigh: Math.max(score, scoreOf(high.sum)),
    words: low.level === high.level ? high.words : `at best ${high.words}`,
    working: [
      THE_SCALE,
      ...points.map(({ working }) => working),
      `Sum: ${scoreInWords(sum)}.`,
      ...workingOfLevel(judgement, low, high),
    ],
    points,
  };
}

/** An approach with every unclear criterion decided one way, and its time beyond the limit as that makes it. */
interface Taken extends LevelFinding {
  readonly sum: Sum;
  /** The arithmetic of those criteria. */
  readonly working: readonly string[];
}

function taken(judgement: ApproachJudgement, verdict: 'met' | 'not-met'): Taken {
  const { criteria } = judgement;
  const decided = criteria.map((criterion) =>
    criterion.verdict === 'unclear' ? decidedAs(criterion, verdict) : criterion,
  );
  const settled = { ...judgement, criteria: decided };
  const points = pointsOfAll(settled);
  const working = points.filter((_, i) => criteria[i]!.verdict === 'unclear').map((point) => point.working);
  return { ...levelOf(settled), sum: sumOf(points), working };
}

/** An unclear criterion decided one way, with as much time beyond its limit as goes with that. */
function decidedAs(criterion: CriterionJudgement, verdict: 'met' | 'not-met'): CriterionJudgement {
  const { outsideRangeS, excursions, assessedS } = criterion;
  const decided = { ...criterion, verdict, why: `unclear: ${criterion.why}` };
  if (outsideRangeS === null) return decided;
  // What was not recorded may be beyond as well, and is no time judged.
  const mostS = Math.min(outsideRangeS.atMost, assessedS);
  if (verdict === 'not-met') return { ...decided, outsideS: mostS };
  const leastS = outsideRangeS.atLeast;
  return { ...decided, outsideS: leastS, excursions: leastS === 0 ? [] : excursions };
}

function workingOfLevel({ criteria }: ApproachJudgement, low: Taken, high: Taken): string[] {
  if (criteria.every(({ verdict }) => verdict !== 'unclear')) return [high.because];
  const range = (as: string, { sum, working, because }: Taken) => [
    `With what is unclear taken as ${as}: ${scoreInWords(sum)}.`,
    ...working,
    because,
  ];
  return [...range('met', high), ...range('not met', low)];
}

function pointsOfAll({ criteria, gates }: ApproachJudgement): CriterionPoints[] {
  return criteria.map((criterion) => pointsOf(criterion, gates));
}
