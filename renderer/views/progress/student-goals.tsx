import type { Progress } from '../../../core/progress/progress.ts';
import { goalWords } from '../../../core/progress/sentences.ts';
import type { Session } from '../../state/session.ts';
import { Tick } from '../fields.tsx';
import { WriteForm } from '../library/lesson-notes.tsx';

interface Props {
  /** Of the student. */
  readonly id: string;
  readonly progress: Progress;
  readonly session: Session;
}

/** What was agreed with the student; open ones first. */
export function StudentGoals({ id: studentId, progress: { goals }, session }: Props) {
  const ordered = goals.toSorted((a, b) => Number(a.reachedOn !== null) - Number(b.reachedOn !== null));
  return (
    <section>
      <h2>Goals agreed</h2>
      <ul className="plain">
        {ordered.map((goal) => (
          <li key={goal.id}>
            <Tick
              words={goal.text}
              value={goal.reachedOn !== null}
              say={(isReached) => void session.library.change('reachGoal', { id: goal.id, isReached })}
            />
            <span className="aside beside">{goalWords(goal)}</span>
          </li>
        ))}
      </ul>
      <WriteForm
        words="Agree on a goal"
        button="Keep the goal"
        session={session}
        path={`${studentId}/goal`}
        write={(text) => session.library.change('agreeGoal', { studentId, lessonId: null, text })}
      />
    </section>
  );
}
