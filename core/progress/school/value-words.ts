import type { SchoolMeasure } from './school-input.ts';

/** A value of a measure without its unit, "–" for none. */
export function valueFigure(value: number | null, { measure, unit }: SchoolMeasure): string {
  if (value === null) return '–';
  if (measure === 'level') return value.toFixed(1);
  if (unit === 'share') return String(Math.round(value * 100));
  return value.toFixed(unit === 'kt' ? 1 : 2);
}

/** What the values of a measure are. */
export function valueTitle({ measure, unit }: SchoolMeasure): string {
  if (measure === 'level') return 'Level';
  if (measure === 'share-met') return 'Met, % of those decided';
  if (measure === 'inside-by-distance') return 'Inside the limit, % of the distance';
  return unit === 'kt' ? 'RMS off the target, kt' : 'RMS, of full scale';
}
