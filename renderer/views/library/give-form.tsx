import { useState } from 'react';
import { Button } from 'react-aria-components';
import { meantBy } from '../../../electron/bridge/names.ts';
import type { Overview } from '../../../electron/bridge/library-calls.ts';
import { DateBox } from './flight-filters.tsx';
import { useOnce } from './use-once.ts';
import { PersonField } from './person-field.tsx';

interface Props {
  readonly overview: Overview;
  /** Logs that are given. */
  readonly count: number;
  /** The student whose all of them are now; null where they are nobody's, or several students'. */
  readonly whose: string | null;
  readonly give: (student: string | null, date: string | null) => Promise<void>;
  readonly leave: () => void;
}

/** To whom, and to which day. */
export function GiveForm({ overview, count, whose, give, leave }: Props) {
  const [name, setName] = useState('');
  const [date, setDate] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const { isBusy, once } = useOnce();
  const student = name.trim();
  const say = () => {
    if (student === '') setWrong(missingWords(date, whose));
    else once(() => give(student, date));
  };
  const logs = count === 1 ? '1 log' : `${count} logs`;
  return (
    <form
      className="give-form"
      aria-label="Give logs to a student"
      onSubmit={(event) => event.preventDefault()}
    >
      <PersonField
        words="Student"
        value={name}
        role="student"
        overview={overview}
        change={(text) => {
          setName(text);
          setWrong(null);
        }}
        wrong={wrong}
        enter={say}
        isFirst
      />
      <DateBox words="Lesson of (empty: as it is)" value={date} say={setDate} />
      <div className="row">
        <Button className="button primary" isDisabled={isBusy} onPress={say}>
          {student === '' || meantBy(overview.students, student).length > 0
            ? `Give ${logs}`
            : `Add ${student} and give ${logs}`}
        </Button>
        {whose !== null && date !== null && student === '' ? (
          <Button className="button" isDisabled={isBusy} onPress={() => once(() => give(whose, date))}>
            Only to that day
          </Button>
        ) : null}
        <Button className="button" isDisabled={isBusy} onPress={() => once(() => give(null, date))}>
          To nobody
        </Button>
        <Button className="button" onPress={leave}>
          Cancel
        </Button>
      </div>
    </form>
  );
}

function missingWords(date: string | null, whose: string | null): string {
  if (date === null) return 'Say a name, or give them to nobody.';
  return whose === null
    ? 'Say a name as well, also where it stays the same.'
    : `Say a name, or only the day: then they stay ${whose}’s.`;
}
