import { Button } from 'react-aria-components';
import type { Output } from '../../../electron/bridge/calls.ts';
import { call } from '../../state/host.ts';
import { Asked } from '../asked.tsx';

interface Props {
  readonly backups: Output<'backups'>;
  readonly isBusy: boolean;
  readonly restore: (name: string) => void;
}

/** The backups that were made here, each with the way back to it. */
export function Backups({ backups, isBusy, restore }: Props) {
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
                no="Cancel"
                act={() => restore(name)}
              />
            )}
          </li>
        );
      })}
    </ul>
  );
}

/** How far long work is, and the way to stop it. */
export function Work({ work }: { readonly work: Output<'libraryWork'> }) {
  if (work === null) return null;
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
