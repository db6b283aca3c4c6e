/** The criteria that every standard may judge, in the order of a debrief. A user's own have ids of their own. */
export const CRITERION_IDS = [
  'localizer-before-final',
  'altitude-before-final',
  'localizer-final',
  'glidepath-final',
  'airspeed-final',
  'stability',
  'minimums',
] as const;

export type CriterionId = (typeof CRITERION_IDS)[number];
