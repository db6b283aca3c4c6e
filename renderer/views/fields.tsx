import { useId, useState, type ReactNode } from 'react';
import { LabelledInput } from './labelled-input.tsx';

interface ChoiceProps {
  readonly words: string;
  readonly value: string;
  readonly choose: (value: string) => void;
  /** The keyboard goes there when it appears. */
  readonly isFirst?: boolean;
  readonly children: ReactNode;
}

/** One of a few values, under its words. */
export function Choice({ words, value, choose, isFirst = false, children }: ChoiceProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{words}</label>
      <select id={id} value={value} autoFocus={isFirst} onChange={({ target }) => choose(target.value)}>
        {children}
      </select>
    </div>
  );
}

interface NumberBoxProps {
  readonly words: string;
  readonly value: number | null;
  readonly min: number;
  readonly max: number;
  readonly say: (value: number | null) => void;
}

/** A number, or nothing: it is said when the field is left, or by Enter; one out of its range changes nothing. */
export function NumberBox({ words, value, min, max, say }: NumberBoxProps) {
  const [isWrong, setWrong] = useState(false);
  const leave = (field: HTMLInputElement) => {
    setWrong(!field.validity.valid);
    const said = field.value === '' ? null : field.valueAsNumber;
    if (field.validity.valid && said !== value) say(said);
  };
  return (
    <LabelledInput
      words={words}
      wrong={isWrong ? `A number from ${min} to ${max}.` : null}
      type="number"
      step="any"
      min={min}
      max={max}
      defaultValue={value ?? ''}
      onBlur={({ target }) => leave(target)}
      enter={(field) => field.blur()}
    />
  );
}

/** Yes or no. */
export function Tick({
  words,
  value,
  say,
}: {
  words: string;
  value: boolean;
  say: (value: boolean) => void;
}) {
  return (
    <label className="tick">
      <input type="checkbox" checked={value} onChange={({ target }) => say(target.checked)} /> {words}
    </label>
  );
}

interface TextBoxProps {
  readonly words: string;
  readonly value: string;
  /** Null where the text can be used, else what is wrong with it. */
  readonly problem?: (text: string) => string | null;
  /** What may be chosen; anything else can be typed as well. */
  readonly choices?: readonly string[];
  /** Characters. */
  readonly maxLength?: number;
  readonly say: (text: string) => void;
}

/** A few words: said when the field is left, or by Enter; what cannot be used is said to be, and changes nothing. */
export function TextBox({ words, value, problem = () => null, say, choices, maxLength }: TextBoxProps) {
  const [wrong, setWrong] = useState<string | null>(null);
  const leave = (text: string) => {
    const found = text === '' ? null : problem(text);
    setWrong(found);
    if (found === null && text !== value) say(text);
  };
  return (
    <LabelledInput
      words={words}
      wrong={wrong}
      defaultValue={value}
      {...(choices !== undefined && { choices })}
      {...(maxLength !== undefined && { maxLength })}
      onBlur={({ target }) => leave(target.value.trim())}
      enter={(field) => field.blur()}
    />
  );
}
