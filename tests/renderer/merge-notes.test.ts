import { describe, expect, it } from 'vitest';
import type { Notes } from '../../electron/bridge/calls.ts';
import { NO_NOTES } from '../../electron/bridge/no-notes.ts';
import type { Recent } from '../../electron/bridge/recent.ts';
import { mergeNotes } from '../../renderer/state/merge-notes.ts';

const hash = (digit: string) => digit.repeat(64);
const recent = (digit: string, more: Partial<Recent> = {}): Recent => ({
  name: `${digit}.csv`,
  sha256: hash(digit),
  openedUtc: `2026-11-2${digit}T10:00:00.000Z`,
  ...more,
});
const notes = (change: Partial<Notes>): Notes => ({ ...NO_NOTES, ...change });

describe('notes that two windows have changed', () => {
  it('are those of the one that changed them, where the other did not', () => {
    const mine = notes({ recents: [recent('1')] });
    const theirs = notes({ facilities: [{ id: 'f', text: '{}' }] });
    expect(mergeNotes(NO_NOTES, NO_NOTES, theirs)).toBe(theirs);
    expect(mergeNotes(NO_NOTES, mine, NO_NOTES)).toBe(mine);
  });

  it('hold what each has put in, changed and taken away', () => {
    const base = notes({
      facilities: [
        { id: 'kept', text: 'a' },
        { id: 'gone here', text: 'b' },
        { id: 'gone there', text: 'c' },
      ],
      mappings: { x: { Alt: 'altitudeIndicatedFt' } },
    });
    const mine: Notes = {
      ...base,
      facilities: [base.facilities[0]!, base.facilities[2]!, { id: 'mine', text: 'm' }],
      settings: { ...base.settings, dots: 5 },
    };
    const theirs: Notes = {
      ...base,
      facilities: [{ id: 'kept', text: 'changed' }, base.facilities[1]!, { id: 'theirs', text: 't' }],
      mappings: { ...base.mappings, y: { Note: null } },
      settings: { ...base.settings, theme: 'dark' },
    };
    const merged = mergeNotes(base, mine, theirs);
    expect(new Set(merged.facilities.map(({ id, text }) => `${id}: ${text}`))).toEqual(
      new Set(['kept: changed', 'mine: m', 'theirs: t']),
    );
    expect(merged.mappings).toEqual({ x: { Alt: 'altitudeIndicatedFt' }, y: { Note: null } });
    expect(merged.settings).toEqual({ ...base.settings, dots: 5, theme: 'dark' });
  });

  it('hold what was stated in both about the same log, and mine where both stated the same thing', () => {
    const base = notes({ recents: [recent('1', { stated: { vrefKt: 60 } })] });
    const mine = notes({ recents: [recent('1', { stated: { vrefKt: 70, conditions: 'imc' } })] });
    const theirs = notes({ recents: [recent('1', { stated: { vrefKt: 80, hood: true } })] });
    expect(mergeNotes(base, mine, theirs).recents[0]!.stated).toEqual({
      vrefKt: 70,
      conditions: 'imc',
      hood: true,
    });
  });

  it('hold mine also where it takes back what was stated and theirs states something else', () => {
    const base = notes({ recents: [recent('1', { stated: { hood: true } })] });
    const mine = notes({ recents: [recent('1', { stated: { hood: null } })] });
    const theirs = notes({ recents: [recent('1', { stated: { hood: false } })] });
    expect(mergeNotes(base, mine, theirs).recents[0]!.stated).toEqual({ hood: null });
  });

  it('hold a change against a removal, whoever removed it', () => {
    const [base, mine, theirs] = [{ a: 'A' }, { a: 'B' }, {}].map((drafts) => notes({ drafts }));
    expect(mergeNotes(base!, mine!, theirs!).drafts).toEqual({ a: 'B' });
    expect(mergeNotes(base!, theirs!, mine!).drafts).toEqual({ a: 'B' });
  });

  it('do not lose what one has changed because the other took it away', () => {
    const base = notes({ recents: [recent('1')] });
    const mine = notes({ recents: [recent('1', { stated: { vrefKt: 70 } })] });
    const theirs = notes({ recents: [recent('2')] });
    expect(mergeNotes(base, mine, theirs).recents.map(({ name }) => name)).toEqual(['2.csv', '1.csv']);
  });

  it('list the logs of both, newest first, those without a time last, and no more than are kept', () => {
    const { openedUtc: _, ...old } = recent('a');
    const at = (name: string, day: number): Recent => ({
      name,
      sha256: `${name}${day}`.padEnd(64, '0'),
      openedUtc: `2026-10-${String(day).padStart(2, '0')}T10:00:00.000Z`,
    });
    const days = (name: string, count: number) => Array.from({ length: count }, (_u, i) => at(name, i + 1));
    const base = notes({ recents: [old] });
    const few = mergeNotes(
      base,
      notes({ recents: [...days('d', 2), old] }),
      notes({ recents: [...days('e', 1), old] }),
    );
    expect(few.recents.map(({ openedUtc }) => openedUtc?.slice(8, 10))).toEqual([
      '02',
      '01',
      '01',
      undefined,
    ]);
    const many = mergeNotes(
      base,
      notes({ recents: [...days('d', 19), old] }),
      notes({ recents: [...days('e', 19), old] }),
    );
    expect(many.recents).toHaveLength(20);
    expect(many.recents.at(-1)!.openedUtc).toContain('-10T');
  });
});
