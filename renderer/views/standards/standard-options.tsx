import { SHIPPED } from '../../../core/standard/standards.ts';
import type { StandardEntry } from '../../state/app-state.ts';

interface Props {
  readonly own: readonly StandardEntry[];
  readonly chosenId: string;
}

/** The standards that can be chosen: the shipped ones, and below them the user's own. */
export function StandardOptions({ own, chosenId }: Props) {
  return (
    <>
      {SHIPPED.map(({ id, title }) => (
        <option key={id} value={id}>
          {title}
        </option>
      ))}
      {own.length === 0 ? null : (
        <optgroup label="Your own">
          {own.map((entry) => (
            <option
              key={entry.id}
              value={entry.id}
              disabled={!entry.reading?.standard && entry.id !== chosenId}
            >
              {ownTitle(entry)}
            </option>
          ))}
        </optgroup>
      )}
    </>
  );
}

/** What a standard of the user's own is called; one that cannot be used yet has no title to trust. */
export function ownTitle({ reading }: Pick<StandardEntry, 'reading'>): string {
  return reading?.standard?.title ?? 'Not complete yet';
}
