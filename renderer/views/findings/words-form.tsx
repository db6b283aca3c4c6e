import { useId } from 'react';
import { Button } from 'react-aria-components';
import type { Session } from '../../state/session.ts';
import { LONGEST } from '../library/longest.ts';
import { useUnsaid } from '../use-unsaid.ts';

interface Props {
  readonly words: string;
  readonly value: string;
  /** Nothing: what was said before is taken back. */
  readonly keep: (text: string) => void;
  readonly leave: () => void;
  readonly session: Session;
  /** What is written in it goes by this. */
  readonly path: string;
  /** The keyboard goes there when it appears. */
  readonly isFirst: boolean;
}

/** A few words that are there already, to be changed. */
export function WordsForm({ words, value, keep, leave, session, path, isFirst }: Props) {
  const id = useId();
  const [text, setText] = useUnsaid(session, path, value);
  return (
    <div className="field write">
      <label htmlFor={id}>{words}</label>
      <textarea
        id={id}
        rows={2}
        autoFocus={isFirst}
        value={text}
        maxLength={LONGEST.remark}
        onChange={({ target }) => setText(target.value)}
      />
      <div className="row">
        <Button className="button" onPress={() => keep(text.trim())}>
          Keep these words
        </Button>
        <Button className="button" onPress={leave}>
          Leave them
        </Button>
      </div>
    </div>
  );
}
