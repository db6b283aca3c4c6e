import { useEffect, useRef } from 'react';

/** Begins to listen, and gives what ends it. */
type Listen<Told extends unknown[]> = (hear: (...told: Told) => void) => () => void;

/** Hears something for as long as a view is there, by what its last rendering makes of it. */
export function useHeard<Told extends unknown[]>(listen: Listen<Told>, hear: (...told: Told) => void): void {
  const heard = useRef(hear);
  useEffect(() => {
    heard.current = hear;
  });
  useEffect(() => listen((...told) => heard.current(...told)), [listen]);
}
