import { useEffect, useRef } from 'react';

/** Lets the keys that print a page (Ctrl-P, on a Mac ⌘P) print what the button prints: the app's own page is no paper. */
export function usePrintKey(print: () => void): void {
  const pressed = useRef(print);
  useEffect(() => {
    pressed.current = print;
  });
  useEffect(() => {
    const hear = (event: KeyboardEvent) => {
      const isPrint = (event.ctrlKey || event.metaKey) && !event.altKey && !event.shiftKey;
      if (!isPrint || event.key.toLowerCase() !== 'p') return;
      event.preventDefault();
      pressed.current();
    };
    document.addEventListener('keydown', hear);
    return () => document.removeEventListener('keydown', hear);
  }, []);
}
