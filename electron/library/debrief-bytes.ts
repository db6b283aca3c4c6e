import { analyze, materialThere, type DefinedFacility, type Flight } from '../../core/analyze.ts';
import { composeDebrief, type Judging } from '../../core/debrief/compose-debrief.ts';
import type { Debrief } from '../../core/debrief/debrief.ts';
import { usable, type Issue, type Outcome } from '../../core/issue/issue.ts';
import type { Job, LogSettings, LogSource } from '../../core/log/log.ts';
import { TextDecoding } from '../files/decode-text.ts';
import { sha256Of } from './log-files.ts';

/** What a log is read with, and what its approaches are held to. */
export interface Asked {
  readonly settings: LogSettings;
  readonly judging: Judging;
}

export interface LogBytes {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A log as it was read, and a debrief for each of the facilities, in their order. */
export interface DebriefedBytes {
  readonly flight: Flight;
  readonly debriefs: readonly Debrief[];
}

/**
 * Debriefs a log that lies in memory at one facility or more; read once where that makes no difference. What is worth
 * saying of a facility is said where an approach was flown to it.
 */
export async function debriefBytes(
  log: LogBytes,
  facilities: readonly [DefinedFacility, ...DefinedFacility[]],
  { settings, judging }: Asked,
  job: Job,
): Promise<Outcome<DebriefedBytes>> {
  const source = () => sourceOf(log);
  const first = await analyze(source(), facilities[0], settings, job);
  if (!first.ok) return first;
  const debriefs: Debrief[] = [];
  const issues = new Map<string, Issue>();
  for (const [i, facility] of facilities.entries()) {
    const there = i === 0 ? first : await materialThere(first.value, source, facility, settings, job);
    if (!there.ok) return there;
    const debrief = composeDebrief(there.value, judging);
    debriefs.push(debrief);
    const { facilityIssues } = there.value;
    // A log that is read again has the same to say of itself.
    for (const issue of there.issues)
      if (debrief.approaches.length > 0 || !facilityIssues.includes(issue))
        issues.set(JSON.stringify(issue), issue);
  }
  return usable({ flight: first.value, debriefs }, [...issues.values()]);
}

const CHUNK_BYTES = 1 << 20;

function sourceOf({ name, bytes }: LogBytes): LogSource {
  return { name, sha256: () => sha256Of(bytes), size: bytes.length, chunks: decoded(bytes) };
}

/** The text of a log that lies in memory, about a megabyte at a time. */
export function* decoded(bytes: Uint8Array): Generator<string> {
  const decoding = new TextDecoding();
  for (let at = 0; at < bytes.length; at += CHUNK_BYTES)
    yield decoding.decode(bytes.subarray(at, at + CHUNK_BYTES));
  yield decoding.end();
}
