import type { EventKind, FlownApproach, SegmentKind } from '../approach/flown-approach.ts';
import type { Outcome } from '../approach/outcome.ts';
import type { Wind } from '../approach/wind.ts';
import type { Issue } from '../issue/issue.ts';
import type { GateItem, Verdict } from '../standard/judgement.ts';
import type { CoveredTask, SourceStatus } from '../standard/standard.ts';
import type { Allowance, Stated } from '../standard/stated.ts';
import type { DebriefFinding } from './debrief-finding.ts';
import type { ErrorSource } from '../track/position-error.ts';
import type { ReceiverKind } from '../track/receiver.ts';
import type { AltitudeSource } from '../track/track.ts';

export type { DebriefFinding } from './debrief-finding.ts';

/** Sentences for what an object leaves null, by key. */
export type Unknown = Readonly<Record<string, string>>;

interface Place {
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly elevationFt: number;
}

/**
 * The complete answer for one log: `halfdot-debrief/1` (design, section 12). Times are ISO 8601 UTC; a value that is
 * not known is null, with its sentence in `unknown`; what there is none of is null alone (a remark, a tip, a limit on
 * one side, a statement that nobody made). Nothing here knows a clock, a path, a host or a locale.
 */
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
    /** `elapsed`: times count from the log's own start, and their date means nothing. */
    readonly timeReference: 'utc' | 'local' | 'elapsed';
    readonly medianIntervalS: number;
    readonly altitudeReference: AltitudeSource;
    /** Taken off every height, as a roll showed; 0 where the heights are as logged. */
    readonly heightCorrectionFt: number;
    readonly positionError: DebriefPositionError;
    /** Of the receiver's antenna above the ground, as stated or as usual: what a roll's heights are held to. */
    readonly antennaHeightFt: number;
    readonly issues: readonly Issue[];
  };
  readonly facility: {
    readonly name: string;
    readonly ident: string | null;
    readonly derived: {
      readonly trueBearingDeg: number;
      readonly courseTrueDeg: number;
      readonly lengthFt: number;
      readonly localizerAntenna: Place;
      readonly localizerFullScaleDeg: number;
      readonly glidepathOrigin: Place;
      readonly glidepathFullScaleDeg: number;
    };
    readonly issues: readonly Issue[];
  };
  readonly standard: {
    readonly id: string;
    readonly title: string;
    readonly source: string;
    /** Tasks of the standard that a log covers in part, and what it cannot see of them. */
    readonly tasks: readonly CoveredTask[];
  };
  readonly approaches: readonly ApproachDebrief[];
  /** What was flown towards this runway and is no approach, and why; with no approach at all, what came closest. */
  readonly issues: readonly Issue[];
}

/** How far the fixes of the log may be off: 95 % half-widths over its first approach, or the whole log without one. */
export interface DebriefPositionError {
  readonly receiver: ReceiverKind;
  /** Whether the user said so; else it is told by what the log holds. */
  readonly receiverStated: boolean;
  readonly sideFrom: ErrorSource;
  readonly heightFrom: ErrorSource;
  readonly sideFt: { readonly median: number; readonly largest: number };
  readonly heightFt: { readonly median: number; readonly largest: number };
  /** Of the part that changes in flight, first order. */
  readonly timeConstantS: number;
}

export interface ApproachDebrief {
  readonly index: number;
  readonly kind: FlownApproach['kind'];
  readonly startUtc: string;
  readonly endUtc: string;
  readonly outcome: Outcome;
  readonly events: readonly DebriefEvent[];
  readonly segments: readonly DebriefSegment[];
  readonly stability: readonly DebriefStability[];
  readonly criteria: readonly DebriefCriterion[];
  readonly measures: DebriefMeasures;
  readonly stated: DebriefStated;
  readonly summary: string;
  /** Safety limits that were crossed, a clause each. */
  readonly safety: readonly string[];
  /** Null with `notGradedBecause`. */
  readonly grade: DebriefGrade | null;
  readonly notGradedBecause: string | null;
  /** That the facility is a draft, and what this landing says against it: to be settled before a grade is believed. */
  readonly issues: readonly Issue[];
  /** Faults first, each kind by consequence. */
  readonly findings: readonly DebriefFinding[];
}

export interface DebriefEvent {
  readonly kind: EventKind;
  readonly utc: string;
  readonly remark: 'assumed' | 'estimated' | 'from-above' | 'from-below' | null;
  readonly distanceToThresholdNm: number | null;
  readonly altitudeFt: number | null;
  readonly altitudeSource: 'indicated' | 'geometric';
  readonly localizerFullScale: number | null;
  readonly glidepathFullScale: number | null;
  /** 95 % half-widths of both. */
  readonly localizerHalfWidth: number | null;
  readonly glidepathHalfWidth: number | null;
  readonly heightAboveGlidepathFt: number | null;
  readonly centrelineOffsetFt: number | null;
  readonly groundspeedKt: number | null;
  readonly verticalSpeedFpm: number | null;
  readonly airspeedKt: number | null;
  readonly unknown: Unknown;
}

/** The best figure, and between what it lies with the position off and the time unrecorded. */
export interface ThreeFigures {
  readonly atLeast: number;
  readonly best: number;
  readonly atMost: number;
}

export interface DebriefExcursion {
  readonly startUtc: string;
  readonly endUtc: string;
  readonly peakUtc: string;
  readonly peakFullScale: number;
  readonly side: 'right' | 'left' | 'high' | 'low';
  /** Whether it was promptly corrected; null where no criterion counted it. */
  readonly prompt: boolean | null;
  readonly unknown: Unknown;
}

export interface DebriefNeedle {
  readonly meanFullScale: number | null;
  readonly rmsFullScale: number | null;
  readonly standardDeviationFullScale: number | null;
  readonly maxAbsFullScale: number | null;
  readonly maxAbsUtc: string | null;
  /** How far the needle may be off, 95 %: on average and at most. */
  readonly halfWidthFullScale: { readonly mean: number; readonly largest: number } | null;
  /** Seconds, and share of the recorded time, within ¼, ½, ¾ and full scale. */
  readonly insideS: Inside | null;
  readonly insideShare: Inside | null;
  readonly reversalsPerMinute: number | null;
  readonly timeOutsideS: ThreeFigures | null;
  /**
   * The other question, what the needle in the cockpit showed: the same seconds with the beam's own error besides the
   * position's (0.08 of full scale localizer, 0.12 glidepath, 95 %, assumed typical). It decides nothing.
   */
  readonly shownOutsideS: ThreeFigures | null;
  readonly excursions: readonly DebriefExcursion[];
  readonly unknown: Unknown;
}

export interface Inside {
  readonly quarter: number;
  readonly half: number;
  readonly threeQuarters: number;
  readonly full: number;
}

/** How a value other than a needle was spread over a segment. */
export interface DebriefSpread {
  readonly mean: number;
  readonly standardDeviation: number;
  readonly lowest: number;
  readonly highest: number;
}

export interface DebriefSegment {
  readonly kind: SegmentKind;
  readonly startUtc: string;
  readonly endUtc: string;
  readonly durationS: number;
  readonly unrecordedS: number;
  readonly localizer: DebriefNeedle | null;
  readonly glidepath: DebriefNeedle | null;
  /** Feet, for the visual segment, where scale means nothing. */
  readonly centrelineOffsetFt: DebriefSpread | null;
  readonly heightAboveGlidepathFt: DebriefSpread | null;
  readonly airspeed: DebriefSpeed | null;
  readonly verticalSpeed: DebriefSpread | null;
  readonly altitude: DebriefSpread | null;
  readonly bank: DebriefSpread | null;
  readonly wind: Wind | null;
  readonly unknown: Unknown;
}

/** Airspeed over a segment, and against the target that the user gave for it. */
export interface DebriefSpeed extends DebriefSpread {
  /** From groundspeed and the stated wind, where the log has no indicated airspeed. */
  readonly estimated: boolean;
  /** 95 % half-width: of the estimate, else what is taken for an instrument's. */
  readonly errorKt: number;
  readonly targetKt: number | null;
  readonly timeOutsideS: ThreeFigures | null;
  readonly unknown: Unknown;
}

export interface DebriefCriterion {
  readonly id: string;
  readonly title: string;
  /** The same to both sides; null where they differ (`lower`, `upper`) or where there is none. */
  readonly limit: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly unit: string | null;
  readonly code: string | null;
  readonly source: string | null;
  readonly sourceStatus: SourceStatus | null;
  /** Where it counted. */
  readonly counted: readonly { readonly startUtc: string; readonly endUtc: string }[];
  readonly assessedS: number;
  readonly measured: number | null;
  /** The most that the measured value may be off where it counted, 95 %, in its unit; null: it is what it says. */
  readonly halfWidth: number | null;
  readonly timeOutsideS: ThreeFigures | null;
  /** Nautical miles over the ground from fix to fix: in the assessed seconds, and in the best figure's outside. Since 0.2.0. */
  readonly assessedNm: number | null;
  readonly outsideNm: number | null;
  readonly excursions: readonly CriterionExcursion[];
  readonly verdict: Verdict;
  readonly why: string;
  readonly allowed: { readonly by: number; readonly reason: string; readonly verdict: Verdict } | null;
  readonly points: number | null;
  readonly pointsPossible: number | null;
  readonly unknown: Unknown;
}

interface CriterionExcursion {
  readonly startUtc: string;
  readonly endUtc: string;
  readonly peakUtc: string;
  readonly peak: number;
  readonly outsideS: number;
  readonly prompt: boolean;
  /** Joined inside the fix, and counted until it was established; not there for what was beyond the limit all along. */
  readonly untilEstablished?: true;
}

export interface DebriefStability {
  readonly gate: 'gate-1000' | 'gate-500';
  readonly heightFt: number;
  readonly utc: string | null;
  /** Whether the stability criterion stands on this gate. */
  readonly counts: boolean;
  readonly verdict: Verdict;
  readonly failed: readonly GateItem[];
  readonly items: readonly {
    readonly item: GateItem;
    readonly measured: number | null;
    readonly verdict: Verdict;
    readonly why: string;
    readonly unknown: Unknown;
  }[];
  readonly lostAfter: readonly {
    readonly item: GateItem;
    /** Whether it was, however far off the log may be. */
    readonly proven: boolean;
    readonly startUtc: string;
    readonly endUtc: string;
  }[];
  /** Items that may have been, as far as their error goes. */
  readonly doubtedAfter: readonly GateItem[];
  readonly why: string;
  readonly unknown: Unknown;
}

/** What the people on board said of the approach, as it was judged. */
export interface DebriefStated extends Omit<Stated, 'instructorFlew' | 'allowances' | 'remarks'> {
  readonly instructorFlew: readonly { readonly startUtc: string; readonly endUtc: string }[];
  readonly allowances: readonly Allowance[];
}

/** This program's own scale, and no authority's. */
interface DebriefGrade {
  readonly level: number;
  readonly levelLow: number;
  readonly levelHigh: number;
  readonly score: number;
  readonly scoreLow: number;
  readonly scoreHigh: number;
  readonly words: string;
  readonly working: readonly string[];
}

/** What belongs to an approach as a whole. */
export interface DebriefMeasures {
  readonly correctionsOnFinal: {
    readonly count: number;
    readonly meanDeg: number | null;
    readonly largestDeg: number | null;
    readonly delays: readonly {
      readonly leftUtc: string;
      readonly delayS: number | null;
      readonly unknown: Unknown;
    }[];
  } | null;
  readonly sinkOnFinal: { readonly heldFpm: number; readonly neededFpm: number } | null;
  readonly descent: DebriefDescent | null;
  readonly windOnFinal: Wind | null;
  /** From 10 s before the moment to 10 s after it. */
  readonly windAt1000: Wind | null;
  readonly windAtThreshold: Wind | null;
  readonly threshold: { readonly heightFt: number; readonly offsetFt: number } | null;
  readonly touchdownDistanceFt: number | null;
  readonly heightLostInMissedApproachFt: number | null;
  readonly recordedLocalizer: DebriefRecordedNeedle | null;
  readonly recordedGlidepath: DebriefRecordedNeedle | null;
  readonly rollout: DebriefRollout | null;
  readonly unknown: Unknown;
}

/**
 * The sink rate held on final against the one that kept the height above the glidepath at that groundspeed. Rates are
 * positive down, and an excess is held less needed; heights are above the glidepath, negative below it.
 */
export interface DebriefDescent {
  readonly meanExcessFpm: number;
  /** The most that no second of 5 s undercut, faster than needed and slower, and when these 5 s began. */
  readonly largestExcess: { readonly fpm: number; readonly fromUtc: string } | null;
  readonly largestDeficit: { readonly fpm: number; readonly fromUtc: string } | null;
  /** Seconds sinking more than 300 ft/min faster than needed (ours). */
  readonly steepS: number;
  /** Where height above the glidepath was gained (positive) or lost: 20 ft or more in 5 s or more. */
  readonly stretches: readonly {
    readonly startUtc: string;
    readonly endUtc: string;
    readonly fromFt: number;
    readonly toFt: number;
    readonly gainedFt: number;
    readonly meanExcessFpm: number;
  }[];
  /** Between the first second and the last: the feet of all stretches and the rest make it up. */
  readonly changeFt: number;
  /** In smaller movements and across gaps. */
  readonly restFt: number;
  /** To be drawn: a run of seconds for each part that was recorded, in columns, the first at `startUtc`. */
  readonly secondBySecond: readonly {
    readonly startUtc: string;
    readonly heldFpm: readonly number[];
    readonly neededFpm: readonly number[];
    readonly aboveGlidepathFt: readonly number[];
  }[];
  readonly unknown: Unknown;
}

/** The roll after a touchdown, where the aircraft's height and line are known. */
interface DebriefRollout {
  /** What the log's heights are high by. */
  readonly heightBiasFt: number | null;
  /** Right of the centreline. */
  readonly offsetFt: number | null;
  /** To the runway's direction, right positive. */
  readonly askewDeg: number | null;
  /** How far it led to the right. */
  readonly asideFt: number | null;
  readonly unknown: Unknown;
}

/** How a needle that the log recorded stood against the computed one; information, which grades nothing. */
export interface DebriefRecordedNeedle {
  readonly comparedS: number;
  /** The column runs as a needle does, right of course to the left, and was turned to be compared. */
  readonly turned: boolean;
  /** Recorded less computed. */
  readonly biasFullScale: number;
  readonly rmsFullScale: number;
  readonly correlation: number | null;
  /** Recorded full scales to a computed one. */
  readonly gain: number | null;
  readonly agrees: boolean;
  /** Both needles, to be drawn over one another, the recorded one turned where it had to be. */
  readonly overlay: readonly {
    readonly utc: string;
    readonly computedFullScale: number;
    readonly recordedFullScale: number;
  }[];
  readonly unknown: Unknown;
}
