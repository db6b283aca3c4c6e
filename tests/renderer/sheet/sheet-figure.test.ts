import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Sheet } from '../../../core/sheet/sheet.ts';
import { sheetsOf } from '../../../core/sheet/sheet-of.ts';
import { frameOf, wholeView, type SheetView } from '../../../renderer/sheet/frame.ts';
import { SheetFigure } from '../../../renderer/sheet/sheet-figure.tsx';
import { composedSample } from '../../support/samples/composed-sample.ts';

const sheets = new Map<string, Sheet>();
beforeAll(async () => {
  for (const file of [
    'unstable-and-continued.csv',
    'recorder-fault.csv',
    'phone.gpx',
    'went-around.csv',
    'tidy-landing.csv',
  ])
    sheets.set(file, sheetsOf(await composedSample(file))[0]!);
});
const viewOf = (sheet: Sheet, change: Partial<SheetView> = {}) =>
  wholeView(sheet, { widthPx: 1000, ...change });
const drawn = (sheet: Sheet, change: Partial<SheetView> = {}, others: readonly Sheet[] = []) =>
  renderToStaticMarkup(createElement(SheetFigure, { frame: frameOf(sheet, viewOf(sheet, change)), others }));

/** Attributes of every element with a class, in the order drawn. */
function elements(markup: string, className: string): Record<string, string>[] {
  return [...markup.matchAll(/<\w+ ([^>]*)>/g)]
    .map(([, text]) =>
      Object.fromEntries([...text!.matchAll(/([\w-]+)="([^"]*)"/g)].map(([, k, v]) => [k, v])),
    )
    .filter((one) => ` ${one['class'] ?? ''} `.includes(` ${className} `)) as Record<string, string>[];
}
const points = (path: string) =>
  [...path.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);

describe('the sheet', () => {
  it('puts a fix on its pixel: so many miles of the axis, so many feet of the panel', () => {
    const sheet = sheets.get('unstable-and-continued.csv')!;
    const frame = frameOf(sheet, viewOf(sheet));
    const [far, near] = frame.view.range;
    const row = sheet.columns.distanceNm.findIndex((nm) => nm < 3);
    const nm = sheet.columns.distanceNm[row]!;
    const x = frame.left + ((far - nm) / (far - near)) * (frame.right - frame.left);
    expect(frame.xOfRow(row)).toBeCloseTo(x, 1);
    expect(frame.xOfTime(sheet.columns.timeS[row]!)).toBeCloseTo(x, 1);
    const [low, high] = frame.profile.y.domain() as [number, number];
    const y =
      frame.profile.top + ((high - sheet.columns.altitudeFt[row]!) / (high - low)) * frame.profile.height;
    const flown = elements(drawn(sheet, { fixes: true }), 'dots')[0]!['d']!;
    const dot = points(flown).find(([dx]) => Math.abs(dx! - x) < 0.06)!;
    expect(Math.abs(dot[1]! - y)).toBeLessThan(0.06);
  });

  it('puts an excursion at the same x in profile, plan and strip, from its start to its end', () => {
    const sheet = sheets.get('unstable-and-continued.csv')!;
    const excursion = sheet.excursions.find(({ strip }) => strip === 'glidepath')!;
    const frame = frameOf(sheet, viewOf(sheet));
    const tints = elements(drawn(sheet), 'excursion-tint').filter((tint) =>
      tint['class']!.endsWith('glidepath'),
    );
    const from = frame.xOfTime(excursion.startS);
    const wide = frame.xOfTime(excursion.endS) - from;
    const strip = frame.strips.find((panel) => panel.strip.id === 'glidepath')!;
    expect(tints.map((tint) => Number(tint['y']))).toEqual([frame.profile.top, frame.plan.top, strip.top]);
    for (const tint of tints) {
      expect(Number(tint['x'])).toBeCloseTo(from, 6);
      expect(Number(tint['width'])).toBeCloseTo(wide, 6);
    }
    // The fill begins and ends where the excursion does, within the width of a line.
    const filled = elements(drawn(sheet), 'outside').flatMap((one) => points(one['d'] ?? ''));
    const within = filled.filter(([, y]) => y! >= strip.top - 40 && y! <= strip.top + strip.height);
    expect(Math.abs(Math.min(...within.map(([x]) => x!)) - from)).toBeLessThan(1);
    expect(Math.abs(Math.max(...within.map(([x]) => x!)) - from - wide)).toBeLessThan(1);
  });

  it('has the right of course below, in the plan as in the strip', () => {
    const sheet = sheets.get('unstable-and-continued.csv')!;
    const frame = frameOf(sheet, viewOf(sheet));
    const strip = frame.strips.find((panel) => panel.strip.id === 'localizer')!;
    expect(frame.plan.y(100)).toBeGreaterThan(frame.plan.y(-100));
    expect(strip.y(1)).toBeGreaterThan(strip.y(-1));
    expect(strip.strip.sides).toEqual(['left', 'right']);
  });

  it('leaves what was not recorded blank, and draws no line across it', () => {
    const sheet = sheets.get('recorder-fault.csv')!;
    const markup = drawn(sheet);
    const gaps = sheet.columns.gapBefore.reduce((sum, gap) => sum + gap, 0);
    expect(gaps).toBeGreaterThan(0);
    expect(markup.match(/class="unrecorded"/g)).toHaveLength(gaps);
    const flown = elements(markup, 'flown').find((one) => one['class'] === 'flown glidepath')!['d']!;
    expect(flown.match(/M/g)!.length).toBeGreaterThanOrEqual(gaps + 1);
  });

  it('hatches what a phone leaves unclear, and nothing of a better log that keeps clear of its limits', () => {
    const hatched = (sheet: Sheet) =>
      [...drawn(sheet).matchAll(/fill="url\(#unclear\)" d="([^"]*)"/g)].some(([, d]) => d !== '');
    expect(hatched(sheets.get('phone.gpx')!)).toBe(true);
    expect(hatched(sheets.get('tidy-landing.csv')!)).toBe(false);
  });

  it('shows feet below decision altitude only: the needles’ strips fade there', () => {
    const sheet = sheets.get('unstable-and-continued.csv')!;
    const decision = sheet.events.find(({ kind }) => kind === 'decision-altitude')!;
    const frame = frameOf(sheet, viewOf(sheet));
    const faded = elements(drawn(sheet), 'faded');
    expect(faded).toHaveLength(2);
    for (const one of faded) expect(Number(one['x'])).toBeCloseTo(frame.xOfTime(decision.timeS), 1);
  });

  it('lays another approach over it by its miles, with a letter and a line of its own', () => {
    const [sheet, other] = [sheets.get('unstable-and-continued.csv')!, sheets.get('went-around.csv')!];
    const markup = drawn(sheet, {}, [other]);
    expect(markup.match(/class="other other-0"/g)!.length).toBeGreaterThan(3);
    expect(markup).toContain('>A</text>');
    const frame = frameOf(sheet, viewOf(sheet));
    const [line] = points(/class="other other-0"><path d="([^"]*)"/.exec(markup)![1]!);
    expect(line![0]).toBeCloseTo(frame.x(other.columns.distanceNm[rowAfter(other)]!), -1);
  });

  it('says at decision altitude what a geometric height is worth, and that no terrain is shown', () => {
    expect(drawn(sheets.get('phone.gpx')!)).toMatch(/GNSS height, ± \d+ ft\. Your altimeter decides\./);
    expect(drawn(sheets.get('went-around.csv')!)).not.toContain('GNSS height');
    expect(drawn(sheets.get('went-around.csv')!)).toContain('no terrain or obstacles are shown');
  });

  it('has feet for needles, time for miles, and a height that is asked for', () => {
    const sheet = sheets.get('went-around.csv')!;
    const frame = frameOf(sheet, viewOf(sheet, { axis: 'time', scale: 'feet', heightPx: 900 }));
    expect(frame.height).toBeCloseTo(900, 0);
    expect(frame.strips[0]!.strip.unit).toBe('ft');
    expect(frame.xOfTime(sheet.span.startS)).toBeCloseTo(frame.left, 6);
    expect(frame.xOfTime(sheet.span.endS)).toBeCloseTo(frame.right, 6);
    expect(drawn(sheet, { axis: 'time', scale: 'feet' })).toContain('time, UTC');
  });
});

function rowAfter({ columns, span }: Sheet): number {
  return columns.timeS.findIndex((s) => s >= span.startS);
}
