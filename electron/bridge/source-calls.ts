import { z } from 'zod';

/** Characters: the index of a whole country's records has a few million. */
const LARGEST_INDEX = 30_000_000;

/** What the page keeps of the sources that facilities are made of. */
export const SOURCE_CALLS = {
  /** The index of the official records that were read last, as the page made it; null where none were. */
  records: { input: z.strictObject({}), output: z.strictObject({ text: z.string().nullable() }) },
  keepRecords: {
    input: z.strictObject({ text: z.string().max(LARGEST_INDEX) }),
    output: z.discriminatedUnion('kept', [
      z.strictObject({ kept: z.literal(true) }),
      z.strictObject({ kept: z.literal(false), why: z.string() }),
    ]),
  },
} as const;
