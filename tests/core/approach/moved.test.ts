import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fly } from '../../support/flight/fly.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import { straightInLanding } from '../../support/scenarios/approaches.ts';
import {
  debriefRows,
  differences,
  FLIGHTS,
  foundIn,
  momentsOf,
  rowsOf,
  type Tolerance,
} from './flight-variants.ts';
import { atLongitude, atPlace, mirrored } from './moved-flights.ts';

/** Times are written in milliseconds, and one may fall on either side of a half. */
const EXACT: Tolerance = { number: (_path, size) => 1e-6 * size, seconds: () => 0.0011 };
/** Heights above sea level change with the earth's curve; needles and feet on the spot hardly do. */
const SAME_SIGHT: Tolerance = {
  number: (path, size) => {
    if (/findings.*Fpm/.test(path)) return 25;
    if (/verticalSpeed|Fpm/.test(path)) return 0.3;
    // The second criterion is the altitude before final.
    if (/altitude|criteria\.1\.measured/.test(path)) return 0.6;
    return (path.endsWith('Ft') ? 0.1 : 0.01) * size;
  },
  // A finding is looked for second by second: a hair's difference may begin it a second later.
  seconds: (path) => (/findings/.test(path) ? 1.1 : 0.02),
};

describe.each(FLIGHTS)('$name', ({ truth }) => {
  it.each([179.97, -180, -179.99, 0.02, 0])('is the same with its threshold at longitude %s', (lonDeg) => {
    const rows = rowsOf(truth());
    const there = debriefRows(atLongitude(rows, lonDeg));
    expect(differences(foundIn(debriefRows(rows)), foundIn(there), EXACT)).toEqual([]);
  });

  it.each([
    [0, 0, 0],
    [52, 179.98, 0],
    [-70, 0.01, 77],
    [80, -100, 180],
  ])('is the same at latitude %s, longitude %s, turned by %s°', (latDeg, lonDeg, turnedDeg) => {
    const rows = rowsOf(truth());
    const there = debriefRows(atPlace(rows, latDeg, lonDeg, turnedDeg));
    expect(differences(foundIn(debriefRows(rows)), foundIn(there), SAME_SIGHT)).toEqual([]);
  });

  it('seen in a mirror has left for right, and all else as it was', () => {
    const rows = rowsOf(truth());
    const mirror = foundIn(debriefRows(mirrored(rows)));
    expect(differences(leftForRight(foundIn(debriefRows(rows))), mirror, SAME_SIGHT)).toEqual([]);
  });
});

describe('anywhere on earth', () => {
  it('a drawn flight has the needles that were drawn', () => {
    const { truth } = FLIGHTS.find(({ name }) => name === 'a drawn flight')!;
    const rows = rowsOf(truth());
    const plain = foundIn(debriefRows(rows));
    fc.assert(
      fc.property(
        fc.double({ min: -85, max: 85, noNaN: true }),
        fc.double({ min: -180, max: 179.999, noNaN: true }),
        fc.double({ min: 0, max: 360, noNaN: true }),
        (latDeg, lonDeg, turnedDeg) => {
          const there = foundIn(debriefRows(atPlace(rows, latDeg, lonDeg, turnedDeg)));
          expect(differences(plain, there, SAME_SIGHT)).toEqual([]);
        },
      ),
      { numRuns: 8 },
    );
  });

  it.each([
    [61, 20],
    [-5, -179.99],
  ])('a landing flown again from its plan at %s, %s comes down alike', (latDeg, lonDeg) => {
    const here = FLIGHTS[0]!.truth();
    const { facility } = atPlace({ ...rowsOf(here), timeS: [] }, latDeg, lonDeg, 0);
    const [plain] = debriefRows(rowsOf(here)).approaches;
    const [again] = debriefRows(rowsOf(fly(straightInLanding(facility)))).approaches;
    expect(facility.runway.threshold.latDeg).toBeCloseTo(latDeg, 9);
    expect(again!.outcome).toBe(plain!.outcome);
    const moments = momentsOf(again!);
    expect(moments.map(([kind]) => kind)).toEqual(momentsOf(plain!).map(([kind]) => kind));
    // The pilot scans every 1.5 s: a hair's difference of a needle can be seen one look later.
    for (const [i, [, timeS]] of momentsOf(plain!).entries())
      expect(Math.abs(moments[i]![1] - timeS)).toBeLessThan(2);
    const rms = (debrief: typeof plain) =>
      debrief!.segments.map(({ localizer }) => localizer?.rmsFullScale ?? 0);
    for (const [i, value] of rms(plain).entries()) expect(rms(again)[i]).toBeCloseTo(value, 1.7);
    expect(PETRELHOLM.runway.threshold.latDeg).not.toBeCloseTo(latDeg, 0);
  });
});

/** An answer with what lies right put left. */
function leftForRight(value: unknown, path = ''): unknown {
  const sideways =
    /localizerFullScale|centrelineOffsetFt|offsetFt|askewDeg|asideFt|crosswind|\.localizer\..*(mean|peak)FullScale|\(localizer\).*\.(measured|peak)$/;
  if (typeof value === 'number') return sideways.test(path) ? -value : value;
  if (typeof value === 'string' && /\.(message|summary|text)$/.test(path)) return swapped(value);
  if (path.endsWith('.side')) return swapped(value as string);
  if (value === null || typeof value !== 'object') return value;
  if (Array.isArray(value)) return value.map((item) => leftForRight(item, path));
  const entries = Object.entries(value);
  const { id, item: gateItem } = value as { id?: string; item?: string };
  if (id?.startsWith('localizer') || gateItem === 'localizer') path += '(localizer)';
  if (path.endsWith('.centrelineOffsetFt') && entries.length > 0) {
    const { mean, standardDeviation, lowest, highest } = value as Record<string, number>;
    return { mean: -mean!, standardDeviation, lowest: -highest!, highest: -lowest! };
  }
  return Object.fromEntries(entries.map(([key, item]) => [key, leftForRight(item, `${path}.${key}`)]));
}

function swapped(text: string): string {
  return text.replaceAll(/left|right/g, (side) => (side === 'left' ? 'right' : 'left'));
}
