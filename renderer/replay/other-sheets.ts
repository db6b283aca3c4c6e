import type { Sheet } from '../../core/sheet/sheet.ts';
import type { Flight } from '../state/app-state.ts';

/** Another approach that can be laid over the one that is shown. */
export interface OtherSheet {
  readonly id: string;
  /** Which it is, and of which log where that is another. */
  readonly words: string;
  readonly sheet: Sheet;
}

/** The approaches at the same facility as the one shown: the rest of its flight, then those of other open logs. */
export function otherSheets(flights: readonly Flight[], flight: Flight, shown: Sheet): OtherSheet[] {
  // What is being judged anew may still be of another facility.
  const sheetsIn = ({ judged }: Flight) => (judged.kind === 'done' ? judged.debriefed.sheets : []);
  const ordered = [flight, ...flights.filter(({ id }) => id !== flight.id)];
  return ordered
    .filter(({ facilityId }) => facilityId === flight.facilityId)
    .flatMap((one) =>
      sheetsIn(one)
        .filter(({ index }) => one.id !== flight.id || index !== shown.index)
        .map((sheet) => ({
          id: `${one.id} ${sheet.index}`,
          words: one.id === flight.id ? sheet.title : `${one.name}: ${sheet.title}`,
          sheet,
        })),
    );
}
