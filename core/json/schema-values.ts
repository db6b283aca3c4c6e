import * as z from 'zod/mini';

/**
 * The kinds of values that a user's file is made of, each with the sentences that say what is wrong with one.
 * A sentence follows the key: "runway.threshold.latDeg" + "is 95: a latitude lies between -90 and 90".
 */

/** The key that names the format, and with it the version. */
export function format<Name extends string>(name: Name) {
  return z.literal(name, {
    error: ({ input }) => (input === undefined ? 'is missing' : `must be "${name}"`),
  });
}

/** A group of keys in braces; keys that it does not list are refused. */
export function group<Shape extends z.core.$ZodLooseShape>(what: string, shape: Shape) {
  return z.strictObject(shape, { error: wrongType(what, 'a group in braces') });
}

export function number(what: string, min: number, max: number, unit = '') {
  const bounds = { error: outside(what, `lies between ${min} and ${max}${unit && ` ${unit}`}`) };
  return z.number({ error: wrongType(what, 'a number') }).check(z.gte(min, bounds), z.lte(max, bounds));
}

/** Text that can be shown and printed: not empty, and without control characters but line ends. */
export function words(what: string, maxLength: number) {
  return z
    .string({ error: wrongType(what, 'text in double quotes') })
    .check(
      z.maxLength(maxLength, { error: `is too long: ${what} has at most ${maxLength} characters` }),
      z.regex(/\S/, { error: `is empty: it should hold ${what}` }),
      z.regex(/^[\P{Cc}\n]*$/u, { error: `holds a character that cannot be printed` }),
    );
}

export function wordsLike(what: string, pattern: RegExp, rule: string) {
  const error = outside(what, rule);
  return z.string({ error: wrongType(what, 'text in double quotes') }).check(z.regex(pattern, { error }));
}

/** One of a few words. */
export function oneOf<const Word extends string>(what: string, known: readonly Word[]) {
  const rule = `${what} is ${known.slice(0, -1).join(', ')} or ${known.at(-1)!}`;
  return z.enum(known, {
    error: ({ input }) =>
      input === undefined ? `is missing: ${what} is needed` : `is ${inTheFile(input)}: ${rule}`,
  });
}

/** A list of values of one kind, in square brackets. */
export function listOf<Item extends z.core.$ZodType>(what: string, item: Item, maxLength: number) {
  return z
    .array(item, { error: wrongType(what, 'a list in square brackets') })
    .check(z.maxLength(maxLength, { error: `is too long: ${what} are at most ${maxLength}` }));
}

/** The sentence for a value that is missing, or of another kind than `kind`. */
export function wrongType(what: string, kind: string) {
  return ({ code, input }: { code?: string; input?: unknown }): string | undefined => {
    if (code !== 'invalid_type') return undefined;
    return input === undefined
      ? `is missing: ${what} is needed`
      : `is ${inTheFile(input)}: ${what} is ${kind}`;
  };
}

/** The sentence for a value that breaks a rule: `what` + `rule` say what is right. */
export function outside(what: string, rule: string) {
  return ({ input }: { input?: unknown }): string => `is ${inTheFile(input)}: ${what} ${rule}`;
}

const MAX_SHOWN = 40;

/** A value about as the file writes it, cut to a readable length. */
function inTheFile(input: unknown): string {
  if (Array.isArray(input)) return 'a list';
  if (typeof input === 'object' && input !== null) return 'a group in braces';
  const text = typeof input === 'string' ? JSON.stringify(input) : String(input);
  return text.length > MAX_SHOWN ? `${text.slice(0, MAX_SHOWN)}...` : text;
}
