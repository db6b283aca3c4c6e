import { useEffect, useRef } from 'react';

/** On a Mac Ctrl-P moves up a line. */
const isMac = /mac/i.test(navigator.platform);

/** Lets the keys that print a page (Ctrl-P, on a Mac ⌘P) print what the button prints: the app's own page is no paper. */
export function usePrintKey(print: () => void): void {
  const pressed = useRef(print);
  useEffect(() => {
    pressed.current = print;
  });
  useEffect(() => {
    const hear = (event: KeyboardEvent) => {
      const isHeld = isMac ? event.metaKey : event.ctrlKey;
      if (!isHeld || event.altKey || event.shiftKey || !isKeyP(event)) return;
      if (event.defaultPrevented) return;
      event.preventDefault();
      // Held down it is one page still.
      if (!event.repeat) pressed.current();
    };
    document.addEventListener('keydown', hear);
    return () => document.removeEventListener('keydown', hear);
  }, []);
}

/** Also where the key has another letter of another alphabet, as the browser itself takes it. */
function isKeyP({ key, code }: KeyboardEvent): boolean {
  return /^[a-z]$/i.test(key) ? key.toLowerCase() === 'p' : code === 'KeyP';
}
