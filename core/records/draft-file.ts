import { FACILITY_FORMAT } from '../facility/facility-schema.ts';
import type { Drafted, DraftedLanding, PartOfFacility } from './drafted.ts';
import { leavesOf } from './leaves.ts';

/** The facility file of a draft, with where its values are from, and of which cycle or landing. It may lack what the source does not say. */
export function draftFile({ facility, origins, cycle, landing }: Drafted): string {
  const { name, ...values } = facility;
  const origin = { sources: origins, cycle, landing };
  return `${JSON.stringify({ format: FACILITY_FORMAT, name, ...values, origin }, null, 2)}\n`;
}

/** Where a value is from that no source gave. */
const BY_HAND = 'typed by hand';

/** As a file holds it: nobody has checked it. */
interface Origin {
  readonly sources?: Drafted['origins'];
  readonly cycle?: unknown;
  readonly landing?: unknown;
}

function isLanding(landing: unknown): landing is DraftedLanding {
  const { logSha256, unconfirmed } = (landing ?? {}) as Partial<Record<keyof DraftedLanding, unknown>>;
  return typeof logSha256 === 'string' && Array.isArray(unconfirmed);
}

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
  const { sources: known = {}, cycle, landing } = (origin ?? {}) as Origin;
  const from = { ...(typeof cycle === 'string' && { cycle }), ...(isLanding(landing) && { landing }) };
  const told = { facility: facility as PartOfFacility, origins: known, issues: [] };
  const origins = leavesOf(told).map(({ path }) => [path, known[path] ?? BY_HAND] as const);
  return { ...told, ...from, origins: Object.fromEntries(origins) };
}
