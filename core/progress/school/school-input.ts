import type { Verdict } from '../../standard/judgement.ts';
import type { Conditions } from '../../standard/stated.ts';
import type { Flown, Measure, ProgressUnit } from '../progress.ts';
import type { WentOn } from '../went-on.ts';

/** What is read of one judged approach, for one measure. */
export interface SchoolApproach {
  /** By which the library finds it again, until anything is changed there. */
  readonly ref: number;
  readonly studentId: string;
  /** Null: nobody said. */
  readonly instructorId: string | null;
  readonly lessonId: string;
  /** `YYYY-MM-DD`. */
  readonly date: string;
  readonly startUtc: string;
  /** With the log and the beginning: what was debriefed twice counts once. */
  readonly endUtc: string;
  readonly logSha256: string;
  readonly judgedBy: JudgedBy;
  readonly caseMix: ApproachMix;
  /** Of the measure. */
  readonly verdict: Verdict;
  /** Of the measure; of `share-met` 1 where it was met and 0 where not; null where it is not known. */
  readonly value: number | null;
  readonly wentOn: WentOn;
}

/** One object may serve any number of approaches; it is told from others by `standardKey` and `engineVersion`. */
export interface JudgedBy {
  /** Another for all that the standard says: two versions of one standard have two keys and one title. */
  readonly standardKey: string;
  readonly standardTitle: string;
  readonly standardSource: string;
  readonly engineVersion: string;
}

/** What may make an approach harder or easier, and is known of each. */
export interface ApproachMix {
  readonly flown: Flown;
  readonly aircraft: string | null;
  readonly conditions: Conditions;
  /** In the words in which it was stated, without regard to capitals. */
  readonly turbulence: string | null;
  /** From the centreline to full scale, to one side. */
  readonly localizerFullScaleDeg: number;
  readonly logKind: string;
}

/** What an approach's case mix is made of; the ids of {@link SchoolFilter} and of the groups. */
export type MixFactor = 'flown' | 'aircraft' | 'conditions' | 'turbulence' | 'course-width' | 'log-kind';

export interface SchoolFilter {
  /** Null: of what is between the days, the standard and version with the most approaches. */
  readonly standardKey: string | null;
  readonly engineVersion: string | null;
  /** `YYYY-MM-DD`, both included; null: without an end. */
  readonly from: string | null;
  readonly to: string | null;
  /** By factor the keys that are let in, as `School.caseMix` lists them; a factor that is left out lets in all. */
  readonly mix: Readonly<Partial<Record<MixFactor, readonly string[] | null>>>;
}

export type GroupBy = 'instructor' | MixFactor;

export interface SchoolInput {
  readonly measure: SchoolMeasure;
  /** All of the school's, in any order, before any filter: lessons before stand for experience. */
  readonly approaches: readonly SchoolApproach[];
  readonly filter: SchoolFilter;
  readonly groupBy: GroupBy | null;
  /** Of students and instructors by id, as they are to be shown; an id without a name is shown itself. */
  readonly names: ReadonlyMap<string, string>;
  readonly coverage: {
    readonly studentsWithoutLog: readonly string[];
    readonly lessonsWithoutLog: number;
    readonly logsWithoutApproach: number;
    /** Approaches of which nobody said whose they are, and passes and late finals, which are not judged. */
    readonly approachesOfNobody: number;
    readonly passes: number;
    /** Approaches of somebody at facilities with values that nobody had confirmed: what judged them is a guess. */
    readonly byDraft: number;
    /** Approaches of somebody whose heights seem to be in another unit: they were held to nothing. */
    readonly unitDoubted: number;
    /** Approaches that were not held to the measure's criterion. */
    readonly notHeld: number;
    /** Debriefs that cannot be read any more. */
    readonly unreadable: number;
  };
}

export interface SchoolMeasure {
  readonly id: string;
  readonly title: string;
  readonly measure: Measure;
  readonly unit: ProgressUnit;
  readonly better: 'lower' | 'higher';
}
