import { Button } from 'react-aria-components';
import { LEVEL_WORDS, type Level } from '../../core/grade/level.ts';
import type { OwnEstimate } from '../state/app-state.ts';
import type { Session } from '../state/session.ts';
import { DraftField } from './draft-field.tsx';
import { Choice } from './fields.tsx';
import { useUnsaid } from './use-unsaid.ts';

interface Props {
  readonly flightId: string;
  readonly session: Session;
  readonly give: (estimate: OwnEstimate | null) => void;
}

const LEVELS: readonly Level[] = [5, 4, 3, 2, 1];

/** The debrief waits: first the student says what they think of it. */
export function EstimateForm({ flightId, session, give }: Props) {
  const path = `${flightId}/estimate`;
  const [level, setLevel] = useUnsaid(session, `${path}/level`, '');
  const [words, setWords] = useUnsaid(session, `${path}/words`, '');
  const say = () => {
    const estimate = { level: level === '' ? null : Number(level), words: words.trim() };
    give(estimate.level === null && estimate.words === '' ? null : estimate);
    session.store.unsaid.forget(path);
  };
  return (
    <form
      className="estimate"
      aria-label="The student’s own estimate"
      onSubmit={(event) => event.preventDefault()}
    >
      <h1>First: how was it?</h1>
      <p>
        The debrief is ready. What does the student think of it? It is kept beside the debrief when that is
        kept in the library.
      </p>
      <Choice words="Level, 1 to 5" value={level} choose={setLevel} isFirst>
        <option value="">not said</option>
        {LEVELS.map((one) => (
          <option key={one} value={one}>
            {`${one}: ${LEVEL_WORDS[one]}`}
          </option>
        ))}
      </Choice>
      <DraftField
        words="What went well, and what did not"
        value={words}
        change={setWords}
        wrong={null}
        enter={say}
      />
      <Button className="button primary" onPress={say}>
        Show the debrief
      </Button>
    </form>
  );
}
