import { issue, refused, usable, type Issue, type Outcome } from '../issue/issue.ts';
import { facilitySchema, type Facility } from './facility-schema.ts';
import { impossibleValues } from './impossible-values.ts';
import { readJson, type JsonPath, type JsonReading } from './json-text.ts';
import type { FacilityProblem } from './problem.ts';
import { schemaProblems } from './schema-problems.ts';

/** A facility file is one or two thousand characters; a log dropped in its place is noticed before it is read. */
const MAX_CHARACTERS = 200_000;

/**
 * Reads a facility file (`halfdot-facility/1`, JSON). Everything that is wrong with it is told, the first as the
 * refusal and all in `issues`, each with its full key and the line of the file.
 */
export function parseFacility(text: string, fileName: string): Outcome<Facility> {
  if (text.length > MAX_CHARACTERS) {
    const message = `${fileName} is no facility file: it has more than ${MAX_CHARACTERS} characters`;
    return refused('facility-too-large', `${message}.`, { tip: 'Is it a track log?' });
  }
  const json = readJson(text);
  if (!json.ok) return notJson(json, fileName);
  const checked = facilitySchema.safeParse(json.value, { reportInput: true });
  const problems = [
    ...json.repeated.map(repeatedKey),
    ...(checked.success ? impossibleValues(checked.data) : schemaProblems(checked.error.issues)),
  ];
  if (!checked.success || problems.length > 0) return unusable(problems, json.lineOf, fileName);
  return usable(checked.data);
}

function notJson(json: JsonReading & { ok: false }, fileName: string): Outcome<never> {
  const message = `${fileName}, line ${json.line}, column ${json.column}: ${json.problem}`;
  return refused('facility-not-json', `${message}.`, {
    firstLine: json.line,
    tip: 'A facility file is JSON: keys and text in double quotes, commas between, none after the last, decimals with a point.',
  });
}

function repeatedKey(path: JsonPath): FacilityProblem {
  return { code: 'facility-repeated-key', path, says: 'is given twice', tip: 'Keep the one that is right.' };
}

function unusable(
  problems: readonly FacilityProblem[],
  lineOf: (path: JsonPath) => number,
  fileName: string,
): Outcome<never> {
  const issues = problems.map(({ code, path, says, tip }): Issue => {
    const line = lineOf(path);
    const key = path.length === 0 ? 'the file' : path.join('.');
    return issue('refusal', code, `${fileName}, line ${line}: ${key} ${says}.`, { firstLine: line, tip });
  });
  return { ok: false, refusal: issues[0]!, issues };
}
