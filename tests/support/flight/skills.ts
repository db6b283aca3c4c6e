import type { PilotSkill } from './cockpit.ts';

/** An instructor on a good day. */
export const TIDY: PilotSkill = {
  lateS: 0.8,
  scanS: 1.5,
  cutDegPerScale: 16,
  largestCutDeg: 12,
  climbFpmPerScale: 420,
  largestClimbFpm: 250,
  ignoredFullScale: 0.03,
  planned: 0.97,
  learnDegPerS: 0.15,
  learnFpmPerS: 6,
  headingUnrestDeg: 0.5,
  climbUnrestFpm: 25,
  speedUnrestKt: 0.8,
};

/** A student before the test: late by a little, and mostly right. */
export const STUDENT: PilotSkill = {
  lateS: 2,
  scanS: 3,
  cutDegPerScale: 18,
  largestCutDeg: 20,
  climbFpmPerScale: 520,
  largestClimbFpm: 350,
  ignoredFullScale: 0.1,
  planned: 0.8,
  learnDegPerS: 0.12,
  learnFpmPerS: 5,
  headingUnrestDeg: 1.2,
  climbUnrestFpm: 55,
  speedUnrestKt: 2,
};

/** A student early in the course, who chases: late, and then too much. */
export const CHASER: PilotSkill = {
  lateS: 4,
  scanS: 4,
  cutDegPerScale: 34,
  largestCutDeg: 28,
  climbFpmPerScale: 950,
  largestClimbFpm: 600,
  ignoredFullScale: 0.15,
  planned: 0.6,
  learnDegPerS: 0.05,
  learnFpmPerS: 2,
  headingUnrestDeg: 2,
  climbUnrestFpm: 90,
  speedUnrestKt: 3.5,
};

/** A mind elsewhere: corrections too small and too late. */
export const DRIFTER: PilotSkill = {
  ...STUDENT,
  lateS: 5,
  scanS: 6,
  cutDegPerScale: 7,
  climbFpmPerScale: 160,
  ignoredFullScale: 0.3,
  planned: 0.5,
  learnDegPerS: 0.02,
  learnFpmPerS: 0.8,
};
