import type { Sheet } from '../../core/sheet/sheet.ts';

/** What a key does to the replay; null where it means nothing to it. */
export type KeyDeed =
  { readonly to: number } | { readonly do: 'play' } | { readonly zoom: 'in' | 'out' } | null;

const STEP_S = 1;
const STRIDE_S = 10;

/** Space plays; left and right go by a second, with Shift by ten; up and down to the event before and after. */
export function deedOf(key: string, isShift: boolean, { span, events }: Sheet, nowS: number): KeyDeed {
  const by = isShift ? STRIDE_S : STEP_S;
  const clamp = (s: number) => ({ to: Math.min(Math.max(s, span.startS), span.endS) });
  switch (key) {
    case ' ':
      return { do: 'play' };
    case 'ArrowLeft':
      return clamp(nowS - by);
    case 'ArrowRight':
      return clamp(nowS + by);
    case 'Home':
      return { to: span.startS };
    case 'End':
      return { to: span.endS };
    case 'ArrowUp':
      return clamp(Math.max(...events.map(({ timeS }) => timeS).filter((s) => s < nowS), span.startS));
    case 'ArrowDown':
      return clamp(Math.min(...events.map(({ timeS }) => timeS).filter((s) => s > nowS), span.endS));
    case '+':
    case '=':
      return { zoom: 'in' };
    case '-':
      return { zoom: 'out' };
    default:
      return null;
  }
}
