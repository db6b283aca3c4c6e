import { useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Overview } from '../../../electron/bridge/library-calls.ts';
import type { Session } from '../../state/session.ts';
import { Tick } from '../fields.tsx';
import { Backups, Work } from './backups.tsx';
import { useLibraryWork } from './use-library-work.ts';

interface Props {
  readonly overview: Overview;
  readonly session: Session;
}

/** What is done with the library as a whole: copies of it, and back from them. */
export function WholeLibrary({ overview, session }: Props) {
  const { library } = session;
  const [isPseudonymous, setPseudonymous] = useState(false);
  const heading = useRef<HTMLHeadingElement>(null);
  const { told, work, isBusy, backups, during } = useLibraryWork(library);
  if (!overview.isBegun) return <p>There is nothing to back up or to export yet.</p>;
  const restore = (name: string) => {
    // The button that asked goes while the work is under way.
    heading.current?.focus();
    during(() => library.restore(name));
  };
  return (
    <section className="bring-in" aria-label="Back up and export" aria-busy={isBusy}>
      <div className="boxed">
        <h2 ref={heading} tabIndex={-1}>
          Backup
        </h2>
        <p>
          A copy of everything as it is now, logs included, in a folder beside the library. Copy that folder
          to another disk: a backup on the same disk goes with it.
        </p>
        <Button className="button primary" isDisabled={isBusy} onPress={() => during(() => library.backUp())}>
          Back up now
        </Button>
        <Backups backups={backups} isBusy={isBusy} restore={restore} />
      </div>
      <div className="boxed">
        <h2>Export</h2>
        <p>
          Everything in the open: a text file with a JSON object a line, and the logs. Another library takes
          it in by <code>halfdot import --from</code>.
        </p>
        <Tick words="Without names" value={isPseudonymous} say={setPseudonymous} />
        {isPseudonymous ? (
          <p className="aside">
            People and aircraft get other names, and no list of who is whom is kept; notes, goals and the logs
            themselves are left out. Dates, times and places stay.
          </p>
        ) : null}
        <Button
          className="button"
          isDisabled={isBusy}
          onPress={() => during(() => library.exportAll(isPseudonymous))}
        >
          Export now
        </Button>
      </div>
      <Work work={work} />
      {told === null ? null : (
        <p role="status" className="told">
          {told}
        </p>
      )}
    </section>
  );
}
