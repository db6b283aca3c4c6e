import { TRAINER } from '../flight/aircraft.ts';
import type { Leg } from '../flight/cockpit.ts';
import type { FacilityFile } from '../flight/facility-file.ts';
import type { FlightPlan, PlannedOutcome } from '../flight/flight-plan.ts';
import { TIDY } from '../flight/skills.ts';
import type { WindPlan } from '../flight/wind.ts';

/** Everything of a plan that a scenario does not care about. */
export type SceneSettings = Partial<
  Pick<FlightPlan, 'startUtc' | 'limits' | 'air' | 'wind' | 'skill' | 'guide' | 'ungraded'>
>;

/** Puts a start and legs together into a plan; a gentle day and a tidy pilot unless the settings say otherwise. */
export function scene(
  name: string,
  facility: FacilityFile,
  flown: { readonly start: FlightPlan['start']; readonly legs: readonly Leg[] },
  outcomes: readonly PlannedOutcome[],
  settings: SceneSettings = {},
): FlightPlan {
  return {
    name,
    startUtc: '2026-03-14T09:00:00Z',
    facility,
    start: flown.start,
    limits: TRAINER,
    air: {
      isaDeviationC: 0,
      stationElevationFt: facility.airportElevationFt,
      settingErrorFt: 0,
      altimeterSettingHpa: 1013.25,
    },
    wind: breezeAcross(facility),
    skill: TIDY,
    legs: flown.legs,
    outcomes,
    ...settings,
  };
}

/** Flies the same plan with other luck. */
export function withSeed(plan: FlightPlan, seed: number | string): FlightPlan {
  return { ...plan, name: `${plan.name}/${seed}` };
}

/** A light wind from ahead and left, a little more of it higher up. */
function breezeAcross(facility: FacilityFile): WindPlan {
  const ahead = facility.localizer.courseMagneticDeg + facility.magneticVariationDeg;
  return {
    surface: { fromTrueDeg: ahead - 30, speedKt: 6 },
    at2000Ft: { fromTrueDeg: ahead - 50, speedKt: 14 },
    gustKt: 0.8,
    verticalGustFpm: 25,
  };
}
