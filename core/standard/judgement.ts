import type { Excursion } from '../approach/excursions.ts';
import type { Span } from '../numeric/polyline.ts';
import type { Limit } from './standard.ts';

/** `unclear` when the position error is as large as the question. */
export type Verdict = 'met' | 'not-met' | 'unclear' | 'not-assessed';

/** An excursion, and whether it was corrected promptly (design, section 9). */
export interface JudgedExcursion extends Excursion {
  readonly prompt: boolean;
}

export type CriterionUnit = 'full scale' | 'ft' | 'kt' | 'ft/min' | 'deg' | 's' | null;

/** One tolerance of the standard, applied to one approach. */
export interface CriterionJudgement {
  /** One of section 12's ids, or a user's own. */
  readonly id: string;
  readonly title: string;
  readonly limit: Limit | null;
  readonly unit: CriterionUnit;
  /** The value farthest outside or nearest to its limit, with its sign; null where nothing is measured. */
  readonly measured: number | null;
  /** The largest 95 % half-width of the value where it counted; null where it is what it says. */
  readonly halfWidth: number | null;
  /** Where it counted: one span, or several between what the instructor flew. Empty: nowhere. */
  readonly counted: readonly Span[];
  /** Recorded seconds of that. */
  readonly assessedS: number;
  /** Seconds beyond the limit; null for what is not told in time. */
  readonly outsideS: number | null;
  /** What that may be: with the position off all the one way and all the other, and the time unrecorded. */
  readonly outsideRangeS: { readonly atLeast: number; readonly atMost: number } | null;
  /** Nautical miles flown over the ground in the assessed seconds, and in those beyond the limit; null likewise. */
  readonly assessedNm: number | null;
  readonly outsideNm: number | null;
  readonly excursions: readonly JudgedExcursion[];
  /** Share of the assessed time within half of each limit (never below 0.20 of full scale or 4 kt); null likewise. */
  readonly insideHalfShare: number | null;
  readonly verdict: Verdict;
  /** One clause that says why, without a capital and without a full stop. */
  readonly why: string;
  /** The verdict with the room that the user allowed; null without one. */
  readonly allowed: { readonly by: number; readonly reason: string; readonly verdict: Verdict } | null;
}

export type GateItem = 'localizer' | 'glidepath' | 'airspeed' | 'sink' | 'bank';

/** One item at a gate, or after it. */
export interface ItemFinding {
  readonly item: GateItem;
  readonly measured: number | null;
  readonly limit: Limit | null;
  readonly verdict: Verdict;
  readonly why: string;
}

/** An item that was outside for 3 s or more. */
export interface LostItem extends Span {
  readonly item: GateItem;
  /** Whether it was, however far off the log may be. */
  readonly isProven: boolean;
}

export interface GateJudgement {
  readonly gate: 'gate-1000' | 'gate-500';
  readonly heightFt: number;
  /** When it was passed; null: never descended through after final began. */
  readonly timeS: number | null;
  /** Whether the stability criterion stands on this gate. */
  readonly counts: boolean;
  readonly items: readonly ItemFinding[];
  /** Items outside for 3 s or more after the gate. */
  readonly lostAfter: readonly LostItem[];
  /** Items of which that is as well possible, as far as their error goes, as not. */
  readonly doubtedAfter: readonly GateItem[];
  readonly verdict: Verdict;
  readonly why: string;
}

/** Everything that a standard says of one approach. */
export interface ApproachJudgement {
  readonly criteria: readonly CriterionJudgement[];
  readonly gates: readonly GateJudgement[];
  /** Safety limits that were crossed, each as one clause; level 1 stands on these. */
  readonly safety: readonly string[];
  /** Why the go-around was a sound decision, as one clause; null when there was none or it was not. */
  readonly soundGoAround: string | null;
  /** What keeps the level from being higher than this, with the clause that says why; null: nothing. */
  readonly ceiling: { readonly level: 2 | 4; readonly why: string } | null;
  /** Why no level can be given, whatever was assessed (too few fixes); null when one can. */
  readonly noLevelBecause: string | null;
}
