import { useId, useState } from 'react';
import { Button } from 'react-aria-components';
import { LONGEST } from '../library/longest.ts';

interface Props {
  readonly words: string;
  readonly value: string;
  /** Nothing: what was said before is taken back. */
  readonly keep: (text: string) => void;
  readonly leave: () => void;
}

/** A few words that are there already, to be changed. */
export function WordsForm({ words, value, keep, leave }: Props) {
  const id = useId();
  const [text, setText] = useState(value);
  return (
    <div className="field write">
      <label htmlFor={id}>{words}</label>
      <textarea
        id={id}
        rows={2}
        autoFocus
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
