import { CHASED_GLIDEPATH } from './chased-glidepath.ts';
import { CORRECTIONS_TOO_FEW, CORRECTIONS_TOO_LARGE, CORRECTIONS_TOO_LATE } from './corrections.ts';
import { DESCENDED_EARLY } from './descended-early.ts';
import { DESCENDED_LATE } from './descended-late.ts';
import { DRIFTING } from './drifting.ts';
import { FROM_ABOVE } from './from-above.ts';
import { HUNTING_GLIDEPATH, HUNTING_LOCALIZER } from './hunting.ts';
import { LONG_LANDING, SHORT_LANDING } from './landing.ts';
import { LATE_ON_LOCALIZER } from './late-on-localizer.ts';
import { CONTINUED_UNSEEN, MISSED_LATE, MISSED_SANK, MISSED_WANDERED } from './missed-approach.ts';
import { DUCKED_BELOW_PATH, LEVELLED_NEAR_MINIMUMS } from './near-minimums.ts';
import { STEADY_BOTH, STEADY_GLIDEPATH, STEADY_LOCALIZER, WENT_AROUND_IN_TIME } from './praise.ts';
import { RATE_NOT_HELD } from './rate-not-held.ts';
import type { FindingRule } from './rule.ts';
import { FAST_AT_GATE, SPEED_DECAYING } from './speed.ts';
import { UNSTABLE_AND_CONTINUED } from './unstable-and-continued.ts';

/**
 * Every finding, in order of consequence: safety first, then the path, the localizer, the speed and the landing, in
 * each what came first before what followed; praise last. A rule is covered only by rules above it.
 */
export const FINDING_RULES: readonly FindingRule[] = [
  UNSTABLE_AND_CONTINUED,
  DUCKED_BELOW_PATH,
  CONTINUED_UNSEEN,
  MISSED_SANK,
  MISSED_LATE,
  MISSED_WANDERED,
  LEVELLED_NEAR_MINIMUMS,
  FROM_ABOVE,
  DESCENDED_EARLY,
  DESCENDED_LATE,
  HUNTING_GLIDEPATH,
  CHASED_GLIDEPATH,
  SPEED_DECAYING,
  RATE_NOT_HELD,
  LATE_ON_LOCALIZER,
  HUNTING_LOCALIZER,
  DRIFTING,
  CORRECTIONS_TOO_FEW,
  CORRECTIONS_TOO_LATE,
  CORRECTIONS_TOO_LARGE,
  FAST_AT_GATE,
  SHORT_LANDING,
  LONG_LANDING,
  WENT_AROUND_IN_TIME,
  STEADY_BOTH,
  STEADY_LOCALIZER,
  STEADY_GLIDEPATH,
];
