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

interface Props {
  readonly session: Session;
  readonly flightId: string;
}

/** Keeps the log with its debrief in the library, as a student's; what is stated later can be kept anew. */
export function KeepPanel({ session, flightId }: Props) {
  const state = useSyncExternalStore(session.store.subscribe, session.store.state);
  const flight = state.flights.find(({ id }) => id === flightId);
  const { overview } = state.library;
  const [asking, setAsking] = useState<'not-yet' | 'open' | 'left'>('not-yet');
  if (!flight || overview === null) return null;
  const keep = async (student: string | null, date: string | null) => {
    // Where it is refused, which is told, the form stays with what was typed.
    await session.library.keep(flightId, 'keep', student, date);
  };
  const { kept } = flight;
  if (kept !== null)
    return (
      <Kept
        kept={kept}
        isAnswer={asking === 'open'}
        isChanged={kept.statements !== statementText(state, flight)}
        keep={() => session.library.keep(flightId, 'anew', null, null)}
        show={() => session.store.dispatch({ do: 'lesson', lessonId: kept.lessonId })}
      />
    );
  if (asking === 'open') return <KeepForm overview={overview} keep={keep} leave={() => setAsking('left')} />;
  return (
    <div className="row keep-panel" role="group" aria-label="Library">
      <Button className="button primary" autoFocus={asking === 'left'} onPress={() => setAsking('open')}>
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
  readonly keep: () => Promise<void>;
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
}

function KeepForm({ overview, keep, leave }: FormProps) {
  const [name, setName] = useState('');
  const [date, setDate] = useState<string | null>(null);
  const { isBusy, once } = useOnce();
  const student = name.trim();
  const say = () => once(() => keep(student || null, date));
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
        isFirst
      />
      <DateBox words="Lesson of (empty: the log’s day)" value={date} say={setDate} />
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
