import { refused, usable, type Outcome } from '../issue/issue.ts';
import type { Job, LogSource } from '../log/log.ts';
import { LINE_MAX_CHARS, RowSplitter, type RowTaker } from '../log/row-splitter.ts';
import type { Row } from '../log/row.ts';
import { TextStream } from '../log/text-stream.ts';
import { whole } from '../units/whole.ts';
import { RunwayRows } from './runway-rows.ts';
import { runwayHead, type RunwayHead } from './runway-head.ts';
import type { RunwayTable } from './runway-table.ts';

/**
 * Reads the runways of the open airports dataset (`runways.csv`, public domain). Of a file of any size it keeps the
 * rows of one airport and the idents of all; with null for the airport, the idents alone. Refused: what is no such
 * table, one that lacks columns, a job that was stopped (`cancelled`). All else that is wrong is told in the issues.
 */
export async function runwaysIn(
  source: LogSource,
  airportIdent: string | null,
  job: Job,
): Promise<Outcome<RunwayTable>> {
  const text = await TextStream.open(source, job);
  try {
    const head = text.cancelled ? null : runwayHead(source.name, text.head);
    const outcome = head?.ok ? await readRows(text, source.name, head.value, airportIdent) : head;
    return outcome === null || text.cancelled ? cancelled(source.name) : outcome;
  } finally {
    await text.close();
  }
}

async function readRows(
  text: TextStream,
  name: string,
  { shape, columns, line: headerLine, cells }: RunwayHead,
  airportIdent: string | null,
): Promise<Outcome<RunwayTable>> {
  const rows = new RunwayRows(columns, airportIdent);
  const below: RowTaker = {
    row: (row: Row, line: number) => {
      if (line > headerLine) rows.row(row, line);
    },
    unclosedQuote: (line) => rows.unclosedQuote(line),
  };
  const splitter = new RowSplitter(shape, below, cells);
  for await (const block of text.blocks()) {
    splitter.push(block, false);
    if (splitter.tooLong) return lineTooLong(name, splitter.line);
  }
  splitter.push('', true);
  if (rows.table().rowsSeen === 0)
    return refused('runways-no-rows', `${name} has a header and no rows of runways under it.`);
  return usable(rows.table(), rows.issues());
}

function lineTooLong(name: string, line: number): Outcome<never> {
  const message = `${name}, line ${line} is longer than ${whole(LINE_MAX_CHARS)} characters: no table of runways has such lines.`;
  return refused('runways-line-too-long', message, { firstLine: line });
}

function cancelled(name: string): Outcome<never> {
  return refused('cancelled', `Reading ${name} was stopped.`);
}
