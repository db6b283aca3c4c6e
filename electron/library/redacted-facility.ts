import { randomBytes } from 'node:crypto';
import type { Facility } from '../../core/facility/facility-schema.ts';
import { facilitySha256 } from './kept-log.ts';
import { from, type Library } from './library.ts';

/** What stands for a kept facility. */
export interface FacilityAlias {
  readonly sha256: string;
  readonly content: string;
}

/**
 * Facilities that were drafted from a landing name the log of that by its hash: by the hash of the facility, what goes
 * out instead. All others are left as they are.
 *
 * @param logs what stands for a log, by its hash
 */
export function facilityAliases(
  library: Library,
  logs: ReadonlyMap<string, { readonly sha256: string }>,
): Map<string, FacilityAlias> {
  const rows = library.all(from.selectFrom('facilities').select(['sha256', 'content']));
  return new Map(
    rows.flatMap(({ sha256, content }) => {
      const facility = JSON.parse(content) as Facility;
      const landing = facility.origin?.landing;
      if (!landing) return [];
      const logSha256 = logs.get(landing.logSha256)?.sha256 ?? randomBytes(32).toString('hex');
      const other = { ...facility, origin: { ...facility.origin, landing: { ...landing, logSha256 } } };
      return [[sha256, { sha256: facilitySha256(other), content: JSON.stringify(other) }] as const];
    }),
  );
}
