import { useHeard } from './use-heard.ts';

/** Hears every key that is pressed in the page, by what the last rendering makes of it. */
export function useKeyDown(hear: (event: KeyboardEvent) => void): void {
  useHeard(onKeyDown, hear);
}

function onKeyDown(hear: (event: KeyboardEvent) => void): () => void {
  document.addEventListener('keydown', hear);
  return () => document.removeEventListener('keydown', hear);
}
