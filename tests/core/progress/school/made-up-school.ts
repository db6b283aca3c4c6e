import { schoolOf } from '../../../../core/progress/school/school-of.ts';
import type { School, SchoolGroup } from '../../../../core/progress/school/school.ts';
import type {
  ApproachMix,
  JudgedBy,
  SchoolApproach,
  SchoolInput,
} from '../../../../core/progress/school/school-input.ts';

/** What a test says of an approach; all else is the same in all. */
export interface MadeUpApproach extends Partial<ApproachMix> {
  readonly student?: string;
  readonly instructor?: string | null;
  /** Of the student, counted from 1; its day follows from it. */
  readonly lesson?: number;
  /** When in its log it began, in minutes. */
  readonly minute?: number;
  readonly log?: string;
  readonly judgedBy?: Partial<JudgedBy>;
  readonly verdict?: SchoolApproach['verdict'];
  readonly value?: number | null;
  readonly wentOn?: SchoolApproach['wentOn'];
}

const JUDGED_BY: JudgedBy = {
  standardKey: 'key of instrument-rating',
  standardTitle: 'Instrument rating',
  standardSource: 'Source of instrument-rating',
  engineVersion: '0.1.0',
};

function madeUp(what: MadeUpApproach): SchoolApproach {
  const { student = 'rowan', instructor = 'nils', lesson = 1, minute = 0, log, value = 0.2 } = what;
  const day = `2026-${two(1 + Math.floor((lesson - 1) / 28))}-${two(1 + ((lesson - 1) % 28))}`;
  const clock = (m: number) => `${day}T${two(10 + Math.floor(m / 60))}:${two(m % 60)}:00Z`;
  return {
    ref: 0,
    studentId: student,
    instructorId: instructor,
    lessonId: `${student}, lesson ${lesson}`,
    date: day,
    startUtc: clock(minute),
    endUtc: clock(minute + 9),
    logSha256: log ?? `log of ${student}, lesson ${lesson}`,
    judgedBy: { ...JUDGED_BY, ...what.judgedBy },
    caseMix: {
      flown: what.flown === undefined ? 'hand-flown' : what.flown,
      aircraft: what.aircraft === undefined ? 'QQ-ABC' : what.aircraft,
      conditions: what.conditions ?? 'simulated',
      turbulence: what.turbulence === undefined ? 'none' : what.turbulence,
      localizerFullScaleDeg: what.localizerFullScaleDeg ?? 2.5,
      logKind: what.logKind ?? 'csv',
    },
    verdict: what.verdict ?? 'met',
    value,
    wentOn: what.wentOn ?? 'stable',
  };
}

/** Of a coverage, what is 0 in most tests. */
export const NOTHING_ELSE = {
  approachesOfNobody: 0,
  passes: 0,
  byDraft: 0,
  unitDoubted: 0,
  notHeld: 0,
  unreadable: 0,
};

function two(figure: number): string {
  return String(figure).padStart(2, '0');
}

const NAMES = new Map([
  ['rowan', 'Rowan Teal'],
  ['hazel', 'Hazel Wren'],
  ['juniper', 'Juniper Crane'],
  ['nils', 'Nils Brambling'],
  ['ida', 'Ida Plover'],
]);

function inputOf(approaches: readonly MadeUpApproach[], more: Partial<SchoolInput> = {}): SchoolInput {
  return {
    measure: {
      id: 'glidepath-final',
      title: 'Glidepath on final',
      measure: 'rms',
      unit: 'full scale',
      better: 'lower',
    },
    approaches: approaches.map(madeUp),
    filter: { standardKey: null, engineVersion: null, from: null, to: null, mix: {} },
    groupBy: null,
    names: NAMES,
    coverage: { studentsWithoutLog: [], lessonsWithoutLog: 0, logsWithoutApproach: 0, ...NOTHING_ELSE },
    ...more,
  };
}

/** The school of these approaches. */
export function madeUpSchool(approaches: readonly MadeUpApproach[], more: Partial<SchoolInput> = {}): School {
  return schoolOf(inputOf(approaches, more));
}

export function groupOf({ groups }: School, key: string): SchoolGroup {
  return groups!.groups.find((group) => group.key === key)!;
}
