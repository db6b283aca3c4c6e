import { z } from 'zod';
import type { Progress } from '../../core/progress/progress.ts';

/** What the host's own code made of its own library: it is looked at what it is, and not at every figure of it. */
const PROGRESS = z.custom<Progress>((value) => (value as Progress | null)?.format === 'halfdot-progress/1');

/** What the page can ask of the lessons together. */
export const PROGRESS_CALLS = {
  /** A student across lessons. */
  studentProgress: { input: z.strictObject({ studentId: z.string().min(1).max(64) }), output: PROGRESS },
} as const;
