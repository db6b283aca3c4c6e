import { findLayout } from '../../core/log/csv-layout.ts';
import { isBlank, isComment } from '../../core/log/csv-lines.ts';
import type { LogSettings } from '../../core/log/log.ts';
import type { Row } from '../../core/log/row.ts';
import { RowSplitter } from '../../core/log/row-splitter.ts';
import { decoded } from './debrief-bytes.ts';

/** As many as are told apart: one is an answer, and a few are named. */
const VALUES_MAX = 5;

/**
 * The different values that a log's column of text holds, in the order in which they come, without those rows that have
 * none; null where the log has no column of that header. The reader of logs keeps numbers only.
 */
export function columnValues(bytes: Uint8Array, header: string, settings: LogSettings): string[] | null {
  const chunks = decoded(bytes);
  const head = (chunks.next().value ?? '').replace(/^\uFEFF/, '');
  const layout = /^\s*</.test(head) ? null : findLayout(head, settings);
  if (layout === null) return null;
  const { names, otherNames, dataLine } = layout.header;
  const asked = bare(header).toLowerCase();
  const places = [...names.keys()].filter((i) =>
    [names[i], otherNames[i]].some((name) => bare(name ?? '').toLowerCase() === asked),
  );
  if (places.length === 0) return null;
  const values = new Set<string>();
  const row = (cells: Row, line: number): void => {
    if (line < dataLine || values.size >= VALUES_MAX) return;
    for (const place of places) {
      const value = bare(cells.text(place));
      // A header that comes again after a power cycle is no value.
      if (value !== '' && value.toLowerCase() !== asked && !isRemark(cells)) values.add(value);
    }
  };
  const splitter = new RowSplitter(layout.shape, { row, unclosedQuote: () => undefined }, layout.usualCells);
  splitter.push(head, false);
  for (const chunk of chunks) splitter.push(chunk, false);
  splitter.push('', true);
  return [...values];
}

function isRemark(row: Row): boolean {
  const first = [row.text(0)];
  return isComment(first) || (row.length === 1 && isBlank(first));
}

function bare(cell: string): string {
  return cell.replaceAll('\0', '').trim();
}
