import { documentText } from './documents.ts';
import { finishErasing, isErasing } from './erasing.ts';
import { from, type Library } from './library.ts';
import { sweepLogs } from './pending-logs.ts';
import { LibraryRefusal } from './refusal.ts';
import type { Watch } from './watch.ts';

interface Checked {
  readonly logs: number;
  readonly debriefs: number;
  /** What is wrong, a sentence each; empty where all is well. */
  readonly faults: readonly string[];
  /** What is odd and harms nothing. */
  readonly remarks: readonly string[];
}

/** Looks at everything: SQLite's own check, what refers to what, every document and every log against its hash. */
export async function checkLibrary(library: Library, watch: Watch): Promise<Checked> {
  sweepLogs(library);
  const erasing = erasingOf(library);
  const faults = [...erasing.faults, ...fileFaults(library), ...documentFaults(library)];
  const logs = library.all(from.selectFrom('logs').select(['sha256', 'file_name']));
  const lost: LostLog[] = [];
  for (const [i, { sha256, file_name }] of logs.entries()) {
    await watch(i / logs.length);
    const state = library.logFiles.state(sha256);
    if (state !== 'whole')
      lost.push({ state, sentence: `The log ${file_name} is ${state} (logs/${sha256}.gz).` });
  }
  faults.push(...lostSentences(lost, logs.length));
  const named = new Set(logs.map(({ sha256 }) => sha256));
  const strange = library.logFiles.list().filter((sha256) => !named.has(sha256)).length;
  const remarks = [
    ...erasing.remarks,
    ...(strange === 0
      ? []
      : [
          `${strange} ${strange === 1 ? 'file' : 'files'} in logs/ that this library does not name; left alone.`,
        ]),
  ];
  const { count } = library.first(
    from.selectFrom('debriefs').select((of) => of.fn.countAll<number>().as('count')),
  )!;
  return { logs: logs.length, debriefs: count, faults, remarks };
}

interface LostLog {
  readonly state: string;
  readonly sentence: string;
}

/** A sentence for each, but one for all where none is there: an export without its logs was taken in. */
function lostSentences(lost: readonly LostLog[], logs: number): string[] {
  const isWithoutLogs = logs > 1 && lost.length === logs && lost.every(({ state }) => state === 'missing');
  if (!isWithoutLogs) return lost.map(({ sentence }) => sentence);
  return [
    `All ${logs} logs are missing: was this taken in from an export without its logs? No debrief can be made anew.`,
  ];
}

/** A deletion that was begun is done to its end here, where that can be. */
function erasingOf(library: Library): Pick<Checked, 'faults' | 'remarks'> {
  if (!isErasing(library)) return { faults: [], remarks: [] };
  const failure = finishErasing(library);
  return failure === null
    ? { faults: [], remarks: ['A deletion that was cut short is finished now: nothing of it is left.'] }
    : {
        faults: [
          `A deletion is not finished, and bytes of what was deleted may still be there. ${failure.message}`,
        ],
        remarks: [],
      };
}

function fileFaults(library: Library): string[] {
  const answers = library
    .answers<{ integrity_check: string }>('PRAGMA integrity_check')
    .map(({ integrity_check }) => integrity_check)
    .filter((answer) => answer !== 'ok');
  const loose = library.answers<{ table: string }>('PRAGMA foreign_key_check').length;
  return [
    ...answers.map((answer) => `SQLite finds the file damaged: ${answer}.`),
    ...(loose > 0 ? [`${loose} rows refer to what is not there.`] : []),
  ];
}

function documentFaults(library: Library): string[] {
  const faults: string[] = [];
  const keys = library.all(from.selectFrom('documents').select(['debrief_id', 'sha256']));
  for (const { debrief_id, sha256 } of keys) {
    const { json_gz } = library.first(
      from
        .selectFrom('documents')
        .select('json_gz')
        .where('debrief_id', '=', debrief_id)
        .where('sha256', '=', sha256),
    )!;
    try {
      documentText(sha256, json_gz);
    } catch (error) {
      if (!(error instanceof LibraryRefusal)) throw error;
      faults.push(error.message);
    }
  }
  const without = library.all(
    from
      .selectFrom('debriefs')
      .leftJoin('documents', (join) =>
        join
          .onRef('documents.debrief_id', '=', 'debriefs.id')
          .onRef('documents.sha256', '=', 'debriefs.document_sha256'),
      )
      .select('debriefs.id')
      .where('documents.sha256', 'is', null),
  );
  return without.length === 0 ? faults : [...faults, `${without.length} debriefs have no document.`];
}
