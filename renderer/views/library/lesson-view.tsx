import { useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { LessonPage } from '../../../electron/bridge/library-calls.ts';
import type { AppState } from '../../state/app-state.ts';
import type { Session } from '../../state/session.ts';
import { GiveForm } from './give-form.tsx';
import { Heading } from './heading.tsx';
import { LessonApproaches } from './lesson-approaches.tsx';
import { LessonFacts } from './lesson-facts.tsx';
import { LessonGoals } from './lesson-goals.tsx';
import { LessonNotes } from './lesson-notes.tsx';
import { ReadBefore, Unread } from '../unread.tsx';
import { useAnswer } from '../use-answer.ts';

interface Props {
  readonly id: string;
  readonly state: AppState;
  readonly session: Session;
}

/** One lesson: what was flown in it, and what was said and agreed about it. */
export function LessonView({ id, state, session }: Props) {
  const { overview, changes } = state.library;
  const { answer: page, problem, again } = useAnswer('lesson', { id }, changes);
  const heading = useRef<HTMLHeadingElement>(null);
  const back = (
    <Button className="button" onPress={() => session.store.dispatch({ do: 'show', view: 'library' })}>
      All flights
    </Button>
  );
  if (problem !== null && (page === null || problem.isGone))
    return <Unread what="lesson" problem={problem} again={again} back={back} />;
  if (page === null || overview === null) return null;
  const { lesson, logs } = page;
  return (
    <div className="lesson">
      <div className="row lesson-head">
        <Heading place={heading}>
          {lesson.student ?? 'Nobody yet'}, {lesson.date}
        </Heading>
        <div className="row">
          {lesson.student_id === null ? null : (
            <Button
              className="button"
              onPress={() => session.store.dispatch({ do: 'student', studentId: lesson.student_id! })}
            >
              All lessons together
            </Button>
          )}
          {back}
        </div>
      </div>
      {problem === null ? null : <ReadBefore problem={problem} again={again} />}
      <div className="lesson-parts">
        <div>
          <LessonApproaches page={page} overview={overview} state={state} session={session} />
          <LessonNotes page={page} overview={overview} session={session} />
          <LessonGoals page={page} session={session} />
        </div>
        <aside className="side" aria-label="About the lesson">
          <LessonFacts key={id} page={page} overview={overview} session={session} />
          <Logs logs={logs} student={lesson.student} overview={overview} session={session} />
        </aside>
      </div>
    </div>
  );
}

interface LogsProps {
  readonly logs: LessonPage['logs'];
  readonly student: string | null;
  readonly overview: NonNullable<AppState['library']['overview']>;
  readonly session: Session;
}

function Logs({ logs, student: whose, overview, session }: LogsProps) {
  const [giving, setGiving] = useState<'not-yet' | 'open' | 'left'>('not-yet');
  const sha256s = logs.map(({ sha256 }) => sha256);
  return (
    <section>
      <h2>Logs</h2>
      <ul className="plain">
        {logs.map(({ sha256, fileName, fixes, startUtc }) => (
          <li key={sha256}>
            {fileName}
            <span className="aside">
              {' '}
              {startUtc.slice(11, 16)} UTC, {fixes.toLocaleString('en')} fixes
            </span>
          </li>
        ))}
      </ul>
      {logs.length === 0 ? <p className="aside">None any more.</p> : null}
      {giving === 'open' ? (
        <GiveForm
          overview={overview}
          count={logs.length}
          whose={whose}
          give={async (student, date) => {
            const given = await session.library.change('moveLogs', { sha256s, student, date });
            if (given !== null) session.store.dispatch({ do: 'show', view: 'library' });
          }}
          leave={() => setGiving('left')}
        />
      ) : logs.length === 0 ? null : (
        <Button className="button" autoFocus={giving === 'left'} onPress={() => setGiving('open')}>
          Give them to somebody else…
        </Button>
      )}
    </section>
  );
}
