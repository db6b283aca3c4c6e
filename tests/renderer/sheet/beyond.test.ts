import { describe, expect, it } from 'vitest';
import { valueAtRow, type Row } from '../../../renderer/sheet/rows.ts';
import { beyondBand } from '../../../renderer/sheet/beyond.ts';
import { stripsOf } from '../../../renderer/sheet/strips.ts';
import type { Sheet } from '../../../core/sheet/sheet.ts';
import { sheetsOf } from '../../../core/sheet/sheet-of.ts';
import { composedSample } from '../../support/samples/composed-sample.ts';

const LOOKED = { extras: false, recorded: false } as const;

/** Seconds that a sheet fills and hatches on one strip, by its bands. */
function seconds(sheet: Sheet, id: string, scale: 2 | 'feet') {
  const strip = stripsOf(sheet, { ...LOOKED, scale }, sheet.span).find((one) => one.id === id)!;
  const over = (runs: readonly (readonly Row[])[]) =>
    runs.reduce((sum, run) => {
      const at = (row: Row) => valueAtRow(sheet.columns.timeS, row);
      return sum + at(run.at(-1)!) - at(run[0]!);
    }, 0);
  const bands = sheet.bands
    .filter((band) => band.strip === id)
    .flatMap((band) => beyondBand(sheet, strip, band));
  const sum = (of: 'outside' | 'open') => bands.reduce((all, one) => all + over(one[of]), 0);
  return { filled: sum('outside'), hatched: sum('open') };
}

const FILES = [
  'went-around.csv',
  'unstable-and-continued.csv',
  'phone.gpx',
  'first-approach.gpx',
  'ends-on-final.gpx',
  'recorder-fault.csv',
  'circled.gpx',
  'from-above.csv',
];

describe('what is filled and hatched', () => {
  it.each(FILES)('in %s agrees with the seconds of the debrief, in dots and in feet', async (file) => {
    const composed = await composedSample(file);
    const [sheet] = sheetsOf(composed) as [Sheet];
    const { criteria } = composed.debrief.approaches[0]!;
    for (const axis of ['localizer', 'glidepath'] as const) {
      const told = criteria.filter(({ id }) => id.startsWith(axis) && id !== 'glidepath-intercept');
      const best = told.reduce((sum, { timeOutsideS }) => sum + (timeOutsideS?.best ?? 0), 0);
      for (const scale of [2, 'feet'] as const) {
        const { filled } = seconds(sheet, axis, scale);
        expect(Math.abs(filled - best), `${axis} in ${scale}`).toBeLessThan(0.15);
      }
    }
  });

  it('is hatched where the verdict is unclear, and about as long as the debrief leaves it open', async () => {
    const composed = await composedSample('went-around.csv');
    const [sheet] = sheetsOf(composed) as [Sheet];
    const glidepath = composed.debrief.approaches[0]!.criteria.find(({ id }) => id === 'glidepath-final')!;
    expect(glidepath.verdict).toBe('unclear');
    const { atLeast, atMost } = glidepath.timeOutsideS!;
    const { hatched } = seconds(sheet, 'glidepath', 2);
    expect(hatched).toBeGreaterThan(0);
    expect(Math.abs(hatched - (atMost - atLeast))).toBeLessThan(0.15);
  });

  it('is neither where the debrief left it out, as the turn away to circle', async () => {
    const composed = await composedSample('circled.gpx');
    const [sheet] = sheetsOf(composed) as [Sheet];
    const { excursions } = sheet;
    expect(excursions).toEqual([]);
    for (const axis of ['localizer', 'glidepath'])
      expect(seconds(sheet, axis, 2)).toEqual({ filled: 0, hatched: 0 });
  });
});
