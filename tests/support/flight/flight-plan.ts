import type { AircraftLimits } from './aircraft.ts';
import type { Atmosphere } from './atmosphere.ts';
import type { Leg, PilotSkill } from './cockpit.ts';
import type { FacilityFile } from './facility-file.ts';
import type { WindPlan } from './wind.ts';

/** What becomes of one inbound run, in the words of the product's contract. */
export type PlannedOutcome =
  | 'landed'
  | 'touch-and-go'
  | 'low-approach'
  | 'missed-approach'
  | 'sidestepped'
  | 'circled'
  | 'broken-off'
  | 'incomplete'
  | 'visual-final'
  | 'localizer-pass';

/** A whole flight before it is flown; with its seed it determines every fix. */
export interface FlightPlan {
  readonly name: string;
  readonly startUtc: string;
  /** The facility that the flight is looked at against. */
  readonly facility: FacilityFile;
  /** The beam and runway that the pilot flies by; the facility unless given. */
  readonly guide?: FacilityFile;
  readonly start: {
    readonly distanceNm: number;
    readonly offsetFt: number;
    readonly indicatedFt: number;
    readonly rightOfCourseDeg: number;
    readonly airspeedKt: number;
  };
  readonly limits: AircraftLimits;
  readonly air: Atmosphere;
  readonly wind: WindPlan;
  readonly skill: PilotSkill;
  readonly legs: readonly Leg[];
  /** Approaches that a correct program finds, in order; empty when there is none. */
  readonly outcomes: readonly PlannedOutcome[];
}
