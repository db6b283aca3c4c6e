import { whole } from '../units/whole.ts';

/** Feet as they are read: to 10 above 1,000, else to 1. */
export function readingFeet(feet: number): string {
  return whole(Math.abs(feet) > 1000 ? roundTo(10, feet) : feet);
}

export function roundTo(step: number, value: number): number {
  return Math.round(value / step) * step;
}
