import type { ApproachJudgement, CriterionJudgement } from '../standard/judgement.ts';

export type Level = 1 | 2 | 3 | 4 | 5;

export interface LevelFinding {
  readonly level: Level;
  readonly words: string;
  /** Why this level and not the one above, as a sentence. */
  readonly because: string;
}

/** Something that keeps the level from being higher. */
interface Barrier {
  readonly atMost: Level;
  readonly because: string;
}

/** Own choice: the share of final inside half of each limit from which an approach is "well inside". */
const WELL_INSIDE_SHARE = 0.95;

/** Where that share is asked. A user's own limits, some of one side only, have no half. */
const ASKED_FOR_HALF: ReadonlySet<string> = new Set(['localizer-final', 'glidepath-final', 'airspeed-final']);

export const LEVEL_WORDS: Readonly<Record<Level, string>> = {
  5: 'well inside',
  4: 'met',
  3: 'met with prompt corrections',
  2: 'not met',
  1: 'a safety limit was crossed',
};
const SOUND_GO_AROUND = 'went around: a sound decision';
const SOUND_GO_AROUND_LEVEL = 3;

/**
 * The level that the criteria met and not met allow: 5 well inside, 4 met, 3 met with prompt corrections, 2 not met,
 * 1 a safety limit crossed. Criteria that are unclear or not assessed say nothing. A go-around that was a sound
 * decision is never below 3, whatever else is said.
 */
export function levelOf(judgement: ApproachJudgement): LevelFinding {
  const barriers = barriersOf(judgement);
  const earned = barriers.reduce<Level>((lowest, { atMost }) => (atMost < lowest ? atMost : lowest), 5);
  const { soundGoAround } = judgement;
  const level = soundGoAround !== null && earned < SOUND_GO_AROUND_LEVEL ? SOUND_GO_AROUND_LEVEL : earned;
  const words =
    soundGoAround !== null && level === SOUND_GO_AROUND_LEVEL ? SOUND_GO_AROUND : LEVEL_WORDS[level];
  if (level === 5) return { level, words, because: LEVEL_5 };
  const reasons = barriers.filter(({ atMost }) => atMost <= level).map(({ because }) => because);
  const floor =
    level > earned ? `, and not lower: the go-around was a sound decision (${soundGoAround})` : '';
  const because = `Level ${level}${floor}, and not ${level + 1}: ${reasons.join('; ')}.`;
  return { level, words, because };
}

const LEVEL_5 =
  'Level 5, the highest: all that was assessed was met without an excursion, and needles and airspeed on final, as ' +
  'far as assessed, were within half of each limit for 95 % of the time or more.';

function barriersOf({ safety, criteria, ceiling }: ApproachJudgement): Barrier[] {
  const crossed: Barrier[] = safety.map((why) => ({
    atMost: 1,
    because: `a safety limit was crossed: ${why}`,
  }));
  const capped: Barrier[] = ceiling === null ? [] : [{ atMost: ceiling.level, because: ceiling.why }];
  return [...crossed, ...criteria.flatMap(barrierOf), ...capped];
}

function barrierOf(criterion: CriterionJudgement): Barrier[] {
  const { title, verdict, why, excursions } = criterion;
  if (verdict === 'not-met') return [{ atMost: 2, because: `${title} was not met (${why})` }];
  if (verdict !== 'met') return [];
  if (excursions.length > 0)
    return [{ atMost: 3, because: `${title} went beyond its limit and was corrected promptly` }];
  return nearItsLimit(criterion);
}

function nearItsLimit({ id, title, insideHalfShare }: CriterionJudgement): Barrier[] {
  if (!ASKED_FOR_HALF.has(id)) return [];
  if (insideHalfShare === null)
    return [{ atMost: 4, because: `how long ${title} was within half of its limit is not known` }];
  if (insideHalfShare >= WELL_INSIDE_SHARE) return [];
  // Cut, not rounded: 94.96 % must not read as the 95 % that it is not.
  const percent = (Math.floor(insideHalfShare * 1000) / 10).toFixed(1);
  const because = `${title} was within half of its limit for ${percent} % of the time, and 95 % are asked`;
  return [{ atMost: 4, because }];
}
