import { describe, expect, it } from 'vitest';
import { NOTHING_STATED } from '../../core/standard/stated.ts';
import type { Recent } from '../../electron/bridge/recent.ts';
import { AT_START, reduce, type Flight } from '../../renderer/state/app-state.ts';
import {
  entryOf,
  hasNoDebrief,
  nothingSaid,
  settled,
  takenOver,
  withChanged,
  withOpened,
  withoutSummary,
} from '../../renderer/state/recent-entry.ts';

const opened = reduce(AT_START, {
  do: 'opened',
  id: 'f',
  name: 'a.csv',
  standardId: 'skill-test',
  isSample: false,
});
const flight = (change: Partial<Flight> = {}): Flight => ({ ...opened.flights[0]!, ...change });
const sha256 = 'a'.repeat(64);
const read = { kind: 'read', inspection: { sha256 } } as Flight['reading'];
const fresh = nothingSaid('skill-test');
const entry = (change: Partial<Recent> = {}): Recent => ({ name: 'a.csv', sha256, ...change });

describe('what is remembered of a flight', () => {
  it('is nothing until it was read, nor while settings are tried that it cannot be read with', () => {
    expect(entryOf(flight())).toBeNull();
    expect(entryOf(flight({ fits: [] }))).toBeNull();
    expect(entryOf(flight({ reading: read }))).toBeNull();
    const failed = { kind: 'failed', issue: { message: 'No.', tip: null } } as const;
    expect(entryOf(flight({ fits: [], reading: failed, settings: { timeZone: 'Nowhere' } }))).toBeNull();
  });

  it('is all that was said about it, and the first sentence of its debrief, also while a newer one is made', () => {
    const debriefed = { debrief: { approaches: [{ summary: 'Landed.' }, { summary: 'Again.' }] }, page: '' };
    const said = {
      settings: { receiver: 'phone' },
      facilityId: 'f',
      standardId: 'mine',
      stated: { ...NOTHING_STATED, vrefKt: 70 },
      heights: 'from-rollout',
      antennaHeightFt: 9,
    } as const;
    for (const judged of [
      { kind: 'done', debriefed },
      { kind: 'working', share: null, last: debriefed },
    ]) {
      const whole = flight({ reading: read, fits: ['f'], ...said, judged: judged as never });
      expect(entryOf(whole)).toEqual({ name: 'a.csv', sha256, ...said, summary: 'Landed.' });
    }
  });

  it('says so where no approach was found, and nothing where there is no debrief', () => {
    const none = { debrief: { approaches: [] }, page: '' } as never;
    const found = flight({ reading: read, fits: [], judged: { kind: 'done', debriefed: none } });
    expect(entryOf(found)!.summary).toBe('No approach was found.');
    expect(entryOf(flight({ reading: read, fits: [] }))).not.toHaveProperty('summary');
  });
});

describe('the list of logs opened lately', () => {
  it('has what was opened last first, once, with what an earlier entry knew besides', () => {
    const others = [entry({ sha256: 'b'.repeat(64) }), entry({ summary: 'Landed.', standardId: 'old' })];
    const list = withOpened(others, entry({ name: 'renamed.csv', standardId: 'new' }), 'now');
    expect(list).toEqual([
      { name: 'renamed.csv', sha256, standardId: 'new', summary: 'Landed.', openedUtc: 'now' },
      others[0],
    ]);
  });

  it('has no more than twenty', () => {
    const many = Array.from({ length: 20 }, (_, i) => entry({ sha256: String(i).padStart(64, '0') }));
    const list = withOpened(many, entry(), 'now');
    expect(list).toHaveLength(20);
    expect(list[0]!.sha256).toBe(sha256);
    expect(list).not.toContain(many[19]);
  });

  it('changes an entry in its place, and is the same list where nothing changed', () => {
    const other = entry({ sha256: 'b'.repeat(64) });
    const list = [other, entry({ openedUtc: 'then', summary: 'Landed.' })];
    expect(withChanged(list, entry({ standardId: 'x' }))).toEqual([other, { ...list[1]!, standardId: 'x' }]);
    expect(withChanged(list, entry({ summary: 'Landed.' }))).toBe(list);
  });

  it('does not take up again what was taken off it', () => {
    const list = [entry({ sha256: 'b'.repeat(64) })];
    expect(withChanged(list, entry({ standardId: 'x' }))).toBe(list);
  });
});

describe('the first sentence of a debrief', () => {
  const other = entry({ sha256: 'b'.repeat(64), summary: 'Went around.' });

  it('goes from the list with its debrief, and no other does', () => {
    const list = [other, entry({ summary: 'Landed.', standardId: 'x' })];
    expect(withoutSummary(list, sha256)).toEqual([other, entry({ standardId: 'x' })]);
    const none = [other, entry()];
    expect(withoutSummary(none, sha256)).toBe(none);
  });

  it('stays while a debrief is still to come', () => {
    const issue = { message: 'No.', tip: null };
    const [failed, nothing] = [{ kind: 'failed', issue } as const, { kind: 'nothing' } as const];
    expect(hasNoDebrief(flight({ facilityId: 'f', judged: failed }))).toBe(true);
    expect(hasNoDebrief(flight({ facilityId: null, judged: nothing }))).toBe(true);
    expect(hasNoDebrief(flight({ facilityId: 'f', judged: nothing }))).toBe(false);
    const working = { kind: 'working', share: null, last: null } as const;
    expect(hasNoDebrief(flight({ facilityId: 'f', judged: working }))).toBe(false);
  });
});

describe('what was stated last time', () => {
  it('is stated again, and what could not be stated then is not', () => {
    const recent = entry({ facilityId: 'f', standardId: 'x', stated: { vrefKt: 70 } });
    expect(takenOver(recent, fresh)).toEqual({
      settings: {},
      facilityId: 'f',
      standardId: 'x',
      stated: { ...NOTHING_STATED, vrefKt: 70 },
      heights: null,
      antennaHeightFt: null,
      lastTime: { isTaken: true, other: fresh },
    });
  });

  it('is also what was said of its heights, and that is spoken of; columns and their units are not', () => {
    const said = { heights: 'as-logged', antennaHeightFt: 9 } as const;
    expect(takenOver(entry(said), fresh)).toMatchObject({ ...said, lastTime: { isTaken: true } });
    const settings = { columns: { Alt: null }, units: { Speed: 'km/h' } };
    expect(takenOver(entry({ settings }), fresh)).toMatchObject({ settings, lastTime: null });
  });

  it('is nothing to speak of for a log that is not known, or of which the name alone was remembered', () => {
    expect(takenOver(null, fresh)).toEqual({});
    expect(takenOver(entry(), fresh)).toEqual({ ...fresh, lastTime: null });
  });

  it('is not spoken of where it was the facility alone, and that is found again', () => {
    const again = flight(takenOver(entry({ facilityId: 'f' }), fresh));
    expect(settled(again, ['f', 'g'])).toEqual({ fits: ['f', 'g'], facilityId: 'f', lastTime: null });
    expect(settled(again, ['g'])).toMatchObject({ facilityId: 'f', lastTime: { isTaken: true } });
    const stated = flight(takenOver(entry({ facilityId: 'f', stated: { hood: true } }), fresh));
    expect(settled(stated, ['f'])).toMatchObject({ lastTime: { isTaken: true } });
  });

  it('is still offered when it was begun afresh', () => {
    const lastTime = { isTaken: false, other: { ...fresh, facilityId: 'f' } };
    expect(settled(flight({ lastTime }), ['f'])).toEqual({ fits: ['f'], facilityId: 'f', lastTime });
  });

  it('takes the facility that fits best where none was chosen', () => {
    expect(settled(flight(), ['g'])).toMatchObject({ facilityId: 'g' });
    expect(settled(flight(), [])).toMatchObject({ facilityId: null });
  });
});
