import { z } from 'zod';
import { ID, KEPT } from './kept.ts';
import { LARGEST_BASE64 } from './kept-limits.ts';
import { OWN_STANDARDS } from './own-standards-bounds.ts';
import { LOG_SETTINGS, SHA256, STATED } from './recent.ts';

const NOTHING = z.strictObject({});
const NAME = z.string().trim().min(1).max(200);
const DATE = z.iso.date();
const WORDS = z.string().max(10_000);
/** More logs than this are named by what they have in common. */
const MOST_LOGS = 100_000;

const STUDENT = z.strictObject({
  id: ID,
  name: z.string(),
  lessons: z.number(),
  approaches: z.number(),
  /** Date of the last lesson; null when there was none yet. */
  last: z.string().nullable(),
});

const MOVE = z.strictObject({
  id: ID,
  movedUtc: z.string(),
  logs: z.number(),
  /** Null: nobody's. */
  student: z.string().nullable(),
  /** Null: several. */
  date: z.string().nullable(),
});
export type Move = z.infer<typeof MOVE>;

/** What the library holds, in short. */
const OVERVIEW = z.strictObject({
  /** False: nothing was kept yet. */
  isBegun: z.boolean(),
  /** Where it lies, to be shown: a page can do nothing with it. */
  folder: z.string(),
  students: z.array(STUDENT),
  instructors: z.array(z.string()),
  /** Names of facilities flown to. */
  facilities: z.array(z.string()),
  approaches: z.number(),
  lastMove: MOVE.nullable(),
  /** Debriefs that another version of Halfdot made. */
  ofOtherVersions: z.number(),
});
export type Overview = z.infer<typeof OVERVIEW>;

/** Which approaches are meant; null where that does not matter. */
const FILTER = z.strictObject({
  /** `nobody`: those of which nobody said whose they are. */
  student: z.union([z.strictObject({ id: ID }), z.literal('nobody')]).nullable(),
  lessonId: ID.nullable(),
  facility: z.string().nullable(),
  /** Dates, both included. */
  fromDate: DATE.nullable(),
  toDate: DATE.nullable(),
  /** Level 1 to 5, or fewer. */
  levelAtMost: z.number().int().min(1).max(5).nullable(),
  /** Every word stands in the student's name, the facility's, the log's or the sentence about it. */
  words: z.string().max(200).nullable(),
});
export type FlightFilter = z.infer<typeof FILTER>;

const ORDER = z.strictObject({
  by: z.enum(['flown', 'student', 'facility', 'outcome', 'level', 'score']),
  isDown: z.boolean(),
});
export type FlightOrder = z.infer<typeof ORDER>;

const FIGURE = z.number().nullable();
const ROW = z.strictObject({
  debriefId: ID,
  number: z.number(),
  sha256: SHA256,
  fileName: z.string(),
  lessonId: ID,
  date: z.string(),
  startUtc: z.string(),
  student: z.string().nullable(),
  facility: z.string(),
  standardId: z.string(),
  kind: z.string(),
  outcome: z.string(),
  level: FIGURE,
  levelLow: FIGURE,
  levelHigh: FIGURE,
  score: FIGURE,
  scoreLow: FIGURE,
  scoreHigh: FIGURE,
  summary: z.string(),
  /** Hash of the debrief's document: what is signed is this one. */
  document: SHA256,
});
export type FlightRow = z.infer<typeof ROW>;

const BARE_LOG = z.strictObject({
  sha256: SHA256,
  fileName: z.string(),
  lessonId: ID,
  date: z.string(),
  student: z.string().nullable(),
});

const CONDITIONS = z.enum(['imc', 'simulated', 'vmc']).nullable();
const SHORT = z.string().max(100).nullable();
const LESSON_FACTS = z.strictObject({
  date: DATE,
  aircraft: SHORT,
  target_airspeed_kt: FIGURE,
  intercept_airspeed_kt: FIGURE,
  vref_kt: FIGURE,
  conditions: CONDITIONS,
  syllabus_number: SHORT,
  objective: WORDS.nullable(),
});
/** What is not named stays: two fields may be left before the first of them is kept. */
const LESSON_CHANGE = z.strictObject({
  date: DATE.exactOptional(),
  instructor: NAME.nullable().exactOptional(),
  aircraft: SHORT.exactOptional(),
  target_airspeed_kt: FIGURE.exactOptional(),
  intercept_airspeed_kt: FIGURE.exactOptional(),
  vref_kt: FIGURE.exactOptional(),
  conditions: CONDITIONS.exactOptional(),
  syllabus_number: SHORT.exactOptional(),
  objective: WORDS.nullable().exactOptional(),
});

const LESSON_PAGE = z.strictObject({
  lesson: LESSON_FACTS.extend({
    id: ID,
    student_id: ID.nullable(),
    instructor_id: ID.nullable(),
    student: z.string().nullable(),
    instructor: z.string().nullable(),
  }),
  approaches: z.array(ROW),
  logs: z.array(
    z.strictObject({ sha256: SHA256, fileName: z.string(), fixes: z.number(), startUtc: z.string() }),
  ),
  notes: z.array(
    z.strictObject({
      id: ID,
      lesson_id: ID,
      debrief_id: ID.nullable(),
      about_utc: z.string().nullable(),
      author_id: ID.nullable(),
      author: z.string().nullable(),
      text: z.string(),
      written_utc: z.string(),
    }),
  ),
  goals: z.array(
    z.strictObject({
      id: ID,
      student_id: ID,
      lesson_id: ID.nullable(),
      text: z.string(),
      agreed_utc: z.string(),
      reached_utc: z.string().nullable(),
    }),
  ),
  estimates: z.array(
    z.strictObject({
      id: ID,
      debrief_id: ID,
      about_utc: z.string().nullable(),
      level: FIGURE,
      words: z.string().nullable(),
      given_utc: z.string(),
    }),
  ),
  signatures: z.array(
    z.strictObject({
      debriefId: ID,
      act: z.enum(['graded', 'countersigned']),
      signedUtc: z.string(),
      name: z.string(),
      signed: SHA256,
      current: SHA256,
    }),
  ),
});
export type LessonPage = z.infer<typeof LESSON_PAGE>;

/** What a debrief is made by, besides the log and the facility. */
const ASKED = z.strictObject({
  standard: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('shipped'), id: z.string().max(100) }),
    z.strictObject({ kind: z.literal('own'), text: z.string().max(OWN_STANDARDS.characters) }),
    /** That of a debrief which is kept already, as it is kept. */
    z.strictObject({ kind: z.literal('kept'), text: z.string().max(1_000_000) }),
  ]),
  stated: STATED,
  settings: LOG_SETTINGS,
  heights: z.enum(['as-logged', 'from-rollout']).nullable(),
  antennaHeightFt: FIGURE,
});

const FACILITY_TEXT = z.string().max(1_000_000);

/** A log to be kept: its bytes, what it is debriefed by, and whose it is. */
const TO_KEEP = z.strictObject({
  name: NAME,
  /** Names of the folders that it lay in below the one that was chosen, outermost first. */
  folders: z.array(z.string().max(255)).max(50),
  /** Of the one that was chosen: somebody's who is known, and nobody's who is not. */
  chosenFolder: z.string().max(255).nullable().optional(),
  base64: z.string().max(LARGEST_BASE64),
  facilities: z.array(FACILITY_TEXT).min(1).max(1000),
  asked: ASKED,
  /** Whose it is: nobody's, one student's (added if need be), or whose name a folder bears. */
  student: z.discriminatedUnion('by', [
    z.strictObject({ by: z.literal('nobody') }),
    z.strictObject({ by: z.literal('name'), name: NAME }),
    z.strictObject({ by: z.literal('folder'), addsStudents: z.boolean() }),
  ]),
  /** Of the lesson; null: the day on which the log begins. */
  date: DATE.nullable(),
  /**
   * `bring-in`: a log that is there already is passed over. `keep`: it is debriefed at this facility and by this standard
   * where it was not yet. `anew`: what is kept of that is made anew, by what is stated now.
   */
  how: z.enum(['bring-in', 'keep', 'anew']),
});

/** Something long is done to the whole library: how far it is. */
const WORK = z.strictObject({ what: z.string(), share: z.number() });

/** What the page can ask of the library. Whatever it cannot do is answered with its one sentence. */
export const LIBRARY_CALLS = {
  library: { input: NOTHING, output: OVERVIEW },
  libraryFlights: {
    input: z.strictObject({
      filter: FILTER,
      order: ORDER,
      from: z.number().int().min(0),
      count: z.number().int().min(0).max(500),
    }),
    output: z.strictObject({ total: z.number(), rows: z.array(ROW) }),
  },
  libraryLogs: { input: z.strictObject({ filter: FILTER }), output: z.array(SHA256) },
  logsWithoutApproach: { input: NOTHING, output: z.array(BARE_LOG) },
  lesson: { input: z.strictObject({ id: ID }), output: LESSON_PAGE },
  changeLesson: {
    input: z.strictObject({ id: ID, change: LESSON_CHANGE }),
    output: NOTHING,
  },
  keepInLibrary: { input: TO_KEEP, output: KEPT },
  /** A kept debrief with all that it was made of, to be opened again. */
  readDebrief: {
    input: z.strictObject({ debriefId: ID }),
    output: z.strictObject({
      name: z.string(),
      base64: z.string(),
      facility: FACILITY_TEXT,
      standard: z.string(),
      standardId: z.string(),
      stated: STATED,
      settings: LOG_SETTINGS,
      heights: z.enum(['as-logged', 'from-rollout']).nullable(),
      antennaHeightFt: FIGURE,
      lessonId: ID,
      student: z.string().nullable(),
      date: z.string(),
    }),
  },
  /** Where logs are kept; those that are not in the library are left out. */
  whereKept: {
    input: z.strictObject({ sha256s: z.array(SHA256).max(1000) }),
    output: z.array(
      z.strictObject({ sha256: SHA256, lessonId: ID, student: z.string().nullable(), date: z.string() }),
    ),
  },
  moveLogs: {
    input: z.strictObject({
      sha256s: z.array(SHA256).max(MOST_LOGS),
      /** Added if need be; null: nobody. */
      student: NAME.nullable(),
      /** Null: each keeps its lesson's. */
      date: DATE.nullable(),
    }),
    output: z.strictObject({ move: MOVE.nullable() }),
  },
  /** Undoes that move, where it is the last one still. */
  undoMove: { input: z.strictObject({ id: ID }), output: z.strictObject({ move: MOVE.nullable() }) },
  readRoster: {
    input: z.strictObject({ text: z.string().max(5_000_000) }),
    output: z.strictObject({
      added: z.array(z.string()),
      known: z.number(),
      refused: z.array(z.string()),
    }),
  },
  addNote: {
    input: z.strictObject({
      lessonId: ID,
      debriefId: ID.nullable(),
      aboutUtc: z.string().nullable(),
      author: NAME.nullable(),
      text: WORDS.trim().min(1),
    }),
    output: NOTHING,
  },
  giveEstimate: {
    input: z.strictObject({
      debriefId: ID,
      aboutUtc: z.string().nullable(),
      level: z.number().int().min(1).max(5).nullable(),
      words: WORDS.trim().nullable(),
    }),
    output: NOTHING,
  },
  agreeGoal: {
    input: z.strictObject({ studentId: ID, lessonId: ID.nullable(), text: WORDS.trim().min(1) }),
    output: NOTHING,
  },
  reachGoal: { input: z.strictObject({ id: ID, isReached: z.boolean() }), output: NOTHING },
  signDebrief: {
    input: z.strictObject({
      debriefId: ID,
      /** What was looked at: another one is not signed. */
      document: SHA256,
      name: NAME,
      act: z.enum(['graded', 'countersigned']),
    }),
    output: NOTHING,
  },
  holdings: {
    input: z.strictObject({ studentId: ID }),
    output: z.strictObject({
      name: z.string(),
      lessons: z.number(),
      logs: z.number(),
      approaches: z.number(),
      /** Copies made beside the library go too; what others wrote with the name in it stays, and is counted. */
      copies: z.array(z.string()),
      namedElsewhere: z.number(),
    }),
  },
  deleteStudent: {
    input: z.strictObject({ studentId: ID }),
    /** What is left to do, a sentence each; empty when every byte has gone. */
    output: z.strictObject({ left: z.array(z.string()), logs: z.array(SHA256) }),
  },
  /** Both write into a new folder of the host's choosing, and name it. */
  backUpLibrary: {
    input: NOTHING,
    output: z.strictObject({ folder: z.string(), logs: z.number(), missing: z.array(z.string()).readonly() }),
  },
  exportLibrary: {
    input: z.strictObject({ isPseudonymous: z.boolean() }),
    output: z.strictObject({ folder: z.string(), rows: z.number(), missing: z.array(z.string()).readonly() }),
  },
  /** Makes the debriefs of other versions anew; what was signed stays beside what is new. */
  recomputeLibrary: {
    input: NOTHING,
    output: z.strictObject({
      madeAnew: z.number(),
      /** Of each that reads otherwise now: which it is, and how. */
      changed: z.array(z.strictObject({ name: z.string(), lines: z.array(z.string()).readonly() })),
      /** Those that could not be made, each with its sentence. */
      left: z.array(z.string()),
      isStopped: z.boolean(),
    }),
  },
  /** Backups that were made so, newest first, by their names. */
  backups: { input: NOTHING, output: z.array(z.strictObject({ name: z.string(), madeUtc: z.string() })) },
  restoreLibrary: {
    input: z.strictObject({ name: z.string().max(255) }),
    output: z.strictObject({ words: z.string() }),
  },
  libraryWork: { input: NOTHING, output: WORK.nullable() },
  stopLibraryWork: { input: NOTHING, output: NOTHING },
  /** A student's lessons, the oldest first, also those without an approach; null: those of nobody yet. */
  lessons: {
    input: z.strictObject({ studentId: ID.nullable() }),
    output: z.array(z.strictObject({ id: ID, date: z.string(), logs: z.number(), approaches: z.number() })),
  },
} as const;
