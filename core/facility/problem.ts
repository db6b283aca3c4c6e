import type { JsonPath } from './json-text.ts';

/** One reason why a facility file cannot be used, with the key it is about. */
export interface FacilityProblem {
  readonly code:
    | 'facility-back-course'
    | 'facility-impossible-value'
    | 'facility-localizer-only'
    | 'facility-missing-key'
    | 'facility-offset-without-antenna'
    | 'facility-repeated-key'
    | 'facility-unknown-key'
    | 'facility-wrong-format'
    | 'facility-wrong-type';
  readonly path: JsonPath;
  /** What follows the key in the sentence: "is 95: a latitude lies between -90 and 90". */
  readonly says: string;
  readonly tip: string | null;
}
