import type { ApproachDebrief, Debrief, DebriefCriterion } from '../../../core/debrief/debrief.ts';
import { factsOf, type ApproachFacts } from '../../../core/progress/approach-facts.ts';
import { progressOf, type ProgressInput } from '../../../core/progress/progress-of.ts';
import type { Progress } from '../../../core/progress/progress.ts';
import type { Verdict } from '../../../core/standard/judgement.ts';

/** What a test says of an approach; all else is that of a good one. */
export interface MadeUp {
  readonly lesson?: number;
  /** When in its log it began, in minutes. */
  readonly minute?: number;
  readonly log?: string;
  readonly kind?: ApproachDebrief['kind'];
  readonly facility?: string;
  /** The facility is a draft from a landing, with values that nobody has confirmed. */
  readonly isByDraft?: boolean;
  /** Its heights seem to be in another unit: it was held to nothing. */
  readonly isUnitDoubted?: boolean;
  readonly standard?: string;
  readonly standardKey?: string;
  readonly engine?: string;
  /** The gate on which stability stands, in words. */
  readonly gate?: string;
  readonly flown?: ApproachDebrief['stated']['flown'];
  readonly verdicts?: Readonly<Record<string, Verdict>>;
  readonly glidepathRms?: number;
  readonly airspeed?: {
    readonly mean: number;
    readonly standardDeviation: number;
    readonly estimated?: boolean;
  };
  /** Of 5 NM that each timed criterion counted, 100 s; the seconds beyond were fewer. */
  readonly outsideNm?: number;
  /** The miles that they counted. */
  readonly assessedNm?: number;
  /** As versions before 0.2.0 left a debrief: without miles. */
  readonly hasNoMiles?: boolean;
  readonly instructorFlewFinal?: boolean;
  readonly level?: readonly [level: number, low: number, high: number] | null;
}

const TIMED = new Set([
  'localizer-before-final',
  'altitude-before-final',
  'localizer-final',
  'glidepath-final',
  'airspeed-final',
]);
const TITLES: Readonly<Record<string, string>> = {
  'localizer-before-final': 'Localizer before final',
  'altitude-before-final': 'Altitude before final',
  'localizer-final': 'Localizer on final',
  'glidepath-final': 'Glidepath on final',
  'airspeed-final': 'Airspeed on final',
  stability: 'Stable from 1,000 ft',
  minimums: 'Minimums',
};
const FINAL = { kind: 'final', startUtc: '2026-05-01T10:05:00Z', endUtc: '2026-05-01T10:07:00Z' };

/** The parts of a debrief that progress reads, and no others. */
export function madeUp(what: MadeUp = {}): ApproachFacts[] {
  const { lesson = 1, minute = 0, log = `log of lesson ${lesson}`, standard = 'instrument-rating' } = what;
  const clock = (m: number) =>
    `2026-05-01T${String(10 + Math.floor(m / 60)).padStart(2, '0')}:${String(m % 60).padStart(2, '0')}:00Z`;
  const approach = {
    index: 1,
    kind: what.kind ?? 'approach',
    startUtc: clock(minute),
    endUtc: clock(minute + 9),
    criteria: what.isUnitDoubted ? [] : Object.keys(TITLES).map((id) => criterionOf(id, what)),
    segments: [segmentOf(what)],
    stability: [
      { gate: 'gate-1000', verdict: what.verdicts?.['stability'] ?? 'met' },
      { gate: 'gate-500', verdict: 'met' },
    ],
    stated: {
      flown: what.flown ?? null,
      conditions: 'not-stated',
      turbulence: null,
      instructorFlew: what.instructorFlewFinal ? [FINAL] : [],
    },
    outcome: 'landed',
    events: [],
    grade: what.isUnitDoubted ? null : gradeOf(what.level === undefined ? [4, 4, 4] : what.level),
  };
  const debrief = {
    engineVersion: what.engine ?? '0.1.0',
    log: { sha256: log },
    facility: {
      name: what.facility ?? 'Petrelholm ILS 07',
      derived: { localizerFullScaleDeg: 2.5, glidepathOrigin: { elevationFt: 0 } },
      issues: what.isByDraft ? [{ code: 'facility-draft' }] : [],
    },
    standard: { id: standard, title: `Title of ${standard}`, source: `Source of ${standard}` },
    approaches: [approach],
  } as unknown as Debrief;
  const standardKey = what.standardKey ?? `text of ${standard}`;
  return factsOf({
    debriefId: `debrief of ${log}`,
    lessonId: `lesson-${lesson}`,
    date: dateOf(lesson),
    standardKey,
    debrief,
  });
}

function dateOf(lesson: number): string {
  return `2026-05-${String(lesson).padStart(2, '0')}`;
}

function criterionOf(
  id: string,
  { verdicts, outsideNm = 0, assessedNm = 5, hasNoMiles, gate }: MadeUp,
): DebriefCriterion {
  const isTimed = TIMED.has(id);
  const outsideS = outsideNm * 10;
  const timeOutsideS = isTimed ? { atLeast: 0, best: outsideS, atMost: outsideS } : null;
  const miles = isTimed ? { assessedNm, outsideNm } : { assessedNm: null, outsideNm: null };
  const assessedS = isTimed ? 100 : 0;
  return {
    id,
    title: gate && id === 'stability' ? `Stable from ${gate}` : TITLES[id]!,
    verdict: verdicts?.[id] ?? 'met',
    assessedS,
    timeOutsideS,
    ...(!hasNoMiles && miles),
  } as DebriefCriterion;
}

function segmentOf({ glidepathRms = 0.2, airspeed }: MadeUp) {
  const { estimated = false, ...spread } = airspeed ?? { mean: 90, standardDeviation: 3 };
  return {
    ...FINAL,
    localizer: { rmsFullScale: 0.1 },
    glidepath: { rmsFullScale: glidepathRms },
    airspeed: { ...spread, estimated, targetKt: 90 },
  };
}

function gradeOf(level: MadeUp['level']) {
  return level ? { level: level[0], levelLow: level[1], levelHigh: level[2], score: 20 * level[0] } : null;
}

/** The record of these approaches. */
export function recordOf(approaches: readonly MadeUp[], more: Partial<ProgressInput> = {}): Progress {
  const facts = approaches.flatMap(madeUp);
  return progressOf({ student: 'Rowan Teal', approaches: facts, goals: [], unreadable: [], ...more });
}

/** So many lessons of so many approaches each, one after the other within a lesson. */
export function lessonsOf(
  lessons: number,
  each: number,
  what: (lesson: number, approach: number) => MadeUp = () => ({}),
): MadeUp[] {
  return Array.from({ length: lessons * each }, (_, i) => {
    const lesson = Math.floor(i / each) + 1;
    return { lesson, minute: (i % each) * 10, ...what(lesson, i % each) };
  });
}

export function lineOf({ lines }: Progress, id: string): Progress['lines'][number] {
  return lines.find((line) => line.id === id)!;
}
