import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Notes } from '../../electron/bridge/calls.ts';
import { NO_NOTES } from '../../electron/bridge/no-notes.ts';
import { NotesKeeper } from '../../renderer/state/notes-keeper.ts';
import { Store } from '../../renderer/state/store.ts';

/** A host that keeps notes as the real one does: by revisions, and refusing who started from an older one. */
class Host {
  notes: Notes = NO_NOTES;
  revision = 7;
  saves = 0;
  /** Saves that it was asked for, answered or not, and what it waits for before it answers. */
  asked = 0;
  held: Promise<void> = Promise.resolve();
  isFull = false;
  isGone = false;

  async call(name: string, value: unknown) {
    if (name === 'saveNotes') this.asked++;
    await this.held;
    if (this.isGone) return { ok: false, code: 'fault', message: 'Halfdot was ended.' };
    return { ok: true, value: name === 'notes' ? this.#kept() : this.#save(value as never) };
  }

  #kept() {
    return { revision: this.revision, notes: this.notes };
  }

  #save({ revision, notes }: { revision: number; notes: Notes }) {
    this.saves++;
    if (revision !== this.revision) return { saved: false, isStale: true, why: 'Another window.' };
    if (this.isFull) return { saved: false, isStale: false, why: 'The disk is full.' };
    this.notes = notes;
    this.revision++;
    return { saved: true, revision: this.revision };
  }
}

let host: Host;
let store: Store;
let keeper: NotesKeeper;
let told: unknown[];
let merged: Notes[];
beforeEach(async () => {
  host = new Host();
  vi.stubGlobal('window', { halfdot: host });
  store = new Store();
  [told, merged] = [[], []];
  keeper = new NotesKeeper(
    store,
    (error) => told.push(error),
    (notes) => merged.push(notes),
  );
});
afterEach(() => void vi.unstubAllGlobals());

const facility = (id: string) => (notes: Notes) => ({
  ...notes,
  facilities: [...notes.facilities, { id, text: '{}' }],
});
const ids = (notes: Notes) => notes.facilities.map(({ id }) => id).toSorted();

describe('the keeper of the notes', () => {
  it('keeps the last of many changes, and all before it, in as few saves as that takes', async () => {
    await keeper.fetch();
    const changes = ['a', 'b', 'c', 'd'].map((id) => keeper.change(facility(id)));
    expect(await Promise.all(changes)).toEqual([true, true, true, true]);
    expect(ids(host.notes)).toEqual(['a', 'b', 'c', 'd']);
    expect(host.saves).toBeLessThanOrEqual(2);
  });

  it('sends what was changed during a save behind it when the page goes, and nothing twice', async () => {
    await keeper.fetch();
    let answer = () => {};
    host.held = new Promise((resolve) => (answer = resolve));
    const first = keeper.change(facility('a'));
    await vi.waitFor(() => expect(host.asked).toBe(1));
    const second = keeper.change(facility('b'));
    // No answer is heard any more: what is sent now is all that comes.
    keeper.saveOnLeaving();
    expect([host.asked, host.saves]).toEqual([2, 0]);
    answer();
    await vi.waitFor(() => expect(host.saves).toBeGreaterThanOrEqual(2));
    expect(ids(host.notes)).toEqual(['a', 'b']);
    await Promise.all([first, second]);
    expect(ids(host.notes)).toEqual(['a', 'b']);
    const { saves } = host;
    keeper.saveOnLeaving();
    await Promise.resolve();
    expect(host.saves).toBe(saves);
  });

  it('puts its change to what another window has kept meanwhile', async () => {
    await keeper.fetch();
    host.notes = facility('theirs')(host.notes);
    host.revision++;
    expect(await keeper.change(facility('mine'))).toBe(true);
    expect(ids(host.notes)).toEqual(['mine', 'theirs']);
    expect(ids(store.state().notes)).toEqual(['mine', 'theirs']);
    expect(merged).toEqual([host.notes]);
    expect(store.state().notices).toEqual([]);
  });

  it('puts what was changed before the notes came to them, and overwrites nothing', async () => {
    host.notes = facility('kept before')(NO_NOTES);
    const early = keeper.change(facility('early'));
    await keeper.fetch();
    await early;
    expect(ids(host.notes)).toEqual(['early', 'kept before']);
  });

  it('saves nothing where nothing changes', async () => {
    await keeper.fetch();
    expect(await keeper.change((notes) => notes)).toBe(true);
    expect(host.saves).toBe(0);
  });

  it('says why it could not keep a change, and keeps it with the next', async () => {
    await keeper.fetch();
    host.isFull = true;
    expect(await keeper.change(facility('a'))).toBe(false);
    expect(store.state().notices).toEqual(['This was not kept: The disk is full.']);
    host.isFull = false;
    expect(await keeper.change(facility('b'))).toBe(true);
    expect(ids(host.notes)).toEqual(['a', 'b']);
  });

  it('tells that the host has gone, and goes on when it is there again', async () => {
    host.isGone = true;
    expect(await keeper.change(facility('a'))).toBe(false);
    expect(told).toHaveLength(1);
    host.isGone = false;
    expect(await keeper.change(facility('b'))).toBe(true);
    expect(ids(host.notes)).toEqual(['a', 'b']);
  });
});
