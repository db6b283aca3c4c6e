import type { Issue } from '../issue/issue.ts';

/** Sentences for what an object leaves null, by key. */
export type Unknown<Key extends string> = { readonly [K in Key]?: string };

/** The complete answer for one log: `halfdot-debrief/1`. Times are ISO 8601 UTC; nothing here knows a clock or a path. */
export interface Debrief {
  readonly format: 'halfdot-debrief/1';
  readonly engineVersion: string;
  readonly cautions: readonly string[];
  readonly log: {
    readonly file: string;
    readonly sha256: string;
    readonly kind: string;
    readonly fixes: number;
    readonly startUtc: string;
    readonly endUtc: string;
    readonly medianIntervalS: number;
    readonly altitudeReference: string;
    readonly issues: readonly Issue[];
  };
  readonly facility: {
    readonly name: string;
    readonly ident: string | null;
    readonly derived: {
      readonly trueBearingDeg: number;
      readonly courseTrueDeg: number;
      readonly lengthFt: number;
      readonly localizerAntenna: {
        readonly latDeg: number;
        readonly lonDeg: number;
        readonly elevationFt: number;
      };
      readonly localizerFullScaleDeg: number;
      readonly glidepathOrigin: {
        readonly latDeg: number;
        readonly lonDeg: number;
        readonly elevationFt: number;
      };
      readonly glidepathFullScaleDeg: number;
    };
    readonly issues: readonly Issue[];
  };
  readonly standard: { readonly id: string; readonly title: string; readonly source: string };
  readonly approaches: readonly ApproachDebrief[];
  /** Why there is no approach, when there is none. */
  readonly issues: readonly Issue[];
}

export interface ApproachDebrief {
  readonly index: number;
  readonly startUtc: string;
  readonly endUtc: string;
  readonly outcome: null;
  readonly events: readonly DebriefEvent[];
  readonly segments: readonly DebriefSegment[];
  readonly stability: readonly never[];
  readonly criteria: readonly DebriefCriterion[];
  readonly stated: { readonly conditions: 'not-stated'; readonly visualReferenceAtMinimums: 'not-stated' };
  readonly summary: string;
  readonly grade: null;
  readonly notGradedBecause: string;
  readonly findings: readonly never[];
  readonly unknown: Unknown<'outcome'>;
}

export interface DebriefEvent {
  readonly kind: 'final-approach-fix' | 'decision-altitude';
  readonly utc: string;
  readonly distanceToThresholdNm: number;
  readonly altitudeFt: number | null;
  readonly altitudeSource: 'indicated' | 'geometric';
  readonly localizerFullScale: number;
  readonly glidepathFullScale: number | null;
  readonly groundspeedKt: number | null;
  readonly verticalSpeedFpm: number | null;
  readonly airspeedKt: number | null;
  readonly unknown: Unknown<
    'altitudeFt' | 'glidepathFullScale' | 'groundspeedKt' | 'verticalSpeedFpm' | 'airspeedKt'
  >;
}

/** The best figure and how far it may be off; all three equal until position error is known. */
export interface ThreeFigures {
  readonly atLeast: number;
  readonly best: number;
  readonly atMost: number;
}

export interface DebriefNeedle {
  readonly meanFullScale: number | null;
  readonly rmsFullScale: number | null;
  readonly maxAbsFullScale: number | null;
  readonly timeOutsideS: ThreeFigures;
  readonly excursions: readonly DebriefExcursion[];
  readonly unknown: Unknown<'meanFullScale' | 'rmsFullScale' | 'maxAbsFullScale'>;
}

export interface DebriefExcursion {
  readonly startUtc: string;
  readonly endUtc: string;
  readonly peakUtc: string;
  readonly peakFullScale: number;
  readonly side: 'right' | 'left' | 'high' | 'low';
}

export interface DebriefSegment {
  readonly kind: 'final';
  readonly startUtc: string;
  readonly endUtc: string;
  readonly unrecordedS: number;
  readonly localizer: DebriefNeedle;
  readonly glidepath: DebriefNeedle;
}

export interface DebriefCriterion {
  readonly id: 'localizer-final' | 'glidepath-final';
  readonly title: string;
  readonly limit: number;
  readonly unit: 'full scale';
  readonly measured: number | null;
  readonly timeOutsideS: ThreeFigures;
  readonly verdict: 'met' | 'not-met' | 'not-assessed';
  readonly why: string;
}
