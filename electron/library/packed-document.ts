import { gzipSync } from 'node:zlib';
import type { ApproachDebrief, Debrief } from '../../core/debrief/debrief.ts';
import type { Standard } from '../../core/standard/standard.ts';
import { factRows, type FactRows } from './fact-rows.ts';
import { sha256Of } from './log-files.ts';
import type { ApproachRow } from './tables.ts';

/** A debrief as the library keeps it, and what lists and progress read of it: made where it is, in whatever thread. */
export interface PackedDocument {
  /** Of its JSON. */
  readonly sha256: string;
  readonly json_gz: Uint8Array;
  readonly engine_version: string;
  readonly approaches: readonly ThinRow[];
  readonly facts: readonly FactRows[];
}

/** @param standard by which the debrief was made */
export function packDocument(debrief: Debrief, standard: Standard): PackedDocument {
  const json = JSON.stringify(debrief);
  return {
    sha256: sha256Of(json),
    json_gz: gzipSync(json),
    engine_version: debrief.engineVersion,
    approaches: debrief.approaches.map((approach) => thinRow(debrief, approach)),
    facts: factRows(debrief, JSON.stringify(standard)),
  };
}

type ThinRow = Omit<ApproachRow, 'id' | 'debrief_id' | 'lesson_id' | 'student_id' | 'date'>;

/** What a list shows of an approach. */
function thinRow({ facility, standard }: Debrief, approach: ApproachDebrief): ThinRow {
  const { index, startUtc, kind, outcome, grade, summary } = approach;
  return {
    number: index,
    start_utc: startUtc,
    facility: facility.name,
    standard_id: standard.id,
    kind,
    outcome,
    level: grade?.level ?? null,
    level_low: grade?.levelLow ?? null,
    level_high: grade?.levelHigh ?? null,
    score: grade?.score ?? null,
    score_low: grade?.scoreLow ?? null,
    score_high: grade?.scoreHigh ?? null,
    summary,
  };
}
