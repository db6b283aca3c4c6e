import { useState, useSyncExternalStore } from 'react';
import { Button } from 'react-aria-components';
import { meantBy } from '../../electron/bridge/names.ts';
import type { Overview } from '../../electron/bridge/library-calls.ts';
import type { KeptAs } from '../state/app-state.ts';
import { statementText } from '../state/since-last.ts';
import type { Session } from '../state/session.ts';
import { DateBox } from './library/flight-filters.tsx';
import { useOnce } from './library/use-once.ts';
import { PersonField } from './library/person-field.tsx';
import { useUnsaid } from './use-unsaid.ts';

interface Props {
  readonly session: Session;
  readonly flightId: string;
}

/** Keeps the log with its debrief in the library, as a student's; what is stated later can be kept anew. */
export function KeepPanel({ session, flightId }: Props) {
  const state = useSyncExternalStore(session.store.subscribe, session.store.state);
  const flight = state.flights.find(({ id }) => id === flightId);
  const { overview } = state.library;
  const path = `${flightId}/keep`;
  const [asking, ask] = useUnsaid<'' | 'open'>(session, path, '');
  // The form was opened in this view: from it the keyboard goes on, and to it.
  const [wasOpened, setWasOpened] = useState(false);
  if (!flight || overview === null) return null;
  const keep = async (student: string | null, date: string | null) => {
    // Where it is refused, which is told, the form stays with what was typed.
    if (await session.library.keep(flightId, 'keep', student, date)) session.store.unsaid.forget(path);
  };
  const { kept } = flight;
  if (kept !== null)
    return (
      <Kept
        kept={kept}
        isAnswer={wasOpened && asking === 'open'}
        isChanged={kept.statements !== statementText(state, flight)}
        keep={() => session.library.keep(flightId, 'anew', null, null)}
        show={() => session.store.dispatch({ do: 'lesson', lessonId: kept.lessonId })}
      />
    );
  if (asking === 'open')
    return (
      <KeepForm
        overview={overview}
        keep={keep}
        leave={() => session.store.unsaid.forget(path)}
        session={session}
        path={path}
        isFirst={wasOpened}
      />
    );
  return (
    <div className="row keep-panel" role="group" aria-label="Library">
      <Button
        className="button primary"
        autoFocus={wasOpened}
        onPress={() => {
          ask('open');
          setWasOpened(true);
        }}
      >
        Keep it in the library…
      </Button>
    </div>
  );
}

interface KeptProps {
  readonly kept: KeptAs;
  /** It has come in place of the form, from which it takes the keyboard. */
  readonly isAnswer: boolean;
  /** Something was stated since. */
  readonly isChanged: boolean;
  readonly keep: () => Promise<unknown>;
  readonly show: () => void;
}

function Kept({ kept, isAnswer, isChanged, keep, show }: KeptProps) {
  const { student, date } = kept;
  const { isBusy, once } = useOnce();
  return (
    <div className="row keep-panel" role="group" aria-label="Library">
      <span role="status">{`Kept in the library: ${student ?? 'nobody yet'}, ${date}.`}</span>
      <Button className="button" autoFocus={isAnswer} onPress={show}>
        Show the lesson
      </Button>
      {isChanged ? (
        <Button
          className={kept.statements === null ? 'button' : 'button primary'}
          isDisabled={isBusy}
          onPress={() => once(keep)}
        >
          {kept.statements === null ? 'Keep what is stated now' : 'Keep what was stated since'}
        </Button>
      ) : null}
    </div>
  );
}

interface FormProps {
  readonly overview: Overview;
  readonly keep: (student: string | null, date: string | null) => Promise<void>;
  readonly leave: () => void;
  readonly session: Session;
  /** What is written in it goes by this. */
  readonly path: string;
  /** The keyboard goes there when it appears. */
  readonly isFirst: boolean;
}

function KeepForm({ overview, keep, leave, session, path, isFirst }: FormProps) {
  const [name, setName] = useUnsaid(session, `${path}/name`, '');
  const [date, setDate] = useUnsaid(session, `${path}/date`, '');
  const { isBusy, once } = useOnce();
  const student = name.trim();
  const say = () => once(() => keep(student || null, date || null));
  return (
    <form
      className="give-form keep-panel"
      aria-label="Keep in the library"
      onSubmit={(event) => event.preventDefault()}
    >
      <PersonField
        words="Student (empty: not said yet)"
        value={name}
        role="student"
        overview={overview}
        change={setName}
        enter={say}
        isFirst={isFirst}
      />
      <DateBox
        words="Lesson of (empty: the log’s day)"
        value={date || null}
        say={(day) => setDate(day ?? '')}
      />
      <div className="row">
        <Button className="button primary" isDisabled={isBusy} onPress={say}>
          {student === '' || meantBy(overview.students, student).length > 0
            ? 'Keep it'
            : `Add ${student} and keep it`}
        </Button>
        <Button className="button" onPress={leave}>
          Cancel
        </Button>
      </div>
    </form>
  );
}
