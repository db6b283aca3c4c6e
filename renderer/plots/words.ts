import type { ProgressLine } from '../../core/progress/progress.ts';
import type { LessonPoint } from './plot-of.ts';

/** What the axis of a line shows, and which way is better where that is not plain. */
export function unitWords({ measure, unit }: Pick<ProgressLine, 'measure' | 'unit'>): string {
  if (measure === 'rms')
    return unit === 'kt' ? 'RMS off the target, kt; lower is better' : 'RMS, of full scale; lower is better';
  if (measure === 'inside-by-distance') return 'Inside the limit, of the distance';
  return measure === 'level' ? 'Middle of the lesson, 1 to 5' : 'Met, of those decided';
}

/** What one lesson says of a line, a few words each. */
export function pointWords({ value, cell }: LessonPoint, words: (value: number) => string): string[] {
  const { met, 'not-met': notMet, unclear, 'not-assessed': notAssessed } = cell.verdicts;
  const counts = [
    ...(met > 0 ? [`${met} met`] : []),
    ...(notMet > 0 ? [`${notMet} not met`] : []),
    ...(unclear > 0 ? [`${unclear} unclear`] : []),
    ...(notAssessed > 0 ? [`${notAssessed} not assessed`] : []),
  ];
  return [...(value === null ? [] : [words(value)]), counts.join(', ')];
}
