import { z } from 'zod';
import type { Progress } from '../../core/progress/progress.ts';
import type { SchoolPage } from '../../core/progress/school/school-page.ts';
import { GROUP_BY } from './progress-groups.ts';
import { SHA256 } from './recent.ts';

/** What the host's own code made of its own library: it is looked at what it is, and not at every figure of it. */
const PROGRESS = z.custom<Progress>((value) => (value as Progress | null)?.format === 'halfdot-progress/1');
const SCHOOL_PAGE = z.custom<SchoolPage>(
  (value) => (value as SchoolPage | null)?.school.format === 'halfdot-school/1',
);

const ID = z.string().min(1).max(64);
const DATE = z.iso.date();
const VALUES = z.array(z.string().max(1000)).max(1000).readonly().nullable();

const FILTER = z.strictObject({
  standardKey: z.string().max(64).nullable(),
  engineVersion: z.string().max(64).nullable(),
  /** Dates, both included. */
  from: DATE.nullable(),
  to: DATE.nullable(),
  /** By factor of the case mix the values that are let in. */
  mix: z.strictObject({
    flown: VALUES.exactOptional(),
    aircraft: VALUES.exactOptional(),
    conditions: VALUES.exactOptional(),
    turbulence: VALUES.exactOptional(),
    'course-width': VALUES.exactOptional(),
    'log-kind': VALUES.exactOptional(),
  }),
});

/** What the page can ask of the lessons together. */
export const PROGRESS_CALLS = {
  /** A student across lessons. */
  studentProgress: { input: z.strictObject({ studentId: ID }), output: PROGRESS },
  /** What was flown better than the time before, of each approach of a kept debrief where something was. */
  sinceLast: {
    input: z.strictObject({
      sha256: SHA256,
      facility: z.string().max(1000),
      standardId: z.string().max(1000),
    }),
    output: z.array(z.strictObject({ approachUtc: z.string(), lastDate: DATE, sentence: z.string() })),
  },
  /** A school across students, by one measure; null where nobody was held to it. */
  schoolProgress: {
    input: z.strictObject({
      measure: z.string().min(1).max(100),
      filter: FILTER,
      groupBy: z.enum(GROUP_BY).nullable(),
      isNamed: z.boolean(),
    }),
    output: SCHOOL_PAGE.nullable(),
  },
} as const;
