import { flushSync } from 'react-dom';
import { createRoot } from 'react-dom/client';
import { HandOverBody } from '../hand-over/hand-over-body.tsx';
import type { HandOver } from '../hand-over/hand-over.ts';
import type { Dots } from '../../core/sheet/sheet.ts';

/** Prints the page to hand over in place of the app's own, which is there again when it is printed. */
export function printHandOver(handOver: HandOver, dots: Dots): void {
  const printed = document.createElement('div');
  printed.className = 'printed hand-over';
  document.body.append(printed);
  const root = createRoot(printed);
  flushSync(() => root.render(<HandOverBody handOvers={[handOver]} dots={dots} />));
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
