import { TRAINER } from '../flight/aircraft.ts';
import type { FlightPlan } from '../flight/flight-plan.ts';
import { rollOutAndExit, visualLanding } from '../flight/landing.ts';
import { aboveGlidepath, belowIndicated, rightOf } from '../flight/moments.ts';
import { glidepath, level } from '../flight/sinking.ts';
import { CHASER, STUDENT } from '../flight/skills.ts';
import { heading, localizer } from '../flight/steering.ts';
import { PETRELHOLM } from './petrelholm.ts';

/** The first lesson: turned late onto the localizer, late down the glidepath, caught in time, landed. */
export const FIRST_APPROACH: FlightPlan = {
  name: 'first-approach',
  startUtc: '2026-03-14T15:02:10Z',
  facility: PETRELHOLM,
  start: { distanceNm: 9.6, offsetFt: -24000, indicatedFt: 2000, rightOfCourseDeg: 80, airspeedKt: 105 },
  limits: TRAINER,
  air: { isaDeviationC: 4, stationElevationFt: 46, settingErrorFt: 0, altimeterSettingHpa: 1019 },
  wind: {
    surface: { fromTrueDeg: 75, speedKt: 8 },
    at2000Ft: { fromTrueDeg: 95, speedKt: 19 },
    gustKt: 1.2,
    verticalGustFpm: 45,
  },
  skill: STUDENT,
  legs: [
    { name: 'vector', lateral: heading(80), vertical: level(2000), airspeedKt: 105, until: rightOf(-3.2) },
    { name: 'intercept', lateral: heading(38), vertical: level(2000), airspeedKt: 100, until: rightOf(0.3) },
    {
      name: 'level on the localizer',
      lateral: localizer(),
      vertical: level(2000),
      airspeedKt: 95,
      until: aboveGlidepath(0.85),
    },
    {
      name: 'chasing the glidepath',
      lateral: localizer(),
      vertical: glidepath(),
      airspeedKt: 90,
      flapDeg: 10,
      skill: { climbFpmPerScale: CHASER.climbFpmPerScale, lateS: CHASER.lateS, largestClimbFpm: 450 },
      until: belowIndicated(950),
    },
    {
      name: 'final',
      lateral: localizer(),
      vertical: glidepath(),
      airspeedKt: 85,
      flapDeg: 20,
      until: belowIndicated(240),
    },
    visualLanding(),
    ...rollOutAndExit('left'),
  ],
  outcomes: ['landed'],
};
