import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import type { SchoolFilter } from '../../core/progress/school/school-input.ts';
import { AT_START } from '../../renderer/state/app-state.ts';
import { SchoolControls } from '../../renderer/views/progress/school-controls.tsx';
import { madeUpSchool } from '../core/progress/school/made-up-school.ts';

const FLOWN = [
  { flown: 'hand-flown' },
  { minute: 10, flown: 'coupled' },
  { lesson: 2, flown: 'coupled', judgedBy: { standardKey: 'k', standardTitle: 'Own' } },
] as const;
const ALL = AT_START.school.filter;
const LONG_AGO: Partial<SchoolFilter> = { to: '2020-01-01' };

/** The options of a choice, the chosen one in brackets; null where there is no such choice. */
function optionsOf(words: string, change: Partial<SchoolFilter>): string[] | null {
  const filter = { ...ALL, ...change };
  const page = { school: madeUpSchool(FLOWN, { filter }), measures: [], needs: [] };
  const asked = { ...AT_START.school, filter };
  const markup = renderToStaticMarkup(createElement(SchoolControls, { page, asked, change: () => {} }));
  const choice = markup.split('<label').find((part) => part.includes(`>${words}</label>`));
  if (choice === undefined) return null;
  const options = [...choice.matchAll(/<option([^>]*)>(.*?)<\/option>/g)];
  return options.map(([, marks, text]) => (marks!.includes('selected') ? `[${text}]` : text!));
}

describe('what the school is looked at by', () => {
  it('lists a factor’s values with how many there are, and marks what is let in', () => {
    expect(optionsOf('By hand or coupled', {})).toEqual(['[all]', 'flown by hand (1)', 'flown coupled (1)']);
    const coupled = { mix: { flown: ['coupled'] } };
    expect(optionsOf('By hand or coupled', coupled)).toEqual([
      'all',
      'flown by hand (1)',
      '[flown coupled (1)]',
    ]);
    expect(optionsOf('Turbulence', {})).toBeNull();
  });

  it('keeps what is let in where the days leave nothing of it', () => {
    const nothing = { ...LONG_AGO, mix: { flown: ['hand-flown'] } };
    expect(optionsOf('By hand or coupled', nothing)).toEqual(['all', '[flown by hand (0)]']);
    const none = { standardKey: 'k', engineVersion: '0.1.0', mix: { flown: ['hand-flown'] } };
    expect(optionsOf('By hand or coupled', none)).toEqual([
      'all',
      'flown coupled (1)',
      '[flown by hand (0)]',
    ]);
  });

  it('takes the standard with the most approaches unless one was chosen, which can be given up again', () => {
    const [most, rating, own] = [
      'the one with the most approaches',
      'Instrument rating, version 0.1.0 (2)',
      'Own, version 0.1.0 (1)',
    ];
    expect(optionsOf('Judged by', {})).toEqual([`[${most}]`, rating, own]);
    const chosen = { standardKey: 'k', engineVersion: '0.1.0' };
    expect(optionsOf('Judged by', chosen)).toEqual([most, rating, `[${own}]`]);
    expect(optionsOf('Judged by', LONG_AGO)).toBeNull();
    expect(optionsOf('Judged by', { ...chosen, ...LONG_AGO })).toEqual([
      most,
      '[as chosen before, version 0.1.0 (0)]',
    ]);
  });
});
