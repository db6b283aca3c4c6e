import { readFileSync } from 'node:fs';
import { createElement, type ReactElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { standardById } from '../../core/standard/standards.ts';
import type { FacilityEntry } from '../../renderer/state/app-state.ts';
import { KEPT_MARK } from '../../renderer/state/kept-mark.ts';
import { FacilityOptions } from '../../renderer/views/facility/facility-options.tsx';
import { StandardOptions } from '../../renderer/views/standards/standard-options.tsx';
import { readingOf } from '../../renderer/worker/facility-reading.ts';

const PETRELHOLM = readFileSync('samples/petrelholm-ils-07.json', 'utf8');
const entry = (id: string, mark: string | null): FacilityEntry => {
  const reading = readingOf({ id, text: PETRELHOLM }, 2026);
  return { id, text: PETRELHOLM, isFixed: mark !== null, mark, reading };
};
const FACILITIES = [entry('own', null), entry('kept', KEPT_MARK)];
const words = (options: ReactElement) =>
  [...renderToStaticMarkup(options).matchAll(/<option[^>]*>(.*?)<\/option>/g)].map(([, text]) => text);

describe('facilities to choose from', () => {
  const listed = (chosenId: string | null, fits: readonly string[]) =>
    words(createElement(FacilityOptions, { facilities: FACILITIES, fits, chosenId }));

  it('hold what came with a kept debrief where it is chosen, told apart, and nowhere else', () => {
    expect(listed('own', ['own', 'kept'])).toEqual(['Petrelholm ILS 07']);
    expect(listed(null, ['own', 'kept'])).toEqual(['choose one', 'Petrelholm ILS 07']);
    expect(listed('kept', ['own', 'kept'])).toEqual([
      'Petrelholm ILS 07',
      'Petrelholm ILS 07 (as kept in the library)',
    ]);
    expect(listed('kept', [])).toEqual([
      'Petrelholm ILS 07 (not flown to)',
      'Petrelholm ILS 07 (as kept in the library, not flown to)',
    ]);
  });
});

describe('standards to choose from', () => {
  const standard = { ...standardById('instrument-rating')!, id: 'tight', title: 'Tight' };
  const own = [{ id: 'own', text: '', reading: { id: 'own', standard, problems: [] } }];
  const kept = [{ id: 'kept', text: '', standard }];
  const listed = (chosenId: string) =>
    words(createElement(StandardOptions, { own, kept, chosenId })).filter((text) => text!.includes('Tight'));

  it('hold that of a kept debrief where it is chosen, told apart, and nowhere else', () => {
    expect(listed('own')).toEqual(['Tight']);
    expect(listed('kept').toSorted()).toEqual(['Tight', 'Tight (as kept in the library)']);
  });
});
