import type { Overview } from '../../../electron/bridge/library-calls.ts';

/** Whether the library has a student of that name: in whatever case, accents as they are written, as its host holds it. */
export function isKnownStudent({ students }: Pick<Overview, 'students'>, name: string): boolean {
  const sought = plainCase(name.trim());
  return students.some((student) => plainCase(student.name) === sought);
}

/** SQLite's NOCASE: A to Z alone. */
function plainCase(name: string): string {
  return name.replaceAll(/[A-Z]/g, (letter) => letter.toLowerCase());
}
