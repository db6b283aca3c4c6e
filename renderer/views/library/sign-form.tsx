import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { FlightRow, Overview } from '../../../electron/bridge/library-calls.ts';
import type { Session } from '../../state/session.ts';
import { useUnsaid } from '../use-unsaid.ts';
import { useOnce } from './use-once.ts';
import { PersonField } from './person-field.tsx';

interface Props {
  /** What is signed: every debrief of the lesson, as it stands now. */
  readonly debriefs: readonly Pick<FlightRow, 'debriefId' | 'document'>[];
  readonly overview: Overview;
  readonly session: Session;
  /** What is written in it goes by this. */
  readonly path: string;
}

type Act = 'graded' | 'countersigned';

/** Who graded, and who countersigns. */
export function SignForm({ debriefs, overview, session, path }: Props) {
  const [act, setAct] = useUnsaid<Act | ''>(session, path, '');
  // The form was opened by this button in this view, and the keyboard goes back to it.
  const [opener, setOpener] = useState<Act | null>(null);
  const { isBusy, once } = useOnce();
  const [name, setName] = useUnsaid(session, `${path}/name`, '');
  const [wrong, setWrong] = useState<string | null>(null);
  const ask = (chosen: Act) => {
    setAct(chosen);
    setOpener(chosen);
  };
  const close = () => {
    session.store.unsaid.forget(path);
    setWrong(null);
  };
  if (act === '') return <Openers last={opener} ask={ask} />;
  const sign = async () => {
    if (name.trim() === '') return setWrong('Say your name.');
    for (const { debriefId, document } of debriefs) {
      const signed = { debriefId, document, name: name.trim(), act };
      // What was refused has been told, and is not signed: the form stays.
      if ((await session.library.change('signDebrief', signed)) === null) return;
    }
    close();
  };
  return (
    <form className="give-form" aria-label="Sign" onSubmit={(event) => event.preventDefault()}>
      <PersonField
        words={act === 'graded' ? 'Graded by' : 'Countersigned by'}
        value={name}
        role="instructor"
        overview={overview}
        change={(text) => {
          setName(text);
          setWrong(null);
        }}
        wrong={wrong}
        enter={() => once(sign)}
        isFirst={opener !== null}
      />
      <p className="aside">
        This is a note in the library for the debrief. It signs nothing off and replaces no training record.
      </p>
      <div className="row">
        <Button className="button primary" isDisabled={isBusy} onPress={() => once(sign)}>
          Sign
        </Button>
        <Button className="button" onPress={close}>
          Cancel
        </Button>
      </div>
    </form>
  );
}

interface OpenersProps {
  /** By which the form was opened that has just gone. */
  readonly last: Act | null;
  readonly ask: (act: Act) => void;
}

function Openers({ last, ask }: OpenersProps) {
  return (
    <div className="row">
      <Button className="button" autoFocus={last === 'graded'} onPress={() => ask('graded')}>
        I graded it…
      </Button>
      <Button className="button" autoFocus={last === 'countersigned'} onPress={() => ask('countersigned')}>
        I countersign it…
      </Button>
    </div>
  );
}
