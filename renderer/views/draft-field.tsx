import { useId } from 'react';

interface Props {
  readonly words: string;
  readonly value: string;
  readonly change: (value: string) => void;
  /** What is wrong with it; null where nothing is, or where it was not asked yet. */
  readonly wrong: string | null;
  /** Enter, as the button below it. */
  readonly enter: () => void;
  /** Id of a list of values to choose among. */
  readonly list?: string;
  readonly isFirst?: boolean;
}

/** A field of something that is being made up and is not said yet. */
export function DraftField({ words, value, change, wrong, enter, list, isFirst = false }: Props) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{words}</label>
      <input
        id={id}
        value={value}
        list={list}
        autoComplete="off"
        autoFocus={isFirst}
        aria-invalid={wrong !== null}
        aria-describedby={wrong === null ? undefined : `${id}-wrong`}
        onChange={({ target }) => change(target.value)}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return;
          // The field may be gone afterwards: whatever has the keyboard then is not pressed by the same stroke.
          event.preventDefault();
          enter();
        }}
      />
      {wrong === null ? null : (
        <span id={`${id}-wrong`} className="wrong" role="alert">
          {wrong}
        </span>
      )}
    </div>
  );
}
