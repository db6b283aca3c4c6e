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

/** A height descended through on final while nothing was recorded: from the last fix above it to the first one below. */
export interface UnseenPassage extends Span {
  readonly kind: 'gate-1000' | 'gate-500' | 'decision-altitude';
}

/**
 * How final began without the fix being passed: the localizer was joined inside it, or what was recorded begins there,
 * on the localizer, be it with the log or after a gap. Then nobody knows where it was joined.
 */
export type InsideFix = 'joined' | 'log-begins' | 'log-resumes';

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
  readonly unseen: readonly UnseenPassage[];
  /** Null where the fix was passed, or final never began. */
  readonly insideFix: InsideFix | null;
  /** The fixes on the ground, where it ended in a landing. */
  readonly roll: Stretch | null;
}

/** Where a height was passed while nothing was recorded; null where it was not, or was seen to be. */
export function unseenPassage(
  { unseen }: Pick<FlownApproach, 'unseen'>,
  kind: UnseenPassage['kind'],
): UnseenPassage | null {
  return unseen.find((passage) => passage.kind === kind) ?? null;
}

/**
 * Until when needles are told: decision altitude, the gap in which it was passed, or the threshold where it was not
 * reached before. Null where the approach came to none of them.
 */
export function needlesUntilS(approach: Pick<FlownApproach, 'events' | 'unseen'>): number | null {
  return (
    momentOf(approach, 'decision-altitude') ??
    unseenPassage(approach, 'decision-altitude')?.startS ??
    momentOf(approach, 'threshold') ??
    momentOf(approach, 'abeam-threshold')
  );
}

/** The moment of an event, the first where there are several; null when there is none. */
export function momentOf({ events }: Pick<FlownApproach, 'events'>, kind: EventKind): number | null {
  return events.find((event) => event.kind === kind)?.timeS ?? null;
}
