import { usable, refused, type Outcome } from '../../core/issue/issue.ts';
import type { Job as Progress, LogSource } from '../../core/log/log.ts';
import { airacCycle } from '../../core/facility/airac.ts';
import { cycleIssue } from '../../core/records/cycle-issue.ts';
import { differencesOf } from '../../core/records/differences.ts';
import { draftsFromLanding } from '../../core/records/draft-from-landing.ts';
import { draftFromRecords } from '../../core/records/draft-from-records.ts';
import { draftFromRunway } from '../../core/records/draft-from-runway.ts';
import { draftOfFile, draftFile } from '../../core/records/draft-file.ts';
import type { Drafted } from '../../core/records/drafted.ts';
import { findIls, ilsIn, type ListedIls } from '../../core/records/ils-listing.ts';
import { leafName } from '../../core/facility/leaf-words.ts';
import { leavesOf } from '../../core/records/leaves.ts';
import { merged } from '../../core/records/merged.ts';
import { RECORDS_FORMAT, type RecordsIndex } from '../../core/records/records-index.ts';
import { runwaysIn } from '../../core/records/runways-in.ts';
import { scanRecords } from '../../core/records/scan-records.ts';
import { valueWords } from '../../core/records/value-words.ts';
import { flightYear } from '../../core/track/flight-year.ts';
import { TextDecoding } from '../../electron/bridge/text-decoding.ts';
import type { KeptLogs } from './kept-logs.ts';
import type { Draft, RecordsSummary, SourceWork } from './sources-protocol.ts';
import { turn } from './turn.ts';
import { UTF8 } from './utf8.ts';

/** So many localizers are listed at once: who sees more types another word. */
const LISTED = 60;
const CHUNK_BYTES = 1 << 20;
const SOURCES = { one: 'the new source', other: 'your own facility' };

/** The records that were read last, and the localizers in them. */
let held: { readonly index: RecordsIndex; readonly listed: readonly ListedIls[] } | null = null;

type Doing = {
  readonly [J in keyof SourceWork]: (
    input: SourceWork[J]['in'],
    job: Progress,
    logs: KeptLogs,
  ) => Promise<Outcome<SourceWork[J]['out']>>;
};

export const SOURCES_DOING: Doing = {
  async records({ from, day }, job) {
    const read = typeof from === 'string' ? indexIn(from) : await scanRecords(chunksOf(from), from.size, job);
    if (!read.ok) return read;
    held = { index: read.value, listed: ilsIn(read.value) };
    const text = typeof from === 'string' ? from : JSON.stringify(read.value);
    return usable({ summary: summaryOf(held, day), text });
  },
  async localizers({ words }) {
    const found = findIls(held?.listed ?? [], words);
    return usable({ total: found.length, first: found.slice(0, LISTED) });
  },
  async recordDraft({ airport, localizer, day }) {
    if (!held) return refused('records-none', 'No official records were read yet.');
    const drafted = draftFromRecords(held.index, { airport, localizer, onDay: day });
    const refusal = drafted.issues.find(({ severity }) => severity === 'refusal');
    return refusal ? { ok: false, refusal, issues: drafted.issues } : usable(draftOf(drafted));
  },
  async runways({ file, airport }, job) {
    const source: LogSource = { name: file.name, sha256: () => '', size: file.size, chunks: chunksOf(file) };
    const table = await runwaysIn(source, airport, job);
    return table.ok ? usable({ table: table.value, issues: table.issues }) : table;
  },
  runwayDraft: async ({ row, end }) => usable(draftOf(draftFromRunway(row, end))),
  async landingDrafts({ log }, job, logs) {
    const flight = await logs.flight(log, job);
    if (!flight.ok) return flight;
    const { log: read, track } = flight.value;
    const drafts = draftsFromLanding({ name: read.name, sha256: read.sha256 }, track, {
      onDate: flightYear(read, track),
    });
    if (!drafts.ok) return drafts;
    return usable(drafts.value.map(draftOf));
  },
  async differences({ draft, facility }) {
    const own = draftOfFile(facility);
    return usable(own === null ? [] : differencesOf(draft, own, SOURCES));
  },
  async merge({ draft, facility, choices }) {
    const own = draftOfFile(facility);
    return usable(draftOf(own === null ? draft : merged(draft, own, choices, SOURCES)));
  },
};

function draftOf(drafted: Drafted): Draft {
  const leaves = leavesOf(drafted).filter(({ path }) => path !== 'format' && path !== 'name');
  const values = leaves.map(({ path, value, origin }) => ({
    path,
    name: nameOf(path),
    value: shown(path, value),
    origin,
  }));
  const text = draftFile(drafted);
  const name = drafted.facility.name ?? (drafted.landing ? 'The runway that it landed on' : 'Without a name');
  return { name, drafted, values, text };
}

/** As the row of a table. */
function nameOf(path: string): string {
  const [, place, degrees] = /^(.*)\.(lat|lon)Deg$/.exec(path) ?? [null, path, null];
  const name = leafName(place!);
  const words = degrees === null ? name : `${name}, ${degrees === 'lat' ? 'latitude' : 'longitude'}`;
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}

/** Positions as finely as they are published, to a hundredth of a second of arc. */
function shown(path: string, value: string | number): string {
  const isPosition = /\.(lat|lon)Deg$/.test(path) && typeof value === 'number';
  return isPosition ? `${value.toFixed(6)}°` : valueWords(path, value);
}

/** An index that this program wrote; what is none is read anew from the records. */
function indexIn(text: string): Outcome<RecordsIndex> {
  try {
    const index = JSON.parse(text) as RecordsIndex;
    if (index.format === RECORDS_FORMAT) return usable(index);
  } catch {
    // Told below.
  }
  return refused('records-index-unreadable', 'The index of the official records cannot be read.', {
    tip: 'Choose the file of records once more.',
  });
}

function summaryOf({ index, listed }: NonNullable<typeof held>, day: string): RecordsSummary {
  const { cycle, recordsUnreadable, issues } = index;
  const days = cycle === null ? null : airacCycle(cycle);
  const outOfDate = cycleIssue(cycle, day);
  const approaches = listed.filter(({ hasGlideslope }) => hasGlideslope);
  return {
    cycle,
    days: days && { first: days.firstDay, last: days.lastDay },
    airports: new Set(approaches.map(({ airport }) => airport)).size,
    approaches: approaches.length,
    unreadable: recordsUnreadable,
    issues: outOfDate ? [outOfDate, ...issues] : issues,
  };
}

/** Text in chunks, of which the file is read as they are asked for: it may be larger than memory. */
async function* chunksOf(file: File): AsyncGenerator<string> {
  const decoding = new TextDecoding(UTF8);
  for (let at = 0; at < file.size; at += CHUNK_BYTES) {
    yield decoding.decode(new Uint8Array(await file.slice(at, at + CHUNK_BYTES).arrayBuffer()));
    await turn();
  }
  yield decoding.end();
}
