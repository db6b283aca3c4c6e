import type { Span } from '../numeric/polyline.ts';
import type { Stretch } from './hold.ts';
import type { Outcome } from './outcome.ts';

export type EventKind =
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

/** A moment of an approach. What is peculiar about it stands in `remark`. */
export interface ApproachEvent {
  readonly kind: EventKind;
  readonly timeS: number;
  readonly remark: 'assumed' | 'estimated' | 'from-above' | 'from-below' | null;
  /** The height crossed, feet above mean sea level, where the event is a crossing of one. */
  readonly heightCrossedFt: number | null;
}

export type SegmentKind = 'intercept' | 'final' | 'visual' | 'missed';

export interface ApproachSegment extends Span {
  readonly kind: SegmentKind;
}

/**
 * One flown attempt at a facility. Only an `approach` can be graded: a `visual-final` was joined inside 3 NM, and a
 * `localizer-pass` settled on the localizer and went elsewhere.
 */
export interface FlownApproach extends Span {
  readonly kind: 'approach' | 'visual-final' | 'localizer-pass';
  /** Why it cannot be graded; null for an approach. */
  readonly why: string | null;
  readonly outcome: Outcome;
  readonly events: readonly ApproachEvent[];
  readonly segments: readonly ApproachSegment[];
  /** When final began; null when it never did. */
  readonly finalBeganS: number | null;
  /** Whether decision altitude was reached, be it on the way down of a missed approach just begun. */
  readonly flownToDecision: boolean;
  /** Whether final began inside the fix's distance, without passing it. */
  readonly joinedInsideFix: boolean;
  /** The fixes on the ground, where it ended in a landing. */
  readonly roll: Stretch | null;
}

/** The moment of an event, the first where there are several; null when there is none. */
export function momentOf({ events }: Pick<FlownApproach, 'events'>, kind: EventKind): number | null {
  return events.find((event) => event.kind === kind)?.timeS ?? null;
}
