import type { ProgressInput } from '../../core/progress/progress-of.ts';
import type { ProgressGoal } from '../../core/progress/progress.ts';
import type { UnreadDebrief } from './missing-facts.ts';
import type { Library } from './library.ts';
import { goalsOf } from './record.ts';
import { factsOfStudent } from './student-facts.ts';
import type { Goal } from './tables.ts';

/** Everything that a student's record across lessons is made of, where no facts are missing but of what is unread. */
export function progressInput(
  library: Library,
  { id, name }: { readonly id: string; readonly name: string },
  unread: readonly UnreadDebrief[],
): ProgressInput {
  return {
    student: name,
    approaches: factsOfStudent(library, id),
    goals: goalsOf(library, id).map(goalOf),
    unreadable: unread.filter(({ studentId }) => studentId === id).map(({ fileName }) => fileName),
  };
}

function goalOf({ id, text, agreed_utc, reached_utc }: Goal): ProgressGoal {
  return { id, text, agreedOn: agreed_utc.slice(0, 10), reachedOn: reached_utc?.slice(0, 10) ?? null };
}
