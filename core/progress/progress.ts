import type { DebriefStability, DebriefStated } from '../debrief/debrief.ts';
import type { Verdict } from '../standard/judgement.ts';

/**
 * A student across lessons: `halfdot-progress/1`. Only approaches that can be compared are put side by side; what was
 * left out stands in `leftOut`. What there is nothing to tell of is null. Nothing here ranks anybody.
 */
export interface Progress {
  readonly format: 'halfdot-progress/1';
  readonly student: string;
  readonly cautions: readonly string[];
  /** What all of the approaches have in common; null where there is no judged approach. */
  readonly compared: Compared | null;
  /** In the order flown. */
  readonly lessons: readonly ProgressLesson[];
  /** The standard's criteria in its order, and the level last. */
  readonly lines: readonly ProgressLine[];
  /** Of each interval by itself, and of all that is called better or worse of so many lines together. */
  readonly confidence: { readonly interval: number; readonly together: number; readonly lines: number };
  readonly practise: Practise | null;
  /** Of those compared and graded, at one facility, to be put on one sheet; null where none is graded. */
  readonly shown: { readonly last: ShownApproach; readonly best: ShownApproach } | null;
  readonly goals: readonly ProgressGoal[];
  readonly leftOut: readonly LeftOut[];
}

export type Flown = DebriefStated['flown'];

export interface Compared {
  readonly standard: { readonly id: string; readonly title: string; readonly source: string };
  readonly engineVersion: string;
  /** As it was stated; null: nobody said. */
  readonly flown: Flown;
  readonly approaches: number;
}

/** An approach as the library finds it again. */
export interface ShownApproach {
  readonly debriefId: string;
  /** In its debrief, from 1. */
  readonly number: number;
  /** Its name. */
  readonly facility: string;
  /** `YYYY-MM-DD`, of the lesson. */
  readonly date: string;
  readonly startUtc: string;
  readonly level: number;
  /** The level is that at best. */
  readonly isOpen: boolean;
  readonly score: number;
}

export interface ProgressLesson {
  readonly lessonId: string;
  /** `YYYY-MM-DD`. */
  readonly date: string;
  readonly approaches: number;
}

/**
 * What is followed from lesson to lesson: the RMS off the needle's centre or the target airspeed, the share of the
 * distance flown inside the limit, the share of approaches that met it among those that did or did not, or the level.
 */
export type Measure = 'rms' | 'inside-by-distance' | 'share-met' | 'level';
export type ProgressUnit = 'full scale' | 'kt' | 'share' | 'level';

/** A criterion, or the level, over all lessons. */
export interface ProgressLine {
  /** A criterion's id, or `level`. */
  readonly id: string;
  readonly title: string;
  readonly measure: Measure;
  readonly unit: ProgressUnit;
  readonly better: 'lower' | 'higher';
  /** In the order of the lessons, each of which is there. */
  readonly lessons: readonly LessonCell[];
  readonly verdicts: VerdictCounts;
  /** Of stability, what was said at each gate; empty otherwise. */
  readonly gates: readonly { readonly gate: DebriefStability['gate']; readonly verdicts: VerdictCounts }[];
  /** Why the measure is not known of an approach that was assessed, and of how many. */
  readonly notMeasured: readonly { readonly why: string; readonly approaches: number }[];
  readonly trend: Trend;
}

/** How many approaches have each verdict. A level between two levels is `unclear`, no level `not-assessed`. */
export type VerdictCounts = Readonly<Record<Verdict, number>>;

export interface LessonCell {
  /** What the trend is made of: the middle of the lesson's approaches, or their share. */
  readonly value: number | null;
  /** How many approaches that value stands on. */
  readonly approaches: number;
  /** The middle of the shares of the distance flown inside the limit, by best figures. */
  readonly insideShare: number | null;
  /** The middle of the RMS over final, in the line's unit. */
  readonly rms: number | null;
  readonly verdicts: VerdictCounts;
}

/**
 * `better` and `worse`: with all lines of the record looked at. `perhaps-…`: the line's own interval leaves 0 out, as
 * one of so many lines may by chance. `not-sure`: it holds 0, or there is none. `too-few`: no slope is given.
 */
export type Change = 'better' | 'worse' | 'perhaps-better' | 'perhaps-worse' | 'not-sure' | 'too-few';

export interface Trend {
  readonly change: Change;
  /** Theil–Sen over the lessons in order, units a lesson; null where there are too few. */
  readonly slopePerLesson: number | null;
  /** Of the slope, 95 %. Null where so few lessons hold none. */
  readonly interval: { readonly low: number; readonly high: number } | null;
  /** Approaches and lessons behind it. */
  readonly approaches: number;
  readonly lessons: number;
  /** Why there is no slope, or no interval; null where there is one. */
  readonly why: string | null;
}

/** What was not met most often lately. */
export interface Practise {
  /** The criterion; null where none was not met. */
  readonly criterion: string | null;
  readonly title: string | null;
  readonly verdicts: VerdictCounts | null;
  /** How many lessons it was looked for in: the last three, or as many as there are. */
  readonly lessons: number;
  readonly sentence: string;
}

export interface ProgressGoal {
  /** The library's. */
  readonly id: string;
  readonly text: string;
  /** `YYYY-MM-DD`, as is the other. */
  readonly agreedOn: string;
  readonly reachedOn: string | null;
}

export interface LeftOut {
  readonly why:
    'not-comparable' | 'by-draft' | 'unit-doubted' | 'not-an-approach' | 'same-approach' | 'unreadable';
  /** Approaches, or debriefs where they could not be read. */
  readonly count: number;
  /** Of these, how many were flown after everything that is compared. */
  readonly later: number;
  readonly sentence: string;
}
