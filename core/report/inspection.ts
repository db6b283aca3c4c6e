import type { Issue } from '../issue/issue.ts';
import { headerKey } from '../log/header-key.ts';
import type { Log, LogColumn } from '../log/log.ts';
import type { Track } from '../track/track.ts';
import { utcText } from '../units/utc.ts';
import { logUses, type LogUse } from './log-uses.ts';

/** What was recognised in a log, as data. Times are ISO 8601 UTC. */
export interface Inspection {
  readonly file: string;
  readonly sha256: string;
  readonly kind: Log['kind'];
  readonly recognised: string;
  readonly rowsSeen: number;
  readonly fixes: number;
  readonly startUtc: string;
  readonly endUtc: string;
  readonly durationS: number;
  readonly timeReference: Log['timeReference'];
  readonly medianIntervalS: number;
  readonly gaps: readonly { readonly startUtc: string; readonly endUtc: string; readonly seconds: number }[];
  readonly altitudeReference: Track['altitudeSource'];
  readonly altitudeFt: { readonly lowest: number; readonly highest: number };
  readonly derived: Track['derived'];
  readonly columns: readonly LogColumn[];
  /** What a debrief takes from it, where from, how far off, and what for. */
  readonly uses: readonly LogUse[];
  /** The same for every log with these headers, so that a host can remember a mapping of the columns for it. */
  readonly headerKey: string;
  readonly issues: readonly Issue[];
}

/** Puts together what `inspect` answers about a log and its track. */
export function inspection(log: Log, track: Track): Inspection {
  const first = track.timeS[0]!;
  const last = track.timeS[track.count - 1]!;
  return {
    file: log.name,
    sha256: log.sha256,
    kind: log.kind,
    recognised: log.recognised,
    rowsSeen: log.rowsSeen,
    fixes: track.count,
    startUtc: utcText(first)!,
    endUtc: utcText(last)!,
    durationS: last - first,
    timeReference: log.timeReference,
    medianIntervalS: track.medianIntervalS,
    gaps: track.gaps.map(({ startS, endS }) => ({
      startUtc: utcText(startS)!,
      endUtc: utcText(endS)!,
      seconds: endS - startS,
    })),
    altitudeReference: track.altitudeSource,
    altitudeFt: range(track.altitudeFt),
    derived: track.derived,
    columns: log.columns,
    uses: logUses(log, track),
    headerKey: headerKey(log.columns),
    issues: [...log.issues, ...track.issues],
  };
}

function range(values: Float64Array): { lowest: number; highest: number } {
  let lowest = Infinity;
  let highest = -Infinity;
  for (const value of values) {
    // NaN compares false both ways and so leaves the range alone.
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
  }
  return { lowest, highest };
}
