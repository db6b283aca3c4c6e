import { issue, type Issue } from '../issue/issue.ts';
import type { Log } from '../log/log.ts';
import { longestIncreasing } from '../numeric/longest-increasing.ts';

/** Rows of a log that make the track, in order (null: all of them), and what was left out. */
export interface OrderedFixes {
  readonly rows: Uint32Array | null;
  readonly issues: readonly Issue[];
}

/**
 * Leaves out (0, 0), repeated times and times that go back. The rows that stay are the longest run of
 * increasing times: one wrong time far ahead then costs one row, and not the rest of the flight.
 */
export function orderFixes(log: Log): OrderedFixes {
  if (isOrderly(log)) return { rows: null, issues: [] };
  const nowhere: number[] = [];
  const somewhere: number[] = [];
  for (let row = 0; row < log.timeS.length; row++) (isNowhere(log, row) ? nowhere : somewhere).push(row);

  const times = Float64Array.from(somewhere, (row) => log.timeS[row]!);
  const rows = Uint32Array.from(longestIncreasing(times), (at) => somewhere[at]!);
  const { repeated, backwards } = leftOut(log, somewhere, rows);
  return {
    rows,
    issues: [
      ...counted(log, nowhere, 'position-zero', 'stand at latitude 0, longitude 0, where no fix was taken'),
      ...counted(log, repeated, 'time-repeated', 'repeat the time of another fix; the first one stays'),
      ...counted(log, backwards, 'time-backwards', 'have a time out of order'),
    ],
  };
}

function isNowhere(log: Log, row: number): boolean {
  return log.values.latDeg[row] === 0 && log.values.lonDeg[row] === 0;
}

function isOrderly(log: Log): boolean {
  let previousS = -Infinity;
  for (let row = 0; row < log.timeS.length; row++) {
    const timeS = log.timeS[row]!;
    if (timeS <= previousS || isNowhere(log, row)) return false;
    previousS = timeS;
  }
  return true;
}

function leftOut(log: Log, candidates: readonly number[], kept: Uint32Array) {
  const keptTimes = new Set(Array.from(kept, (row) => log.timeS[row]!));
  const repeated: number[] = [];
  const backwards: number[] = [];
  let next = 0;
  for (const row of candidates) {
    if (kept[next] === row) next++;
    else (keptTimes.has(log.timeS[row]!) ? repeated : backwards).push(row);
  }
  return { repeated, backwards };
}

function counted(log: Log, rows: readonly number[], code: string, what: string): Issue[] {
  if (rows.length === 0) return [];
  const message = `${rows.length} ${rows.length === 1 ? 'fix was' : 'fixes were'} left out: they ${what}.`;
  return [issue('note', code, message, { count: rows.length, firstLine: log.line[rows[0]!]! })];
}
