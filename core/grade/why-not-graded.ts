import type { ApproachJudgement, CriterionJudgement } from '../standard/judgement.ts';
import { MORE_THAN_FULL_SCALE } from '../standard/criteria.ts';
import { POINTS_POSSIBLE } from './points.ts';

/** Own choice: of 100 points, how many must be assessed for a level and a score. */
const POINTS_NEEDED = 70;

const NEEDLES = [
  ['localizer-final', 'Localizer on final'],
  ['glidepath-final', 'Glidepath on final'],
] as const;

/** What the user can do about a criterion that was not assessed. */
const ADVICE: ReadonlyMap<string, string> = new Map([
  ['airspeed-final', 'the airspeed flown for (Vref, where the standard asks for it)'],
  ['minimums', 'whether the runway was in sight at decision altitude'],
]);

/**
 * Why there is neither level nor score, as a sentence that says what is missing and what to do; null when there are
 * both. Needed: both needles on final and 70 points assessed, of which what is unclear is a part (it makes a range),
 * and something that is clear to make a score of. What is sure all the same is said with it.
 */
export function whyNotGraded(judgement: ApproachJudgement, pointsClear: number): string | null {
  const { criteria, noLevelBecause } = judgement;
  const told = (id: string) => criteria.find((criterion) => criterion.id === id);
  const missing: string[] = [];
  if (noLevelBecause !== null) missing.push(noLevelBecause);
  for (const [id, title] of NEEDLES) {
    const needle = told(id);
    if (!needle || needle.verdict === 'not-assessed')
      missing.push(`${title} was not assessed${needle ? ` (${needle.why})` : ''}`);
  }
  const needlesAndFixes = missing.length === 0;
  const pointsAssessed = pointsClear + pointsUnclear(criteria);
  if (needlesAndFixes && pointsClear > 0 && pointsAssessed >= POINTS_NEEDED) return null;
  if (needlesAndFixes)
    missing.push(
      pointsClear === 0
        ? 'nothing is clear enough to make a score of'
        : `${pointsAssessed} of 100 points were assessed, and ${POINTS_NEEDED} are needed`,
    );
  const isTooFarOff = missing.every((reason) => reason.includes(MORE_THAN_FULL_SCALE));
  const needed = isTooFarOff ? BETTER_HEIGHTS : WHOLE_FINAL;
  const advice = needlesAndFixes ? whatToSay(criteria) : needed;
  return `not graded: this log holds too little: ${missing.join('; ')}.${advice}${sureAllTheSame(judgement)}`;
}

function pointsUnclear(criteria: readonly CriterionJudgement[]): number {
  const unclear = criteria.filter(({ verdict }) => verdict === 'unclear');
  return unclear.reduce((sum, { id }) => sum + (POINTS_POSSIBLE.get(id) ?? 0), 0);
}

const WHOLE_FINAL =
  ' A level needs final flown to decision altitude and recorded with a fix every 3 s or oftener: where the log was ' +
  'thinned or cut, export it whole.';

const BETTER_HEIGHTS =
  ' A level needs positions and heights that are nearer than that: those of a satellite receiver, or an altimeter ' +
  'with the setting stated.';

function whatToSay(criteria: readonly CriterionJudgement[]): string {
  const open = criteria.filter(({ id, verdict }) => verdict === 'not-assessed' && POINTS_POSSIBLE.has(id));
  const left = open.map(({ title, why }) => `${title} (${why})`);
  const advice = open.flatMap(({ id }) => ADVICE.get(id) ?? []);
  const leftOut = left.length > 0 ? ` Left out: ${left.join('; ')}.` : '';
  return advice.length > 0 ? `${leftOut} If you know it, state ${advice.join('; and ')}.` : leftOut;
}

function sureAllTheSame({ safety, soundGoAround }: ApproachJudgement): string {
  const crossed = safety.map((why) => ` Sure all the same: a safety limit was crossed: ${why}.`);
  const wentAround =
    soundGoAround === null
      ? ''
      : ` Sure all the same: the go-around was a sound decision (${soundGoAround}).`;
  return crossed.join('') + wentAround;
}
