import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { NOTES } from '../../electron/bridge/calls.ts';
import { NO_NOTES } from '../../electron/bridge/no-notes.ts';
import type { Flight } from '../../renderer/state/app-state.ts';
import { mergeNotes } from '../../renderer/state/merge-notes.ts';
import { OwnFacilities } from '../../renderer/state/own-facilities.ts';
import { partsOfOwn } from './parts-of-own.ts';

const PETRELHOLM = readFileSync('samples/petrelholm-ils-07.json', 'utf8');
const named = (name: string) => PETRELHOLM.replace('Petrelholm ILS 07', name);
const TOO_LONG = 'x'.repeat(100_001);

function begun() {
  const parts = partsOfOwn();
  return { ...parts, facilities: new OwnFacilities(parts) };
}
afterEach(() => void vi.useRealTimers());

describe('facilities of the user’s own', () => {
  it('are kept and read, complete or not', async () => {
    const { store, facilities } = begun();
    const id = (await facilities.add(PETRELHOLM))!;
    const half = (await facilities.add('{}'))!;
    expect(store.state().notes.facilities).toEqual([
      { id, text: PETRELHOLM },
      { id: half, text: '{}' },
    ]);
    expect(store.state().facilities.map(({ reading }) => reading?.refusal === null)).toEqual([true, false]);
  });

  it('are read as the bytes of their file say, also from an old editor', async () => {
    const { store, facilities } = begun();
    for (const bytes of [
      Buffer.from(named('Grünau ILS 07'), 'latin1'),
      Buffer.from(`\uFEFF${named('Grünau ILS 07')}`, 'utf16le'),
      Buffer.from(named('Grünau ILS 07')),
    ])
      await facilities.bringIn(new File([bytes], 'x.json'));
    expect(store.state().facilities.map(({ reading }) => reading?.name)).toEqual([
      'Grünau ILS 07',
      'Grünau ILS 07',
      'Grünau ILS 07',
    ]);
  });

  it('are not kept where they are too long or too many, and that is said; what was kept before stays', async () => {
    const { store, facilities, saveNotes } = begun();
    expect(await facilities.bringIn(new File([TOO_LONG], 'log.csv'))).toBeNull();
    expect(await facilities.bringIn(new File(['x'.repeat(500_000)], 'long.csv'))).toBeNull();
    const many = Array.from({ length: 500 }, (_, i) => ({ id: String(i), text: '' }));
    store.dispatch({ do: 'notes', notes: { ...NO_NOTES, facilities: many } });
    expect(await facilities.add(PETRELHOLM)).toBeNull();
    facilities.type('1', TOO_LONG);
    expect(await facilities.keep('1', TOO_LONG)).toBe(false);
    expect(saveNotes).not.toHaveBeenCalled();
    expect(store.state().notes).toEqual({ ...NO_NOTES, facilities: many });
    expect(store.state().notices).toEqual([
      'log.csv was not brought in: a facility has at most 100,000 characters. Is it a track log?',
      'long.csv was not brought in: a facility has at most 100,000 characters. Is it a track log?',
      '500 facilities of your own are kept already: remove one first.',
      'This was not taken over: a facility has at most 100,000 characters.',
    ]);
  });

  it('keep what is typed into them until it is kept, undone, or they are removed', async () => {
    vi.useFakeTimers();
    const { store, facilities, saveNotes } = begun();
    const id = (await facilities.add('{}'))!;
    facilities.type(id, '{ "name"');
    expect(saveNotes).toHaveBeenCalledTimes(1);
    vi.advanceTimersByTime(400);
    expect(saveNotes.mock.lastCall![0].drafts).toEqual({ [id]: '{ "name"' });
    facilities.type(id, null);
    expect(store.state().notes.drafts).toEqual({});
    facilities.type(id, PETRELHOLM);
    await facilities.keep(id, PETRELHOLM);
    expect(store.state().notes.drafts).toEqual({});
    facilities.type(id, '{');
    await facilities.remove(id);
    expect(store.state().notes).toMatchObject({ drafts: {}, facilities: [] });
  });

  it('are those of another window as well, where that has kept some meanwhile', async () => {
    const { store, facilities, saveNotes } = begun();
    saveNotes.mockImplementationOnce(async (notes) => {
      const theirs = { ...NO_NOTES, facilities: [{ id: 'theirs', text: named('Theirs') }] };
      store.dispatch({ do: 'notes', notes: mergeNotes(NO_NOTES, notes, theirs) });
    });
    await facilities.add(named('Mine'));
    expect(
      store
        .state()
        .facilities.map(({ reading }) => reading?.name)
        .toSorted(),
    ).toEqual(['Mine', 'Theirs']);
  });
});

describe('a log that is open at a facility of the user’s own', () => {
  async function openedAt(...fits: readonly string[]) {
    const { store, ...others } = begun();
    const mine = (await others.facilities.add(named('Mine')))!;
    const next = (await others.facilities.add(named('Next')))!;
    store.dispatch({ do: 'opened', id: 'a', name: 'a.csv', standardId: 'x', isSample: false });
    store.dispatch({ do: 'opened', id: 'b', name: 'b.csv', standardId: 'x', isSample: false });
    const known = { mine, next };
    const ids = fits.map((fit) => known[fit as 'mine']);
    store.dispatch({ do: 'change', id: 'a', change: { facilityId: mine, fits: ids } });
    others.judge.mockImplementation(async (id) =>
      others.facilities.settle(store.state().flights.find((flight) => flight.id === id)!),
    );
    return { store, mine, next, ...others };
  }

  it('is debriefed anew when that is changed, complete or not, and stays at it', async () => {
    const { store, mine, next, facilities, judge } = await openedAt('mine', 'next');
    await facilities.keep(mine, '{}');
    await facilities.keep(next, named('Another'));
    expect(judge.mock.calls).toEqual([['a']]);
    expect([store.state().flights[0]!.facilityId, store.state().notices]).toEqual([mine, []]);
  });

  it('is at the next that it was flown to when that is removed, and this is said', async () => {
    const { store, mine, next, facilities, judge } = await openedAt('mine', 'next');
    await facilities.remove(mine);
    expect(judge.mock.calls).toEqual([['a']]);
    expect(store.state().flights.map(({ facilityId }) => facilityId)).toEqual([next, null]);
    expect(store.state().notices).toEqual([
      'The facility at which a.csv was debriefed is not there any more: look at the one chosen now.',
    ]);
  });

  it('is at none when it was flown to no other, also where another window removed it', async () => {
    const { store, mine, facilities, judge } = await openedAt('mine');
    const { notes } = store.state();
    await facilities.load({ ...notes, facilities: notes.facilities.filter(({ id }) => id !== mine) });
    expect(judge.mock.calls).toEqual([['a']]);
    expect(store.state().flights[0]!.facilityId).toBeNull();
    expect(store.state().notices).toEqual([
      'The facility at which a.csv was debriefed is not there any more: choose another.',
    ]);
  });
});

describe('a log that is read when a facility comes', () => {
  const READ = { kind: 'read', inspection: {} } as Flight['reading'];
  function read(change: Partial<Flight> = {}) {
    const { store, ...others } = begun();
    store.dispatch({ do: 'opened', id: 'a', name: 'a.csv', standardId: 'x', isSample: false });
    store.dispatch({ do: 'change', id: 'a', change: { reading: READ, fits: [], ...change } });
    return { store, ...others, flight: () => store.state().flights[0]! };
  }

  it('is debriefed at it where it had none, if it was flown to it', async () => {
    const { facilities, judge, flight } = read();
    await facilities.add(named('Elsewhere'));
    expect([flight().facilityId, judge.mock.calls]).toEqual([null, []]);
    const id = await facilities.add(named('Flown to'));
    expect([flight().facilityId, flight().fits, judge.mock.calls]).toEqual([id, [id], [['a']]]);
  });

  it('stays at the one that was chosen, and says that it was flown to the new one too', async () => {
    const { facilities, judge, flight } = read();
    const chosen = (await facilities.add(named('Flown to')))!;
    const next = (await facilities.add(named('Flown to as well')))!;
    expect([flight().facilityId, flight().fits, judge.mock.calls]).toEqual([chosen, [chosen, next], [['a']]]);
  });

  it('is at none, and was flown to none, that came with the kept debrief of another', async () => {
    const { store, facilities, judge, flight } = read();
    const kept = await facilities.entryFor(named('Flown to'));
    expect([flight().facilityId, flight().fits, judge.mock.calls]).toEqual([null, [], []]);
    store.dispatch({ do: 'change', id: 'a', change: { facilityId: kept } });
    await facilities.fit('a');
    expect(flight().fits).toEqual([kept]);
  });

  it('was flown to those that came while that was looked for', async () => {
    const { facilities, flight } = read({ fits: null });
    const looking = facilities.fit('a');
    const id = await facilities.add(named('Flown to'));
    await looking;
    expect(flight().fits).toEqual([id]);
  });
});

describe('notes of two windows put together', () => {
  const sixty = (window: string) =>
    Array.from({ length: 60 }, (_, i) => ({ id: `${window}${i}`, text: '{}' }));
  const many = (window: string) =>
    Array.from({ length: 500 }, (_, i) => ({ id: `${window}${i}`, text: '{}' }));

  it('can be kept, though together they hold more than either may bring in', () => {
    const mine = { ...NO_NOTES, standards: sixty('a'), facilities: many('a') };
    const theirs = { ...NO_NOTES, standards: sixty('b'), facilities: many('b') };
    const both = mergeNotes(NO_NOTES, mine, theirs);
    expect([both.standards.length, both.facilities.length]).toEqual([120, 1000]);
    expect(NOTES.safeParse(both).success).toBe(true);
  });
});
