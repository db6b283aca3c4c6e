import { useRef, useState } from 'react';
import type { Issue } from '../../../core/issue/issue.ts';
import type { Running } from '../../state/analyst.ts';

/** What a file that is read has come to. */
export type FileReading<T> =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading'; readonly share: number | null }
  | { readonly kind: 'refused'; readonly issue: Issue }
  | { readonly kind: 'read'; readonly value: T };

/** Reads one file at a time, with how far it is, and lets it be stopped. */
export function useFileReading<T>() {
  const [reading, set] = useState<FileReading<T>>({ kind: 'none' });
  const running = useRef<Running<T> | null>(null);
  const read = async (start: (progress: (share: number | null) => void) => Running<T>) => {
    running.current?.cancel();
    set({ kind: 'reading', share: null });
    const mine = start((share) => {
      if (running.current === mine) set({ kind: 'reading', share });
    });
    running.current = mine;
    const done = await mine.done;
    if (running.current !== mine) return;
    if (done.kind === 'done') set({ kind: 'read', value: done.value });
    else if (done.kind === 'refused') set({ kind: 'refused', issue: done.issue });
    else set({ kind: 'none' });
  };
  return { reading, read, stop: () => running.current?.cancel() };
}
