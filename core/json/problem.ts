import type { JsonPath } from './json-text.ts';

/** One reason why a file of the user's cannot be used, with the key it is about. */
export interface JsonProblem {
  /** Kebab-case, and begins with the noun of the file: "facility-unknown-key". */
  readonly code: string;
  readonly path: JsonPath;
  /** What follows the key in the sentence: "is 95: a latitude lies between -90 and 90". */
  readonly says: string;
  readonly tip: string | null;
}
