import { LabelledInput } from './labelled-input.tsx';

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
  /** What may be chosen; anything else can be typed as well. */
  readonly choices?: readonly string[];
  readonly isFirst?: boolean;
  /** Characters. */
  readonly maxLength?: number;
}

/** A field of something that is being made up and is not said yet. */
export function DraftField({ change, isFirst = false, ...field }: Props) {
  return (
    <LabelledInput
      {...field}
      autoComplete="off"
      autoFocus={isFirst}
      onChange={({ target }) => change(target.value)}
    />
  );
}
