import { SHIPPED } from '../../../core/standard/standards.ts';
import type { KeptStandard, StandardEntry } from '../../state/app-state.ts';
import { KEPT_MARK } from '../../state/kept-mark.ts';

interface Props {
  readonly own: readonly StandardEntry[];
  /** Of debriefs of the library. */
  readonly kept: readonly KeptStandard[];
  readonly chosenId: string;
}

/**
 * The standards that can be chosen: the shipped ones, and below them the user's own. One that came with a kept debrief
 * has the title of another here: it is there where it is chosen, and only there.
 */
export function StandardOptions({ own, kept, chosenId }: Props) {
  const ofLibrary = kept.find(({ id }) => id === chosenId);
  return (
    <>
      {SHIPPED.map(({ id, title }) => (
        <option key={id} value={id}>
          {title}
        </option>
      ))}
      {ofLibrary ? (
        <option value={ofLibrary.id}>{`${ofLibrary.standard.title} (${KEPT_MARK})`}</option>
      ) : null}
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
