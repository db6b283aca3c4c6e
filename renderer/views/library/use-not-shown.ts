import { useEffect, useState } from 'react';
import type { FlightFilter } from '../../../electron/bridge/library-calls.ts';
import { call } from '../../state/host.ts';

interface Asked {
  readonly marked: ReadonlySet<string>;
  readonly filter: FlightFilter;
  /** Another number: what is known is out of date. */
  readonly changes: number;
  readonly tell: (error: unknown) => void;
}

/** How many of the logs that are marked are not on the list any more, since it was filtered otherwise. */
export function useNotShown({ marked, filter, changes, tell }: Asked): number {
  const key = JSON.stringify([filter, changes]);
  const [listed, setListed] = useState<{ key: string; logs: ReadonlySet<string> } | null>(null);
  const isAsked = marked.size > 0 && Object.values(filter).some((value) => value !== null);
  useEffect(() => {
    if (!isAsked) return;
    let isLate = false;
    call('libraryLogs', { filter }).then((logs) => {
      if (!isLate) setListed({ key, logs: new Set(logs) });
    }, tell);
    return () => {
      isLate = true;
    };
    // What is asked for is told by the key.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [key, isAsked]);
  if (!isAsked || listed?.key !== key) return 0;
  return [...marked].filter((sha256) => !listed.logs.has(sha256)).length;
}
