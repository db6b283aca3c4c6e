import type { ApproachDebrief, DebriefCriterion, DebriefStability } from '../debrief/debrief.ts';
import { whole } from '../units/whole.ts';
import { dayAndClock } from './plain-words.ts';
import { sided } from './sided.ts';
import { indentedLines } from './text-rows.ts';
import { stableWord, VERDICTS } from './verdict-words.ts';

type Judged = Pick<ApproachDebrief, 'segments' | 'stability' | 'stated'>;

/** The criteria that were assessed, one a row. */
export function criteriaLines(approach: ApproachDebrief): string[] {
  return approach.criteria
    .filter(({ verdict }) => verdict !== 'not-assessed')
    .flatMap((criterion) => criterionLines(criterion, approach));
}

function criterionLines(criterion: DebriefCriterion, approach: Judged): string[] {
  const { title, verdict, allowed, points, pointsPossible } = criterion;
  const worth = points === null || pointsPossible === null ? '' : `${points.toFixed(1)} of ${pointsPossible}`;
  const lead = `${`${VERDICTS[verdict].sign} ${VERDICTS[verdict].word}`.padEnd(14)} ${title.padEnd(23)}${largest(criterion).padEnd(11)}${worth.padEnd(12)}`;
  const beside = allowed ? indentedLines(' '.repeat(15), allowedWords(criterion)!) : [];
  return [...indentedLines(lead, whyWords(criterion, approach)), ...beside];
}

/** What the verdict would be with the room that was allowed, and why it was; null without an allowance. */
export function allowedWords({ allowed, unit }: Pick<DebriefCriterion, 'allowed' | 'unit'>): string | null {
  if (allowed === null) return null;
  const { by, reason, verdict } = allowed;
  return `with ${roomWords(by, unit)} more allowed for ${reason}: ${VERDICTS[verdict].word}`;
}

/** So much room: "5 kt", "0.25 of full scale". */
export function roomWords(by: number, unit: DebriefCriterion['unit']): string {
  return unit === 'full scale' ? `${by} of full scale` : `${by} ${unit ?? ''}`.trim();
}

/** Why a criterion has its verdict, with from when it counted where final began earlier. */
export function whyWords(criterion: DebriefCriterion, approach: Judged): string {
  return `${criterion.why}${countedLater(criterion, approach)}`;
}

/** From when a criterion of final counts, where that is later than final began. */
function countedLater({ id, counted }: DebriefCriterion, { segments, stability, stated }: Judged): string {
  const fromUtc = counted[0]?.startUtc;
  const finalUtc = segments.find(({ kind }) => kind === 'final')?.startUtc ?? null;
  if (id.endsWith('-before-final') || fromUtc === undefined || finalUtc === null) return '';
  const [from, began] = [dayAndClock(fromUtc).clock, dayAndClock(finalUtc).clock];
  if (fromUtc <= finalUtc || from === began) return '';
  if (stated.instructorFlew.some(({ endUtc }) => endUtc === fromUtc))
    return `, counted from ${from}, when the instructor handed it over`;
  const isGate = stability.some(({ utc }) => utc === fromUtc);
  const because = id === 'glidepath-final' && !isGate ? ', when there had been time to get on it' : '';
  return `, counted from ${from}${because}`;
}

/** The value farthest out, as it is said aloud. */
function largest({ id, measured, unit }: DebriefCriterion): string {
  if (measured === null) return '';
  if (unit === 'full scale') return sided(measured, id.startsWith('glidepath') ? 'glidepath' : 'localizer');
  return `${measured > 0 ? '+' : ''}${whole(measured)} ${unit ?? ''}`.trim();
}

/** Both gates: what held, what did not, what was lost after. */
export function stabilityLines(gates: readonly DebriefStability[]): string[] {
  if (gates.length === 0) return [];
  return ['Stability', ...gates.flatMap(gateLines)];
}

function gateLines(gate: DebriefStability): string[] {
  const { heightFt, verdict } = gate;
  const word = `${VERDICTS[verdict].sign} ${stableWord(verdict)}`;
  return indentedLines(`  ${`${whole(heightFt)} ft`.padEnd(9)} ${word.padEnd(15)} `, gateWords(gate));
}

/** What a gate's verdict stands on, what was lost after it, and what was not seen. */
export function gateWords({ why, counts, items, lostAfter, doubtedAfter }: DebriefStability): string {
  const unseen = items
    .filter((one) => one.verdict === 'not-assessed')
    .map(({ item, why: reason }) => `${item}: ${reason}`);
  const lost = [...new Set(lostAfter.filter(({ proven }) => proven).map(({ item }) => item))];
  const unproven = lostAfter.map(({ item }) => item).filter((item) => !lost.includes(item));
  const perhaps = [...new Set([...unproven, ...doubtedAfter])];
  const clauses = [
    why,
    ...(lost.length > 0 ? [`after it ${lost.join(', ')} outside for 3 s or more`] : []),
    ...(perhaps.length > 0
      ? [`after it ${perhaps.join(', ')} perhaps outside for 3 s or more, given its error`]
      : []),
    ...(unseen.length > 0 ? [`not seen: ${unseen.join('; ')}`] : []),
    ...(counts ? ['this gate counts'] : []),
  ];
  return clauses.join('; ');
}

/** What this log, this facility or this standard cannot answer, and why. */
export function notAssessedLines(criteria: readonly DebriefCriterion[]): string[] {
  const open = criteria.filter(({ verdict }) => verdict === 'not-assessed');
  if (open.length === 0) return [];
  return ['Not assessed', ...open.flatMap(({ title, why }) => indentedLines(`  ${title}: `, `${why}.`))];
}
