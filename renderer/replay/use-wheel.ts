import { useEffect, type RefObject } from 'react';
import type { Frame, SheetView } from '../sheet/frame.ts';
import { panned, zoomed } from './range.ts';

interface Wheel {
  readonly frame: Frame;
  readonly range: SheetView['range'];
  readonly setRange: (range: SheetView['range']) => void;
}

/** The wheel with Ctrl, or two fingers, zooms about the pointer; sideways it pans. Without, the page scrolls. */
export function useWheel(holder: RefObject<HTMLElement | null>, { frame, range, setRange }: Wheel): void {
  useEffect(() => {
    const element = holder.current;
    if (!element) return;
    const turn = (event: WheelEvent) => {
      const { sheet, view } = frame;
      if (event.ctrlKey) {
        event.preventDefault();
        const box = element.getBoundingClientRect();
        const about = frame.x.invert((event.clientX - box.left) * (frame.width / box.width));
        setRange(zoomed(sheet, view.axis, range, Math.exp(event.deltaY / 300), about));
      } else if (Math.abs(event.deltaX) > Math.abs(event.deltaY)) {
        event.preventDefault();
        setRange(panned(sheet, view.axis, range, event.deltaX / frame.width));
      }
    };
    // React's own listener is passive, and could not keep the page from being zoomed as well.
    element.addEventListener('wheel', turn, { passive: false });
    return () => element.removeEventListener('wheel', turn);
  }, [holder, frame, range, setRange]);
}
