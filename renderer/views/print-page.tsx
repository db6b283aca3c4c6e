import type { ReactNode } from 'react';
import { flushSync } from 'react-dom';
import { createRoot } from 'react-dom/client';

/** Prints a page to hand over in place of the app's own, which is there again when it is printed. */
export function printPage(body: ReactNode): void {
  const printed = document.createElement('div');
  printed.className = 'printed hand-over';
  document.body.append(printed);
  const root = createRoot(printed);
  flushSync(() => root.render(body));
  // A browser may come back from `print` before it has printed.
  addEventListener(
    'afterprint',
    () => {
      root.unmount();
      printed.remove();
    },
    { once: true },
  );
  print();
}
