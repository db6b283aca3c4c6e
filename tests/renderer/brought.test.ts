import { describe, expect, it } from 'vitest';
import { NOTHING_BROUGHT, withOneMore, type Brought } from '../../renderer/state/brought.ts';

const KEPT: Brought = {
  name: 'term/Rowen Teal/log.csv',
  became: 'kept',
  approaches: 1,
  facilities: ['Petrelholm ILS 07'],
  student: 'Rowen Teal',
  lessonId: 'l',
  date: '2026-05-30',
  debriefId: 'd',
  stays: false,
  added: 'Rowen Teal',
  nobodyBecause: null,
  warnings: [],
};
const nobodys = { ...KEPT, name: 'term/log.csv', student: null, added: null };
const all = (...logs: Brought[]) => logs.reduce(withOneMore, NOTHING_BROUGHT);

describe('what was brought in', () => {
  it('names who came onto the roster, once, however many logs are theirs', () => {
    expect(all(KEPT, KEPT, { ...KEPT, added: null })).toMatchObject({
      done: 3,
      kept: 3,
      added: ['Rowen Teal'],
    });
  });

  it('names the logs that are nobody’s, and why', () => {
    const because = { ...nobodys, nobodyBecause: '"Rowen Teal" is not on the roster' };
    expect(all(KEPT, because, nobodys).withNobody).toEqual([
      'term/log.csv: "Rowen Teal" is not on the roster',
      'term/log.csv',
    ]);
  });

  it('counts the logs with something to be checked, and names each with what it is', () => {
    const doubtful = { ...KEPT, warnings: ['Taken as ft.', 'Taken as day, month, year.'] };
    const { cautioned, cautions } = all(KEPT, doubtful, { ...doubtful, became: 'known' });
    expect(cautioned).toBe(2);
    expect(cautions.slice(0, 2)).toEqual([
      'term/Rowen Teal/log.csv: Taken as ft.',
      'term/Rowen Teal/log.csv: Taken as day, month, year.',
    ]);
  });

  it('names what was refused with its sentence', () => {
    const refused = { name: 'a/log.csv', became: 'refused', why: 'No log.' } as const;
    expect(all(refused)).toMatchObject({ done: 1, kept: 0, refused: ['a/log.csv: No log.'] });
  });
});
