import type { BeamReading } from './beam-truth.ts';
import type { FlightPlan } from './flight-plan.ts';

/** Ten times a second, what no log can know exactly. One column a name, all of one length. */
export interface TruthColumns {
  /** Seconds since 1970-01-01T00:00:00Z. */
  readonly timeS: Float64Array;
  readonly latDeg: Float64Array;
  readonly lonDeg: Float64Array;
  /** Above mean sea level, of the antenna. */
  readonly heightFt: Float64Array;
  readonly indicatedFt: Float64Array;
  readonly trackTrueDeg: Float64Array;
  readonly groundspeedKt: Float64Array;
  readonly airspeedIndicatedKt: Float64Array;
  readonly airspeedTrueKt: Float64Array;
  readonly verticalSpeedFpm: Float64Array;
  readonly headingTrueDeg: Float64Array;
  readonly bankDeg: Float64Array;
  readonly pitchDeg: Float64Array;
  readonly flapDeg: Float64Array;
  readonly windEastKt: Float64Array;
  readonly windNorthKt: Float64Array;
  /** 1 on the ground, 0 in the air. */
  readonly onGround: Uint8Array;
}

/** Where the aircraft was against the facility, by the tests' own geometry; columns as long as the truth's. */
export type BeamColumns = { readonly [K in keyof BeamReading]: Float64Array };

export interface GoAround {
  /** When the pilot decided; the aircraft sinks on for a moment. */
  readonly decidedS: number;
  readonly lowestS: number;
  readonly lowestFt: number;
}

export interface FlightFacts {
  readonly legs: readonly { readonly name: string; readonly startS: number; readonly endS: number }[];
  readonly touchdownsS: readonly number[];
  readonly liftOffsS: readonly number[];
  readonly goArounds: readonly GoAround[];
}

/** A flight that was flown: the plan, every tenth of a second of it, and what happened. */
export interface FlightTruth {
  readonly plan: FlightPlan;
  readonly columns: TruthColumns;
  readonly beam: BeamColumns;
  readonly facts: FlightFacts;
}
