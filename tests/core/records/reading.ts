import { expect } from 'vitest';
import type { Issue } from '../../../core/issue/issue.ts';
import type { Job } from '../../../core/log/log.ts';
import { deriveGeometry, type FacilityGeometry } from '../../../core/facility/derive-geometry.ts';
import { checkFacility } from '../../../core/facility/contradictions.ts';
import type { Facility } from '../../../core/facility/facility-schema.ts';
import { parseFacility } from '../../../core/facility/parse-facility.ts';
import { draftFromRecords, type RecordsChoice } from '../../../core/records/draft-from-records.ts';
import type { Drafted } from '../../../core/records/drafted.ts';
import type { RecordsIndex } from '../../../core/records/records-index.ts';
import { scanRecords } from '../../../core/records/scan-records.ts';
import published from '../../reference/official-records.json' with { type: 'json' };

export const idle: Job = { progress: () => {}, cancelled: () => false };

/** The published records of these rows, as lines of a file. */
export function publishedLines(...ids: string[]): string[] {
  const lines = published.rows.filter(({ id }) => ids.includes(id)).map(({ record }) => record);
  expect(lines.length).toBeGreaterThan(0);
  return lines;
}

/** The index of a file of these lines, which has to be usable. */
export async function indexOf(...lines: readonly string[]): Promise<RecordsIndex> {
  const index = await scanRecords([`${lines.join('\n')}\n`], null, idle);
  if (!index.ok) throw new Error(index.refusal.message);
  return index.value;
}

export interface WholeDraft {
  readonly drafted: Drafted;
  readonly facility: Facility;
  readonly geometry: FacilityGeometry;
  /** The draft's own, and those of the facility's checks. */
  readonly issues: readonly Issue[];
}

/** A draft that has to be a whole facility. */
export function wholeDraft(index: RecordsIndex, choice: RecordsChoice): WholeDraft {
  const drafted = draftFromRecords(index, choice);
  const parsed = parseFacility(JSON.stringify(drafted.facility), 'draft');
  if (!parsed.ok) throw new Error(parsed.refusal.message);
  const geometry = deriveGeometry(parsed.value);
  const issues = [...drafted.issues, ...checkFacility(parsed.value, geometry, 2026.7)];
  return { drafted, facility: parsed.value, geometry, issues };
}

export const codesOf = (issues: readonly Issue[]): string[] => issues.map(({ code }) => code);

/** A line with other text from a column on. */
export function withColumns(line: string, column: number, text: string): string {
  return line.slice(0, column - 1) + text + line.slice(column - 1 + text.length);
}
