import { useId, type InputHTMLAttributes } from 'react';

interface Props extends InputHTMLAttributes<HTMLInputElement> {
  readonly words: string;
  /** What is wrong with it; null where nothing is, or where it was not asked yet. */
  readonly wrong: string | null;
  readonly enter: (field: HTMLInputElement) => void;
  /** What may be chosen; anything else can be typed as well. */
  readonly choices?: readonly string[];
}

/** A field under its words; what is wrong with it stands below. */
export function LabelledInput({ words, wrong, enter, choices, ...input }: Props) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{words}</label>
      <input
        {...input}
        {...(choices && { list: `${id}-choices` })}
        id={id}
        aria-invalid={wrong !== null}
        aria-describedby={wrong === null ? undefined : `${id}-wrong`}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return;
          // The field may be gone afterwards: whatever has the keyboard then is not pressed by the same stroke.
          event.preventDefault();
          enter(event.currentTarget);
        }}
      />
      {choices ? (
        <datalist id={`${id}-choices`}>
          {choices.map((choice) => (
            <option key={choice} value={choice} />
          ))}
        </datalist>
      ) : null}
      {wrong === null ? null : (
        <span id={`${id}-wrong`} className="wrong" role="alert">
          {wrong}
        </span>
      )}
    </div>
  );
}
