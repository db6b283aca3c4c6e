import type { StatedWind } from '../../core/approach/estimated-airspeed.ts';
import type { Paper } from '../../core/briefing/papers.ts';
import type { Debrief } from '../../core/debrief/debrief.ts';
import type { Heights } from '../../core/debrief/heights.ts';
import type { Issue } from '../../core/issue/issue.ts';
import type { LogSettings } from '../../core/log/log.ts';
import type { SchoolAsked } from '../../core/progress/school/school-page.ts';
import type { SinceLast } from '../../core/progress/since-last.ts';
import type { Inspection } from '../../core/report/inspection.ts';
import type { Sheet } from '../../core/sheet/sheet.ts';
import type { Standard } from '../../core/standard/standard.ts';
import { NOTHING_STATED, type Stated } from '../../core/standard/stated.ts';
import type { Notes, Output } from '../../electron/bridge/calls.ts';
import { EVERY_FLIGHT } from '../../electron/bridge/every-flight.ts';
import type { FlightFilter, FlightOrder, Overview } from '../../electron/bridge/library-calls.ts';
import { NO_NOTES } from '../../electron/bridge/no-notes.ts';
import type { FacilityReading, StandardReading, StandardText } from '../worker/protocol.ts';

export type Sample = Output<'samples'>[number];

/** Why a log could not be read; with columns, one of them may hold what is missing. */
export type NotRead = Pick<Issue, 'message' | 'tip'> & Partial<Pick<Issue, 'code' | 'columns'>>;

/** How far an open log has come. */
export type Reading =
  | {
      readonly kind: 'reading';
      readonly share: number | null;
      /** What it was read as before, which stays to be seen; null when it is read for the first time. */
      readonly last: Inspection | null;
    }
  | { readonly kind: 'failed'; readonly issue: NotRead }
  | { readonly kind: 'read'; readonly inspection: Inspection };

/** What was recognised in a log when it was read last; null when it never was. */
export function lastRead(reading: Reading): Inspection | null {
  if (reading.kind === 'failed') return null;
  return reading.kind === 'read' ? reading.inspection : reading.last;
}

/** How far its debrief has come. */
export type Judged =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'working'; readonly share: number | null; readonly last: Debriefed | null }
  | { readonly kind: 'failed'; readonly issue: Pick<Issue, 'message' | 'tip'> }
  | { readonly kind: 'done'; readonly debriefed: Debriefed };

export interface Debriefed {
  readonly debrief: Debrief;
  /** As a page to read aloud. */
  readonly page: string;
  /** One for each approach. */
  readonly sheets: readonly Sheet[];
}

/** What the user says about a flight: all that a debrief depends on besides the log. */
export interface Statements {
  readonly settings: LogSettings;
  readonly facilityId: string | null;
  readonly standardId: string;
  readonly stated: Stated;
  /** Whether a roll corrects its heights; null: as the program has it of itself. */
  readonly heights: Heights | null;
  /** Of the receiver's antenna above the ground; null when it was not said. */
  readonly antennaHeightFt: number | null;
}

/** What a student thinks of an approach before its debrief is shown: a level, words, or both. */
export interface OwnEstimate {
  readonly level: number | null;
  readonly words: string;
}

/** Where a log stands in the library. */
export interface KeptAs {
  readonly lessonId: string;
  readonly student: string | null;
  readonly date: string;
  /** What was stated when it was kept, so far as this page knows: what is stated since is not kept yet. */
  readonly statements: string | null;
}

/** One log that is open. */
export interface Flight extends Statements {
  readonly id: string;
  readonly name: string;
  /** Shipped: it is always there, and not remembered among the logs opened lately. */
  readonly isSample: boolean;
  readonly reading: Reading;
  /** Facilities towards which it was flown; null until they were tried. */
  readonly fits: readonly string[] | null;
  readonly judged: Judged;
  /** Whether what was stated last time was taken over, and what it would be otherwise; null where nothing was. */
  readonly lastTime: { readonly isTaken: boolean; readonly other: Statements } | null;
  /** What the student thought of it; `open` while the debrief waits for that, null where nobody was asked. */
  readonly estimate: 'open' | OwnEstimate | null;
  /** Where it is kept in the library, as far as this page knows; null where it is not. */
  readonly kept: KeptAs | null;
  /** What was better than the time before, of the debrief that the library keeps; empty for all that is not known. */
  readonly sinceLast: readonly SinceLast[];
  /** Why no copy of it could be kept; null where one was, or none was tried. */
  readonly notCopied: string | null;
}

export interface FacilityEntry {
  readonly id: string;
  readonly text: string;
  /** Can be used, and not changed. */
  readonly isFixed: boolean;
  /** Where it comes from, where it is not the user's own. */
  readonly mark: string | null;
  readonly reading: FacilityReading | null;
}

/** A standard of the user's own. */
export interface StandardEntry extends StandardText {
  readonly reading: StandardReading | null;
}

/** A standard by which a kept debrief was made, where none that is here says the same; it cannot be changed. */
export interface KeptStandard {
  readonly id: string;
  /** As the library has it, which is not as a file of the user's own has it. */
  readonly text: string;
  readonly standard: Standard;
}

export type View =
  'start' | 'flight' | 'library' | 'lesson' | 'progress' | 'student' | 'facilities' | 'brief' | 'standards';

/** How far bringing in has come, and what became of the logs so far. */
export interface Bringing {
  readonly total: number;
  readonly done: number;
  readonly kept: number;
  readonly approaches: number;
  readonly known: number;
  /** Students who came onto the roster, each once. */
  readonly added: readonly string[];
  /** Logs that were kept with nobody, each with why. */
  readonly withNobody: readonly string[];
  /** What has to be known of how logs were read, each with the log's name. */
  readonly cautions: readonly string[];
  /** How many logs those are of. */
  readonly cautioned: number;
  /** Logs that were not kept, each with its sentence. */
  readonly refused: readonly string[];
  readonly state: 'going' | 'stopping' | 'stopped' | 'done';
}

interface LibraryState {
  /** Null until it was asked for. */
  readonly overview: Overview | null;
  /** Counts what was changed, so that lists know when to ask anew. */
  readonly changes: number;
  readonly bringing: Bringing | null;
}

/** How the list of kept flights was left: what is asked for, in which order, and what is marked. */
export interface FlightListState {
  readonly filter: FlightFilter;
  readonly order: FlightOrder;
  /** Hashes of logs. */
  readonly marked: ReadonlySet<string>;
}

/** What is typed for the briefing sheet; null where nothing is. */
export interface BriefTyped {
  readonly facilityId: string | null;
  readonly studentId: string | null;
  readonly groundspeedKt: number | null;
  readonly airspeedKt: number | null;
  readonly wind: StatedWind | null;
  readonly temperatureC: number | null;
  readonly decisionAltitudeFt: number | null;
  readonly decisionAltitudeAgainFt: number | null;
  readonly objective: string | null;
  readonly enteredBy: string | null;
  /** `YYYY-MM-DD`. */
  readonly enteredOn: string | null;
  readonly paper: Paper;
}

export interface AppState {
  readonly view: View;
  readonly samples: readonly Sample[];
  readonly facilities: readonly FacilityEntry[];
  readonly standards: readonly StandardEntry[];
  /** Of debriefs of the library that were opened. */
  readonly keptStandards: readonly KeptStandard[];
  readonly flights: readonly Flight[];
  readonly flightId: string | null;
  /** The lesson that is looked at. */
  readonly lessonId: string | null;
  /** The student whose lessons are looked at. */
  readonly studentId: string | null;
  /** By what the school is looked at, and which part of it. */
  readonly school: SchoolAsked;
  readonly library: LibraryState;
  readonly flightList: FlightListState;
  /** The facility that is looked at. */
  readonly facilityId: string | null;
  readonly brief: BriefTyped;
  readonly notes: Notes;
  /** Logs of which the host keeps a copy; null until it was asked. */
  readonly kept: readonly string[] | null;
  /** Sentences that the user has not yet put away. */
  readonly notices: readonly string[];
  /** What was done for good, told until another view is gone to; it is no trouble. */
  readonly done: string | null;
}

export const AT_START: AppState = {
  view: 'start',
  samples: [],
  facilities: [],
  standards: [],
  keptStandards: [],
  flights: [],
  flightId: null,
  lessonId: null,
  studentId: null,
  school: {
    measure: 'level',
    filter: { standardKey: null, engineVersion: null, from: null, to: null, mix: {} },
    groupBy: null,
    isNamed: false,
  },
  library: { overview: null, changes: 0, bringing: null },
  flightList: { filter: EVERY_FLIGHT, order: { by: 'flown', isDown: true }, marked: new Set() },
  facilityId: null,
  brief: {
    facilityId: null,
    studentId: null,
    groundspeedKt: null,
    airspeedKt: null,
    wind: null,
    temperatureC: null,
    decisionAltitudeFt: null,
    decisionAltitudeAgainFt: null,
    objective: null,
    enteredBy: null,
    enteredOn: null,
    paper: 'a5',
  },
  notes: NO_NOTES,
  kept: null,
  notices: [],
  done: null,
};

export type Action =
  | { readonly do: 'show'; readonly view: View }
  | { readonly do: 'samples'; readonly samples: readonly Sample[] }
  | { readonly do: 'notes'; readonly notes: Notes }
  | { readonly do: 'kept'; readonly sha256s: readonly string[] }
  | { readonly do: 'facilities'; readonly facilities: readonly FacilityEntry[] }
  | { readonly do: 'standards'; readonly standards: readonly StandardEntry[] }
  | { readonly do: 'kept-standard'; readonly kept: KeptStandard }
  | { readonly do: 'look-at'; readonly facilityId: string }
  | { readonly do: 'brief'; readonly brief: Partial<BriefTyped> }
  | { readonly do: 'lesson'; readonly lessonId: string }
  | { readonly do: 'student'; readonly studentId: string }
  | { readonly do: 'school'; readonly school: SchoolAsked }
  | { readonly do: 'library'; readonly library: Partial<LibraryState> }
  | { readonly do: 'flight-list'; readonly change: Partial<FlightListState> }
  | { readonly do: 'notice'; readonly message: string }
  | { readonly do: 'put-away'; readonly index: number }
  | { readonly do: 'done'; readonly message: string }
  | {
      readonly do: 'opened';
      readonly id: string;
      readonly name: string;
      readonly standardId: string;
      readonly isSample: boolean;
    }
  | { readonly do: 'choose'; readonly id: string }
  | { readonly do: 'close'; readonly id: string }
  | { readonly do: 'change'; readonly id: string; readonly change: Partial<Omit<Flight, 'id' | 'name'>> };

/** The next state; the only place where one is made. */
export function reduce(state: AppState, action: Action): AppState {
  const next = changed(state, action);
  return next.view === state.view ? next : { ...next, done: null };
}

function changed(state: AppState, action: Action): AppState {
  switch (action.do) {
    case 'show':
      return { ...state, view: action.view };
    case 'samples':
      return { ...state, samples: action.samples };
    case 'notes':
      return { ...state, notes: action.notes };
    case 'kept':
      return { ...state, kept: action.sha256s };
    case 'facilities':
      return { ...state, facilities: action.facilities };
    case 'standards':
      return { ...state, standards: action.standards };
    case 'kept-standard':
      return { ...state, keptStandards: [...state.keptStandards, action.kept] };
    case 'done':
      return { ...state, done: action.message };
    case 'look-at':
      return { ...state, facilityId: action.facilityId };
    case 'brief':
      return { ...state, brief: briefed(state.brief, action.brief) };
    case 'lesson':
      return { ...state, view: 'lesson', lessonId: action.lessonId };
    case 'student':
      return { ...state, view: 'student', studentId: action.studentId };
    case 'school':
      return { ...state, school: action.school };
    case 'library':
      return { ...state, library: { ...state.library, ...action.library } };
    case 'flight-list':
      return { ...state, flightList: { ...state.flightList, ...action.change } };
    case 'notice':
      // The same reason again, as at every change while the disk is full, says nothing new.
      return state.notices.includes(action.message)
        ? state
        : { ...state, notices: [...state.notices, action.message] };
    case 'put-away':
      return { ...state, notices: state.notices.filter((_, i) => i !== action.index) };
    case 'opened':
      return {
        ...state,
        view: 'flight',
        flightId: action.id,
        flights: [...state.flights, newFlight(action)],
      };
    case 'choose':
      return { ...state, view: 'flight', flightId: action.id };
    case 'close':
      return closed(state, action.id);
    case 'change':
      return {
        ...state,
        flights: state.flights.map((flight) =>
          flight.id === action.id ? { ...flight, ...action.change } : flight,
        ),
      };
  }
}

function newFlight({ id, name, standardId, isSample }: Action & { readonly do: 'opened' }): Flight {
  return {
    id,
    name,
    isSample,
    reading: { kind: 'reading', share: null, last: null },
    settings: {},
    fits: null,
    sinceLast: [],
    facilityId: null,
    standardId,
    stated: NOTHING_STATED,
    heights: null,
    antennaHeightFt: null,
    judged: { kind: 'nothing' },
    lastTime: null,
    estimate: null,
    kept: null,
    notCopied: null,
  };
}

/** The newest debrief there is, also while a newer one is made; null where there is none. */
export function lastDebriefed(judged: Judged): Debriefed | null {
  if (judged.kind === 'done') return judged.debriefed;
  return judged.kind === 'working' ? judged.last : null;
}

function closed(state: AppState, id: string): AppState {
  const flights = state.flights.filter((flight) => flight.id !== id);
  if (state.flightId !== id) return { ...state, flights };
  const next = flights.at(-1)?.id ?? null;
  return { ...state, flights, flightId: next, view: next === null ? 'start' : state.view };
}

/** What was taken off one runway's chart, or is said of its air, is not said of another's. */
const OF_ONE_FACILITY = {
  wind: null,
  temperatureC: null,
  decisionAltitudeFt: null,
  decisionAltitudeAgainFt: null,
  enteredBy: null,
  enteredOn: null,
};

function briefed(brief: BriefTyped, change: Partial<BriefTyped>): BriefTyped {
  const { facilityId } = brief;
  const isOther = facilityId !== null && (change.facilityId ?? facilityId) !== facilityId;
  return { ...brief, ...(isOther && OF_ONE_FACILITY), ...change };
}
