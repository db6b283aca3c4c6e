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

/** What those are called that are told in time. */
export const TIMED_TITLES = {
  'localizer-before-final': 'Localizer before final',
  'altitude-before-final': 'Altitude before final',
  'localizer-final': 'Localizer on final',
  'glidepath-final': 'Glidepath on final',
  'airspeed-final': 'Airspeed on final',
} as const satisfies Partial<Record<CriterionId, string>>;

/** Whether a criterion is told in time and distance, as all of a user's own are. */
export function isToldInTime(id: string): boolean {
  return Object.hasOwn(TIMED_TITLES, id) || !CRITERION_IDS.some((known) => known === id);
}
