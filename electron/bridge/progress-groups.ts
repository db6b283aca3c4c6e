/** By what groups of a school can be made. */
export const GROUP_BY = [
  'instructor',
  'flown',
  'aircraft',
  'conditions',
  'turbulence',
  'course-width',
  'log-kind',
] as const;
