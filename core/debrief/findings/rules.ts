import { LATE_ON_LOCALIZER } from './late-on-localizer.ts';
import type { FindingRule } from './rule.ts';
import { UNSTABLE_AND_CONTINUED } from './unstable-and-continued.ts';

/** Every finding, in order of consequence: safety first, then the path, the localizer, the speed, the landing; praise last. */
export const FINDING_RULES: readonly FindingRule[] = [UNSTABLE_AND_CONTINUED, LATE_ON_LOCALIZER];
