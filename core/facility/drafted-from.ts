import { issue, refused, usable, type Issue, type Outcome } from '../issue/issue.ts';
import { listed } from '../units/listed.ts';
import type { Facility } from './facility-schema.ts';
import { leafName } from './leaf-words.ts';

/** So many are named, which are all that a landing leaves open; the rest are counted. */
const NAMED = 6;

/** Whether it was drafted from a landing and holds values that nobody has confirmed: guesses, by which nobody flies. */
function isUnconfirmed({ origin }: Facility): boolean {
  return (origin?.landing?.unconfirmed ?? []).length > 0;
}

const DRAFT = 'facility-draft';

/** What is said of a facility that was drafted from a landing until every value of it is confirmed. */
export function draftWarnings(facility: Facility): Issue[] {
  if (!isUnconfirmed(facility)) return [];
  const names = openNames(facility);
  const count = names.length === 1 ? '1 value of it is' : `${names.length} values of it are`;
  const message = `This facility is a draft from a landing: ${count} not confirmed (${fewOf(names)})`;
  const tip = 'Compare each with the current chart, and confirm or correct it.';
  return [issue('warning', DRAFT, `${message}.`, { tip })];
}

/** Whether that was said of a facility: of a debrief's the values are not kept, and what was said of them is. */
export function isSaidToBeDraft({ issues }: { readonly issues: readonly Issue[] }): boolean {
  return issues.some(({ code }) => code === DRAFT);
}

/** Refused for what is flown by, with the values that it would stand on. */
export function confirmedOf<T extends { readonly facility: Facility }>(defined: T): Outcome<T> {
  const { facility } = defined;
  if (!isUnconfirmed(facility)) return usable(defined);
  const message = `${facility.name} is a draft from a landing, and nobody has confirmed these values of it: ${fewOf(openNames(facility))}`;
  const tip =
    'Nobody flies by a guess: compare each with the current chart, and confirm or correct it under Facilities.';
  return refused('facility-draft-unconfirmed', `${message}.`, { tip });
}

/** Whether a facility was drafted from a landing in this log: to judge the log by it would hold it to itself. */
export function isDraftedFrom({ origin }: Facility, { sha256 }: { readonly sha256: string }): boolean {
  return origin?.landing?.logSha256 === sha256;
}

/** The same in their order, drafts that nobody has confirmed last: any other facility is of a better source. */
export function draftsLast<T extends { readonly facility: Facility }>(some: readonly T[]): T[] {
  const rank = ({ facility }: T) => Number(isUnconfirmed(facility));
  return some.toSorted((a, b) => rank(a) - rank(b));
}

/** What is open, each by its name and once: latitude and longitude are one position. */
function openNames({ origin }: Facility): string[] {
  return [...new Set((origin?.landing?.unconfirmed ?? []).map(nameOf))];
}

function nameOf(path: string): string {
  const [, place] = /^(.*)\.(?:lat|lon)Deg$/.exec(path) ?? [];
  return place === undefined ? leafName(path) : `position of the ${leafName(place)}`;
}

function fewOf(names: readonly string[]): string {
  const others = names.length - NAMED;
  return listed(others > 1 ? [...names.slice(0, NAMED), `${others} more`] : names);
}
