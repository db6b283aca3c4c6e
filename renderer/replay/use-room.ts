import { useLayoutEffect, useState, type RefObject } from 'react';

interface Room {
  readonly widthPx: number;
  /** What the window leaves beside the header, the controls and the player. */
  readonly heightPx: number;
}

const AROUND = 252;

/** The room for a sheet in its holder, followed as the window changes. */
export function useRoom(holder: RefObject<HTMLElement | null>): Room {
  const [room, setRoom] = useState<Room>({ widthPx: 960, heightPx: 640 });
  useLayoutEffect(() => {
    const element = holder.current;
    if (!element) return;
    const measure = () => {
      const widthPx = Math.max(480, Math.floor(element.clientWidth));
      const heightPx = window.innerHeight - AROUND;
      setRoom((now) => (now.widthPx === widthPx && now.heightPx === heightPx ? now : { widthPx, heightPx }));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    window.addEventListener('resize', measure);
    return () => {
      observer.disconnect();
      window.removeEventListener('resize', measure);
    };
  }, [holder]);
  return room;
}
