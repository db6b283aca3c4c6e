import type { JsonPath } from './json-text.ts';

/** A path as the sentences name it: "runway.threshold.latDeg", "own #2.upper" with list entries counted from 1. */
export function pathWords(path: JsonPath): string {
  if (path.length === 0) return 'the file';
  return path
    .map((key) => (typeof key === 'number' ? ` #${key + 1}` : `.${key}`))
    .join('')
    .slice(1);
}
