import type { Leg, PilotSkill, Until } from '../flight/cockpit.ts';
import type { FlightPlan } from '../flight/flight-plan.ts';
import { rollOutAndExit, touchAndGo, visualLanding } from '../flight/landing.ts';
import { aboveGlidepath, after, belowGlidepath } from '../flight/moments.ts';
import { glidepath, rate } from '../flight/sinking.ts';
import { CHASER, DRIFTER, STUDENT, TIDY } from '../flight/skills.ts';
import { localizer } from '../flight/steering.ts';
import { circleToOtherEnd, goAround } from '../scenarios/endings.ts';
import { downFromAbove, levelToGlidepath, onTheBeam } from '../scenarios/final.ts';
import { join, roundAgain, type Join } from '../scenarios/joining.ts';
import { scene } from '../scenarios/scene.ts';
import { PETRELHOLM } from './petrelholm.ts';
import { airAt, windFrom } from './weather.ts';

/** Who sees a needle late, does too much about it, and holds it too long. */
const WEAVER: Partial<PilotSkill> = {
  ...CHASER,
  lateS: 6.5,
  planned: 0.95,
  cutDegPerScale: 55,
  largestCutDeg: 24,
  climbFpmPerScale: 2100,
  largestClimbFpm: 650,
  ignoredFullScale: 0.1,
};

/** One swing of a chase: a sink rate held too long, while the needle that is not looked at drifts. */
function chase(verticalSpeedFpm: number, way: 'up' | 'down', until: Until): Leg {
  return {
    name: `chasing it ${way}`,
    lateral: localizer(way === 'up' ? 0.45 : -0.4),
    vertical: rate(verticalSpeedFpm),
    airspeedKt: way === 'up' ? 90 : 104,
    flapDeg: 10,
    skill: { cutDegPerScale: 26 },
    until,
  };
}

const MINIMUMS_FT = PETRELHOLM.minimums.decisionAltitudeFt;

export const TIDY_LANDING: FlightPlan = (() => {
  const { start, legs } = join({ from: 'right', angleDeg: 30, atNm: 8.5, altitudeFt: 1700 });
  const down = [levelToGlidepath(1700), onTheBeam(900), onTheBeam(MINIMUMS_FT, { airspeedKt: 80, flapDeg: 20 })];
  const flown = [...legs, ...down, visualLanding(), ...rollOutAndExit('left')];
  return scene('tidy-landing', PETRELHOLM, { start, legs: flown }, ['landed'], {
    startUtc: '2026-05-23T16:40:00Z',
    air: airAt(PETRELHOLM, 6, 1022),
    wind: windFrom(60, 7, 'smooth'),
    skill: { ...TIDY, lateS: 1.2, headingUnrestDeg: 0.7, climbUnrestFpm: 35 },
  });
})();

export const FROM_ABOVE: FlightPlan = (() => {
  const { start, legs } = join({
    from: 'left',
    angleDeg: 35,
    atNm: 8,
    altitudeFt: 3000,
    airspeedKt: 110,
    turnAtFullScale: 0.3,
  });
  const down = [
    levelToGlidepath(3000, 0.4, 105),
    downFromAbove(1050, -0.35, 108),
    chase(-170, 'up', aboveGlidepath(0.6)),
    chase(-880, 'down', belowGlidepath(-0.55)),
    chase(-150, 'up', aboveGlidepath(0.5)),
    chase(-800, 'down', belowGlidepath(-0.3)),
    onTheBeam(MINIMUMS_FT, { airspeedKt: 82, flapDeg: 20 }),
  ];
  const flown = [...legs, ...down, visualLanding(70), ...rollOutAndExit('right')];
  return scene('from-above', PETRELHOLM, { start, legs: flown }, ['landed'], {
    startUtc: '2026-03-21T10:12:30Z',
    air: airAt(PETRELHOLM, 2, 1008),
    wind: windFrom(20, 11, 'bumpy'),
    skill: STUDENT,
  });
})();

export const UNSTABLE: FlightPlan = (() => {
  const { start, legs } = join({
    from: 'right',
    angleDeg: 40,
    atNm: 6.4,
    altitudeFt: 2000,
    airspeedKt: 120,
    turnAtFullScale: -0.2,
  });
  const flown = [
    ...legs,
    levelToGlidepath(2000, 1.1, 118),
    onTheBeam(620, {
      name: 'fast and high',
      airspeedKt: 112,
      flapDeg: 0,
      skill: { ...CHASER, climbFpmPerScale: 420, planned: 0.85 },
    }),
    onTheBeam(MINIMUMS_FT, {
      name: 'diving at the runway',
      airspeedKt: 100,
      flapDeg: 20,
      skill: { ...CHASER, climbFpmPerScale: 800 },
    }),
    visualLanding(72),
    ...rollOutAndExit('right'),
  ];
  return scene('unstable-and-continued', PETRELHOLM, { start, legs: flown }, ['landed'], {
    startUtc: '2026-04-04T14:28:00Z',
    air: airAt(PETRELHOLM, 0, 1013),
    wind: windFrom(255, 9, 'bumpy'),
    skill: { ...STUDENT, lateS: 3.5, speedUnrestKt: 4 },
  });
})();

export const WENT_AROUND: FlightPlan = (() => {
  const { start, legs } = join({ from: 'left', angleDeg: 30, atNm: 8, altitudeFt: 1700 });
  const flown = [
    ...legs,
    levelToGlidepath(1700),
    onTheBeam(900, { airspeedKt: 90 }),
    {
      name: 'drifting high',
      lateral: localizer(-0.25),
      vertical: glidepath(1.6),
      airspeedKt: 92,
      flapDeg: 10,
      skill: { ...DRIFTER, ignoredFullScale: 0, climbFpmPerScale: 130 },
      until: aboveGlidepath(0.78),
    },
    {
      name: 'making up the mind',
      lateral: localizer(),
      vertical: glidepath(0.8),
      airspeedKt: 92,
      flapDeg: 10,
      until: after(4),
    },
    ...goAround(2000, { atFt: 1000, byDeg: -110 }),
  ];
  return scene('went-around', PETRELHOLM, { start, legs: flown }, ['missed-approach'], {
    startUtc: '2026-04-11T15:10:20Z',
    air: airAt(PETRELHOLM, 3, 1016),
    wind: windFrom(75, 14, 'bumpy'),
    skill: STUDENT,
  });
})();

export const TWICE: FlightPlan = (() => {
  const how: Join = { from: 'left', angleDeg: 30, atNm: 7.5, altitudeFt: 1700, turnAtFullScale: 0.1 };
  const { start, legs } = join(how);
  const flown = [
    ...legs,
    levelToGlidepath(1700, 0.3),
    chase(-260, 'up', aboveGlidepath(0.62)),
    chase(-830, 'down', belowGlidepath(-0.35)),
    onTheBeam(MINIMUMS_FT, { skill: { ...WEAVER, climbFpmPerScale: 1300 } }),
    visualLanding(68),
    ...touchAndGo(5, 750),
    ...roundAgain({ ...how, turnAtFullScale: 0.4 }, 8),
    levelToGlidepath(1700),
    onTheBeam(MINIMUMS_FT, { airspeedKt: 86, flapDeg: 20 }),
    visualLanding(65),
    ...rollOutAndExit('left'),
  ];
  return scene('touch-and-go-then-again', PETRELHOLM, { start, legs: flown }, ['touch-and-go', 'landed'], {
    startUtc: '2026-04-18T13:05:00Z',
    air: airAt(PETRELHOLM, 1, 1010),
    wind: windFrom(40, 9, 'bumpy'),
    skill: STUDENT,
  });
})();

export const CIRCLED: FlightPlan = (() => {
  const { start, legs } = join({ from: 'right', angleDeg: 25, atNm: 8, altitudeFt: 1700 });
  const flown = [...legs, levelToGlidepath(1700), onTheBeam(680), ...circleToOtherEnd(PETRELHOLM, 650)];
  return scene('circled', PETRELHOLM, { start, legs: flown }, ['circled'], {
    startUtc: '2026-05-09T09:31:00Z',
    air: airAt(PETRELHOLM, 5, 1011),
    wind: windFrom(230, 12, 'bumpy'),
    skill: { ...STUDENT, planned: 0.95 },
  });
})();

export const PHONE_LANDING: FlightPlan = (() => {
  const { start, legs } = join({ from: 'left', angleDeg: 45, atNm: 7.6, altitudeFt: 1700, turnAtFullScale: 0.2 });
  const down = [levelToGlidepath(1700, 0.15), onTheBeam(MINIMUMS_FT, { airspeedKt: 88, flapDeg: 20 })];
  const flown = [...legs, ...down, visualLanding(), ...rollOutAndExit('left')];
  return scene('phone', PETRELHOLM, { start, legs: flown }, ['landed'], {
    startUtc: '2026-05-30T17:22:00Z',
    air: airAt(PETRELHOLM, 4, 1018),
    wind: windFrom(15, 8, 'bumpy'),
    skill: STUDENT,
  });
})();

export const ENDS_ON_FINAL: FlightPlan = (() => {
  const { start, legs } = join({ from: 'right', angleDeg: 30, atNm: 9, altitudeFt: 1700, turnAtFullScale: 0.3 });
  const flown = [...legs, levelToGlidepath(1700), onTheBeam(560, { skill: { ...DRIFTER, planned: 0.75 } })];
  return scene('ends-on-final', PETRELHOLM, { start, legs: flown }, ['incomplete'], {
    startUtc: '2026-05-02T11:47:10Z',
    air: airAt(PETRELHOLM, 0, 1015),
    wind: windFrom(80, 10, 'bumpy'),
    skill: STUDENT,
  });
})();

export const RECORDER_FAULT: FlightPlan = (() => {
  const { start, legs } = join({ from: 'left', angleDeg: 30, atNm: 8.2, altitudeFt: 1700, turnAtFullScale: 0.3 });
  const down = [levelToGlidepath(1700), onTheBeam(MINIMUMS_FT, { airspeedKt: 88, flapDeg: 20, skill: { cutDegPerScale: 45, lateS: 5 } })];
  const flown = [...legs, ...down, visualLanding(), ...rollOutAndExit('right')];
  return scene('recorder-fault', PETRELHOLM, { start, legs: flown }, ['landed'], {
    startUtc: '2026-06-06T08:15:00Z',
    air: airAt(PETRELHOLM, -4, 1024),
    wind: windFrom(350, 10, 'bumpy'),
    skill: STUDENT,
  });
})();

export const JOINED_LATE: FlightPlan = (() => {
  const { start, legs } = join({
    from: 'right',
    angleDeg: 35,
    atNm: 4.3,
    altitudeFt: 1500,
    turnAtFullScale: 0.2,
    runNm: 3.5,
  });
  const down = [levelToGlidepath(1500, 0), onTheBeam(MINIMUMS_FT, { airspeedKt: 88, flapDeg: 20 })];
  const flown = [...legs, ...down, visualLanding(), ...rollOutAndExit('right')];
  return scene('joined-inside-the-fix', PETRELHOLM, { start, legs: flown }, ['landed'], {
    startUtc: '2026-05-16T12:02:00Z',
    air: airAt(PETRELHOLM, 1, 1019),
    wind: windFrom(55, 6, 'smooth'),
    skill: { ...STUDENT, planned: 0.9 },
  });
})();
