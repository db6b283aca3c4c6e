import type { FacilityEntry } from '../../state/app-state.ts';
import { isOfLibrary, KEPT_MARK } from '../../state/kept-mark.ts';
import { nameIn } from '../../state/facility-draft.ts';

interface Props {
  readonly facilities: readonly FacilityEntry[];
  /** Those that the log was flown to, most approaches first. */
  readonly fits: readonly string[];
  readonly chosenId: string | null;
}

/** The facilities that can be chosen, those that the log was flown to first; the chosen one is there in any state. */
export function FacilityOptions({ facilities, fits, chosenId }: Props) {
  const place = ({ id }: FacilityEntry) => (fits.includes(id) ? fits.indexOf(id) : fits.length);
  return (
    <>
      {chosenId === null ? <option value="">choose one</option> : null}
      {facilities
        .filter((facility) => isOffered(facility) || facility.id === chosenId)
        .toSorted((a, b) => place(a) - place(b))
        .map((facility) => (
          <option key={facility.id} value={facility.id}>
            {wordsOf(facility, fits)}
          </option>
        ))}
    </>
  );
}

function wordsOf(facility: FacilityEntry, fits: readonly string[]): string {
  const { id, text, reading } = facility;
  if (!isUsable(facility)) return `${nameIn(text) || 'Without a name'} (not complete)`;
  const marks = [
    ...(isOfLibrary(facility) ? [KEPT_MARK] : []),
    ...(fits.includes(id) ? [] : ['not flown to']),
  ];
  return marks.length === 0 ? reading!.name : `${reading!.name} (${marks.join(', ')})`;
}

/** One that came with a kept debrief has the name of another here: it is there where it is chosen, and only there. */
function isOffered(facility: FacilityEntry): boolean {
  return isUsable(facility) && !isOfLibrary(facility);
}

function isUsable({ reading }: FacilityEntry): boolean {
  return reading?.refusal === null;
}
