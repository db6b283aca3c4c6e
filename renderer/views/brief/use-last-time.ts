import { useAnswer } from '../use-answer.ts';

/** What a student brings along from the lessons before. */
export interface LastTime {
  /** Agreed on, and not reached yet. */
  readonly goals: readonly string[];
  /** What is to be practised, in a sentence; null where nothing is. */
  readonly practise: string | null;
  /** Why it could not be read; null where it could. */
  readonly problem: string | null;
}

const NOTHING = { goals: [], practise: null };

/** The same of the student that was chosen; nothing where nobody was, and until it was read. */
export function useLastTime(
  student: { readonly id: string; readonly name: string } | null,
  changes: number,
): LastTime {
  const asked = student === null ? null : { studentId: student.id };
  const { answer, problem } = useAnswer('studentProgress', asked, changes);
  const words = problem?.words ?? null;
  // An answer stays until there is another: nobody is given the goals of who was chosen before.
  if (answer === null || answer.student !== student?.name) return { ...NOTHING, problem: words };
  const goals = answer.goals.filter(({ reachedOn }) => reachedOn === null).map(({ text }) => text);
  return { goals, practise: answer.practise?.sentence ?? null, problem: words };
}
