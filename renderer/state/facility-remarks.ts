import type { JsonProblem } from '../../core/json/problem.ts';
import { pathWords } from '../../core/json/path-words.ts';
import { valueAt } from './facility-draft.ts';
import type { Group } from './json-group.ts';
import {
  FACILITY_FIELDS,
  FACILITY_SECTIONS,
  type FacilityField,
  type FacilitySection,
} from './facility-fields.ts';

/** Something to be said of a facility in its form, at the field or the section that it is about; null: of the text. */
export interface Remark {
  readonly at: FacilityField | FacilitySection | null;
  /** Left empty, or filled wrongly: only the latter is a mistake. */
  readonly kind: 'lacking' | 'wrong';
  readonly sentence: string;
}

/** What is said beside the fields of a facility that cannot be used yet, in the order of the form. */
export function remarksOf(root: Group, problems: readonly JsonProblem[]): readonly Remark[] {
  const found = problems.flatMap((problem) => remarksOn(root, problem));
  if (problems.length > 0 && lacksDirection(root)) found.push(DIRECTION);
  const unique = found.filter(
    (remark, i) => found.findIndex(({ at }) => at !== null && at === remark.at) === i || remark.at === null,
  );
  return unique.toSorted((a, b) => placeInForm(a) - placeInForm(b));
}

/** A sentence of the file's reader with the form's words in place of the file's keys. */
export function inWords(sentence: string): string {
  const said = sentence.replace(KEYS, (key) => WORDS_OF_KEYS.get(key)!);
  return said.charAt(0).toUpperCase() + said.slice(1);
}

/** The words and the unit above a field. */
export function labelOf({ words, unit }: FacilityField): string {
  return unit === null ? words : `${words}, ${unit}`;
}

/** What a remark is about, in a few words. */
export function nameOfPlace({ at }: Remark): string {
  if (at === null) return 'Its file';
  return 'fields' in at ? at.legend : at.words;
}

function remarksOn(root: Group, problem: JsonProblem): Remark[] {
  const { path, says, tip } = problem;
  const value = valueAt(root, path);
  const field = FACILITY_FIELDS.find((one) => isSame(one.path, path));
  if (value === undefined) {
    // A whole group may be missing: then its needed fields are.
    const empty = field ? [field] : FACILITY_FIELDS.filter((one) => one.isNeeded && isUnder(one.path, path));
    if (empty.length > 0) return empty.map((at) => ({ at, kind: 'lacking', sentence: 'Needed.' }));
    if (isSame(path, DIRECTION_PATH)) return [DIRECTION];
  }
  if (field) return [{ at: field, kind: 'wrong', sentence: sentenceAt(field, value, problem) }];
  const section = FACILITY_SECTIONS.find((one) => one.path !== null && isSame(one.path, path));
  const sentence = section
    ? inWords(joined(`it ${says}`, tip))
    : joined(`In its file, ${pathWords(path)} ${says}`, tip);
  return [{ at: section ?? null, kind: 'wrong', sentence }];
}

function sentenceAt({ kind, words }: FacilityField, value: unknown, { says, tip }: JsonProblem): string {
  if (typeof value !== 'string') return inWords(joined(`it ${says}`, tip));
  switch (kind) {
    case 'latitude':
      return `“${value}” is no latitude. Write S31 12.5, S31 12 30.4, 311230.4S or -31.2084.`;
    case 'longitude':
      return `“${value}” is no longitude. Write W016 24.1, W016 24 06.2, 0162406.2W or -16.4017.`;
    case 'variation':
      return `“${value}” is no variation. Write 3.5 W or 3.5 E.`;
    case 'number':
    case 'bearing':
      return `“${value}” is no number. Write decimals with a point.`;
    default:
      return inWords(joined(`${words} ${says}`, tip));
  }
}

function joined(says: string, tip: string | null): string {
  return `${says}.${tip === null ? '' : ` ${tip}`}`;
}

const DIRECTION_PATH = ['runway', 'farEnd'];
const DIRECTION: Remark = {
  at: FACILITY_SECTIONS.find(({ path }) => path !== null && isSame(path, DIRECTION_PATH))!,
  kind: 'lacking',
  sentence: 'Needed: latitude and longitude of the far end, or the true bearing and the length.',
};

/** The file's reader asks for it only when nothing else is wrong; who fills a form wants to know at once. */
function lacksDirection(root: Group): boolean {
  const has = (key: string) => valueAt(root, ['runway', key]) !== undefined;
  return !has('farEnd') && !(has('trueBearingDeg') && has('lengthFt'));
}

function placeInForm({ at }: Remark): number {
  if (at === null) return Infinity;
  const section = FACILITY_SECTIONS.findIndex((one) => one === at || one.fields.includes(at as never));
  const field = FACILITY_SECTIONS[section]!.fields.indexOf(at as FacilityField);
  return section * 100 + field;
}

function isSame(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && isUnder(a, b);
}

function isUnder(path: readonly unknown[], above: readonly unknown[]): boolean {
  return above.every((key, i) => key === path[i]);
}

/** The form's words by full path, and by the last key alone where that names one value. */
const WORDS_OF_KEYS = new Map<string, string>([
  ...FACILITY_SECTIONS.flatMap(({ path, legend }): [string, string][] =>
    path === null ? [] : [[path.join('.'), legend.toLowerCase()]],
  ),
  ['runway.farEnd', 'the far end'],
  ...FACILITY_FIELDS.flatMap(({ path, words }): [string, string][] => {
    const last = path.at(-1)!;
    const isOnly = FACILITY_FIELDS.filter((one) => one.path.at(-1) === last).length === 1;
    // Words of the language, as "name" and "ident", stay what they are.
    const isKey = /[a-z][A-Z]/.test(last);
    const quoted = `“${words}”`;
    return [
      ...(path.length > 1 || isKey ? [[path.join('.'), quoted] satisfies [string, string]] : []),
      ...(path.length > 1 && isOnly && isKey ? [[last, quoted] satisfies [string, string]] : []),
    ];
  }),
]);
const KEYS = new RegExp(
  `(?<![\\w.])(?:${[...WORDS_OF_KEYS.keys()]
    .filter((key) => /[.A-Z]/.test(key))
    .toSorted((a, b) => b.length - a.length)
    .map((key) => key.replaceAll('.', '\\.'))
    .join('|')})(?![\\w]|\\.\\w)`,
  'g',
);
