import * as z from 'zod/mini';
import { FACILITY_FORMAT, facilitySchema } from './facility-schema.ts';
import { nearestKey } from './nearest-key.ts';
import type { JsonPath } from './json-text.ts';
import type { FacilityProblem } from './problem.ts';

type SchemaIssue = z.core.$ZodIssue;

/**
 * What keeps a value from being a facility, in the order in which a person would mend it: another format first,
 * then keys that are not known (a mistyped key is also a missing one), then values.
 */
export function schemaProblems(issues: readonly SchemaIssue[]): FacilityProblem[] {
  return issues
    .flatMap((found) => (found.code === 'unrecognized_keys' ? unknownKeys(found) : [valueProblem(found)]))
    .toSorted((a, b) => urgency(a) - urgency(b));
}

function urgency({ code }: FacilityProblem): number {
  return code === 'facility-wrong-format' ? 0 : code === 'facility-unknown-key' ? 1 : 2;
}

function valueProblem(found: SchemaIssue): FacilityProblem {
  const path = found.path as JsonPath;
  return { code: codeOf(found, path), path, says: found.message, tip: tipFor(found, path) };
}

function codeOf(found: SchemaIssue, path: JsonPath): FacilityProblem['code'] {
  if (path[0] === 'format' && found.input !== undefined) return 'facility-wrong-format';
  if (found.code !== 'invalid_type' && found.code !== 'invalid_value') return 'facility-impossible-value';
  if (found.input !== undefined) return 'facility-wrong-type';
  return path.join('.') === 'glidepath' ? 'facility-localizer-only' : 'facility-missing-key';
}

function tipFor(found: SchemaIssue, path: JsonPath): string | null {
  if (path[0] === 'format') return `The file should begin { "format": "${FACILITY_FORMAT}", ...`;
  if (found.code !== 'invalid_type') return null;
  if (found.input === null) return 'What is not known is left out, key and all; it is not written as null.';
  const quotedNumber = typeof found.input === 'string' && found.expected === 'number';
  return quotedNumber ? 'Write numbers without quotes, and decimals with a point.' : null;
}

function unknownKeys(found: z.core.$ZodIssueUnrecognizedKeys): FacilityProblem[] {
  const parent = found.path as JsonPath;
  const known = keysOf(parent);
  return found.keys.map((key) => {
    const path = [...parent, key];
    const home = homesOf(key).find((place) => place !== path.join('.'));
    const nearest = nearestKey(key, known);
    const tip = nearest
      ? `Did you mean ${[...parent, nearest].join('.')}?`
      : home
        ? `It belongs in ${home}.`
        : `Known here are ${known.join(', ')}.`;
    return { code: 'facility-unknown-key', path, says: 'is not a key of a facility file', tip };
  });
}

/** Keys that the schema knows in the group at a path. */
function keysOf(path: JsonPath): string[] {
  let at: unknown = facilitySchema;
  for (const key of path) at = shapeOf(at)[key as string];
  return Object.keys(shapeOf(at));
}

/** Full paths of every known key of that name. */
function homesOf(key: string, within: unknown = facilitySchema, above = ''): string[] {
  const homes: string[] = [];
  for (const [name, inner] of Object.entries(shapeOf(within))) {
    if (name === key) homes.push(above + name);
    homes.push(...homesOf(key, inner, `${above}${name}.`));
  }
  return homes;
}

/** The keys of a group with their schemas; none for a plain value. */
function shapeOf(schema: unknown): Readonly<Record<string, unknown>> {
  const inner = schema instanceof z.ZodMiniOptional ? schema.def.innerType : schema;
  return inner instanceof z.ZodMiniObject ? inner.shape : {};
}
