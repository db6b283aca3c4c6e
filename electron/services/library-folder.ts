import { join, resolve } from 'node:path';

const WORD = '--library=';

/** The folder of the library that an app was started with, or the one in the user's own folder. */
export function libraryFolder(words: readonly string[], userFolder: string): string {
  const named = words.find((word) => word.startsWith(WORD))?.slice(WORD.length);
  return named ? resolve(named) : join(userFolder, 'library');
}
