import { useId } from 'react';

interface Props {
  readonly words: string;
  readonly value: string;
  readonly say: (value: string) => void;
}

/** What is looked for, said with every letter. */
export function SearchBox({ words, value, say }: Props) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{words}</label>
      <input
        id={id}
        type="search"
        autoComplete="off"
        spellCheck={false}
        value={value}
        onChange={({ target }) => say(target.value)}
      />
    </div>
  );
}
