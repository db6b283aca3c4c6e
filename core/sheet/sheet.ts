import type { EventKind, SegmentKind } from '../approach/flown-approach.ts';
import type { DebriefEvent } from '../debrief/debrief.ts';
import type { Span } from '../numeric/polyline.ts';
import type { AltitudeSource } from '../track/track.ts';

/**
 * One approach as it is drawn: plain columns and marks, without a word of how. Times are seconds since
 * 1970-01-01T00:00:00Z, distances NM before the threshold along the runway's bearing, positive before it.
 */
export interface Sheet {
  /** As the debrief counts its approaches. */
  readonly index: number;
  /** Which approach, and when it began. */
  readonly title: string;
  readonly facilityName: string;
  readonly span: Span;
  readonly columns: SheetColumns;
  readonly segments: readonly (Span & { readonly kind: SegmentKind })[];
  readonly events: readonly SheetEvent[];
  readonly excursions: readonly SheetExcursion[];
  /** Whether any tolerance was counted at all: without, nothing can have been outside. */
  readonly isCounted: boolean;
  /** Decision altitude, given or assumed: below it a needle means a few feet, and only feet are told. Null: not reached. */
  readonly needlesUntilS: number | null;
  readonly bands: readonly SheetBand[];
  readonly beam: SheetBeam;
  readonly heights: SheetHeights;
  readonly fixes: readonly SheetFix[];
  /** By which zone clock times are told: "UTC". */
  readonly zone: string;
}

/**
 * Columns of one length, a row for every fix within the span and the fix before and after it. NaN where a value is
 * not known; null where the log has nothing of the kind. Needles are fractions of full scale, right of course and
 * above the path positive.
 */
export interface SheetColumns {
  readonly timeS: Float64Array;
  /** 1 where the interval before the fix is a gap: no line is drawn across it. */
  readonly gapBefore: Uint8Array;
  readonly distanceNm: Float64Array;
  /** Right of the runway's centreline. */
  readonly offsetFt: Float64Array;
  /** The height that the glidepath is reckoned from, above mean sea level. */
  readonly altitudeFt: Float64Array;
  /** What the altimeter showed, where that was logged. */
  readonly indicatedFt: Float64Array | null;
  readonly localizer: Float64Array;
  readonly glidepath: Float64Array;
  /** 95 % half-widths. */
  readonly localizerHalf: Float64Array;
  readonly glidepathHalf: Float64Array;
  /** Feet from each antenna along its beam: what turns a fraction of full scale into feet. */
  readonly localizerAlongFt: Float64Array;
  readonly glidepathAlongFt: Float64Array;
  readonly airspeedKt: Float64Array | null;
  /** 95 %; 0 for what the instrument showed. */
  readonly airspeedHalfKt: number;
  readonly groundspeedKt: Float64Array;
  /** Up is positive. */
  readonly verticalSpeedFpm: Float64Array;
  readonly verticalSpeedHalf: Float64Array;
  /** What keeps the height above the path at that groundspeed. */
  readonly neededVerticalSpeedFpm: Float64Array;
  /** Needles as the log recorded them, turned to the computed ones' sense. */
  readonly recordedLocalizer: Float64Array | null;
  readonly recordedGlidepath: Float64Array | null;
  readonly extras: Readonly<Partial<Record<ExtraStrip, Float64Array>>>;
}

/** What else a log may hold that is worth a strip of its own. */
export type ExtraStrip =
  'pitchDeg' | 'bankDeg' | 'powerPercent' | 'engineRpm' | 'manifoldPressureInHg' | 'flapDeg' | 'gearDown';

export interface SheetEvent {
  readonly kind: EventKind;
  readonly words: string;
  readonly timeS: number;
  /** As the debrief tells it: what stands at a gate is no single fix. */
  readonly told: DebriefEvent;
}

/** A time outside of a tolerance, as its criterion counted it. */
export interface SheetExcursion extends Span {
  readonly criterionId: string;
  readonly title: string;
  readonly unit: string | null;
  /** Where it is drawn; null where the sheet has no strip of it. */
  readonly strip: BandedStrip | null;
  readonly peakS: number;
  /** In the unit, with its sign. */
  readonly peak: number;
  /** Less than the span where it came back between. */
  readonly outsideS: number;
  readonly prompt: boolean;
  /** Joined inside the fix: not established by its end, and not beyond the tolerance all along. */
  readonly untilEstablished: boolean;
}

export type BandedStrip = 'localizer' | 'glidepath' | 'airspeed' | 'verticalSpeed' | 'pitchDeg' | 'bankDeg';

/** What the standard tolerated over a span, in the criterion's unit; null is no limit on that side. */
export interface SheetBand extends Span {
  readonly strip: BandedStrip;
  readonly lower: number | null;
  readonly upper: number | null;
  /** What was counted as outside; null where no criterion tells that in time, and the line itself does. */
  readonly excursions: readonly Span[] | null;
}

/** What path, scale and sector are drawn from. */
export interface SheetBeam {
  readonly localizerFullScaleDeg: number;
  readonly glidepathFullScaleDeg: number;
  readonly glidepathAngleDeg: number;
  /** Course less the runway's azimuth. */
  readonly courseOffsetDeg: number;
  /** The localizer antenna as seen from the threshold: feet down the runway, and to its right. */
  readonly antennaAlongFt: number;
  readonly antennaRightFt: number;
  readonly runwayLengthFt: number;
  readonly runwayWidthFt: number;
  /** The path on the extended centreline, and the feet above it of full scale up and down, sampled. */
  readonly path: readonly PathPoint[];
}

export interface PathPoint {
  readonly distanceNm: number;
  readonly altitudeFt: number;
  /** Feet above the path at ¼, ½, ¾ and full scale up, and at the same fractions down (negative). */
  readonly upFt: readonly [number, number, number, number];
  readonly downFt: readonly [number, number, number, number];
}

/** Altitudes above mean sea level that lines are drawn at. */
export interface SheetHeights {
  readonly thresholdFt: number;
  readonly gate1000Ft: number;
  readonly gate500Ft: number;
  readonly decisionFt: number | null;
  /** The facility gives none: where final was taken to end. */
  readonly isDecisionAssumed: boolean;
  /** Where the height that is drawn comes from. */
  readonly source: AltitudeSource;
  /** Whether gates and decision altitude are judged by the altimeter; else by the height that is drawn. */
  readonly judgedBy: 'indicated' | 'geometric';
  /** Of a geometric height, 95 %, on this approach. */
  readonly halfWidthFt: number;
}

interface SheetFix {
  readonly name: string;
  readonly distanceNm: number;
}

/** How many dots make full scale, as a pilot's instrument has them. */
export type Dots = 2 | 5;
