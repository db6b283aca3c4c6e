import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { LessonPage } from '../../../electron/bridge/library-calls.ts';
import type { AppState } from '../../state/app-state.ts';
import { call } from '../../state/host.ts';
import type { Session } from '../../state/session.ts';
import { GiveForm } from './give-to.tsx';
import { LessonApproaches } from './lesson-approaches.tsx';
import { LessonFacts } from './lesson-facts.tsx';
import { LessonGoals } from './lesson-goals.tsx';
import { LessonNotes } from './lesson-notes.tsx';

interface Props {
  readonly id: string;
  readonly state: AppState;
  readonly session: Session;
}

/** One lesson: what was flown in it, and what was said and agreed about it. */
export function LessonView({ id, state, session }: Props) {
  const { overview, changes } = state.library;
  const [page, setPage] = useState<LessonPage | null>(null);
  const [isGone, setGone] = useState(false);
  useEffect(() => {
    call('lesson', { id }).then(setPage, (error: unknown) => {
      // It may have gone with its student; what else it may be is told.
      if (page === null) session.library.tell(error);
      setGone(true);
    });
    // Asked anew whenever something was changed.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [id, changes, session]);
  const back = (
    <Button className="button" onPress={() => session.store.dispatch({ do: 'show', view: 'library' })}>
      All flights
    </Button>
  );
  if (isGone)
    return (
      <section className="empty">
        <h1>This lesson is not in the library any more</h1>
        {back}
      </section>
    );
  if (page === null || overview === null) return null;
  const { lesson, logs } = page;
  return (
    <div className="lesson">
      <div className="row lesson-head">
        <h1>
          {lesson.student ?? 'Nobody yet'}, {lesson.date}
        </h1>
        {back}
      </div>
      <div className="lesson-parts">
        <div>
          <LessonApproaches page={page} overview={overview} session={session} />
          <LessonNotes page={page} overview={overview} session={session} />
          <LessonGoals page={page} session={session} />
        </div>
        <aside className="side" aria-label="About the lesson">
          <LessonFacts key={id} page={page} overview={overview} session={session} />
          <Logs logs={logs} overview={overview} session={session} />
        </aside>
      </div>
    </div>
  );
}

interface LogsProps {
  readonly logs: LessonPage['logs'];
  readonly overview: NonNullable<AppState['library']['overview']>;
  readonly session: Session;
}

function Logs({ logs, overview, session }: LogsProps) {
  const [isGiving, setGiving] = useState(false);
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
      {isGiving ? (
        <GiveForm
          overview={overview}
          give={async (student, date) => {
            const given = await session.library.change('moveLogs', { sha256s, student, date });
            if (given !== null) session.store.dispatch({ do: 'show', view: 'library' });
          }}
          leave={() => setGiving(false)}
        />
      ) : logs.length === 0 ? null : (
        <Button className="button" onPress={() => setGiving(true)}>
          Give them to somebody else…
        </Button>
      )}
    </section>
  );
}
