import { decimalYear } from '../../core/earth/magnetic.ts';
import { usable, type Outcome } from '../../core/issue/issue.ts';
import type { Job as Progress } from '../../core/log/log.ts';
import { debriefText } from '../../core/report/debrief-text.ts';
import { inspection } from '../../core/report/inspection.ts';
import { sheetsOf } from '../../core/sheet/sheet-of.ts';
import { briefingMade } from './brief-job.ts';
import { byPercent } from './by-percent.ts';
import { composedOf } from './composed-of.ts';
import { readingOf } from './facility-reading.ts';
import { fittingFacilities } from './fit-job.ts';
import { KeptLogs } from './kept-logs.ts';
import type { FromWorker, Job, JobInput, JobOutput, ToWorker } from './protocol.ts';
import type { SourceWork } from './sources-protocol.ts';
import { standardReading } from './read-standard.ts';
import { turn } from './turn.ts';

const logs = new KeptLogs();
/** Jobs that are to stop. */
const cancelled = new Set<number>();

type Doing = { readonly [J in Job]: (input: JobInput<J>, job: Progress) => Promise<Outcome<JobOutput<J>>> };

const DOING: Doing = {
  async read(input, job) {
    logs.keep(input);
    return inspect(input.log, job);
  },
  async reread({ log, settings }, job) {
    logs.setSettings(log, settings);
    return inspect(log, job);
  },
  async fit({ log, facilities }, job) {
    const flight = await logs.flight(log, job);
    if (!flight.ok) return flight;
    return usable(fittingFacilities(facilities, flight.value));
  },
  async debrief(input, job) {
    const composed = await composedOf(logs, input, job);
    if (!composed.ok) return composed;
    const { debrief } = composed.value;
    void turn().then(fetchHandOver);
    return usable({ debrief, page: debriefText(debrief), sheets: sheetsOf(composed.value) });
  },
  handOver: async (input, job) => (await handOverJob()).handOver(logs, input, job),
  save: async (input, job) => (await handOverJob()).save(logs, input, job),
  // The magnetic model wants a year, and a facility alone has none but today's.
  facilities: async ({ facilities }) =>
    usable(facilities.map((facility) => readingOf(facility, decimalYear(Date.now() / 1000)))),
  brief: async (input) => briefingMade(input, decimalYear(Date.now() / 1000)),
  standards: async ({ standards }) => usable(standards.map(standardReading)),
  bytes: async ({ log }) => usable(logs.bytes(log)),
  records: (...asked) => sources('records', ...asked),
  localizers: (...asked) => sources('localizers', ...asked),
  recordDraft: (...asked) => sources('recordDraft', ...asked),
  runways: (...asked) => sources('runways', ...asked),
  runwayDraft: (...asked) => sources('runwayDraft', ...asked),
  landingDrafts: (...asked) => sources('landingDrafts', ...asked),
  differences: (...asked) => sources('differences', ...asked),
  merge: (...asked) => sources('merge', ...asked),
  async forget({ log }) {
    logs.forget(log);
    return usable(null);
  },
};

/** The first view does without it. */
const handOverJob = () => import('./hand-over-job.ts');

/** What facilities are made of: loaded with the first of it that is asked for. */
async function sources<J extends keyof SourceWork>(
  job: J,
  input: SourceWork[J]['in'],
  progress: Progress,
): Promise<Outcome<SourceWork[J]['out']>> {
  const { SOURCES_DOING } = await import('./sources-job.ts');
  return SOURCES_DOING[job](input, progress, logs);
}

/** Loads all that handing over needs once there is something to be handed over: later the host may have been ended. */
const fetchHandOver = () =>
  handOverJob()
    .then(({ fetchPage }) => fetchPage())
    .catch(() => {});

async function inspect(log: string, job: Progress): Promise<Outcome<JobOutput<'read'>>> {
  const flight = await logs.flight(log, job);
  if (!flight.ok) return flight;
  return usable(inspection(flight.value.log, flight.value.track), flight.issues);
}

function answer(message: FromWorker): void {
  postMessage(message);
}

async function work<J extends Job>(id: number, job: J, input: JobInput<J>): Promise<void> {
  const progress: Progress = {
    progress: byPercent((share) => answer({ id, kind: 'progress', share })),
    cancelled: () => cancelled.has(id),
  };
  try {
    const outcome = await DOING[job](input, progress);
    answer(
      outcome.ok
        ? { id, kind: 'done', value: outcome.value }
        : { id, kind: 'refused', issue: outcome.refusal },
    );
  } catch (error) {
    answer({ id, kind: 'fault', message: String((error as Error).stack ?? error) });
  } finally {
    cancelled.delete(id);
  }
}

addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  if (data.job === 'cancel') cancelled.add(data.id);
  else void work(data.id, data.job, data.input as never);
});
