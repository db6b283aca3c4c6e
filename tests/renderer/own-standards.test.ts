import { afterEach, describe, expect, it, vi } from 'vitest';
import { ownCopy } from '../../core/standard/own-copy.ts';
import { DEFAULT_STANDARD, standardById } from '../../core/standard/standards.ts';
import { NO_NOTES } from '../../electron/bridge/no-notes.ts';
import {
  askedStandard,
  OwnStandards,
  standardNamed,
  withoutStandard,
  withStandard,
} from '../../renderer/state/own-standards.ts';
import { standardReading } from '../../renderer/worker/read-standard.ts';
import { partsOfOwn } from './parts-of-own.ts';

function begun() {
  const parts = partsOfOwn();
  return { ...parts, standards: new OwnStandards(parts) };
}
const RATING = standardById('instrument-rating')!;
afterEach(() => void vi.useRealTimers());

describe('standards of the user’s own', () => {
  it('are kept, read, and asked for by their text', async () => {
    const { store, standards } = begun();
    const id = (await standards.makeFrom(RATING))!;
    const state = store.state();
    const text = ownCopy(RATING, []);
    expect(state.notes.standards).toEqual([{ id, text }]);
    expect(standardNamed(state, id)!.title).toBe('Own: Instrument rating, precision approach');
    expect(askedStandard(state, id)).toEqual({ kind: 'own', text });
    expect(askedStandard(state, 'skill-test')).toEqual({ kind: 'shipped', id: 'skill-test' });
    expect(standardNamed(state, 'skill-test')!.id).toBe('skill-test');
    expect(standardNamed(state, 'gone')).toBeNull();
  });

  it('that cannot be used are kept as well, and say everything that is wrong', async () => {
    const { store, standards } = begun();
    const id = (await standards.bringIn(new File(['{ "format": "halfdot-standard/1" }'], 'x.json')))!;
    const [entry] = store.state().standards;
    expect(entry).toMatchObject({ id, text: '{ "format": "halfdot-standard/1" }' });
    expect(entry!.reading!.standard).toBeNull();
    expect(entry!.reading!.problems.map(({ message }) => message).join()).toMatch(
      /\bid\b.*\btitle\b.*\bsource\b/,
    );
  });

  it('are read as the bytes of their file say, also from an old editor', async () => {
    const { store, standards } = begun();
    const text = ownCopy(RATING, []).replace('"Own: ', '"Prüfung: ');
    for (const bytes of [
      Buffer.from(text, 'latin1'),
      Buffer.from(`\uFEFF${text}`, 'utf16le'),
      Buffer.from(text),
    ])
      await standards.bringIn(new File([bytes], 'x.json'));
    expect(store.state().standards.map(({ reading }) => reading?.standard?.title.slice(0, 8))).toEqual([
      'Prüfung:',
      'Prüfung:',
      'Prüfung:',
    ]);
  });

  it('are not kept where they are too long or too many, and that is said', async () => {
    const { store, standards, saveNotes } = begun();
    expect(await standards.bringIn(new File(['x'.repeat(50_001)], 'log.csv'))).toBeNull();
    expect(await standards.bringIn(new File(['x'.repeat(300_000)], 'long.csv'))).toBeNull();
    store.dispatch({
      do: 'notes',
      notes: { ...NO_NOTES, standards: Array.from({ length: 100 }, (_, i) => ({ id: String(i), text: '' })) },
    });
    expect(await standards.makeFrom(RATING)).toBeNull();
    expect(saveNotes).not.toHaveBeenCalled();
    expect(store.state().notices).toEqual([
      'log.csv was not kept: a standard has at most 50,000 characters. Is it a track log?',
      'long.csv was not kept: a standard has at most 50,000 characters. Is it a track log?',
      '100 standards of your own are kept already: remove one first.',
    ]);
  });

  it('keep what is being typed at them in the notes until it is kept, whatever is done to others meanwhile', async () => {
    vi.useFakeTimers();
    const { store, standards, saveNotes } = begun();
    const id = (await standards.makeFrom(RATING))!;
    standards.type(id, 'half a');
    standards.type(id, 'half a th');
    expect(saveNotes).toHaveBeenCalledTimes(1);
    vi.advanceTimersByTime(400);
    expect(saveNotes).toHaveBeenCalledTimes(2);
    expect(saveNotes.mock.lastCall![0].drafts).toEqual({ [id]: 'half a th' });
    const other = (await standards.makeFrom(RATING))!;
    expect(store.state().notes.drafts).toEqual({ [id]: 'half a th' });
    await standards.keep(id, 'half a th');
    expect(store.state().notes.drafts).toEqual({});
    expect(store.state().standards.map(({ text }) => text.slice(0, 9))).toEqual(['half a th', '{\n  "form']);
    expect(store.state().notes.standards.map((standard) => standard.id)).toEqual([id, other]);
    standards.type(other, 'x');
    standards.type(other, null);
    expect(store.state().notes.drafts).toEqual({});
    standards.type(other, 'y');
    await standards.remove(other);
    expect(store.state().notes.drafts).toEqual({});
  });

  it('take nothing over that could not be kept, and say so', async () => {
    const { store, standards } = begun();
    const id = (await standards.makeFrom(RATING))!;
    standards.type(id, 'x'.repeat(50_001));
    expect(store.state().notes.drafts?.[id]).toBeUndefined();
    expect(await standards.keep(id, 'x'.repeat(50_001))).toBe(false);
    expect(store.state().notices).toEqual([
      'This was not taken over: a standard has at most 50,000 characters.',
    ]);
  });

  it('that change or go judge anew what was held to them; gone, by the default, and that is said', async () => {
    const { store, standards, judge } = begun();
    const id = (await standards.makeFrom(RATING))!;
    store.dispatch({ do: 'opened', id: 'a', name: 'a.csv', standardId: id, isSample: false });
    store.dispatch({ do: 'opened', id: 'b', name: 'b.csv', standardId: 'skill-test', isSample: false });
    store.dispatch({
      do: 'notes',
      notes: { ...store.state().notes, settings: { ...NO_NOTES.settings, standard: id } },
    });
    await standards.keep(id, ownCopy(RATING, []));
    expect(judge.mock.calls).toEqual([['a']]);
    await standards.remove(id);
    expect(judge.mock.calls).toEqual([['a'], ['a']]);
    const { flights, notes, notices } = store.state();
    expect(flights.map(({ standardId }) => standardId)).toEqual([DEFAULT_STANDARD.id, 'skill-test']);
    expect([notes.standards, notes.settings.standard]).toEqual([[], DEFAULT_STANDARD.id]);
    expect(notices).toEqual([
      '"Own: Instrument rating, precision approach" was removed: a.csv is now judged by "Instrument rating, precision approach".',
    ]);
  });

  it('that are not there any more are the default, with a notice', async () => {
    const { store, standards } = begun();
    const id = (await standards.makeFrom(RATING))!;
    for (const standardId of [id, 'skill-test', 'gone'])
      store.dispatch({
        do: 'opened',
        id: standardId,
        name: `${standardId}.csv`,
        standardId,
        isSample: false,
      });
    for (const flight of store.state().flights) standards.settle(flight);
    const { flights, notices } = store.state();
    expect(flights.map(({ standardId }) => standardId)).toEqual([id, 'skill-test', DEFAULT_STANDARD.id]);
    expect(notices).toEqual([
      'The standard that was chosen for gone.csv is not here any more: it is judged by "Instrument rating, precision approach".',
    ]);
  });
});

describe('a standard by which a debrief was kept', () => {
  /** Own, as the library has it. */
  const asKept = (text: string) => JSON.stringify(standardReading({ id: '', text }).standard);
  async function withOwn() {
    const parts = begun();
    const id = (await parts.standards.makeFrom(RATING))!;
    return { ...parts, id, kept: asKept(ownCopy(RATING, [])) };
  }
  const OWN_ID = 'own-instrument-rating';

  it('is the one that is here where that says the same, in whichever order', async () => {
    const { store, standards, id, kept } = await withOwn();
    const turned = Object.fromEntries(Object.entries(JSON.parse(kept) as object).toReversed());
    expect(standards.entryFor(OWN_ID, kept)).toBe(id);
    expect(standards.entryFor(OWN_ID, JSON.stringify(turned))).toBe(id);
    expect(standards.entryFor('skill-test', '{}')).toBe('skill-test');
    expect(store.state().keptStandards).toEqual([]);
  });

  it('is put beside it once where it was changed since, judges as it is kept, and is not the user’s own', async () => {
    const { store, standards, id, kept, saveNotes } = await withOwn();
    await standards.keep(id, ownCopy(RATING, []).replace('0.75', '0.05'));
    saveNotes.mockClear();
    const beside = standards.entryFor(OWN_ID, kept);
    expect(beside).not.toBe(id);
    expect(standards.entryFor(OWN_ID, kept)).toBe(beside);
    const state = store.state();
    expect(askedStandard(state, beside)).toEqual({ kind: 'kept', text: kept });
    expect(standardNamed(state, beside)!.final.localizer!.upper).toBe(0.75);
    expect(state.standards.map((entry) => entry.id)).toEqual([id]);
    expect(saveNotes).not.toHaveBeenCalled();
    store.dispatch({ do: 'opened', id: 'a', name: 'a.csv', standardId: beside, isSample: false });
    standards.settle(store.state().flights[0]!);
    expect([store.state().flights[0]!.standardId, store.state().notices]).toEqual([beside, []]);
  });

  it('is put there where it was removed, or cannot be used any more', async () => {
    const { store, standards, id, kept } = await withOwn();
    await standards.keep(id, '{}');
    const beside = standards.entryFor(OWN_ID, kept);
    await standards.remove(id);
    expect(standards.entryFor(OWN_ID, kept)).toBe(beside);
    expect(store.state().keptStandards).toHaveLength(1);
  });
});

describe('notes with standards', () => {
  const two = withStandard(withStandard(NO_NOTES, 'a', '1'), 'b', '2');

  it('keep the order in which they were brought in', () => {
    expect(withStandard(two, 'a', '3').standards).toEqual([
      { id: 'a', text: '3' },
      { id: 'b', text: '2' },
    ]);
  });

  it('lose one alone, and a choice of another stays', () => {
    const chosen = { ...two, settings: { ...two.settings, standard: 'b' } };
    expect(withoutStandard(chosen, 'a')).toEqual({ ...chosen, standards: [{ id: 'b', text: '2' }] });
  });
});
