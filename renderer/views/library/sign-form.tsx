import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { FlightRow, Overview } from '../../../electron/bridge/library-calls.ts';
import type { Session } from '../../state/session.ts';
import { DraftField } from '../draft-field.tsx';

interface Props {
  /** What is signed: every debrief of the lesson, as it stands now. */
  readonly debriefs: readonly Pick<FlightRow, 'debriefId' | 'document'>[];
  readonly overview: Overview;
  readonly session: Session;
}

/** Who graded, and who countersigns. */
export function SignForm({ debriefs, overview, session }: Props) {
  const [act, setAct] = useState<'graded' | 'countersigned' | null>(null);
  const [name, setName] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  if (act === null)
    return (
      <div className="row">
        <Button className="button" onPress={() => setAct('graded')}>
          I graded it…
        </Button>
        <Button className="button" onPress={() => setAct('countersigned')}>
          I countersign it…
        </Button>
      </div>
    );
  const sign = async () => {
    if (name.trim() === '') return setWrong('Say your name.');
    for (const { debriefId, document } of debriefs) {
      const signed = { debriefId, document, name: name.trim(), act };
      // What was refused has been told, and is not signed: the form stays.
      if ((await session.library.change('signDebrief', signed)) === null) return;
    }
    setAct(null);
  };
  return (
    <form className="give-form" aria-label="Sign" onSubmit={(event) => event.preventDefault()}>
      <DraftField
        words={act === 'graded' ? 'Graded by' : 'Countersigned by'}
        value={name}
        list="instructors"
        change={(text) => {
          setName(text);
          setWrong(null);
        }}
        wrong={wrong}
        enter={() => void sign()}
        isFirst
      />
      <InstructorNames overview={overview} />
      <p className="aside">
        This is a note in the library for the debrief. It signs nothing off and replaces no training record.
      </p>
      <div className="row">
        <Button className="button primary" onPress={() => void sign()}>
          Sign
        </Button>
        <Button className="button" onPress={() => setAct(null)}>
          Leave it
        </Button>
      </div>
    </form>
  );
}

/** The instructors' names, for fields in which one is said. */
export function InstructorNames({ overview }: { readonly overview: Overview }) {
  return (
    <datalist id="instructors">
      {overview.instructors.map((name) => (
        <option key={name} value={name} />
      ))}
    </datalist>
  );
}
