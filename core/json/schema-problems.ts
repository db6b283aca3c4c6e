import * as z from 'zod/mini';
import type { FileFormat } from './file-format.ts';
import type { JsonPath } from './json-text.ts';
import { nearestKey } from './nearest-key.ts';
import { pathWords } from './path-words.ts';
import type { JsonProblem } from './problem.ts';

type SchemaIssue = z.core.$ZodIssue;
type Format = Omit<FileFormat<never>, 'impossible' | 'schema'> & { readonly schema: z.core.$ZodType };

/** A number in quotes, where one without them was wanted. */
const NUMBER = /^\s*[-+±]?\d*[.,]?\d+\s*$/;
/** More homes than this make a list, not a hint. */
const MAX_HOMES = 3;

/**
 * What keeps a value from being such a file, in the order in which a person would mend it: another format first,
 * then keys that are not known (a mistyped key is also a missing one), then values.
 */
export function schemaProblems(issues: readonly SchemaIssue[], file: Format): JsonProblem[] {
  const urgency = ({ code }: JsonProblem): number =>
    code === `${file.noun}-wrong-format` ? 0 : code === `${file.noun}-unknown-key` ? 1 : 2;
  return issues
    .flatMap((found) =>
      found.code === 'unrecognized_keys' ? unknownKeys(found, file) : [valueProblem(found, file)],
    )
    .toSorted((a, b) => urgency(a) - urgency(b));
}

function valueProblem(found: SchemaIssue, file: Format): JsonProblem {
  const path = found.path as JsonPath;
  return { code: codeOf(found, path, file), path, says: found.message, tip: tipFor(found, path, file) };
}

function codeOf(found: SchemaIssue, path: JsonPath, { noun, codeOfMissing }: Format): string {
  if (path[0] === 'format' && found.input !== undefined) return `${noun}-wrong-format`;
  const isOtherWord = found.code === 'invalid_value' && typeof found.input === 'string';
  const isKind = found.code === 'invalid_type' || found.code === 'invalid_value';
  if (isOtherWord || !isKind) return `${noun}-impossible-value`;
  if (found.input !== undefined) return `${noun}-wrong-type`;
  return codeOfMissing?.(path) ?? `${noun}-missing-key`;
}

function tipFor(found: SchemaIssue, path: JsonPath, { format }: Format): string | null {
  if (path[0] === 'format') return `The file should begin { "format": "${format}", ...`;
  if (found.code === 'invalid_value') return nearestWord(found);
  if (found.code !== 'invalid_type') return null;
  if (found.input === null) return 'What is not known is left out, key and all; it is not written as null.';
  const isQuotedNumber =
    typeof found.input === 'string' && (found.expected === 'number' || NUMBER.test(found.input));
  return isQuotedNumber ? 'Write numbers without quotes, and decimals with a point.' : null;
}

function nearestWord({ input, values }: z.core.$ZodIssueInvalidValue): string | null {
  const nearest = typeof input === 'string' ? nearestKey(input, values.map(String)) : null;
  return nearest === null ? null : `Did you mean ${nearest}?`;
}

function unknownKeys(found: z.core.$ZodIssueUnrecognizedKeys, file: Format): JsonProblem[] {
  const parent = found.path as JsonPath;
  const known = keysOf(parent, file.schema);
  return found.keys.map((key) => {
    const path = [...parent, key];
    const homes = homesOf(key, file.schema);
    const nearest = nearestKey(key, known);
    const tip = nearest
      ? `Did you mean ${pathWords([...parent, nearest])}?`
      : homes.length > 0 && homes.length <= MAX_HOMES
        ? `It belongs in ${homes.join(' or ')}.`
        : `Known here are ${known.join(', ')}.`;
    return { code: `${file.noun}-unknown-key`, path, says: `is not a key of a ${file.noun} file`, tip };
  });
}

/** Keys that the schema knows in the group at a path. */
function keysOf(path: JsonPath, schema: z.core.$ZodType): string[] {
  let at: unknown = schema;
  for (const key of path) if (typeof key === 'string') at = shapeOf(at)[key];
  return Object.keys(shapeOf(at));
}

/** Full paths of every known key of that name. */
function homesOf(key: string, within: unknown, above = ''): string[] {
  const homes: string[] = [];
  for (const [name, inner] of Object.entries(shapeOf(within))) {
    if (name === key) homes.push(above + name);
    homes.push(...homesOf(key, inner, `${above}${name}.`));
  }
  return homes;
}

/** The keys of a group, or of each group in a list, with their schemas; none for a plain value. */
function shapeOf(schema: unknown): Readonly<Record<string, unknown>> {
  if (schema instanceof z.ZodMiniOptional) return shapeOf(schema.def.innerType);
  if (schema instanceof z.ZodMiniPipe) return shapeOf(schema.def.out);
  if (schema instanceof z.ZodMiniArray) return shapeOf(schema.def.element);
  return schema instanceof z.ZodMiniObject ? schema.shape : {};
}
