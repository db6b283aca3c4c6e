import { refused, usable, type Outcome } from '../../core/issue/issue.ts';

/** The number that an option's value is; null where the option was not given. */
export function numberOf(
  name: string,
  text: string | undefined,
  { min, max }: { min: number; max: number },
): Outcome<number | null> {
  if (text === undefined) return usable(null);
  const value = Number(text);
  if (text.trim() !== '' && value >= min && value <= max) return usable(value);
  return refused('arguments', `--${name} is a number from ${min} to ${max}; "${text}" is none.`);
}
