import type { AircraftLimits } from './aircraft.ts';
import type { Atmosphere } from './atmosphere.ts';
import type { Leg, PilotSkill } from './cockpit.ts';
import type { FacilityFile } from './facility-file.ts';
import type { WindPlan } from './wind.ts';

/** What becomes of an approach, in the words of the product's contract. */
export type PlannedOutcome =
  | 'landed'
  | 'touch-and-go'
  | 'low-approach'
  | 'missed-approach'
  | 'sidestepped'
  | 'circled'
  | 'broken-off'
  | 'incomplete';

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
  /** Outcomes of the approaches that a correct program finds and grades, in order; empty when there is none. */
  readonly outcomes: readonly PlannedOutcome[];
  /** What it may list beside them, and never grades. */
  readonly ungraded?: readonly ('visual-final' | 'localizer-pass')[];
}
