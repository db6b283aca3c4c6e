import { VERDICTS } from '../report/verdict-words.ts';
import { indentedLines } from '../report/text-rows.ts';
import type { LessonCell, ProgressLine, VerdictCounts } from './progress.ts';
import { trendWords } from './trend-words.ts';

/** One criterion over all lessons: its trend, its figures lesson by lesson, and how often it was met. */
export function lineBlock(line: ProgressLine): string[] {
  const { title, trend } = line;
  const remark = trend.why === null ? '' : ` ${trend.why}`;
  const head =
    trend.change === 'too-few'
      ? `${title}: ${lowerFirst(trend.why!)}`
      : `${title}: ${trendWords(line)}.${remark}`;
  return [
    ...indentedLines('', head),
    ...seriesOf(line).flatMap((series) => indentedLines('    ', series)),
    ...indentedLines('    ', `${countWords(line)}.`),
    ...gateSentences(line).flatMap((sentence) => indentedLines('    ', sentence)),
    ...line.notMeasured.flatMap(({ why, approaches }) =>
      indentedLines('    ', `${approaches} without ${line.measure === 'rms' ? 'RMS' : 'a share'}: ${why}.`),
    ),
  ];
}

/** What was said at each gate, where anything was. */
export function gateSentences({ gates }: Pick<ProgressLine, 'gates'>): string[] {
  return gates
    .filter(({ verdicts }) => totalOf(verdicts) > 0)
    .map(({ gate, verdicts }) => `At ${GATES[gate]}: ${verdictWords(verdicts, ['stable', 'not stable'])}.`);
}

const GATES = { 'gate-1000': '1,000 ft', 'gate-500': '500 ft' } as const;

/** Figures by lesson, in their order; a dash for a lesson without one. */
function seriesOf({ measure, unit, lessons }: ProgressLine): string[] {
  const percent = (value: number) => String(Math.round(value * 100));
  const inside = series(
    'Inside the limit',
    '% of the distance',
    lessons,
    ({ insideShare }) => insideShare,
    percent,
  );
  if (measure === 'rms') {
    const digits = unit === 'kt' ? 1 : 2;
    const words = unit === 'kt' ? 'kt off the target' : 'of full scale';
    return [
      ...series(
        'RMS',
        words,
        lessons,
        ({ rms }) => rms,
        (value) => value.toFixed(digits),
      ),
      ...inside,
    ];
  }
  if (measure === 'inside-by-distance') return inside;
  const value = ({ value }: LessonCell) => value;
  if (measure === 'level') return series('Middle level', '', lessons, value, (level) => level.toFixed(1));
  return series('Met', '% of those decided', lessons, value, percent);
}

function series(
  what: string,
  unit: string,
  lessons: readonly LessonCell[],
  value: (cell: LessonCell) => number | null,
  written: (value: number) => string,
): string[] {
  const values = lessons.map(value);
  if (values.every((one) => one === null)) return [];
  const figures = values.map((one) => (one === null ? '–' : written(one)));
  const told = new Set(figures.filter((figure) => figure !== '–'));
  if (told.size === 1 && lessons.length > 1) {
    const where = told.size === new Set(figures).size ? '' : ' that tells it';
    return [
      `${what}, in every lesson${where}: ${figures.find((figure) => figure !== '–')!} ${unit}`.trimEnd(),
    ];
  }
  return [`${what}, lesson by lesson: ${figures.join('  ')} ${unit}`.trimEnd()];
}

function countWords({ measure, verdicts }: ProgressLine): string {
  if (measure !== 'level') return verdictWords(verdicts, [VERDICTS.met.word, VERDICTS['not-met'].word]);
  const { met, 'not-met': notMet, unclear, 'not-assessed': notGraded } = verdicts;
  return [
    `${met} at level 3 or higher`,
    `${notMet} below`,
    ...(unclear > 0 ? [`${unclear} between two levels`] : []),
    ...(notGraded > 0 ? [`${notGraded} not graded`] : []),
  ].join(', ');
}

function verdictWords(verdicts: VerdictCounts, [met, notMet]: readonly [string, string]): string {
  return [
    `${verdicts.met} ${met}`,
    `${verdicts['not-met']} ${notMet}`,
    `${verdicts.unclear} ${VERDICTS.unclear.word}`,
    `${verdicts['not-assessed']} ${VERDICTS['not-assessed'].word}`,
  ].join(', ');
}

function totalOf(verdicts: VerdictCounts): number {
  return Object.values(verdicts).reduce((sum, count) => sum + count, 0);
}

function lowerFirst(sentence: string): string {
  return sentence.slice(0, 1).toLowerCase() + sentence.slice(1);
}
