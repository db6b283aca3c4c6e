import { useState, useSyncExternalStore } from 'react';
import { Button } from 'react-aria-components';
import type { Overview } from '../../electron/bridge/library-calls.ts';
import type { KeptAs } from '../state/app-state.ts';
import { statementText } from '../state/own-library.ts';
import type { Session } from '../state/session.ts';
import { DraftField } from './draft-field.tsx';
import { DateBox } from './library/flight-filters.tsx';
import { StudentNames } from './library/give-to.tsx';

interface Props {
  readonly session: Session;
  readonly flightId: string;
}

/** Keeps the log with its debrief in the library, as a student's; what is stated later can be kept anew. */
export function KeepPanel({ session, flightId }: Props) {
  const state = useSyncExternalStore(session.store.subscribe, session.store.state);
  const flight = state.flights.find(({ id }) => id === flightId);
  const { overview } = state.library;
  const [isAsking, setAsking] = useState(false);
  if (!flight || overview === null) return null;
  const keep = async (student: string | null, date: string | null) => {
    await session.library.keep(flightId, 'keep', student, date);
    setAsking(false);
  };
  const { kept } = flight;
  if (kept !== null)
    return (
      <Kept
        kept={kept}
        isChanged={kept.statements !== statementText(flight)}
        keep={() => session.library.keep(flightId, 'anew', null, null)}
        show={() => session.store.dispatch({ do: 'lesson', lessonId: kept.lessonId })}
      />
    );
  if (isAsking) return <KeepForm overview={overview} keep={keep} leave={() => setAsking(false)} />;
  return (
    <div className="row keep-panel" role="group" aria-label="Library">
      <Button className="button primary" onPress={() => setAsking(true)}>
        Keep it in the library…
      </Button>
    </div>
  );
}

interface KeptProps {
  readonly kept: KeptAs;
  /** Something was stated since. */
  readonly isChanged: boolean;
  readonly keep: () => Promise<void>;
  readonly show: () => void;
}

function Kept({ kept, isChanged, keep, show }: KeptProps) {
  const { student, date } = kept;
  return (
    <div className="row keep-panel" role="group" aria-label="Library">
      <span role="status">{`Kept in the library: ${student ?? 'nobody yet'}, ${date}.`}</span>
      <Button className="button" onPress={show}>
        Show the lesson
      </Button>
      {isChanged ? (
        <Button className="button primary" onPress={() => void keep()}>
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
  const [isBusy, setBusy] = useState(false);
  const say = () => {
    setBusy(true);
    void keep(name.trim() || null, date).finally(() => setBusy(false));
  };
  return (
    <form
      className="give-form keep-panel"
      aria-label="Keep in the library"
      onSubmit={(event) => event.preventDefault()}
    >
      <DraftField
        words="Student (empty: I shall say later)"
        value={name}
        list="students"
        change={setName}
        wrong={null}
        enter={say}
        isFirst
      />
      <StudentNames overview={overview} />
      <DateBox words="Lesson of (empty: the log’s day)" value={date} say={setDate} />
      <div className="row">
        <Button className="button primary" isDisabled={isBusy} onPress={say}>
          Keep it
        </Button>
        <Button className="button" onPress={leave}>
          Leave it
        </Button>
      </div>
    </form>
  );
}
