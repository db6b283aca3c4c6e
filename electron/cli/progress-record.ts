import { progressCsv } from '../../core/progress/progress-csv.ts';
import { progressOf } from '../../core/progress/progress-of.ts';
import { progressText } from '../../core/progress/progress-text.ts';
import type { Library } from '../library/library.ts';
import type { Watch } from '../library/watch.ts';
import type { LibraryRoom } from './with-library.ts';

/** A student's record as a text of that format. */
export async function progressRecord(
  library: Library,
  room: LibraryRoom,
  student: { readonly id: string; readonly name: string },
  format: string,
  watch: Watch,
): Promise<string> {
  const unread = await room.makeMissingFacts(library, watch);
  const record = progressOf(room.progressInput(library, student, unread));
  if (format === 'json') return `${JSON.stringify(record, null, 2)}\n`;
  return format === 'csv' ? progressCsv(record) : progressText(record);
}
