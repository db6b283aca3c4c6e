import { resolve } from 'node:path';
import { z } from 'zod';

/** The files among the words of a command line; the words that begin with a dash are the runtime's. */
export function namedFiles(words: readonly string[], folder: string): string[] {
  return words.filter((word) => word !== '' && !word.startsWith('-')).map((word) => resolve(folder, word));
}

const SECOND = z.object({ files: z.array(z.string()) });

/** The files that a second start hands to the first; none where what it says is of another kind. */
export function filesOfSecond(data: unknown): string[] {
  const said = SECOND.safeParse(data);
  return said.success ? said.data.files : [];
}
