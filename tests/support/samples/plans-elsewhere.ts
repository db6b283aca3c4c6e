import type { FlightPlan } from '../flight/flight-plan.ts';
import { rollOutAndExit, visualLanding } from '../flight/landing.ts';
import { STUDENT, TIDY } from '../flight/skills.ts';
import { goAround, lowPass } from '../scenarios/endings.ts';
import { levelToGlidepath, onTheBeam } from '../scenarios/final.ts';
import { join } from '../scenarios/joining.ts';
import { overflight } from '../scenarios/no-approaches.ts';
import { scene } from '../scenarios/scene.ts';
import { CHOUGHFELL } from './choughfell.ts';
import { airAt, windFrom } from './weather.ts';
import { WHIMBRELNESS } from './whimbrelness.ts';

export const STEEP_AND_HIGH: FlightPlan = (() => {
  const { start, legs } = join({ from: 'left', angleDeg: 30, atNm: 9, altitudeFt: 7900, turnAtFullScale: 0.3 });
  const down = [levelToGlidepath(7900, 0), onTheBeam(6030, { airspeedKt: 88, flapDeg: 20 })];
  const flown = [...legs, ...down, visualLanding(68), ...rollOutAndExit('right')];
  return scene('steep-and-high', CHOUGHFELL, { start, legs: flown }, ['landed'], {
    startUtc: '2026-06-13T19:33:00Z',
    air: airAt(CHOUGHFELL, 16, 1017),
    wind: windFrom(310, 10, 'bumpy'),
    skill: { ...STUDENT, planned: 0.88 },
  });
})();

/** A cold day: the altimeter shows some 180 ft too much at the fix, and 15 ft at minimums. */
export const COLD_MISSED: FlightPlan = (() => {
  const { start, legs } = join({ from: 'right', angleDeg: 30, atNm: 9.5, altitudeFt: 7900 });
  const flown = [
    ...legs,
    levelToGlidepath(7900),
    onTheBeam(6030, { airspeedKt: 90 }),
    ...goAround(8000, { atFt: 6600, byDeg: 120 }),
  ];
  return scene('missed-at-minimums', CHOUGHFELL, { start, legs: flown }, ['missed-approach'], {
    startUtc: '2026-07-18T18:05:00Z',
    air: airAt(CHOUGHFELL, -24, 1002),
    wind: windFrom(20, 13, 'smooth'),
    skill: { ...TIDY, lateS: 1.5, planned: 0.9 },
  });
})();

export const OFFSET_COURSE: FlightPlan = (() => {
  const { start, legs } = join({ from: 'left', angleDeg: 35, atNm: 7.4, altitudeFt: 1600, turnAtFullScale: 0.35 });
  const down = [levelToGlidepath(1600, 0), onTheBeam(320, { airspeedKt: 84, flapDeg: 20 })];
  const flown = [...legs, ...down, visualLanding(62), ...rollOutAndExit('left')];
  return scene('offset-course', WHIMBRELNESS, { start, legs: flown }, ['landed'], {
    startUtc: '2026-06-20T04:11:00Z',
    air: airAt(WHIMBRELNESS, 8, 1012),
    wind: windFrom(150, 9, 'bumpy'),
    skill: { ...STUDENT, planned: 0.9 },
  });
})();

export const LOW_APPROACH: FlightPlan = (() => {
  const { start, legs } = join({ from: 'right', angleDeg: 30, atNm: 7.5, altitudeFt: 1600 });
  const down = [levelToGlidepath(1600), onTheBeam(320, { airspeedKt: 85, flapDeg: 20 })];
  const flown = [...legs, ...down, ...lowPass(WHIMBRELNESS, 100, 1800)];
  return scene('low-approach-sample', WHIMBRELNESS, { start, legs: flown }, ['low-approach'], {
    startUtc: '2026-06-27T05:20:00Z',
    air: airAt(WHIMBRELNESS, 5, 1014),
    wind: windFrom(100, 8, 'smooth'),
    skill: TIDY,
  });
})();

export const OVERFLIGHT: FlightPlan = overflight(CHOUGHFELL, {
  startUtc: '2026-07-04T20:00:00Z',
  air: airAt(CHOUGHFELL, 0, 1013),
  wind: windFrom(280, 16, 'smooth'),
});
