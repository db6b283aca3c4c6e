import { useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Overview } from '../../../electron/bridge/library-calls.ts';
import type { Session } from '../../state/session.ts';
import { GiveForm } from './give-form.tsx';

interface Props {
  readonly marked: ReadonlySet<string>;
  /** Of these, how many are not on the list as it is now. */
  readonly notShown: number;
  /** The student whose list it is; null where it is everybody's. */
  readonly whose: string | null;
  /** Approaches on the list; null until that is known. */
  readonly total: number | null;
  readonly overview: Overview;
  readonly session: Session;
  readonly markAll: () => Promise<void>;
  readonly unmark: () => void;
  /** They were given, and the form is gone. */
  readonly given: () => void;
}

/** What is done with the logs that are marked: they are given to a student, or to another day. */
export function GiveTo({ marked, notShown, whose, total, overview, session, ...props }: Props) {
  const [isGiving, setGiving] = useState(false);
  const opener = useRef<HTMLButtonElement>(null);
  return (
    <div className="give-to">
      <div className="row">
        <span role="status">
          {marked.size === 0 ? approaches(total) : markedWords(marked.size, notShown)}
        </span>
        {total ? (
          <Button className="small" onPress={() => void props.markAll()}>
            Mark all of them
          </Button>
        ) : null}
        {marked.size === 0 ? null : (
          <>
            <Button className="small" onPress={props.unmark}>
              Mark none
            </Button>
            <Button
              ref={opener}
              className="button"
              aria-expanded={isGiving}
              onPress={() => setGiving(!isGiving)}
            >
              Give them to…
            </Button>
          </>
        )}
      </div>
      {isGiving && marked.size > 0 ? (
        <GiveForm
          overview={overview}
          count={marked.size}
          whose={notShown === 0 ? whose : null}
          give={async (student, date) => {
            const given = await session.library.change('moveLogs', { sha256s: [...marked], student, date });
            if (given === null) return;
            setGiving(false);
            props.given();
          }}
          leave={() => {
            opener.current?.focus();
            setGiving(false);
          }}
        />
      ) : null}
    </div>
  );
}

function markedWords(marked: number, notShown: number): string {
  const some = marked === 1 ? '1 log is marked' : `${marked} logs are marked`;
  if (notShown === 0) return `${some}.`;
  return marked === 1 ? `${some}, and not shown here.` : `${some}, ${notShown} of them not shown here.`;
}

function approaches(total: number | null): string {
  if (total === null) return '';
  return total === 1 ? '1 approach.' : `${total.toLocaleString('en')} approaches.`;
}
