import type { CriterionId } from './criterion-ids.ts';

/** Where a number comes from, and how surely it was read there (tests/reference/tolerance-standards.json). */
export type SourceStatus = 'published' | 'second-hand' | 'common practice' | 'from memory' | 'own choice';

/**
 * One tolerance: a value passes when lower ≤ value ≤ upper, null is no limit on that side. Needle limits are
 * fractions of full scale; altitudes, speeds and crossing heights are relative to their target; sink rate (positive
 * down, ft/min) and bank (degrees) are absolute.
 */
export interface Limit {
  readonly lower: number | null;
  readonly upper: number | null;
  /** The standard's own code of the row, "IR.VI.B.S12"; null where it has none. */
  readonly code: string | null;
  /** Document, edition and section. */
  readonly source: string;
  readonly status: SourceStatus;
}

/** What a speed is measured against: the user's target, or the user's Vref. Neither is ever derived. */
export type SpeedBasis = 'target' | 'vref';

/** What must hold at a stabilized-approach gate and after it; null where the standard asks nothing of an item. */
export interface GateLimits {
  /** Heights above the datum at which the approach must be stable: those of the two events, and no others. */
  readonly instrumentFt: 1000;
  readonly visualFt: 500;
  readonly datum: 'airport' | 'touchdown-zone' | 'threshold';
  readonly source: string;
  readonly localizer: Limit | null;
  readonly glidepath: Limit | null;
  readonly airspeed: Limit | null;
  readonly speedBasis: SpeedBasis;
  /** Upper limit; the needed rate + 300 ft/min counts where that is more. */
  readonly sinkFpm: Limit | null;
  readonly bankDeg: Limit | null;
}

/** What is asked at decision altitude. */
export type MinimumsRule =
  /** The missed approach starts within this band above decision altitude, feet. */
  | { readonly kind: 'start-within-height'; readonly limit: Limit }
  /** The missed approach starts no later than this after decision altitude is passed. */
  | { readonly kind: 'start-within-time'; readonly seconds: number; readonly limit: Limit };

/** A task of the standard that a log can cover in part, and what it cannot see of it. */
export interface CoveredTask {
  readonly code: string;
  readonly title: string;
  readonly covered: string;
  readonly notSeen: string;
}

/** A criterion of a user's own standard, judged on final and never worth points. */
export interface OwnCriterion {
  readonly id: string;
  readonly title: string;
  readonly quantity: OwnQuantity;
  readonly limit: Limit;
}

export type OwnQuantity = 'groundspeedKt' | 'verticalSpeedFpm' | 'bankDeg' | 'pitchDeg';

/** A named set of tolerances with its published source. An axis without a limit is null, with the reason in `lacks`. */
export interface Standard {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  /** Its id in the table of published values; null for a user's own. */
  readonly referenceId: string | null;
  readonly beforeFinal: {
    readonly localizer: Limit | null;
    readonly altitudeFt: Limit | null;
    readonly airspeedKt: Limit | null;
  };
  readonly final: {
    readonly localizer: Limit | null;
    readonly glidepath: Limit | null;
    readonly airspeedKt: Limit | null;
    readonly speedBasis: SpeedBasis;
    /** In place of `airspeedKt` when the user states an engine out; null where the standard makes no difference. */
    readonly airspeedAsymmetricKt: Limit | null;
    /** `gate`: the standard speaks only of the flight below its gate. */
    readonly countsFrom: 'fix' | 'gate';
  };
  readonly gates: GateLimits;
  readonly minimums: MinimumsRule | null;
  readonly tasks: readonly CoveredTask[];
  readonly own: readonly OwnCriterion[];
  /** Why the standard has no limit for a criterion, as one clause without a capital and without a full stop. */
  readonly lacks?: Readonly<Partial<Record<CriterionId, string>>>;
}
