import { amount, figure, sideOf, unitName } from './amount-words.ts';
import type { ProgressLine, ProgressUnit } from './progress.ts';

const CHANGES = {
  better: 'better',
  worse: 'worse',
  'perhaps-better': 'perhaps better',
  'perhaps-worse': 'perhaps worse',
} as const;

/** A trend as a clause without a capital: "better by 0.031 of full scale a lesson (between 0.012 and 0.048)". */
export function trendWords({ unit, better, trend }: ProgressLine): string {
  const { change, slopePerLesson, interval } = trend;
  if (change === 'too-few') return 'too few to tell';
  const gain = better === 'higher' ? slopePerLesson! : -slopePerLesson!;
  const isSaid = change !== 'not-sure';
  if (interval === null && isSaid) return `${CHANGES[change]} later than earlier`;
  if (interval === null) return gain === 0 ? 'no sure change' : `no sure change: ${soFar(gain, unit)}`;
  if (interval.low === 0 && interval.high === 0) return 'the same in every lesson';
  const ends = better === 'higher' ? [interval.low, interval.high] : [-interval.high, -interval.low];
  if (!isSaid) return `no sure change: ${between(ends, unit)}`;
  const [least, most] = ends.map(Math.abs).sort((a, b) => a - b) as [number, number];
  if (least === 0) return `${CHANGES[change]} by up to ${amount(most, unit)} a lesson`;
  return `${CHANGES[change]} by ${amount(gain, unit)} a lesson (between ${figure(least, unit)} and ${figure(most, unit)})`;
}

/** The same as a sentence of its own, with what keeps it from being surer. */
export function trendSentence(line: ProgressLine): string {
  const { change, why } = line.trend;
  if (change === 'too-few') return why!;
  const words = trendWords(line);
  return `${words.slice(0, 1).toUpperCase()}${words.slice(1)}.${why === null ? '' : ` ${why}`}`;
}

function soFar(gain: number, unit: ProgressUnit): string {
  return `${sideOf(gain)} by ${amount(gain, unit)} a lesson so far`;
}

function between(ends: readonly number[], unit: ProgressUnit): string {
  const [least, most] = ends as [number, number];
  const end = (gain: number) => (gain === 0 ? 'no change' : `${figure(gain, unit)} ${sideOf(gain)}`);
  return `between ${end(least)} and ${end(most)} a lesson, in ${unitName(unit)}`;
}
