import type { ProgressInput } from '../../core/progress/progress-of.ts';
import type { ProgressGoal } from '../../core/progress/progress.ts';
import { keepMissingFacts } from './missing-facts.ts';
import type { Library } from './library.ts';
import { goalsOf } from './record.ts';
import { factsOfStudent } from './student-facts.ts';
import type { Goal } from './tables.ts';
import type { Watch } from './watch.ts';

/** Everything that a student's record across lessons is made of. */
export async function progressInput(
  library: Library,
  { id, name }: { readonly id: string; readonly name: string },
  watch: Watch,
): Promise<ProgressInput> {
  const unreadable = await keepMissingFacts(library, watch);
  return {
    student: name,
    approaches: factsOfStudent(library, id),
    goals: goalsOf(library, id).map(goalOf),
    unreadable: unreadable.filter(({ studentId }) => studentId === id).map(({ fileName }) => fileName),
  };
}

function goalOf({ text, agreed_utc, reached_utc }: Goal): ProgressGoal {
  return { text, agreedOn: agreed_utc.slice(0, 10), reachedOn: reached_utc?.slice(0, 10) ?? null };
}
