import type { Briefing, BriefingAsked } from '../../core/briefing/briefing.ts';
import type { Debrief } from '../../core/debrief/debrief.ts';
import type { Heights } from '../../core/debrief/heights.ts';
import type { PlanProperties } from '../../core/facility/plan-shapes.ts';
import type { JsonProblem } from '../../core/json/problem.ts';
import type { Issue } from '../../core/issue/issue.ts';
import type { LogSettings } from '../../core/log/log.ts';
import type { SinceLast } from '../../core/progress/since-last.ts';
import type { Inspection } from '../../core/report/inspection.ts';
import type { Sheet } from '../../core/sheet/sheet.ts';
import type { Standard } from '../../core/standard/standard.ts';
import type { Stated } from '../../core/standard/stated.ts';
import type { HandOver } from '../hand-over/hand-over.ts';
import type { SourceWork } from './sources-protocol.ts';
import type { Dots } from '../../core/sheet/sheet.ts';

/** A facility by an id of the app's, as its file has it. */
export interface FacilityText {
  readonly id: string;
  readonly text: string;
}

/** A standard of the user's own by an id of the app's, as its file has it. */
export type StandardText = FacilityText;

/**
 * What approaches are held to: a shipped standard by its id, one of the user's own by its text, or the one that a
 * debrief in the library was made by, as it is kept there.
 */
export type StandardAsked =
  | { readonly kind: 'shipped'; readonly id: string }
  | { readonly kind: 'own'; readonly text: string }
  | { readonly kind: 'kept'; readonly text: string };

/** What a standard's file says: the standard, or what is wrong with it. */
export interface StandardReading {
  readonly id: string;
  readonly standard: Standard | null;
  readonly problems: readonly Issue[];
}

/** What a debrief is asked by, besides the log and the facility. */
interface Asked {
  readonly standard: StandardAsked;
  readonly stated: Stated;
  /** Null: as the program has it of itself. */
  readonly heights: Heights | null;
  /** Null: what is usual. */
  readonly antennaHeightFt: number | null;
}

/** A debrief as it was asked for. */
export interface AskedDebrief {
  readonly log: string;
  readonly facility: FacilityText;
  readonly asked: Asked;
}

/** The same for the page to hand over, with what the library knows of the time before. */
export type HandedOver = AskedDebrief & { readonly sinceLast: readonly SinceLast[] };

/** What can be saved of a debrief: the page to hand over, the fixes of one approach, or all of it for a map. */
export type Saved = 'page' | 'deviations' | 'map';

export interface SavedFile {
  /** Of its name, behind the log's. */
  readonly ending: string;
  readonly type: string;
  readonly text: string;
}

/** What a facility file says of itself. */
export interface FacilityReading {
  readonly id: string;
  readonly name: string;
  readonly ident: string | null;
  readonly runway: string;
  readonly issues: readonly Issue[];
  /** Why it cannot be used; null when it can. */
  readonly refusal: Issue | null;
  /** All that keeps it from being used, each with its key; empty when it can be, and when its text is no JSON. */
  readonly problems: readonly JsonProblem[];
  /** What follows from it in a few lines; empty when it cannot be used. */
  readonly facts: readonly FacilityFact[];
  /** What follows from it, as the command prints it; null when it cannot be used. */
  readonly details: string | null;
  /** What it looks like from above; empty when it cannot be used. */
  readonly plan: readonly PlanOutline[];
}

/** One thing that follows from a facility, and where it comes from; null where that needs no words. */
export interface FacilityFact {
  readonly words: string;
  readonly value: string;
  readonly from: string | null;
}

/** One shape of a plan: a line, or an outline that closes, in degrees. */
export interface PlanOutline {
  readonly kind: PlanProperties['kind'];
  readonly distanceNm: number | null;
  readonly points: readonly (readonly [lonDeg: number, latDeg: number])[];
}

/** A facility to be briefed, with its decision altitude as it was typed, and typed again. */
export interface AskedBriefing {
  readonly facility: FacilityText;
  readonly asked: Omit<BriefingAsked, 'decisionAltitudeFt'>;
  readonly decisionAltitudesFt: readonly [first: number | null, again: number | null];
}

export interface BriefingMade {
  readonly briefing: Briefing;
  /** Why the decision altitude that was typed is not on it; null where it is, or where none was typed. */
  readonly decisionProblem: Issue | null;
}

/** A log to be read: its bytes, and the hash of them, which the page has taken to know it again. */
export interface ReadLog {
  readonly log: string;
  readonly name: string;
  readonly bytes: ArrayBuffer;
  /** In hex digits. */
  readonly sha256: string;
  readonly settings: LogSettings;
}

/** What the page asks of the worker, and what it answers, by name. */
interface Work extends SourceWork {
  /** Keeps the bytes under `log`, and says what was recognised in them. */
  read: { in: ReadLog; out: Inspection };
  /** Reads a kept log anew with other settings. */
  reread: { in: { log: string; settings: LogSettings }; out: Inspection };
  /** Ids of the facilities towards which the log was flown, most approaches first. */
  fit: { in: { log: string; facilities: readonly FacilityText[] }; out: readonly string[] };
  debrief: {
    in: AskedDebrief;
    /** With a sheet for each approach, in the order of the debrief. */
    out: { debrief: Debrief; page: string; sheets: readonly Sheet[] };
  };
  /** What the page to hand over is drawn of. */
  handOver: { in: HandedOver; out: HandOver };
  save: { in: HandedOver & { what: Saved; approach: number; dots: Dots }; out: SavedFile };
  facilities: { in: { facilities: readonly FacilityText[] }; out: readonly FacilityReading[] };
  brief: { in: AskedBriefing; out: BriefingMade };
  standards: { in: { standards: readonly StandardText[] }; out: readonly StandardReading[] };
  /** A copy of what was read. */
  bytes: { in: { log: string }; out: ArrayBuffer };
  forget: { in: { log: string }; out: null };
}

export type Job = keyof Work;
export type JobInput<J extends Job> = Work[J]['in'];
export type JobOutput<J extends Job> = Work[J]['out'];

export type ToWorker =
  | { readonly [J in Job]: { readonly id: number; readonly job: J; readonly input: JobInput<J> } }[Job]
  | { readonly id: number; readonly job: 'cancel' };

export type FromWorker =
  | { readonly id: number; readonly kind: 'progress'; readonly share: number | null }
  | { readonly id: number; readonly kind: 'done'; readonly value: unknown }
  | { readonly id: number; readonly kind: 'refused'; readonly issue: Issue }
  | { readonly id: number; readonly kind: 'fault'; readonly message: string };
