import type { StatedWind } from '../approach/estimated-airspeed.ts';
import type { Issue } from '../issue/issue.ts';
import type { Dots } from '../sheet/sheet.ts';
import type { GateLimits } from '../standard/standard.ts';

/** What is known of the flight that is briefed; null what nobody said. Nothing of it is made up. */
export interface BriefingAsked {
  readonly groundspeedKt: number | null;
  /** Indicated. */
  readonly airspeedKt: number | null;
  readonly wind: StatedWind | null;
  /** At the aerodrome. */
  readonly temperatureC: number | null;
  /** As `agreedDecisionAltitude` gives it, and never taken from the facility. */
  readonly decisionAltitudeFt: number | null;
  /** What heights of the gates are counted from, by the standard that is flown to. */
  readonly gateDatum: GateLimits['datum'];
  /** How many dots the pilot's display has to full scale. */
  readonly dots: Dots;
  readonly objective: string | null;
  /** From last time, not reached yet. */
  readonly goals: readonly string[];
  /** Who entered the facility's data, and of which day they are (`YYYY-MM-DD`). */
  readonly enteredBy: string | null;
  readonly enteredOn: string | null;
}

/**
 * One approach before it is flown: `halfdot-briefing/1`. Altitudes are feet above mean sea level, distances NM to the
 * threshold, nothing is rounded; what is not known is null.
 */
export interface Briefing {
  readonly format: 'halfdot-briefing/1';
  readonly facility: BriefedFacility;
  readonly course: BriefedCourse;
  readonly glidepath: {
    readonly angleDeg: number;
    readonly gradientFtPerNm: number;
    readonly thresholdCrossingHeightFt: number;
  };
  /** What the altimeter's error was reckoned with; null leaves every `altimeterFt` null. */
  readonly temperatureC: number | null;
  /** At each mile, the farthest first. */
  readonly path: readonly PathPlace[];
  readonly fix: BriefedFix;
  readonly decision: BriefedDecision | null;
  readonly gates: BriefedGates;
  /** By groundspeed, the slowest first. */
  readonly descents: readonly BriefedDescent[];
  readonly wind: BriefedWind | null;
  readonly needles: BriefedNeedles;
  readonly missedApproach: { readonly climbToFt: number | null; readonly steps: readonly string[] };
  readonly objective: string | null;
  readonly goals: readonly string[];
  readonly enteredBy: string | null;
  readonly enteredOn: string | null;
  /** What in the facility contradicts something else, or what was typed for this sheet. */
  readonly toCheck: readonly Issue[];
}

interface BriefedFacility {
  readonly name: string;
  readonly ident: string | null;
  readonly frequencyMHz: number | null;
  readonly runway: string;
  readonly lengthFt: number;
  readonly thresholdElevationFt: number;
  readonly touchdownZoneElevationFt: number;
  readonly airportElevationFt: number | null;
}

export interface BriefedCourse {
  readonly trueDeg: number;
  /** As given, else from the true course; null where no variation is known. */
  readonly magneticDeg: number | null;
  readonly magneticFrom: 'given' | 'variation' | 'model' | null;
  /** East positive. */
  readonly variationDeg: number | null;
}

export interface PathPlace {
  readonly distanceNm: number;
  readonly altitudeFt: number;
  /** What an altimeter shows there in that air. */
  readonly altimeterFt: number | null;
}

export interface BriefedFix extends PathPlace {
  readonly name: string | null;
  /** Assumed: the facility gives no distance. */
  readonly isAssumed: boolean;
  /** The path there with the published correction, which is made for sea level; null without a temperature. */
  readonly byTableFt: number | null;
  readonly dmeNm: number | null;
  readonly publishedAltitudeFt: number | null;
  /** The path there less the published altitude. */
  readonly pathAboveFt: number | null;
}

export interface BriefedDecision {
  readonly altitudeFt: number;
  readonly aboveTouchdownZoneFt: number;
  /** Where on the path the altimeter shows it. */
  readonly distanceNm: number;
}

export interface BriefedGates {
  readonly datum: GateLimits['datum'];
  readonly datumFt: number;
  readonly gates: readonly {
    readonly heightFt: number;
    /** On the altimeter. */
    readonly altitudeFt: number;
    /** Where on the path the altimeter shows it. */
    readonly distanceNm: number;
  }[];
}

export interface BriefedDescent {
  readonly groundspeedKt: number;
  readonly isAsked: boolean;
  /** Positive down. */
  readonly rateFpm: number;
  /** From the fix to decision altitude; null without one. */
  readonly timeS: number | null;
}

export interface BriefedWind {
  readonly fromTrueDeg: number;
  readonly speedKt: number;
  /** Against the aircraft; a tailwind is negative. */
  readonly headwindKt: number;
  readonly crosswindFromRightKt: number;
  /** Indicated, as given. */
  readonly airspeedKt: number | null;
  /** How the course is held at that airspeed; null without one, or where the wind is too strong for it. */
  readonly heading: BriefedHeading | null;
}

export interface BriefedHeading {
  readonly trueAirspeedKt: number;
  /** Of the nose from the course, right positive; the drift is the same to the other side. */
  readonly correctionDeg: number;
  readonly trueDeg: number;
  readonly magneticDeg: number | null;
  readonly groundspeedKt: number;
}

export interface BriefedNeedles {
  readonly dots: Dots;
  readonly places: readonly { readonly distanceNm: number; readonly isDecision: boolean }[];
  /** Feet to one side of course and feet above path, at each place. */
  readonly rows: readonly {
    readonly fraction: number;
    readonly localizerFt: readonly number[];
    readonly glidepathFt: readonly number[];
  }[];
}
