import { FACILITY_FORMAT } from '../facility/facility-schema.ts';
import type { Drafted, PartOfFacility } from './drafted.ts';
import { leavesOf } from './leaves.ts';

/** Of a draft from a landing: which log that was, and which of its values have to be confirmed. */
export interface DraftedLanding {
  readonly logSha256: string;
  readonly unconfirmed: readonly string[];
}

/** The facility file of a draft, with where its values are from. It may lack what the source does not say. */
export function draftFile({ facility, origins }: Drafted, landing: DraftedLanding | null): string {
  const { name, ...values } = facility;
  const origin = { sources: origins, ...(landing && { landing }) };
  return `${JSON.stringify({ format: FACILITY_FORMAT, name, ...values, origin }, null, 2)}\n`;
}

/** Where a value is from that no source gave. */
const BY_HAND = 'typed by hand';

/** A facility file as a source beside others; null for what is no JSON group. */
export function draftOfFile(text: string): Drafted | null {
  let root: unknown;
  try {
    root = JSON.parse(text);
  } catch {
    return null;
  }
  if (typeof root !== 'object' || root === null || Array.isArray(root)) return null;
  const { format: _, origin, ...facility } = root as Record<string, unknown>;
  const known = (origin as { sources?: Record<string, string> } | undefined)?.sources ?? {};
  const told = { facility: facility as PartOfFacility, origins: known, issues: [] };
  const origins = leavesOf(told).map(({ path }) => [path, known[path] ?? BY_HAND] as const);
  return { ...told, origins: Object.fromEntries(origins) };
}
