import type { Job } from '../../core/log/log.ts';
import { factsOf, type ApproachFacts } from '../../core/progress/approach-facts.ts';
import { progressCsv } from '../../core/progress/progress-csv.ts';
import { progressOf } from '../../core/progress/progress-of.ts';
import { progressText } from '../../core/progress/progress-text.ts';
import type { ProgressGoal } from '../../core/progress/progress.ts';
import type { Library } from '../library/library.ts';
import type { LibraryRoom } from './with-library.ts';

/** A student's record as a text of that format; null when it was stopped. */
export async function progressRecord(
  library: Library,
  room: LibraryRoom,
  student: { readonly id: string; readonly name: string },
  format: string,
  job: Job,
): Promise<string | null> {
  const read = await readAll(library, room, student.id, job);
  if (read === null) return null;
  const goals = room.goalsOf(library, student.id).map(goalOf);
  const record = progressOf({ student: student.name, goals, ...read });
  if (format === 'json') return `${JSON.stringify(record, null, 2)}\n`;
  return format === 'csv' ? progressCsv(record) : progressText(record);
}

/** What all debriefs of a student say, of each no more than is needed; null when it was stopped. */
async function readAll(
  library: Library,
  room: LibraryRoom,
  studentId: string,
  job: Job,
): Promise<{ approaches: readonly ApproachFacts[]; unreadable: readonly string[] } | null> {
  const debriefs = room.debriefsOfStudent(library, studentId);
  const approaches: ApproachFacts[] = [];
  const unreadable: string[] = [];
  for (const [i, listed] of debriefs.entries()) {
    const debrief = room.debriefOfLesson(library, listed);
    if (debrief === null) unreadable.push(listed.fileName);
    else approaches.push(...factsOf(debrief));
    job.progress((i + 1) / debriefs.length);
    // Lets a Ctrl-C in.
    await new Promise((resolve) => setImmediate(resolve));
    if (job.cancelled()) return null;
  }
  return { approaches, unreadable };
}

type KeptGoal = ReturnType<LibraryRoom['goalsOf']>[number];

function goalOf({ text, agreed_utc, reached_utc }: KeptGoal): ProgressGoal {
  return { text, agreedOn: agreed_utc.slice(0, 10), reachedOn: reached_utc?.slice(0, 10) ?? null };
}
