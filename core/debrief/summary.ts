import type { FlownApproach } from '../approach/flown-approach.ts';
import { needleExcursions } from '../approach/needle-measures.ts';
import {
  finalOf,
  instructorFlewAt,
  moment,
  recordedIn,
  withoutInstructor,
  type Case,
} from '../standard/case.ts';
import { countingGate } from '../standard/counting-gate.ts';
import { isVectored } from '../standard/counting.ts';
import type { ApproachJudgement, Verdict } from '../standard/judgement.ts';
import { INSIDE_FIX } from '../standard/words.ts';
import {
  isFirstRecorded,
  isGated,
  lostClause,
  NEEDLES,
  sideOf,
  type NeedleJudgement,
} from './lost-clause.ts';

/** How an approach ended, as the end of a sentence. */
const ENDINGS: Readonly<Record<FlownApproach['outcome'], string>> = {
  'touch-and-go': 'a touch-and-go',
  landed: 'landed',
  'low-approach': 'a low approach',
  'missed-approach': 'went around',
  sidestepped: 'sidestepped to another runway',
  circled: 'circled',
  'broken-off': 'broken off',
  incomplete: 'the log ends before the approach does',
};

/** One sentence about a pass that is no approach to be graded. */
export function passSummary({ why, outcome }: FlownApproach): string {
  return `Not an approach to be graded: ${why!}; ${ENDINGS[outcome]}.`;
}

/** What an instructor would say first: stable or not, where it came apart, when it was back, how it ended. */
export function summaryOf(sitting: Case, judgement: ApproachJudgement): string {
  const clauses = [
    stabilityClause(judgement),
    ...beginClause(sitting),
    ...needleClauses(sitting, judgement),
    ...speedClause(judgement),
    ...minimumsClause(judgement),
    endingClause(sitting, judgement),
  ].filter((clause) => clause !== null);
  const sentence = clauses.join('; ');
  return `${sentence[0]!.toUpperCase()}${sentence.slice(1)}.`;
}

function stabilityClause({ gates }: ApproachJudgement): string | null {
  const words = { 'gate-1000': '1,000 ft', 'gate-500': '500 ft' };
  const passed = gates.filter(({ verdict }) => verdict !== 'not-assessed');
  const at = (asked: Verdict) =>
    passed.filter(({ verdict }) => verdict === asked).map(({ gate }) => words[gate]);
  const [stable, unstable, unclear] = [at('met'), at('not-met'), at('unclear')];
  const seen = seenWords(gates);
  const open = unclear.length === 0 ? '' : `, unclear at ${unclear.join(' and ')}`;
  if (stable.length > 0 && unstable.length > 0)
    return `stable at ${stable[0]!}${seen}, not at ${unstable[0]!}`;
  if (stable.length > 0) return `stable at ${stable.join(' and ')}${seen}${open}${lostWords(gates)}`;
  if (unstable.length > 0) return `not stable at ${unstable.join(' or ')}${open}`;
  return unclear.length > 0 ? `whether stable at ${unclear.join(' and ')} is not sure` : null;
}

/** What of a gate that held the log does not show: large type must not promise what nobody saw. */
function seenWords(gates: ApproachJudgement['gates']): string {
  const items = gates.filter(({ verdict }) => verdict === 'met').flatMap((gate) => gate.items);
  const unseen = new Set(items.filter(({ verdict }) => verdict === 'not-assessed').map(({ item }) => item));
  return unseen.size === 0 ? '' : ` as far as seen (without ${[...unseen].join(' and ')})`;
}

/** What else than a needle, which has its own clause, was lost after the gate that counts. */
function lostWords(gates: ApproachJudgement['gates']): string {
  const lost = gates.find(({ counts }) => counts)?.lostAfter ?? [];
  const proven = lost.filter(({ isProven }) => isProven);
  const items = [...new Set(proven.map(({ item }) => item))].filter(
    (item) => item !== 'localizer' && item !== 'glidepath',
  );
  return items.length === 0 ? '' : `, then ${items.join(' and ')} outside`;
}

/** What was flown before is not in the log, and is not to be missed without a word. */
function beginClause(sitting: Case): string[] {
  const { insideFix } = sitting.approach;
  return insideFix !== null && isFirstRecorded(sitting) ? [INSIDE_FIX[insideFix]] : [];
}

function needleClauses(sitting: Case, { criteria }: ApproachJudgement): string[] {
  const judged = criteria.filter((criterion): criterion is NeedleJudgement =>
    Object.hasOwn(NEEDLES, criterion.id),
  );
  const assessed = judged.filter(({ assessedS }) => assessedS > 0);
  if (assessed.length === 0)
    return [finalOf(sitting) ? 'the needles were not judged' : 'final was not flown'];
  const lost = assessed.filter(({ excursions }) => excursions.length > 0);
  const late = assessed
    .filter((criterion) => !lost.includes(criterion))
    .flatMap((one) => lateClause(sitting, one));
  if (lost.length > 0) return [...late, ...lost.map((criterion) => lostClause(sitting, criterion))];
  const within = withinClause(sitting, assessed, late.length > 0);
  return [[...late, within].join(', ')];
}

function withinClause(sitting: Case, assessed: readonly NeedleJudgement[], wasLate: boolean): string {
  const [first] = assessed;
  const needles = assessed.length === 2 ? 'both needles' : `the ${NEEDLES[first!.id]}`;
  const where = isGated(sitting) ? `below ${countingGate(sitting).words}` : 'on final';
  const limit = first!.why.split(',')[0]!;
  if (assessed.every(({ verdict }) => verdict === 'met' || verdict === 'unclear')) {
    const open = assessed.filter(({ verdict }) => verdict === 'unclear');
    const which = open.length === 2 ? 'neither' : `the ${NEEDLES[open[0]?.id ?? first!.id]} not`;
    const though = open.length === 0 ? '' : `, but ${which} surely`;
    return `${wasLate ? 'then ' : ''}${needles} ${limit}${wasLate ? '' : ` ${where}`}${though}`;
  }
  return `${needles} ${limit} ${where}, as far as it was flown and recorded`;
}

/** How final began where a needle was beyond its limit before it counted: not judged, and not to be passed over. */
function lateClause(sitting: Case, { id, limit, counted }: NeedleJudgement): string[] {
  const final = finalOf(sitting);
  if (!final || !limit || isGated(sitting) || counted[0]!.startS <= final.startS) return [];
  const { deviations } = sitting.flown;
  const column = id === 'localizer-final' ? deviations.localizerFullScale : deviations.glidepathFullScale;
  const parts = recordedIn(
    sitting,
    column,
    withoutInstructor(sitting, { startS: final.startS, endS: counted[0]!.startS }),
  );
  const [first] = needleExcursions(parts, limit);
  if (!first) return [];
  if (id === 'localizer-final' && isVectored(sitting)) return ['vectored onto the localizer inside the fix'];
  const where = `${sideOf(id, first)} ${NEEDLES[id]}`;
  return [isFirstRecorded(sitting) ? `${where} at first` : `came to final ${where}`];
}

function speedClause({ criteria }: ApproachJudgement): string[] {
  const speed = criteria.find(({ id }) => id === 'airspeed-final');
  return speed?.verdict === 'not-met' ? [`airspeed ${speed.why}`] : [];
}

function minimumsClause({ criteria }: ApproachJudgement): string[] {
  const minimums = criteria.find(({ id }) => id === 'minimums');
  return minimums?.verdict === 'not-met' ? [minimums.why] : [];
}

function endingClause(sitting: Case, { soundGoAround }: ApproachJudgement): string {
  if (soundGoAround !== null) return `${soundGoAround}: a sound decision`;
  const endedS = moment(sitting, 'touchdown') ?? moment(sitting, 'missed-approach-start');
  const flew = endedS !== null && instructorFlewAt(sitting, endedS) ? ' (the instructor flew)' : '';
  return `${ENDINGS[sitting.approach.outcome]}${flew}`;
}
