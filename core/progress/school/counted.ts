import { counted } from '../sentences.ts';

/** "1 approach", "3 approaches". */
export function approachesOf(count: number): string {
  return counted(count, 'approach', 'approaches');
}
