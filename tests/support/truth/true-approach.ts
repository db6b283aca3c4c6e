import type { PlannedOutcome } from '../flight/flight-plan.ts';

export type TrueEventKind =
  | 'localizer-alive'
  | 'localizer-established'
  | 'localizer-lost'
  | 'localizer-re-established'
  | 'glidepath-alive'
  | 'glidepath-intercept'
  | 'final-approach-fix'
  | 'gate-1000'
  | 'gate-500'
  | 'decision-altitude'
  | 'missed-approach-start'
  | 'lowest-point'
  | 'threshold'
  | 'abeam-threshold'
  | 'touchdown';

export interface TrueEvent {
  readonly kind: TrueEventKind;
  readonly timeS: number;
  /** Of a glidepath-intercept. */
  readonly from: 'above' | 'below' | 'either' | null;
  /** Of a touchdown: when the wheels touched, which is after a float within 3 ft of the runway. */
  readonly wheelsS?: number;
  /** A hair decides whether it happened at all: a height sunk to and no lower, a needle at its limit. */
  readonly doubtful?: boolean;
  /**
   * Where a hair decides and any of these moments is as right: from the rule read a hair wider to the rule read a hair
   * narrower (`hair.ts`).
   */
  readonly betweenS?: { readonly fromS: number; readonly toS: number };
}

/** A needle over final, fractions of full scale. */
export interface TrueNeedle {
  readonly mean: number;
  readonly rms: number;
  readonly largest: number;
  /** Beyond three quarters of full scale, either side. */
  readonly outsideS: number;
}

interface TrueFinal {
  readonly startS: number;
  readonly endS: number;
  /** Where a hair decides what ended it. */
  readonly endBetweenS: { readonly fromS: number; readonly toS: number };
}

/** What the program must find of one flown attempt, as the columns of the flight have it. */
export interface TrueApproach {
  readonly kind: 'approach' | 'visual-final' | 'localizer-pass';
  readonly outcome: PlannedOutcome;
  /** In order of time. */
  readonly events: readonly TrueEvent[];
  readonly final: TrueFinal | null;
  readonly localizer: TrueNeedle | null;
  readonly glidepath: TrueNeedle | null;
}
