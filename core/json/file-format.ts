import type * as z from 'zod/mini';
import type { JsonPath } from './json-text.ts';
import type { JsonProblem } from './problem.ts';

/** One kind of JSON file that a user writes, and all that is needed to read it. */
export interface FileFormat<Value> {
  /** What the sentences call the file, and what its codes begin with: "facility". */
  readonly noun: string;
  /** Value of its key `format`. */
  readonly format: string;
  /** Made when it is needed: making a schema takes longer than reading a file with it. */
  readonly schema: () => z.ZodMiniType<Value>;
  /** What values, each possible on its own, cannot be together. */
  readonly impossible: (value: Value) => readonly JsonProblem[];
  /** A code of its own for a key whose absence means more than a slip; null for all others. */
  readonly codeOfMissing?: (path: JsonPath) => string | null;
}
