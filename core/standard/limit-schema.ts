import * as z from 'zod/mini';
import { number, outside, wrongType } from '../json/schema-values.ts';

/** A limit as a user's file gives it, once read; a side that it leaves out has no limit. */
export interface Band {
  readonly lower?: number | undefined;
  readonly upper?: number | undefined;
}

interface Range {
  /** Farthest that a bound can lie from the target; catches slips of the pen. */
  readonly max: number;
  readonly unit: string;
}

/**
 * A limit: one number for both sides, or { lower, upper } with either left out.
 *
 * @param widen what one number means, where it does not mean as far to one side as to the other
 */
export function band(what: string, { max, unit }: Range, widen = symmetricBand) {
  const kind = 'a number, or a group in braces with lower and upper';
  const bounds = z
    .strictObject(
      {
        lower: z.optional(number(`a lower bound of ${what}`, -max, max, unit)),
        upper: z.optional(number(`an upper bound of ${what}`, -max, max, unit)),
      },
      { error: wrongType(what, kind) },
    )
    .check(refuse(bandProblem));
  const rule = outside(what, `given as one number is above 0 and at most ${max} ${unit}`);
  const one = z.unknown().check(
    refuse((input) => {
      const isPossible = typeof input !== 'number' || (input > 0 && input <= max);
      return isPossible ? null : rule({ input });
    }),
  );
  return z.pipe(
    one,
    z.pipe(
      z.transform((value) => (typeof value === 'number' ? widen(value) : value)),
      bounds,
    ),
  );
}

/** A limit of a needle, in fractions of full scale: it must leave room at the centre. */
export function needleBand(what: string) {
  return band(what, { max: 1, unit: 'of full scale' }).check(
    refuse(({ lower = -1, upper = 1 }) =>
      lower <= 0 && upper >= 0
        ? null
        : `leaves out the centre: ${what} has lower at most 0 and upper at least 0`,
    ),
  );
}

function symmetricBand(by: number): Band {
  return { lower: -by, upper: by };
}

/** Why no value can lie between the bounds, as what follows the key; null when some can. */
export function bandProblem({ lower, upper }: Band): string | null {
  if (lower === undefined && upper === undefined) return 'has neither lower nor upper: one of them is needed';
  if (lower === undefined || upper === undefined || lower < upper) return null;
  return `has lower ${lower} and upper ${upper}: lower lies below upper`;
}

/** A check that says itself what is wrong. */
function refuse<Value>(problem: (value: Value) => string | null) {
  return z.check<Value>(({ value, issues }) => {
    const message = problem(value);
    if (message !== null) issues.push({ code: 'custom', input: value, message });
  });
}
