import { expect, it } from 'vitest';
import { issue, refused, usable } from '../../../core/issue/issue.ts';

it('an issue concerns one thing, no line and no tip unless told', () => {
  expect(issue('note', 'gap', 'A gap.')).toEqual({
    code: 'gap',
    severity: 'note',
    message: 'A gap.',
    count: 1,
    firstLine: null,
    tip: null,
  });
  expect(issue('note', 'gap', 'A gap.', { count: 3, firstLine: 7, tip: 'Look.' })).toMatchObject({
    count: 3,
    firstLine: 7,
    tip: 'Look.',
  });
});

it('a refusal carries its reason and what else was found', () => {
  const other = issue('note', 'other', 'Another.');
  const outcome = refused('no-time', 'No time.', { firstLine: 2 }, [other]);
  expect(outcome.ok).toBe(false);
  if (outcome.ok) return;
  expect(outcome.refusal).toMatchObject({ severity: 'refusal', code: 'no-time', firstLine: 2 });
  expect(outcome.issues).toEqual([other]);
  expect(refused('no-time', 'No time.').issues).toEqual([]);
});

it('a usable value may have nothing to be said about it', () => {
  expect(usable(5)).toEqual({ ok: true, value: 5, issues: [] });
});
