import { analyze, materialThere, type DefinedFacility, type Flight } from '../../core/analyze.ts';
import { composeDebrief, type Judging } from '../../core/debrief/compose-debrief.ts';
import { usable, type Issue, type Outcome } from '../../core/issue/issue.ts';
import type { Job, Log, LogSettings, LogSource } from '../../core/log/log.ts';
import { utcText } from '../../core/units/utc.ts';
import { TextDecoding } from '../files/decode-text.ts';
import { firstDays, type FirstDays } from './first-days.ts';
import { packLog, sha256Of } from './log-files.ts';
import { packDocument, type PackedDocument } from './packed-document.ts';

/** What a log is read with, and what its approaches are held to. */
export interface Asked {
  readonly settings: LogSettings;
  readonly judging: Judging;
  /** Whether the log is to be kept, and so packed as well. */
  readonly packsLog?: boolean;
}

export interface LogBytes {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What the library keeps of a log besides its bytes, and its day; times are ISO 8601 UTC. */
interface LogFacts extends Pick<Log, 'kind' | 'sha256'>, FirstDays {
  readonly fixes: number;
  readonly startUtc: string;
  readonly endUtc: string;
}

/** What a log is, and a debrief for each of the facilities, in their order: plain data, which a worker can hand over. */
export interface DebriefedBytes {
  readonly log: LogFacts;
  /** The log as it lies in its file; null where that was not asked for. */
  readonly packedLog: Uint8Array | null;
  readonly documents: readonly PackedDocument[];
}

/** Debriefs a log: in this thread, as `debriefBytes` does, or in another. */
export type DebriefLog = typeof debriefBytes;

/**
 * Debriefs a log that lies in memory at one facility or more; read once where that makes no difference. What is worth
 * saying of a facility is said where an approach was flown to it.
 */
export async function debriefBytes(
  log: LogBytes,
  facilities: readonly [DefinedFacility, ...DefinedFacility[]],
  { settings, judging, packsLog = false }: Asked,
  job: Job,
): Promise<Outcome<DebriefedBytes>> {
  const source = () => sourceOf(log);
  const first = await analyze(source(), facilities[0], settings, job);
  if (!first.ok) return first;
  const documents: PackedDocument[] = [];
  const issues = new Map<string, Issue>();
  for (const [i, facility] of facilities.entries()) {
    const there = i === 0 ? first : await materialThere(first.value, source, facility, settings, job);
    if (!there.ok) return there;
    const debrief = composeDebrief(there.value, judging);
    documents.push(packDocument(debrief, judging.standard));
    const { facilityIssues } = there.value;
    // A log that is read again has the same to say of itself.
    // What an approach showed of the log stands with its debrief alone.
    const shown = debrief.approaches.length > 0 ? debrief.log.issues : [];
    for (const issue of [...shown, ...there.issues])
      if (debrief.approaches.length > 0 || !facilityIssues.includes(issue))
        issues.set(JSON.stringify(issue), issue);
  }
  const packedLog = packsLog ? packLog(log.bytes) : null;
  return usable({ log: factsOf(first.value, settings), packedLog, documents }, [...issues.values()]);
}

function factsOf({ log, track }: Flight, settings: LogSettings): LogFacts {
  const { count, timeS, lonDeg } = track;
  return {
    kind: log.kind,
    sha256: log.sha256,
    ...firstDays(log, settings, { timeS: timeS[0]!, lonDeg: lonDeg[0]! }),
    fixes: count,
    startUtc: utcText(timeS[0]!)!,
    endUtc: utcText(timeS[count - 1]!)!,
  };
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
