import type { StatedWind } from '../approach/estimated-airspeed.ts';
import type { Span } from '../numeric/polyline.ts';

export type Conditions = 'imc' | 'simulated' | 'vmc' | 'not-stated';
export type RunwaySeen = 'seen' | 'not-seen' | 'not-stated';

/** More room that an instructor gives on one criterion, with the reason; shown beside the plain verdict. */
export interface Allowance {
  readonly criterion: string;
  /** Added to the limit on both sides, in the criterion's unit. */
  readonly by: number;
  readonly reason: string;
}

/** What the people of a flight say to a finding of its debrief. */
export interface Remark {
  /** When the approach begins, as its debrief has it; with the finding's id it tells which is meant. */
  readonly approachUtc: string;
  readonly finding: string;
  /** The instructor's: it stands, or it is not told; null: neither was said. */
  readonly verdict: 'accepted' | 'dismissed' | null;
  /** The instructor's words in place of the program's; null: none. */
  readonly words: string | null;
  /** The student's answer; null: none. */
  readonly answer: string | null;
}

/**
 * What only the people on board know of an approach. Null and `not-stated`: they did not say, and nothing is
 * guessed, neither from the log nor from one another.
 */
export interface Stated {
  readonly conditions: Conditions;
  /** Whether the runway was in sight at decision altitude. */
  readonly visualReferenceAtMinimums: RunwaySeen;
  readonly targetAirspeedKt: number | null;
  readonly interceptAirspeedKt: number | null;
  readonly vrefKt: number | null;
  /** Assigned before final, feet above mean sea level. */
  readonly assignedAltitudeFt: number | null;
  /** On the way down; the airspeed of a log without one is estimated from it. */
  readonly wind: StatedWind | null;
  readonly hood: boolean | null;
  readonly flown: 'hand-flown' | 'coupled' | null;
  /** Joined inside the fix because the controller vectored it so. */
  readonly vectoredInsideFix: boolean;
  readonly engineOut: boolean;
  readonly turbulence: string | null;
  /** "My controls": left out of everything that is judged. Seconds since 1970-01-01T00:00:00Z. */
  readonly instructorFlew: readonly Span[];
  readonly allowances: readonly Allowance[];
  readonly remarks: readonly Remark[];
}

export const NOTHING_STATED: Stated = {
  conditions: 'not-stated',
  visualReferenceAtMinimums: 'not-stated',
  targetAirspeedKt: null,
  interceptAirspeedKt: null,
  vrefKt: null,
  assignedAltitudeFt: null,
  wind: null,
  hood: null,
  flown: null,
  vectoredInsideFix: false,
  engineOut: false,
  turbulence: null,
  instructorFlew: [],
  allowances: [],
  remarks: [],
};
