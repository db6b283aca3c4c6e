import { FACILITY_FORMAT } from '../facility/facility-schema.ts';
import type { Drafted, PartOfFacility } from './drafted.ts';

/** One value of a draft: its path in the facility file, and from where it is. */
export interface Leaf {
  readonly path: string;
  readonly value: string | number;
  readonly origin: string;
}

/** Puts values together to a draft, which is a facility file of the one format that there is. */
export function draftedFrom(
  leaves: readonly Leaf[],
  { issues, mayBeOff = {} }: Pick<Drafted, 'issues' | 'mayBeOff'>,
): Drafted {
  const facility: Branch = { format: FACILITY_FORMAT };
  for (const { path, value } of leaves) {
    const keys = path.split('.');
    const last = keys.pop()!;
    let branch = facility;
    for (const key of keys) branch = (branch[key] ??= {}) as Branch;
    branch[last] = value;
  }
  const origins = Object.fromEntries(leaves.map(({ path, origin }) => [path, origin]));
  return { facility: facility as PartOfFacility, origins, issues, mayBeOff };
}

interface Branch {
  [key: string]: string | number | Branch;
}

/** All values of a draft, in its order, its format left out; one without an origin says so. */
export function leavesOf({ facility, origins }: Drafted): Leaf[] {
  const leaves: Leaf[] = [];
  const look = (branch: object, path: string): void => {
    for (const [key, value] of Object.entries(branch) as [string, unknown][]) {
      const here = `${path}${key}`;
      if (here === 'format') continue;
      if (typeof value === 'object' && value !== null) look(value, `${here}.`);
      else if (typeof value === 'string' || typeof value === 'number')
        leaves.push({ path: here, value, origin: origins[here] ?? 'not said' });
    }
  };
  look(facility, '');
  return leaves;
}
