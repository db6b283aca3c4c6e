import { z } from 'zod';

/** What the library calls its entries by. */
export const ID = z.string().min(1).max(64);

/** What became of a log that was to be kept. */
export const KEPT = z.discriminatedUnion('became', [
  z.strictObject({
    became: z.enum(['kept', 'known']),
    approaches: z.number(),
    facilities: z.array(z.string()),
    /** Whose it is now; null: nobody's. */
    student: z.string().nullable(),
    lessonId: ID,
    date: z.string(),
    /** The debrief at the first of the facilities by the standard; null where there is none. */
    debriefId: ID.nullable(),
    /** It was there already, and stays in that lesson though another was asked for. */
    stays: z.boolean(),
    /** Somebody who came onto the roster with it; null: nobody. */
    added: z.string().nullable(),
    /** Why it was given to nobody, as the end of a sentence about it; null where no rule was asked, or somebody was found. */
    nobodyBecause: z.string().nullable(),
    /** Warnings, and cautions of what a verdict or the date stands on. */
    warnings: z.array(z.string()),
  }),
  z.strictObject({ became: z.literal('refused'), why: z.string() }),
]);
export type Kept = z.infer<typeof KEPT>;
