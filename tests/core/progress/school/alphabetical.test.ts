import { expect, it } from 'vitest';
import { alphabetical } from '../../../../core/progress/school/alphabetical.ts';

it('puts labels where a reader looks for them, whatever their accents, capitals and numbers', () => {
  const labels = [
    'Zoë',
    'Łukasz',
    'Østen',
    'lesson 10',
    'Lesson 9',
    'José',
    'Jörg',
    'Ångström',
    'alder',
    'Öre',
  ];
  expect(alphabetical(labels, (label) => label)).toEqual([
    'alder',
    'Ångström',
    'Jörg',
    'José',
    'Lesson 9',
    'lesson 10',
    'Łukasz',
    'Öre',
    'Østen',
    'Zoë',
  ]);
});
