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

type Question = readonly [FlightFilter, changes: number];

/** How many of the logs that are marked are not on the list any more, since it was filtered otherwise. */
export function useNotShown({ marked, filter, changes, tell }: Asked): number {
  const key = JSON.stringify([filter, changes] satisfies Question);
  const [listed, setListed] = useState<{ key: string; logs: ReadonlySet<string> } | null>(null);
  const isAsked = marked.size > 0 && Object.values(filter).some((value) => value !== null);
  useEffect(() => {
    if (!isAsked) return;
    let isLate = false;
    // Told by the key, which is the same for the same question; the object may be another at every drawing.
    const [filter] = JSON.parse(key) as Question;
    call('libraryLogs', { filter }).then((logs) => {
      if (!isLate) setListed({ key, logs: new Set(logs) });
    }, tell);
    return () => {
      isLate = true;
    };
  }, [key, isAsked, tell]);
  if (!isAsked || listed?.key !== key) return 0;
  return [...marked].filter((sha256) => !listed.logs.has(sha256)).length;
}
