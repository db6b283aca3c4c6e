import { parentPort } from 'node:worker_threads';
import { deviationLines, type DeviationColumns } from '../../core/report/deviations-csv.ts';

/** First the columns, then any number of ranges, each answered with its lines. */
export type ToLinesWorker = DeviationColumns | readonly [from: number, to: number];

let columns: DeviationColumns | null = null;
parentPort!.on('message', (message: ToLinesWorker) => {
  if ('timeS' in message) columns = message;
  else parentPort!.postMessage(deviationLines(columns!, ...message));
});
