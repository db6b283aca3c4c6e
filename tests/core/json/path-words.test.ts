import { expect, it } from 'vitest';
import { pathWords } from '../../../core/json/path-words.ts';

it.each([
  [[], 'the file'],
  [['name'], 'name'],
  [['runway', 'threshold', 'latDeg'], 'runway.threshold.latDeg'],
  [['own', 0], 'own #1'],
  [['own', 1, 'upper'], 'own #2.upper'],
])('%j is named %s', (path, words) => expect(pathWords(path)).toBe(words));
