import { useEffect, useRef } from 'react';

/** Hears every key that is pressed in the page, by what the last rendering makes of it. */
export function useKeyDown(hear: (event: KeyboardEvent) => void): void {
  const heard = useRef(hear);
  useEffect(() => {
    heard.current = hear;
  });
  useEffect(() => {
    const pass = (event: KeyboardEvent) => heard.current(event);
    document.addEventListener('keydown', pass);
    return () => document.removeEventListener('keydown', pass);
  }, []);
}
