import { useRef, useState, type ReactNode } from 'react';
import { Button } from 'react-aria-components';
import type { Session } from '../state/session.ts';
import { useUnsaid } from './use-unsaid.ts';

/** One thing that was added. */
interface Entry {
  readonly key: string;
  readonly words: string;
  /** What is to be known of it. */
  readonly note: string | null;
  readonly remove: () => void;
}

interface Props {
  readonly legend: string;
  readonly explains: string;
  /** What the button says that adds one more. */
  readonly add: string;
  /** Why none can be added; null where one can. */
  readonly noMore?: string | null;
  readonly entries: readonly Entry[];
  /** The fields of one more, shown when they are asked for, until `close`; `isFirst`: the keyboard goes to them. */
  readonly children: (close: () => void, isFirst: boolean) => ReactNode;
  readonly session: Session;
  /** What is written in the fields goes by this. */
  readonly path: string;
}

/** What was added to a list, each to be taken off again, and a way to add one more. */
export function Additions({ legend, explains, add, noMore = null, entries, children, ...props }: Props) {
  const { session, path } = props;
  const [asking, ask] = useUnsaid<'' | 'open'>(session, path, '');
  const isOpen = asking === 'open';
  // In this view: the keyboard goes on from where it came, and not from the top of the page.
  const [wasOpened, setWasOpened] = useState(false);
  const adder = useRef<HTMLButtonElement>(null);
  const open = () => {
    ask('open');
    setWasOpened(true);
  };
  const close = () => session.store.unsaid.forget(path);
  return (
    <fieldset className="additions">
      <legend>{legend}</legend>
      <p className="aside">{explains}</p>
      {entries.length === 0 ? null : (
        <ul>
          {entries.map(({ key, words, note, remove }) => (
            <li key={key}>
              <span>
                {words}
                {note === null ? null : <span className="wrong"> {note}</span>}
              </span>
              <Button
                className="small"
                aria-label={`Remove ${words}`}
                onPress={() => {
                  remove();
                  adder.current?.focus();
                }}
              >
                Remove
              </Button>
            </li>
          ))}
        </ul>
      )}
      {isOpen ? children(close, wasOpened) : null}
      {isOpen || noMore !== null ? null : (
        <Button ref={adder} className="button" autoFocus={wasOpened} onPress={open}>
          {add}
        </Button>
      )}
      {noMore === null ? null : <p className="aside">{noMore}</p>}
    </fieldset>
  );
}
