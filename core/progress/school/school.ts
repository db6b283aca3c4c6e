import type { VerdictCounts } from '../progress.ts';
import type { WentOn } from '../went-on.ts';
import type { GroupBy, JudgedBy, MixFactor, SchoolMeasure } from './school-input.ts';

/**
 * What the students of a school need, and groups of them side by side: `halfdot-school/1`, plain JSON. One measure of
 * one standard and one version of the engine; what was left out stands in `leftOut`. Students and groups stand in the
 * order of their labels and of nothing else: nobody is ranked.
 */
export interface School {
  readonly format: 'halfdot-school/1';
  readonly cautions: readonly string[];
  readonly measure: SchoolMeasure;
  /** Null where there is no approach to tell of. */
  readonly compared: SchoolCompared | null;
  /** Every standard and version of the engine between the days, by title: what a page can offer. */
  readonly judgedBy: readonly JudgedByCount[];
  readonly leftOut: readonly SchoolLeftOut[];
  readonly coverage: SchoolCoverage;
  /** Of all that is judged alike, before the case mix was filtered. */
  readonly caseMix: readonly MixCount[];
  readonly students: readonly SchoolStudent[];
  readonly distribution: readonly LessonSpread[];
  readonly outcomes: Outcomes | null;
  /** Null where no groups were asked for, or there is nothing to group. */
  readonly groups: SchoolGroups | null;
  readonly needs: readonly StudentNeed[];
  /** Sentences that belong beside the figures. */
  readonly notes: readonly string[];
}

export interface SchoolCompared extends JudgedBy {
  /** After all filters. */
  readonly approaches: number;
  readonly students: number;
  /** Approaches of which the measure has a value. */
  readonly valued: number;
  /** First and last day, `YYYY-MM-DD`. */
  readonly from: string;
  readonly to: string;
}

export interface JudgedByCount extends JudgedBy {
  readonly approaches: number;
  readonly students: number;
}

export interface SchoolLeftOut {
  readonly why: 'not-comparable' | 'same-approach' | 'other-days' | 'other-mix';
  /** Approaches. */
  readonly count: number;
  readonly sentence: string;
}

/** What there is no figure of. */
export interface SchoolCoverage {
  /** Names, in their order. */
  readonly studentsWithoutLog: readonly string[];
  readonly lessonsWithoutLog: number;
  readonly logsWithoutApproach: number;
  readonly approachesOfNobody: number;
  readonly passes: number;
  readonly byDraft: number;
  readonly unitDoubted: number;
  readonly notHeld: number;
  readonly unreadable: number;
}

/** A factor of the case mix and all of its values, in the order of their labels. */
export interface MixCount {
  readonly factor: MixFactor;
  readonly title: string;
  readonly values: readonly {
    readonly key: string;
    readonly label: string;
    readonly approaches: number;
    readonly students: number;
  }[];
}

export interface SchoolStudent {
  readonly studentId: string;
  readonly name: string;
  /** In the order flown; a lesson without an approach that is compared is not there. */
  readonly lessons: readonly SchoolCell[];
}

export interface SchoolCell {
  readonly lessonId: string;
  readonly date: string;
  /** The student's 1st, 2nd, … lesson with a judged approach, whatever is filtered. */
  readonly ordinal: number;
  readonly approaches: number;
  /** The middle of its approaches; of `share-met` their share; null where none is known. */
  readonly value: number | null;
  readonly verdicts: VerdictCounts;
}

/** Over students: the values of their 1st, 2nd, … lesson. Ordinals without a value are not there. */
export interface LessonSpread {
  readonly ordinal: number;
  readonly students: number;
  readonly least: number;
  readonly lowerQuartile: number;
  readonly median: number;
  readonly upperQuartile: number;
  readonly largest: number;
}

export interface Outcomes {
  /** Approaches of which it is known, and their students. */
  readonly decided: number;
  readonly students: number;
  /** Of those decided; nothing where none is. */
  readonly shares: readonly OutcomeShare[];
  readonly unclear: number;
  readonly notAssessed: number;
}

export interface OutcomeShare {
  readonly outcome: Exclude<WentOn, 'unclear' | 'not-assessed'>;
  readonly count: number;
  readonly share: number;
  /** 95 %, with a student's approaches being alike; null where there is one student. */
  readonly interval: Interval | null;
}

export interface Interval {
  readonly low: number;
  readonly high: number;
}

export interface SchoolGroups {
  readonly by: GroupBy;
  /** In the order of their labels. */
  readonly groups: readonly SchoolGroup[];
  readonly adjustment: readonly Adjustment[];
  /** How many differences were looked at, and of each interval by itself and of all together. */
  readonly comparisons: number;
  readonly confidence: { readonly interval: number; readonly together: number };
}

/** What the values were adjusted for, or why not. */
export interface Adjustment {
  readonly factor: MixFactor | 'experience';
  readonly title: string;
  /** `partly`: for some of its values. `alike`: there is nothing to adjust for. */
  readonly adjusted: 'yes' | 'partly' | 'no' | 'alike';
  /** A sentence; null where it was. */
  readonly why: string | null;
}

export interface SchoolGroup {
  readonly key: string;
  readonly label: string;
  /** With a value; a student who flew in two groups is in both, each with what was flown there. */
  readonly students: number;
  readonly approaches: number;
  /** Of the students' means, each student once; null where there is no value. */
  readonly mean: number | null;
  readonly adjustedMean: number | null;
  /** With all others together; null where it is not made. */
  readonly comparison: GroupComparison | null;
  /** A sentence why it is not made. */
  readonly whyNot: string | null;
}

/**
 * `better` and `worse`: sure with all comparisons looked at. `perhaps-…`: the 95 % interval leaves 0 out, as one of so
 * many may by chance. `not-sure`: it holds 0.
 */
export type Standing = 'better' | 'worse' | 'perhaps-better' | 'perhaps-worse' | 'not-sure';

export interface GroupComparison {
  /** The students of two sides, or each student who flew on both sides with themselves. */
  readonly how: 'between-students' | 'within-students';
  /** On each side; within students the same ones. */
  readonly students: number;
  readonly otherStudents: number;
  readonly approaches: number;
  readonly otherApproaches: number;
  /** Adjusted, this group less the others, in the measure's unit; and without adjusting. */
  readonly difference: number;
  readonly plainDifference: number;
  /** 95 %, and the one that holds with all comparisons looked at (Bonferroni), which decides the words. */
  readonly interval: Interval;
  readonly together: Interval;
  readonly standing: Standing;
  /**
   * The chance that a student of this group does better than one of the others, half for equals, on adjusted values;
   * within students, how many of them did better here. `ahead`, `equal` and `behind` count the pairs.
   */
  readonly superiority: {
    readonly chance: number;
    readonly ahead: number;
    readonly equal: number;
    readonly behind: number;
  };
}

/** Who needs what; no order but the alphabet's. */
export interface StudentNeed {
  readonly studentId: string;
  readonly name: string;
  /** The latest three, or as many as there are. */
  readonly lessons: number;
  readonly verdicts: VerdictCounts;
  /** Not met in at least half of those decided, of at least three. */
  readonly isFlagged: boolean;
}
