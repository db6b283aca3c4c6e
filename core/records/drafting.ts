import { FACILITY_FORMAT } from '../facility/facility-schema.ts';
import type { Issue } from '../issue/issue.ts';
import { recordsIssue } from './records-issue.ts';
import type { RecordsIssueCode } from './issue-codes.ts';
import type { Drafted, PartOfFacility } from './drafted.ts';

type Branch = { [key: string]: Branch | number | string };

/** A facility while it is drafted: each value goes in with where it comes from. */
export class Drafting {
  readonly #facility: Branch = { format: FACILITY_FORMAT };
  readonly #origins: Record<string, string> = {};
  readonly #issues: Issue[] = [];

  /** @param path keys of the facility file with dots between; a value that is null is left out */
  set(path: string, value: number | string | null, origin: string): void {
    if (value === null) return;
    const keys = path.split('.');
    const last = keys.pop()!;
    let branch = this.#facility;
    for (const key of keys) branch = (branch[key] ??= {}) as Branch;
    branch[last] = value;
    this.#origins[path] = origin;
  }

  /** Latitude and longitude below a path; computed ones to a centimetre. */
  setPlace(path: string, place: { readonly latDeg: number; readonly lonDeg: number }, origin: string): void {
    this.set(`${path}.latDeg`, rounded(place.latDeg, 7), origin);
    this.set(`${path}.lonDeg`, rounded(place.lonDeg, 7), origin);
  }

  say(code: RecordsIssueCode, message: string, tip: string | null = null): void {
    this.#issues.push(recordsIssue(code, `${message}.`, { tip }));
  }

  add(issue: Issue | null): void {
    if (issue !== null) this.#issues.push(issue);
  }

  /** What there is by now, as a facility file's text. */
  text(): string {
    return JSON.stringify(this.#facility);
  }

  drafted(): Drafted {
    return {
      facility: this.#facility as PartOfFacility,
      origins: this.#origins,
      issues: this.#issues,
    };
  }
}

export function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
