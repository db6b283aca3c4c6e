import { describe, expect, it } from 'vitest';
import type { Inspection } from '../../core/report/inspection.ts';
import {
  AT_START,
  lastDebriefed,
  lastRead,
  reduce,
  type Action,
  type AppState,
  type Debriefed,
} from '../../renderer/state/app-state.ts';

const after = (...actions: readonly Action[]): AppState => actions.reduce(reduce, AT_START);
const opened = (id: string): Action => ({
  do: 'opened',
  id,
  name: `${id}.csv`,
  standardId: 'skill-test',
  isSample: false,
});

describe('the state of the page', () => {
  it('shows a log as soon as it is opened, being read, with nothing stated', () => {
    const { view, flightId, flights } = after(opened('a'));
    expect([view, flightId]).toEqual(['flight', 'a']);
    expect(flights[0]).toMatchObject({
      name: 'a.csv',
      standardId: 'skill-test',
      reading: { kind: 'reading', share: null, last: null },
      facilityId: null,
      judged: { kind: 'nothing' },
      heights: null,
      antennaHeightFt: null,
      stated: { targetAirspeedKt: null, visualReferenceAtMinimums: 'not-stated' },
    });
  });

  it('keeps how the list of flights was left while one is elsewhere', () => {
    const filter = { ...AT_START.flightList.filter, words: 'lost' };
    const state = after(
      { do: 'flight-list', change: { filter } },
      { do: 'flight-list', change: { marked: new Set(['a']) } },
      { do: 'lesson', lessonId: 'l' },
      { do: 'show', view: 'library' },
    );
    expect(state.flightList).toEqual({ ...AT_START.flightList, filter, marked: new Set(['a']) });
  });

  it('changes one log and leaves the others as they are', () => {
    const before = after(opened('a'), opened('b'));
    const state = reduce(before, { do: 'change', id: 'a', change: { facilityId: 'f' } });
    expect(state.flights.map(({ facilityId }) => facilityId)).toEqual(['f', null]);
    expect(state.flights[1]).toBe(before.flights[1]);
    expect(reduce(before, { do: 'change', id: 'gone', change: { facilityId: 'f' } }).flights).toEqual(
      before.flights,
    );
  });

  it('goes to the log opened before when the one that is shown is closed, and to the start from the last', () => {
    const two = after(opened('a'), opened('b'));
    const one = reduce(two, { do: 'close', id: 'b' });
    expect([one.view, one.flightId, one.flights.length]).toEqual(['flight', 'a', 1]);
    const none = reduce(one, { do: 'close', id: 'a' });
    expect([none.view, none.flightId, none.flights]).toEqual(['start', null, []]);
  });

  it('stays where it is when another log is closed, and among the facilities when all are', () => {
    const elsewhere = after(opened('a'), opened('b'), { do: 'close', id: 'a' });
    expect([elsewhere.view, elsewhere.flightId]).toEqual(['flight', 'b']);
    const facilities = after(
      opened('a'),
      opened('b'),
      { do: 'show', view: 'facilities' },
      { do: 'close', id: 'b' },
    );
    expect([facilities.view, facilities.flightId]).toEqual(['facilities', 'a']);
  });

  it('still has what was read and judged before while both are made anew', () => {
    const inspection = { file: 'a.csv' } as Inspection;
    const debriefed = { page: 'a page' } as Debriefed;
    expect(lastRead({ kind: 'read', inspection })).toBe(inspection);
    expect(lastRead({ kind: 'reading', share: null, last: inspection })).toBe(inspection);
    expect(lastRead({ kind: 'reading', share: null, last: null })).toBeNull();
    expect(lastRead({ kind: 'failed', issue: { message: '', tip: null } })).toBeNull();
    expect(lastDebriefed({ kind: 'done', debriefed })).toBe(debriefed);
    expect(lastDebriefed({ kind: 'working', share: null, last: debriefed })).toBe(debriefed);
    expect(lastDebriefed({ kind: 'nothing' })).toBeNull();
    expect(lastDebriefed({ kind: 'failed', issue: { message: '', tip: null } })).toBeNull();
  });

  it('looks at the same facility when the view is come back to', () => {
    const state = after(
      { do: 'look-at', facilityId: 'f' },
      { do: 'show', view: 'start' },
      { do: 'show', view: 'facilities' },
    );
    expect([state.view, state.facilityId]).toEqual(['facilities', 'f']);
  });

  it('has what was asked about the school when a student was opened meanwhile', () => {
    const school = {
      measure: 'glidepath-final',
      filter: { ...AT_START.school.filter, to: '2026-03-20', mix: { flown: ['by-hand'] } },
      groupBy: 'aircraft',
      isNamed: true,
    } as const;
    expect(AT_START.school).toMatchObject({ measure: 'level', groupBy: null, isNamed: false });
    const state = after(
      { do: 'school', school },
      { do: 'student', studentId: 's' },
      { do: 'show', view: 'progress' },
    );
    expect([state.view, state.studentId]).toEqual(['progress', 's']);
    expect(state.school).toEqual(school);
  });

  it('keeps what was typed for a briefing when the view is left', () => {
    const state = after(
      { do: 'brief', brief: { groundspeedKt: 90 } },
      { do: 'brief', brief: { objective: 'steady needles' } },
      { do: 'show', view: 'start' },
      { do: 'show', view: 'brief' },
    );
    expect(state.view).toBe('brief');
    expect(state.brief).toEqual({ ...AT_START.brief, groundspeedKt: 90, objective: 'steady needles' });
  });

  it('takes what was typed off one chart to no other facility', () => {
    const typed = {
      decisionAltitudeFt: 240,
      decisionAltitudeAgainFt: 240,
      temperatureC: -5,
      enteredBy: 'Wren',
    };
    const state = after(
      { do: 'brief', brief: { facilityId: 'a', groundspeedKt: 90 } },
      { do: 'brief', brief: typed },
      { do: 'brief', brief: { facilityId: 'a' } },
    );
    expect(state.brief).toMatchObject(typed);
    const other = after(
      { do: 'brief', brief: { facilityId: 'a', groundspeedKt: 90, ...typed } },
      { do: 'brief', brief: { facilityId: 'b' } },
    );
    expect(other.brief).toEqual({ ...AT_START.brief, facilityId: 'b', groundspeedKt: 90 });
    // Typed before any was chosen, it is of none other.
    expect(
      after({ do: 'brief', brief: typed }, { do: 'brief', brief: { facilityId: 'a' } }).brief,
    ).toMatchObject(typed);
  });

  it('tells what was done until another view is gone to', () => {
    const done = { do: 'done', message: 'Hazel was deleted.' } as const;
    expect(after({ do: 'show', view: 'library' }, done, { do: 'show', view: 'library' }).done).toBe(
      done.message,
    );
    expect(after({ do: 'show', view: 'library' }, done, { do: 'show', view: 'start' }).done).toBeNull();
  });

  it('keeps every notice until it is put away', () => {
    const told = after({ do: 'notice', message: 'one' }, { do: 'notice', message: 'two' });
    expect(told.notices).toEqual(['one', 'two']);
    expect(reduce(told, { do: 'notice', message: 'one' }).notices).toEqual(['one', 'two']);
    expect(reduce(told, { do: 'put-away', index: 0 }).notices).toEqual(['two']);
  });

  it('says the same once, until it was put away', () => {
    const twice = after({ do: 'notice', message: 'one' }, { do: 'notice', message: 'one' });
    expect(twice.notices).toEqual(['one']);
    const away = reduce(twice, { do: 'put-away', index: 0 });
    expect(reduce(away, { do: 'notice', message: 'one' }).notices).toEqual(['one']);
  });
});
