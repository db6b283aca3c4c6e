import type { LessonPage } from '../../../electron/bridge/library-calls.ts';
import type { Session } from '../../state/session.ts';
import { lessonPath } from '../../state/unsaid.ts';
import { Tick } from '../fields.tsx';
import { WriteForm } from './lesson-notes.tsx';

interface Props {
  readonly page: LessonPage;
  readonly session: Session;
}

/** What was agreed with the student, at this lesson and others; open ones first. */
export function LessonGoals({ page: { lesson, goals }, session }: Props) {
  const { student_id: studentId } = lesson;
  if (studentId === null) return null;
  const ordered = goals.toSorted((a, b) => Number(a.reached_utc !== null) - Number(b.reached_utc !== null));
  return (
    <section>
      <h2>Goals agreed with {lesson.student}</h2>
      <ul className="plain">
        {ordered.map(({ id, text, agreed_utc, reached_utc }) => (
          <li key={id}>
            <Tick
              words={text}
              value={reached_utc !== null}
              say={(isReached) => void session.library.change('reachGoal', { id, isReached })}
            />
            <span className="aside beside">
              agreed {agreed_utc.slice(0, 10)}
              {reached_utc === null ? '' : `, reached ${reached_utc.slice(0, 10)}`}
            </span>
          </li>
        ))}
      </ul>
      <WriteForm
        words="Agree on a goal"
        button="Keep the goal"
        session={session}
        path={`${lessonPath(lesson)}/goal`}
        write={(text) => session.library.change('agreeGoal', { studentId, lessonId: lesson.id, text })}
      />
    </section>
  );
}
