import type { AircraftState, Controls } from './aircraft.ts';
import type { Atmosphere } from './atmosphere.ts';
import type { BeamReading, BeamTruth } from './beam-truth.ts';
import type { FacilityFile } from './facility-file.ts';
import type { WindPlan } from './wind.ts';

/** How a pilot flies: what separates a tidy approach from a poor one. */
export interface PilotSkill {
  /** Seconds between what the needles do and what the pilot acts on. */
  readonly lateS: number;
  /** Seconds between two looks at the same instrument. */
  readonly scanS: number;
  /** Degrees of cut towards the course for a full scale of needle. */
  readonly cutDegPerScale: number;
  readonly largestCutDeg: number;
  /** Feet a minute added or taken for a full scale of needle. */
  readonly climbFpmPerScale: number;
  readonly largestClimbFpm: number;
  /** Share of a needle that the pilot does not act on. */
  readonly ignoredFullScale: number;
  /** Share of the true wind correction and of the needed sink rate that the pilot sets at first. */
  readonly planned: number;
  /** How quickly a standing deviation teaches the pilot; per second of full scale, in degrees and feet a minute. */
  readonly learnDegPerS: number;
  readonly learnFpmPerS: number;
  /** Standard deviations of an unsteady hand. */
  readonly headingUnrestDeg: number;
  readonly climbUnrestFpm: number;
  readonly speedUnrestKt: number;
}

/** All that a pilot can see at a moment. */
export interface Cockpit {
  readonly timeS: number;
  /** Since this leg began. */
  readonly legS: number;
  readonly state: AircraftState;
  readonly groundspeedKt: number;
  readonly trackTrueDeg: number;
  readonly indicatedFt: number;
  /** Height of the wheels above the runway. */
  readonly wheelsFt: number;
  /** Where the aircraft is. */
  readonly now: BeamReading;
  /** What the pilot acts on: the needles as they were a reaction time ago. */
  readonly seen: BeamReading;
  readonly beam: BeamTruth;
  readonly air: Atmosphere;
  readonly wind: WindPlan;
  readonly skill: PilotSkill;
}

/** True at the moment at which a leg is over. */
export type Until = (cockpit: Cockpit) => boolean;

/** A channel of the pilot's work; made anew for each leg of each flight, so that it may remember. */
export type Lateral = () => (cockpit: Cockpit) => { headingTrueDeg: number; turn?: Controls['turn'] };
export type Vertical = () => (cockpit: Cockpit) => number;

/** One stretch of a plan: what is flown, how fast, and until when. */
export interface Leg {
  readonly name: string;
  readonly lateral: Lateral;
  readonly vertical: Vertical;
  readonly airspeedKt: number;
  readonly until: Until;
  readonly flapDeg?: number;
  readonly bankLimitDeg?: number;
  /** Changes of the pilot for this leg, such as a needle chased. */
  readonly skill?: Partial<PilotSkill>;
  /** The pilot has decided to go around when this leg begins. */
  readonly goAround?: boolean;
  /** The runway and beam that this leg is flown by, when it is not the plan's own. */
  readonly guide?: FacilityFile;
}
