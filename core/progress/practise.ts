import { listed } from '../units/listed.ts';
import { inSentence } from './in-sentence.ts';
import type { LessonCell, Practise, VerdictCounts } from './progress.ts';
import type { UntrendedLine } from './lines.ts';

/** Lessons that count for what to practise next. */
const LATELY = 3;

/** What was not met most often in the last lessons, as a sentence with its counts; the level is no exercise. */
export function practiseOf(lines: readonly UntrendedLine[], lessons: number): Practise {
  const lately = Math.min(LATELY, lessons);
  const found = lines
    .filter(({ id }) => id !== 'level')
    .map(({ id, title, lessons }) => ({ id, title, verdicts: sumOf(lessons.slice(-lately)) }))
    .sort((a, b) => b.verdicts['not-met'] - a.verdicts['not-met'] || shareOf(b) - shareOf(a));
  const most = found[0];
  if (!most || most.verdicts['not-met'] === 0) {
    const isAny = found.some(({ verdicts }) => verdicts.met > 0);
    const sentence = isAny
      ? `Of what could be judged ${inLast(lately)}, nothing was not met.`
      : `Nothing could be judged ${inLast(lately)}.`;
    return {
      criterion: null,
      title: null,
      verdicts: null,
      lessons: lately,
      sentence: sentence + mostlyUnclear(found),
    };
  }
  const as = found.slice(1).filter(({ verdicts }) => verdicts['not-met'] === most.verdicts['not-met']);
  const others =
    as.length === 0 ? '' : ` As often not met: ${as.map(({ title }) => inSentence(title)).join(', ')}.`;
  return {
    criterion: most.id,
    title: most.title,
    verdicts: most.verdicts,
    lessons: lately,
    sentence: `${most.title}: not met in ${most.verdicts['not-met']} of ${of(most.verdicts)} ${inLast(lately)}${besides(most.verdicts)}.${others}`,
  };
}

/** What can mostly not be told: that it was never failed says nothing then. */
function mostlyUnclear(
  found: readonly { readonly title: string; readonly verdicts: VerdictCounts }[],
): string {
  const open = found.filter(({ verdicts }) => verdicts.unclear > verdicts.met + verdicts['not-met']);
  return open.length === 0 ? '' : ` Mostly unclear: ${listed(open.map(({ title }) => inSentence(title)))}.`;
}

function inLast(lessons: number): string {
  return lessons === 1 ? 'in the last lesson' : `in the last ${lessons} lessons`;
}

function of(verdicts: VerdictCounts): string {
  const decided = verdicts.met + verdicts['not-met'];
  return decided === 1 ? '1 approach' : `${decided} approaches`;
}

/** Those that nobody can say either way. */
function besides(verdicts: VerdictCounts): string {
  const more = [
    ...(verdicts.unclear > 0 ? [`${verdicts.unclear} unclear`] : []),
    ...(verdicts['not-assessed'] > 0 ? [`${verdicts['not-assessed']} not assessed`] : []),
  ];
  return more.length === 0 ? '' : ` (besides ${more.join(' and ')})`;
}

function shareOf({ verdicts }: { readonly verdicts: VerdictCounts }): number {
  return verdicts['not-met'] / Math.max(1, verdicts.met + verdicts['not-met']);
}

/** All verdicts of some lessons. */
export function sumOf(cells: readonly Pick<LessonCell, 'verdicts'>[]): VerdictCounts {
  const sum = { met: 0, 'not-met': 0, unclear: 0, 'not-assessed': 0 };
  for (const { verdicts } of cells)
    for (const verdict of ['met', 'not-met', 'unclear', 'not-assessed'] as const)
      sum[verdict] += verdicts[verdict];
  return sum;
}
