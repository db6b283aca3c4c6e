import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Output } from '../../../electron/bridge/calls.ts';
import type { Overview } from '../../../electron/bridge/library-calls.ts';
import { call } from '../../state/host.ts';
import type { Session } from '../../state/session.ts';
import { Asked } from '../asked.tsx';
import { Tick } from '../fields.tsx';

interface Props {
  readonly overview: Overview;
  readonly session: Session;
}

/** What is done with the library as a whole: copies of it, and back from them. */
export function WholeLibrary({ overview, session }: Props) {
  const { library } = session;
  const [isPseudonymous, setPseudonymous] = useState(false);
  const { told, work, isBusy, backups, during } = useWork(library);
  if (!overview.isBegun) return <p>There is nothing to back up or to export yet.</p>;
  return (
    <section className="bring-in" aria-label="Back up and export" aria-busy={isBusy}>
      <div className="boxed">
        <h2>Backup</h2>
        <p>
          A copy of everything as it is now, logs included, in a folder beside the library. Copy that folder
          to another disk: a backup on the same disk goes with it.
        </p>
        <Button className="button primary" isDisabled={isBusy} onPress={() => during(() => library.backUp())}>
          Back up now
        </Button>
        <Backups backups={backups} isBusy={isBusy} restore={(name) => during(() => library.restore(name))} />
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
      {work === null ? null : <Work work={work} />}
      {told === null ? null : (
        <p role="status" className="told">
          {told}
        </p>
      )}
    </section>
  );
}

/** One piece of long work at a time, and the backups that there are. */
function useWork(library: Session['library']) {
  const [told, tell] = useState<string | null>(null);
  const [work, setWork] = useState<Output<'libraryWork'>>(null);
  const [backups, setBackups] = useState<Output<'backups'>>([]);
  const [isBusy, setBusy] = useState(false);
  const look = () => void call('backups', {}).then(setBackups, library.tell);
  useEffect(look, [library]);
  const doWork = async (job: () => Promise<string | null>) => {
    setBusy(true);
    tell(null);
    const watching = setInterval(() => void call('libraryWork', {}).then(setWork, () => {}), WATCH_MS);
    try {
      tell(await job());
    } finally {
      clearInterval(watching);
      setWork(null);
      setBusy(false);
      look();
    }
  };
  return { told, work, isBusy, backups, during: (job: () => Promise<string | null>) => void doWork(job) };
}

function Work({ work }: { readonly work: NonNullable<Output<'libraryWork'>> }) {
  return (
    <div className="working row">
      <progress aria-label={work.what} value={work.share} max={1} />
      <span>{work.what} …</span>
      <Button className="button" onPress={() => void call('stopLibraryWork', {})}>
        Stop
      </Button>
    </div>
  );
}

/** How often it is asked how far the work is, ms. */
const WATCH_MS = 400;

interface BackupsProps {
  readonly backups: Output<'backups'>;
  readonly isBusy: boolean;
  readonly restore: (name: string) => void;
}

function Backups({ backups, isBusy, restore }: BackupsProps) {
  if (backups.length === 0) return null;
  return (
    <ul className="backups" aria-label="Backups">
      {backups.map(({ name, madeUtc }) => {
        const made = new Date(madeUtc).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
        return (
          <li key={name} className="row">
            <span>{made}</span>
            {isBusy ? null : (
              <Asked
                words="Restore it…"
                question={`Make the library what it was on ${made}? What is here now is kept beside it.`}
                yes="Restore it"
                act={() => restore(name)}
              />
            )}
          </li>
        );
      })}
    </ul>
  );
}
