import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { Notes } from '../../electron/bridge/calls.ts';
import { Drafts } from '../../renderer/state/drafts.ts';
import { Store } from '../../renderer/state/store.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

it('what is typed last is saved at once when the page goes, and only once', () => {
  const store = new Store();
  const saved = vi.fn<(notes: Notes) => Promise<void>>(async () => {});
  const drafts = new Drafts(store, saved);
  drafts.saveNow();
  expect(saved).not.toHaveBeenCalled();
  drafts.type('a', 'half');
  drafts.type('a', 'half a word');
  drafts.saveNow();
  expect(saved.mock.calls.map(([{ drafts: kept }]) => kept)).toEqual([{ a: 'half a word' }]);
  vi.advanceTimersByTime(1000);
  expect(saved).toHaveBeenCalledTimes(1);
});
