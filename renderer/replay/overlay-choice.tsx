import type { OtherSheet } from './other-sheets.ts';

interface Props {
  readonly candidates: readonly OtherSheet[];
  readonly overlaid: readonly string[];
  readonly choose: (ids: readonly string[]) => void;
}

/** Which other approaches are laid over this one, by miles to go. Each has a letter on the sheet. */
export function OverlayChoice({ candidates, overlaid, choose }: Props) {
  if (candidates.length === 0) return null;
  const letters = candidates.filter(({ id }) => overlaid.includes(id)).map(({ id }) => id);
  return (
    <fieldset className="overlays">
      <legend>Lay over it</legend>
      {candidates.map(({ id, words }) => {
        const place = letters.indexOf(id);
        return (
          <label key={id} className="tick">
            <input
              type="checkbox"
              checked={place !== -1}
              onChange={({ target }) =>
                choose(target.checked ? [...overlaid, id] : overlaid.filter((one) => one !== id))
              }
            />{' '}
            {place === -1 ? '' : <strong>{String.fromCodePoint(65 + place)} </strong>}
            {words}
          </label>
        );
      })}
    </fieldset>
  );
}
