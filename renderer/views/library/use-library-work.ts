import { useEffect, useState } from 'react';
import type { Output } from '../../../electron/bridge/calls.ts';
import { call } from '../../state/host.ts';
import type { Session } from '../../state/session.ts';

/** How often it is asked how far the work is, ms. */
const WATCH_MS = 400;

/** One piece of long work at a time, and the backups that there are. */
export function useLibraryWork(library: Session['library']) {
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
