import { useId, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { FlightFilter, Overview } from '../../../electron/bridge/library-calls.ts';
import { Choice } from '../fields.tsx';

interface Props {
  readonly overview: Overview;
  readonly filter: FlightFilter;
  readonly change: (change: Partial<FlightFilter>) => void;
  readonly clear: () => void;
}

/** Which approaches are shown. */
export function FlightFilters({ overview, filter, change, clear }: Props) {
  // What was typed is no part of the state until it is looked for.
  const [cleared, setCleared] = useState(0);
  const student = filter.student === null ? '' : filter.student === 'nobody' ? 'nobody' : filter.student.id;
  const chooseStudent = (value: string) =>
    change({ student: value === '' ? null : value === 'nobody' ? 'nobody' : { id: value } });
  return (
    <div className="flight-filters" role="search" aria-label="Which approaches are shown">
      <Choice words="Student" value={student} choose={chooseStudent}>
        <option value="">everybody</option>
        <option value="nobody">nobody yet</option>
        {overview.students.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </Choice>
      <Choice
        words="Facility"
        value={filter.facility ?? ''}
        choose={(value) => change({ facility: value || null })}
      >
        <option value="">all</option>
        {overview.facilities.map((name) => (
          <option key={name}>{name}</option>
        ))}
      </Choice>
      <DateBox words="From" value={filter.fromDate} say={(fromDate) => change({ fromDate })} />
      <DateBox words="To" value={filter.toDate} say={(toDate) => change({ toDate })} />
      <Choice
        words="Level"
        value={String(filter.levelAtMost ?? '')}
        choose={(value) => change({ levelAtMost: value === '' ? null : Number(value) })}
      >
        <option value="">any</option>
        {[1, 2, 3, 4].map((level) => (
          <option key={level} value={level}>{`${level} or less`}</option>
        ))}
      </Choice>
      <WordsBox key={cleared} value={filter.words} say={(words) => change({ words })} />
      <Button
        className="button"
        onPress={() => {
          setCleared(cleared + 1);
          clear();
        }}
      >
        Show all
      </Button>
    </div>
  );
}

interface DateProps {
  readonly words: string;
  readonly value: string | null;
  readonly say: (value: string | null) => void;
}

export function DateBox({ words, value, say }: DateProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{words}</label>
      <input
        id={id}
        type="date"
        value={value ?? ''}
        onChange={({ target }) => say(target.value === '' ? null : target.value)}
      />
    </div>
  );
}

/** So long after the last letter what was typed is looked for, ms. */
const PAUSE_MS = 200;

interface WordsProps {
  readonly value: string | null;
  readonly say: (value: string | null) => void;
}

function WordsBox({ value, say }: WordsProps) {
  const id = useId();
  const timer = useRef<number>(undefined);
  return (
    <div className="field">
      <label htmlFor={id}>Words in it</label>
      <input
        id={id}
        type="search"
        defaultValue={value ?? ''}
        maxLength={200}
        onChange={({ target }) => {
          clearTimeout(timer.current);
          const text = target.value.trim();
          timer.current = window.setTimeout(() => say(text || null), PAUSE_MS);
        }}
      />
    </div>
  );
}
