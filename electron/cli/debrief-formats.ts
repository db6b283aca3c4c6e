import type { Composed } from '../../core/debrief/compose-debrief.ts';
import type { Debrief } from '../../core/debrief/debrief.ts';
import { debriefsCsv } from '../../core/report/debrief-csv.ts';
import { debriefText } from '../../core/report/debrief-text.ts';

/** One way to write debriefs. `P` is what is kept of each log until all are read: its track is not, where it can go. */
export interface DebriefFormat<P = unknown> {
  /** Of a file's name. */
  readonly ending: string;
  partOf(composed: Composed): P;
  written(part: P): string;
  /** Several logs in one answer. */
  allInOne(parts: readonly P[]): string;
}

const text: DebriefFormat<Debrief> = {
  ending: 'txt',
  partOf: ({ debrief }) => debrief,
  written: debriefText,
  allInOne: (debriefs) => debriefs.map(debriefText).join(`\n${'─'.repeat(100)}\n\n`),
};

const json: DebriefFormat<Debrief> = {
  ending: 'json',
  partOf: ({ debrief }) => debrief,
  written: (debrief) => `${JSON.stringify(debrief, null, 2)}\n`,
  allInOne: (debriefs) => `${JSON.stringify(debriefs, null, 2)}\n`,
};

const csv: DebriefFormat<Debrief> = {
  ending: 'csv',
  partOf: ({ debrief }) => debrief,
  written: (debrief) => debriefsCsv([debrief]),
  allInOne: debriefsCsv,
};

/** By their names; those that bring much with them are loaded when they are asked for, so that text starts as fast. */
const FORMATS = {
  text: async () => text,
  json: async () => json,
  csv: async () => csv,
  html: async () => (await import('./page-format.ts')).html,
  geojson: async () => (await import('./map-format.ts')).geojson,
} as const;

export const FORMAT_NAMES = Object.keys(FORMATS);

export async function debriefFormat(name: string): Promise<DebriefFormat> {
  // What a format keeps of a log only itself reads.
  return FORMATS[name as keyof typeof FORMATS]() as Promise<DebriefFormat>;
}
