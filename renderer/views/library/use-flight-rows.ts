import { useCallback, useEffect, useRef, useState } from 'react';
import type { FlightFilter, FlightOrder, FlightRow } from '../../../electron/bridge/library-calls.ts';
import { call } from '../../state/host.ts';

/** Rows that are fetched at a time. */
const PART = 100;

interface Known {
  readonly key: string;
  readonly total: number;
  readonly parts: ReadonlyMap<number, readonly FlightRow[]>;
}

interface Asked {
  readonly filter: FlightFilter;
  readonly order: FlightOrder;
  /** Another number: what is known is out of date. */
  readonly changes: number;
  readonly tell: (error: unknown) => void;
}

type Question = readonly [FlightFilter, FlightOrder, changes: number];

/** A long list of which only what is looked at is fetched. What was there before stays until something newer is. */
export function useFlightRows({ filter, order, changes, tell }: Asked) {
  const key = JSON.stringify([filter, order, changes] satisfies Question);
  const [known, setKnown] = useState<Known | null>(null);
  const asked = useRef(new Set<string>());
  /** What is asked for now: an answer that comes late, to an older question, is no answer any more. */
  const latest = useRef(key);
  latest.current = key;
  const ask = useCallback(
    async (part: number) => {
      const name = `${key} ${part}`;
      if (asked.current.has(name)) return;
      asked.current.add(name);
      try {
        // Told by the key, which is the same for the same question; the objects may be others at every drawing.
        const [filter, order] = JSON.parse(key) as Question;
        const { total, rows } = await call('libraryFlights', {
          filter,
          order,
          from: part * PART,
          count: PART,
        });
        if (latest.current !== key) return;
        setKnown((before) => {
          const parts = new Map(before?.key === key ? before.parts : []);
          return { key, total, parts: parts.set(part, rows) };
        });
      } catch (error) {
        asked.current.delete(name);
        tell(error);
      }
    },
    [key, tell],
  );
  useEffect(() => {
    asked.current.clear();
    void ask(0);
  }, [ask]);
  const need = useCallback(
    (first: number, last: number) => {
      for (let part = Math.floor(first / PART); part <= Math.floor(last / PART); part++) void ask(part);
    },
    [ask],
  );
  const row = (index: number) => known?.parts.get(Math.floor(index / PART))?.[index % PART] ?? null;
  return { total: known?.total ?? null, row, need };
}
