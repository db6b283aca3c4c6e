import { onAskedToPrint } from '../state/asked-to-print.ts';
import { useHeard } from './use-heard.ts';
import { useKeyDown } from './use-key-down.ts';

/** On a Mac Ctrl-P moves up a line. */
const isMac = /mac/i.test(navigator.platform);

/**
 * Lets the keys that print a page (Ctrl-P, on a Mac ⌘P) and the window's menu print what the button prints: the app's own
 * page is no paper.
 */
export function usePrint(print: () => void): void {
  useKeyDown((event) => {
    const isHeld = isMac ? event.metaKey : event.ctrlKey;
    if (!isHeld || event.altKey || event.shiftKey || event.defaultPrevented || !isKeyP(event)) return;
    event.preventDefault();
    // Held down it is one page still.
    if (!event.repeat) print();
  });
  useHeard(onAskedToPrint, print);
}

/** Also where the key has another letter of another alphabet, as the browser itself takes it. */
function isKeyP({ key, code }: KeyboardEvent): boolean {
  return /^[a-z]$/i.test(key) ? key.toLowerCase() === 'p' : code === 'KeyP';
}
