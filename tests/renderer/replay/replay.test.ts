import { beforeAll, describe, expect, it } from 'vitest';
import type { Sheet } from '../../../core/sheet/sheet.ts';
import { sheetsOf } from '../../../core/sheet/sheet-of.ts';
import { deedOf } from '../../../renderer/replay/keys.ts';
import { Moment } from '../../../renderer/replay/moment.ts';
import { panned, partOf, zoomed } from '../../../renderer/replay/range.ts';
import { momentAtX, recordedRow } from '../../../renderer/replay/under-pointer.ts';
import { frameOf, wholeRange, wholeView, type SheetView } from '../../../renderer/sheet/frame.ts';
import { composedSample } from '../../support/samples/composed-sample.ts';

let landed: Sheet;
/** The same, but that it went out for half a minute before it turned in. */
let back: Sheet;
let broken: Sheet;
beforeAll(async () => {
  landed = sheetsOf(await composedSample('first-approach.csv'))[0]!;
  const { distanceNm } = landed.columns;
  const folded = distanceNm.map((nm, row) => (row < 30 ? distanceNm[60 - row]! : nm));
  back = { ...landed, columns: { ...landed.columns, distanceNm: folded } };
  broken = sheetsOf(await composedSample('recorder-fault.csv'))[0]!;
});
const frame = (sheet: Sheet, axis: SheetView['axis'] = 'distance') =>
  frameOf(sheet, wholeView(sheet, { axis, widthPx: 1000 }));

describe('the moment under the pointer', () => {
  it.each(['distance', 'time'] as const)('is the one that stands there, over %s', (axis) => {
    const where = frame(landed, axis);
    for (let s = landed.span.startS + 5; s < landed.span.endS; s += 7.3)
      // Places are told to a hundredth of a pixel.
      expect(Math.abs(momentAtX(where, where.xOfTime(s), s) - s)).toBeLessThan(0.01);
  });

  it('is the one nearest in time where the aircraft came by more than once', () => {
    const where = frame(back);
    const { timeS, distanceNm } = back.columns;
    const twice = distanceNm.indexOf(distanceNm[40]!);
    expect(twice).toBe(20);
    for (let row = 1; row + 1 < timeS.length; row++)
      expect(Math.abs(momentAtX(where, where.xOfRow(row), timeS[row]!) - timeS[row]!)).toBeLessThan(0.01);
  });

  it('is the end’s beyond both ends', () => {
    const where = frame(landed, 'time');
    expect(momentAtX(where, -50, 0)).toBe(landed.span.startS);
    expect(momentAtX(where, 5000, 0)).toBe(landed.span.endS);
  });

  it('has no row where nothing was recorded', () => {
    const { columns } = broken;
    const after = columns.gapBefore.indexOf(1);
    const inGap = (columns.timeS[after - 1]! + columns.timeS[after]!) / 2;
    expect(recordedRow({ sheet: broken }, inGap)).toBeNull();
    expect(recordedRow({ sheet: broken }, columns.timeS[after]!)).toBe(after);
  });
});

describe('the keys', () => {
  const deed = (key: string, nowS: number, isShift = false) => deedOf(key, isShift, landed, nowS);

  it('go by a second and by ten, and not beyond the ends', () => {
    const s = landed.span.startS + 30;
    expect(deed('ArrowRight', s)).toEqual({ to: s + 1 });
    expect(deed('ArrowLeft', s, true)).toEqual({ to: s - 10 });
    expect(deed('ArrowLeft', landed.span.startS)).toEqual({ to: landed.span.startS });
    expect(deed('Home', s)).toEqual({ to: landed.span.startS });
    expect(deed('End', s)).toEqual({ to: landed.span.endS });
  });

  it('go from one event to the next, and back', () => {
    const times = landed.events.map(({ timeS }) => timeS);
    expect(deed('ArrowDown', times[2]!)).toEqual({ to: times[3] });
    expect(deed('ArrowUp', times[3]!)).toEqual({ to: times[2] });
    expect(deed('ArrowDown', landed.span.endS)).toEqual({ to: landed.span.endS });
  });

  it('play and zoom, and mean nothing else', () => {
    expect(deed(' ', 0)).toEqual({ do: 'play' });
    expect(deed('+', 0)).toEqual({ zoom: 'in' });
    expect(deed('a', 0)).toBeNull();
  });
});

describe('what is seen', () => {
  it('zooms about a place, which stays where it is, and never beyond the whole', () => {
    const whole = wholeRange(landed, 'distance');
    const close = zoomed(landed, 'distance', whole, 0.5, 3);
    const share = ([from, to]: readonly [number, number]) => (3 - from) / (to - from);
    expect(share(close)).toBeCloseTo(share(whole), 9);
    expect(Math.abs(close[1] - close[0])).toBeCloseTo(Math.abs(whole[1] - whole[0]) / 2, 9);
    const out = zoomed(landed, 'distance', close, 99, 3);
    expect([out[0] - whole[0], out[1] - whole[1]].every((off) => Math.abs(off) < 1e-9)).toBe(true);
    expect(
      Math.abs(
        zoomed(landed, 'time', wholeRange(landed, 'time'), 1e-9, landed.span.startS)[1] - landed.span.startS,
      ),
    ).toBeCloseTo(10, 6);
  });

  it('moves along as far as the whole goes', () => {
    const whole = wholeRange(landed, 'distance');
    const close = zoomed(landed, 'distance', whole, 0.25, 4);
    const moved = panned(landed, 'distance', close, 0.5);
    expect(moved[0] - close[0]).toBeCloseTo((close[1] - close[0]) / 2, 9);
    expect(panned(landed, 'distance', close, 99)[1]).toBe(whole[1]);
    expect(Math.abs(panned(landed, 'distance', close, 99)[0] - whole[1])).toBeCloseTo(
      Math.abs(close[1] - close[0]),
      9,
    );
  });

  it('is final from where it began, or the last three miles', () => {
    const final = landed.segments.find(({ kind }) => kind === 'final')!;
    expect(partOf(landed, 'time', 'final')![0]).toBe(final.startS);
    expect(partOf(landed, 'distance', 'last')![0]).toBe(3);
    const from = partOf(landed, 'distance', 'final')![0];
    const row = landed.columns.timeS.findIndex((s) => s >= final.startS);
    expect(from).toBeCloseTo(landed.columns.distanceNm[row]! + 0.1, 9);
  });
});

describe('the moment', () => {
  it('tells who listens when it moves, and nobody when it stays or is none', () => {
    const moment = new Moment(5);
    const heard: number[] = [];
    const stop = moment.subscribe(() => heard.push(moment.get()));
    moment.set(6);
    moment.set(6);
    moment.set(NaN);
    stop();
    moment.set(7);
    expect(heard).toEqual([6]);
  });
});
