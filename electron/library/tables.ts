import type { Generated } from 'kysely';

/** The tables as the last migration leaves them, for the compiler; what the columns hold stands in `migrations/`. */
export interface Tables {
  people: Person;
  lessons: Lesson;
  facilities: KeptFacility;
  logs: KeptLog;
  pending_logs: { sha256: string };
  debriefs: KeptDebrief;
  documents: Document;
  approaches: ApproachRow;
  approach_facts: KeptFacts;
  measures: KeptMeasure;
  notes: Note;
  estimates: Estimate;
  goals: Goal;
  signatures: Signature;
  moves: KeptMove;
  moved_logs: MovedLog;
}

/**
 * What holds the record, every table after those that it refers to. `pending_logs` is about files, and no record, nor is
 * what was done in this library to be undone: another that takes the record in has not done it.
 */
export const RECORD_TABLES = [
  'people',
  'lessons',
  'facilities',
  'logs',
  'debriefs',
  'documents',
  'approaches',
  'notes',
  'estimates',
  'goals',
  'signatures',
] as const satisfies readonly (keyof Tables)[];
export type RecordTable = (typeof RECORD_TABLES)[number];

/** What a backup brings back: the record, what was copied out of it, and the moves that can still be undone in it. */
export const BACKED_UP_TABLES = [
  ...RECORD_TABLES,
  'approach_facts',
  'measures',
  'moves',
  'moved_logs',
] as const satisfies readonly (keyof Tables)[];

export type Role = 'student' | 'instructor';

export interface Person {
  id: string;
  role: Role;
  name: string;
  added_utc: string;
}

export interface Lesson {
  id: string;
  student_id: string | null;
  instructor_id: string | null;
  date: string;
  aircraft: string | null;
  target_airspeed_kt: number | null;
  intercept_airspeed_kt: number | null;
  vref_kt: number | null;
  conditions: 'imc' | 'simulated' | 'vmc' | null;
  syllabus_number: string | null;
  objective: string | null;
}

interface KeptFacility {
  sha256: string;
  name: string;
  ident: string | null;
  designator: string;
  /** `halfdot-facility/1`. */
  content: string;
  added_utc: string;
}

export interface KeptLog {
  sha256: string;
  lesson_id: string;
  file_name: string;
  bytes: number;
  kind: string;
  fixes: number;
  start_utc: string;
  end_utc: string;
  added_utc: string;
}

/** A debrief and everything that it was made of; `standard`, `stated` and `settings` are JSON. */
export interface KeptDebrief {
  id: string;
  log_sha256: string;
  facility_sha256: string;
  standard_id: string;
  standard: string;
  stated: string;
  settings: string;
  heights: 'as-logged' | 'from-rollout' | null;
  antenna_height_ft: number | null;
  engine_version: string;
  document_sha256: string;
  made_utc: string;
}

export interface Document {
  debrief_id: string;
  sha256: string;
  engine_version: string;
  json_gz: Uint8Array;
}

export interface ApproachRow {
  /** Of this file alone: in another the same approach has another. */
  id: Generated<number>;
  debrief_id: string;
  number: number;
  lesson_id: string;
  student_id: string | null;
  date: string;
  start_utc: string;
  facility: string;
  standard_id: string;
  kind: string;
  outcome: string;
  level: number | null;
  level_low: number | null;
  level_high: number | null;
  score: number | null;
  score_low: number | null;
  score_high: number | null;
  summary: string;
}

export interface KeptFacts {
  approach_id: number;
  log_sha256: string;
  end_utc: string;
  standard_sha256: string;
  engine_version: string;
  mix: string;
  gate_1000: string | null;
  gate_500: string | null;
  went_on: string;
  /** 1 where the facility was a draft with values that nobody had confirmed; else 0. */
  by_draft: number;
}

export interface KeptMeasure {
  approach_id: number;
  criterion: string;
  place: number;
  title: string;
  verdict: string;
  inside_share: number | null;
  rms: number | null;
  why_no_rms: string | null;
  why_no_share: string | null;
}

export interface Note {
  id: string;
  lesson_id: string;
  debrief_id: string | null;
  about_utc: string | null;
  author_id: string | null;
  text: string;
  written_utc: string;
}

export interface Estimate {
  id: string;
  debrief_id: string;
  about_utc: string | null;
  level: number | null;
  words: string | null;
  given_utc: string;
}

export interface Goal {
  id: string;
  student_id: string;
  lesson_id: string | null;
  text: string;
  agreed_utc: string;
  reached_utc: string | null;
}

export interface Signature {
  id: string;
  debrief_id: string;
  document_sha256: string;
  person_id: string;
  act: 'graded' | 'countersigned';
  signed_utc: string;
}

interface KeptMove {
  id: string;
  moved_utc: string;
  undone_utc: string | null;
}

interface MovedLog {
  move_id: string;
  log_sha256: string;
  from_lesson_id: string;
  to_lesson_id: string;
}
