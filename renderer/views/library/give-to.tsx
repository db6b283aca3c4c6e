import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Overview } from '../../../electron/bridge/library-calls.ts';
import type { Session } from '../../state/session.ts';
import { DraftField } from '../draft-field.tsx';
import { DateBox } from './flight-filters.tsx';

interface Props {
  readonly marked: ReadonlySet<string>;
  /** Approaches on the list; null until that is known. */
  readonly total: number | null;
  readonly overview: Overview;
  readonly session: Session;
  readonly markAll: () => Promise<void>;
  readonly unmark: () => void;
}

/** What is done with the logs that are marked: they are given to a student, or to another day. */
export function GiveTo({ marked, total, overview, session, markAll, unmark }: Props) {
  const [isGiving, setGiving] = useState(false);
  const some = marked.size === 1 ? '1 log is marked' : `${marked.size} logs are marked`;
  return (
    <div className="give-to">
      <div className="row">
        <span role="status">{marked.size === 0 ? approaches(total) : `${some}.`}</span>
        {total ? (
          <Button className="small" onPress={() => void markAll()}>
            Mark all of them
          </Button>
        ) : null}
        {marked.size === 0 ? null : (
          <>
            <Button className="small" onPress={unmark}>
              Mark none
            </Button>
            <Button className="button" aria-expanded={isGiving} onPress={() => setGiving(!isGiving)}>
              Give them to…
            </Button>
          </>
        )}
      </div>
      {isGiving && marked.size > 0 ? (
        <GiveForm
          overview={overview}
          give={async (student, date) => {
            const given = await session.library.change('moveLogs', { sha256s: [...marked], student, date });
            if (given === null) return;
            setGiving(false);
            unmark();
          }}
          leave={() => setGiving(false)}
        />
      ) : null}
    </div>
  );
}

function approaches(total: number | null): string {
  if (total === null) return '';
  return total === 1 ? '1 approach.' : `${total.toLocaleString('en')} approaches.`;
}

interface FormProps {
  readonly overview: Overview;
  readonly give: (student: string | null, date: string | null) => Promise<void>;
  readonly leave: () => void;
}

/** To whom, and to which day. */
export function GiveForm({ overview, give, leave }: FormProps) {
  const [name, setName] = useState('');
  const [date, setDate] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const say = () => {
    if (name.trim() === '') setWrong('Say a name, or give them to nobody.');
    else void give(name.trim(), date);
  };
  const isNew =
    name.trim() !== '' &&
    !overview.students.some((student) => student.name.toLowerCase() === name.trim().toLowerCase());
  return (
    <form
      className="give-form"
      aria-label="Give logs to a student"
      onSubmit={(event) => event.preventDefault()}
    >
      <DraftField
        words="Student"
        value={name}
        list="students"
        change={(text) => {
          setName(text);
          setWrong(null);
        }}
        wrong={wrong}
        enter={say}
        isFirst
      />
      <StudentNames overview={overview} />
      <DateBox words="Lesson of (empty: as it is)" value={date} say={setDate} />
      <div className="row">
        <Button className="button primary" onPress={say}>
          {isNew ? `Add ${name.trim()} and give` : 'Give'}
        </Button>
        <Button className="button" onPress={() => void give(null, date)}>
          To nobody
        </Button>
        <Button className="button" onPress={leave}>
          Leave it
        </Button>
      </div>
    </form>
  );
}

/** The students' names, for fields in which one is said. */
export function StudentNames({ overview }: { readonly overview: Overview }) {
  return (
    <datalist id="students">
      {overview.students.map(({ id, name }) => (
        <option key={id} value={name} />
      ))}
    </datalist>
  );
}
