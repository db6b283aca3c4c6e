import { median } from '../numeric/median.ts';
import { isToldInTime } from '../standard/criterion-ids.ts';
import type { Verdict } from '../standard/judgement.ts';
import { inSentence } from './in-sentence.ts';
import { hasRms, type ApproachFacts, type CriterionFacts } from './approach-facts.ts';
import type { LessonCell, Measure, ProgressLine, VerdictCounts } from './progress.ts';

/** A line without its trend. */
export type UntrendedLine = Omit<ProgressLine, 'trend'>;

/** The approaches of one lesson. */
export type LessonApproaches = readonly ApproachFacts[];

/** Every criterion of the standard over the lessons, in its order, and the level last. */
export function linesOf(lessons: readonly LessonApproaches[]): UntrendedLine[] {
  const titles = new Map<string, Set<string>>();
  for (const { id, title } of lessons.flat().flatMap(({ criteria }) => criteria))
    titles.set(id, (titles.get(id) ?? new Set()).add(title));
  return [
    ...[...titles].map(([id, all]) => criterionLine(id, titleOf([...all]), lessons)),
    levelLine(lessons),
  ];
}

/** One criterion has two titles where its gate goes by the conditions that were stated: both are said. */
function titleOf([first, ...others]: readonly string[]): string {
  return [first!, ...others.map(inSentence)].join(' or ');
}

function criterionLine(id: string, title: string, lessons: readonly LessonApproaches[]): UntrendedLine {
  const factsOf = (approaches: LessonApproaches) =>
    approaches.flatMap(({ criteria }) => criteria.filter((criterion) => criterion.id === id));
  const all = factsOf(lessons.flat());
  const kind = measureOf(id);
  const { measure } = kind;
  return {
    id,
    title,
    ...kind,
    lessons: lessons.map((approaches) => criterionCell(measure, factsOf(approaches))),
    verdicts: countsOf(all.map(({ verdict }) => verdict)),
    gates: id === 'stability' ? gatesOf(lessons.flat()) : [],
    notMeasured: notMeasured(measure, all),
  };
}

/** What a criterion is followed by: what has no share inside its limit, by how often it was met. */
export function measureOf(id: string): Pick<ProgressLine, 'measure' | 'unit' | 'better'> {
  if (hasRms(id))
    return { measure: 'rms', unit: id === 'airspeed-final' ? 'kt' : 'full scale', better: 'lower' };
  return { measure: isToldInTime(id) ? 'inside-by-distance' : 'share-met', unit: 'share', better: 'higher' };
}

function criterionCell(measure: Measure, facts: readonly CriterionFacts[]): LessonCell {
  const verdicts = countsOf(facts.map(({ verdict }) => verdict));
  const shares = present(facts.map(({ insideShare }) => insideShare));
  const all = present(facts.map(({ rms }) => rms));
  const told = { insideShare: middle(shares), rms: middle(all), verdicts };
  if (measure === 'rms') return { ...told, value: told.rms, approaches: all.length };
  if (measure === 'inside-by-distance')
    return { ...told, value: told.insideShare, approaches: shares.length };
  const decided = verdicts.met + verdicts['not-met'];
  return { ...told, value: decided === 0 ? null : verdicts.met / decided, approaches: decided };
}

/** Of all criteria together. */
export const LEVEL = {
  id: 'level',
  title: 'Level',
  measure: 'level',
  unit: 'level',
  better: 'higher',
} as const;

function levelLine(lessons: readonly LessonApproaches[]): UntrendedLine {
  return {
    ...LEVEL,
    lessons: lessons.map((approaches) => {
      const levels = approaches.flatMap(({ level }) => (level && !level.isOpen ? [level.level] : []));
      const verdicts = countsOf(approaches.map(levelVerdict));
      return { value: middle(levels), approaches: levels.length, insideShare: null, rms: null, verdicts };
    }),
    verdicts: countsOf(lessons.flat().map(levelVerdict)),
    gates: [],
    notMeasured: [],
  };
}

/** From level 3 on everything that was assessed was met (design, section 11), or it was a sound go-around. */
const MET_FROM_LEVEL = 3;

export function levelVerdict({ level }: Pick<ApproachFacts, 'level'>): Verdict {
  if (level === null) return 'not-assessed';
  if (level.isOpen) return 'unclear';
  return level.level >= MET_FROM_LEVEL ? 'met' : 'not-met';
}

function gatesOf(approaches: readonly ApproachFacts[]): ProgressLine['gates'] {
  return (['gate-1000', 'gate-500'] as const).map((gate) => ({
    gate,
    verdicts: countsOf(
      approaches.flatMap(({ gates }) =>
        gates.filter((passed) => passed.gate === gate).map(({ verdict }) => verdict),
      ),
    ),
  }));
}

function notMeasured(measure: Measure, facts: readonly CriterionFacts[]): ProgressLine['notMeasured'] {
  const counts = new Map<string, number>();
  for (const { whyNoRms, whyNoShare } of facts) {
    const why = measure === 'rms' ? whyNoRms : whyNoShare;
    if (why !== null) counts.set(why, (counts.get(why) ?? 0) + 1);
  }
  return [...counts].map(([why, approaches]) => ({ why, approaches }));
}

/** How many there are of each verdict. */
export function countsOf(verdicts: readonly Verdict[]): VerdictCounts {
  const counts = { met: 0, 'not-met': 0, unclear: 0, 'not-assessed': 0 };
  for (const verdict of verdicts) counts[verdict]++;
  return counts;
}

function present(values: readonly (number | null)[]): number[] {
  return values.filter((value) => value !== null);
}

function middle(values: readonly number[]): number | null {
  return values.length === 0 ? null : median(values);
}
