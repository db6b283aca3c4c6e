import type { CriterionJudgement, GateJudgement } from '../standard/judgement.ts';
import { decimal } from './decimal.ts';

/**
 * Points of one criterion, whole tenths. Null: left out of both columns, because its verdict is unclear or it was not
 * assessed.
 */
export interface CriterionPoints {
  readonly id: string;
  readonly given: number | null;
  readonly possible: number | null;
  /** The arithmetic, as a sentence. */
  readonly working: string;
}

/** The weights are this program's own choice, as are all the numbers of the grade. */
export const POINTS_POSSIBLE: ReadonlyMap<string, number> = new Map([
  ['localizer-before-final', 5],
  ['altitude-before-final', 5],
  ['localizer-final', 25],
  ['glidepath-final', 25],
  ['airspeed-final', 15],
  ['stability', 15],
  ['minimums', 10],
]);

/** Own choice: no points are left when the time beyond the limit reaches one fifth, 20 %, of the time judged. */
const PARTS_OF_TIME = 5;

/**
 * Points given = points possible × (1 − time beyond the limit ÷ 20 % of the time judged), never below 0; `not-met`
 * gives half at most. What is not told in time gives all or nothing, except stability that was lost only after its
 * gate. Times count in tenths of a second, as the sentence prints them, so that a pencil comes to the same points.
 * A criterion of the user's own gives 0 of 0.
 */
export function pointsOf(criterion: CriterionJudgement, gates: readonly GateJudgement[]): CriterionPoints {
  const { id, title, verdict, why } = criterion;
  const possible = POINTS_POSSIBLE.get(id);
  if (possible === undefined) {
    return { id, given: 0, possible: 0, working: `${title}: carries no points; ${why}.` };
  }
  if (verdict === 'unclear' || verdict === 'not-assessed') {
    const said = verdict === 'unclear' ? 'unclear' : 'not assessed';
    const working = `${title}: ${said} (${why}); its ${possible} points are neither given nor possible.`;
    return { id, given: null, possible: null, working };
  }
  const [given, how] =
    criterion.outsideS === null
      ? byVerdict(criterion, possible, gates)
      : byTime(criterion, criterion.outsideS, possible);
  return { id, given, possible, working: `${title}: ${how}.` };
}

function byTime(
  { assessedS, verdict, excursions }: CriterionJudgement,
  outsideS: number,
  possible: number,
): [given: number, how: string] {
  const outside = tenths(outsideS);
  const assessed = tenths(assessedS);
  const [given, how] = shareOfTime(outside, assessed, possible, outsideWords(excursions));
  const half = possible / 2;
  if (verdict === 'met' || given <= half) return [given, how];
  return [half, `${how}, but not met gives half at most: ${decimal(half)} points`];
}

/** What the time is of; who joined inside the fix is not beyond the limit until established, but counts so. */
function outsideWords(excursions: CriterionJudgement['excursions']): string {
  const joined = excursions.some(({ untilEstablished }) => untilEstablished);
  if (!joined) return 'beyond the limit';
  return excursions.length === 1 ? 'not established' : 'not established or beyond the limit';
}

/** Both times in tenths of a second. */
function shareOfTime(
  outside: number,
  assessed: number,
  possible: number,
  words: string,
): [given: number, how: string] {
  const judged = `the ${decimal(assessed / 10)} s judged`;
  if (outside === 0) return [possible, `beyond the limit for 0 s of ${judged}, all ${possible} points`];
  const fifth = decimal(assessed / 10 / PARTS_OF_TIME);
  const beyond = decimal(outside / 10);
  const start = `${words} for ${beyond} s of ${judged}; 20 % of that is ${fifth} s`;
  if (outside * PARTS_OF_TIME >= assessed)
    return [0, `${start}, and it was no less: 0 of ${possible} points`];
  const given = tenths((possible * (assessed - PARTS_OF_TIME * outside)) / assessed) / 10;
  return [given, `${start}; ${possible} × (1 − ${beyond}/${fifth}) = ${decimal(given)} points`];
}

function byVerdict(
  { id, verdict, why }: CriterionJudgement,
  possible: number,
  gates: readonly GateJudgement[],
): [given: number, how: string] {
  if (verdict === 'met') return [possible, `met, all ${possible} points`];
  const kept = id === 'stability' ? keptAtGate(gates) : null;
  if (kept === null) return [0, `not met (${why}): 0 of ${possible} points`];
  const half = possible / 2;
  return [half, `${kept}: half, ${decimal(half)} points by our own choice`];
}

/**
 * Own choice: what held at its gate and was lost afterwards keeps half, and so does what was surely lost afterwards
 * and is unclear at the gate. Null: an item failed at the gate itself.
 */
function keptAtGate(gates: readonly GateJudgement[]): string | null {
  const gate = gates.find(({ counts }) => counts);
  if (!gate || (gate.verdict !== 'met' && gate.verdict !== 'unclear')) return null;
  const { lostAfter, doubtedAfter } = gate;
  const surely = lostAfter.filter(({ isProven }) => isProven);
  if (gate.verdict === 'unclear' && surely.length === 0) return null;
  const items = [...new Set([...lostAfter.map(({ item }) => item), ...doubtedAfter])].join(', ');
  const stood = gate.verdict === 'met' ? 'held at the gate' : 'unclear at the gate';
  return `${stood}, and lost afterwards${items === '' ? '' : ` (${items})`}`;
}

function tenths(value: number): number {
  return Math.round(value * 10);
}
