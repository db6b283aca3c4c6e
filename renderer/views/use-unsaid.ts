import { useSyncExternalStore } from 'react';
import type { Session } from '../state/session.ts';

/** What stands in a field and is not said yet: it is there again when its view is. `first` stands there before. */
export function useUnsaid<T extends string = string>(
  { store: { unsaid } }: Session,
  path: string,
  first: NoInfer<T>,
): readonly [T, (words: T) => void] {
  // Whoever writes at a path writes what may stand there.
  const words = useSyncExternalStore(unsaid.subscribe, () => unsaid.at(path)) as T | null;
  return [words ?? first, (next) => unsaid.write(path, next)];
}
