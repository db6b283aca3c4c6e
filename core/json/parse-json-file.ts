import { issue, refused, usable, type Issue, type Outcome } from '../issue/issue.ts';
import type { FileFormat } from './file-format.ts';
import { readJson, type JsonPath, type JsonReading } from './json-text.ts';
import { pathWords } from './path-words.ts';
import type { JsonProblem } from './problem.ts';
import { schemaProblems } from './schema-problems.ts';

/** These files are one or two thousand characters; a log dropped in their place is noticed before it is read. */
const MAX_CHARACTERS = 200_000;

/**
 * Reads a file of such a format. Everything that is wrong with it is told, the first as the refusal and all in
 * `issues`, each with its full key and the line of the file.
 */
export function parseJsonFile<Value>(
  text: string,
  fileName: string,
  file: FileFormat<Value>,
): Outcome<Value> {
  if (text.length > MAX_CHARACTERS) {
    const message = `${fileName} is no ${file.noun} file: it has more than ${MAX_CHARACTERS} characters`;
    return refused(`${file.noun}-too-large`, `${message}.`, { tip: 'Is it a track log?' });
  }
  const json = readJson(text);
  if (!json.ok) return notJson(json, fileName, file.noun);
  const { value, problems } = checked(json, file);
  return value === null ? unusable(problems, json.lineOf, fileName) : usable(value);
}

/**
 * What keeps a text from being such a file, each with the key that it is about, in the order of `parseJsonFile`;
 * empty where nothing does, and where the text is no JSON at all and so has no keys.
 */
export function jsonFileProblems<Value>(text: string, file: FileFormat<Value>): readonly JsonProblem[] {
  if (text.length > MAX_CHARACTERS) return [];
  const json = readJson(text);
  return json.ok ? checked(json, file).problems : [];
}

/** The value, or null where there is any problem. */
function checked<Value>(
  { value, repeated }: JsonReading & { ok: true },
  file: FileFormat<Value>,
): { value: Value | null; problems: readonly JsonProblem[] } {
  const schema = file.schema();
  const found = schema.safeParse(value, { reportInput: true });
  const problems = [
    ...repeated.map((path) => repeatedKey(path, file.noun)),
    ...(found.success
      ? file.impossible(found.data)
      : schemaProblems(found.error.issues, { ...file, schema })),
  ];
  return { value: found.success && problems.length === 0 ? found.data : null, problems };
}

function notJson(json: JsonReading & { ok: false }, fileName: string, noun: string): Outcome<never> {
  const message = `${fileName}, line ${json.line}, column ${json.column}: ${json.problem}`;
  return refused(`${noun}-not-json`, `${message}.`, {
    firstLine: json.line,
    tip: `A ${noun} file is JSON: keys and text in double quotes, commas between, none after the last, decimals with a point.`,
  });
}

function repeatedKey(path: JsonPath, noun: string): JsonProblem {
  return { code: `${noun}-repeated-key`, path, says: 'is given twice', tip: 'Keep the one that is right.' };
}

function unusable(
  problems: readonly JsonProblem[],
  lineOf: (path: JsonPath) => number,
  fileName: string,
): Outcome<never> {
  const issues = problems.map(({ code, path, says, tip }): Issue => {
    const line = lineOf(path);
    return issue('refusal', code, `${fileName}, line ${line}: ${pathWords(path)} ${says}.`, {
      firstLine: line,
      tip,
    });
  });
  return { ok: false, refusal: issues[0]!, issues };
}
