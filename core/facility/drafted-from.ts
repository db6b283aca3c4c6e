import { issue, type Issue } from '../issue/issue.ts';
import { listed } from '../units/listed.ts';
import type { Facility } from './facility-schema.ts';

/** So many are named; the rest are counted. */
const NAMED = 3;

/** What is said of a facility that was drafted from a landing until every value of it is confirmed. */
export function draftWarnings({ origin }: Facility): Issue[] {
  const open = origin?.landing?.unconfirmed ?? [];
  if (open.length === 0) return [];
  const others = open.length - NAMED;
  const names = others > 1 ? [...open.slice(0, NAMED), `${others} more`] : open;
  const count = open.length === 1 ? '1 value of it is' : `${open.length} values of it are`;
  const message = `This facility is a draft from a landing: ${count} not confirmed (${listed(names)})`;
  const tip = 'Compare each with the current chart, and confirm or correct it.';
  return [issue('warning', 'facility-draft', `${message}.`, { tip })];
}

/** Whether a facility was drafted from a landing in this log: to judge the log by it would hold it to itself. */
export function isDraftedFrom({ origin }: Facility, { sha256 }: { readonly sha256: string }): boolean {
  return origin?.landing?.logSha256 === sha256;
}
