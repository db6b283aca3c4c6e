import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { LogSettings } from '../../../core/log/log.ts';
import { buildTrack } from '../../../core/track/build-track.ts';
import { readUsable } from '../log/reading.ts';
import { flyingNorth, makeLog } from './make-log.ts';

const WENT_AROUND = readFileSync('samples/went-around.csv', 'utf8');
const EXCHANGED = WENT_AROUND.replace('Indicated Airspeed', 'x')
  .replace('Groundspeed', 'Indicated Airspeed')
  .replace('x', 'Groundspeed');

const doubtOf = (log: Parameters<typeof buildTrack>[0]) => {
  const track = buildTrack(log);
  return track.issues.find(({ code }) => code === 'groundspeed-contradicted');
};
const doubtIn = async (text: string, settings: LogSettings = {}) => doubtOf(await readUsable(text, settings));

/** A log of 60 fixes at 90 kt by its positions, with these speeds recorded. */
const made = (
  values: Partial<Record<'groundspeedKt' | 'airspeedIndicatedKt', (i: number) => number>>,
  count = 60,
) =>
  makeLog({
    ...flyingNorth(count, 90),
    values: Object.fromEntries(
      Object.entries(values).map(([name, of]) => [name, Array.from({ length: count }, (_, i) => of(i))]),
    ),
  });

describe('a groundspeed and an airspeed whose headers are exchanged', () => {
  it('are told with what they are off by and how to exchange them, which settles it', async () => {
    const doubt = await doubtIn(EXCHANGED);
    expect(doubt).toMatchObject({ severity: 'warning' });
    expect(doubt!.message).toMatch(
      /"Groundspeed \(kt\)" \(groundspeed\) is off the speed by the positions by 1\d kt/,
    );
    const said = Object.fromEntries(
      [...doubt!.tip!.matchAll(/--column "([^"]+)=(\w+)"/g)].map(([, header, role]) => [header!, role]),
    ) as LogSettings['columns'] & object;
    expect(Object.values(said)).toEqual(['airspeedIndicatedKt', 'groundspeedKt']);
    expect(await doubtIn(EXCHANGED, { columns: said })).toBeUndefined();
  });

  it('are not told of a log that has them right', async () => {
    expect(await doubtIn(WENT_AROUND)).toBeUndefined();
    for (const name of ['first-approach.csv', 'steep-and-high.csv', 'recorder-fault.csv'])
      expect(await doubtIn(readFileSync(`samples/${name}`, 'utf8')), name).toBeUndefined();
  });
});

describe('a groundspeed that contradicts the positions', () => {
  it('is told beyond 8 kt, and at 8 kt it is not', () => {
    const airspeedIndicatedKt = () => 90;
    expect(doubtOf(made({ groundspeedKt: () => 98.5, airspeedIndicatedKt }))).toBeDefined();
    expect(doubtOf(made({ groundspeedKt: () => 97.5, airspeedIndicatedKt }))).toBeUndefined();
  });

  it('is not told where it does so for less than half of the log', () => {
    const groundspeedKt = (i: number) => (i < 25 ? 120 : 90);
    expect(doubtOf(made({ groundspeedKt, airspeedIndicatedKt: () => 90 }))).toBeUndefined();
  });

  it('is not told where the airspeed is no nearer, or there is none', () => {
    expect(doubtOf(made({ groundspeedKt: () => 110, airspeedIndicatedKt: () => 115 }))).toBeUndefined();
    expect(doubtOf(made({ groundspeedKt: () => 110 }))).toBeUndefined();
  });

  it('is not told of a few fixes, nor of values that are not there', () => {
    const airspeedIndicatedKt = () => 90;
    expect(doubtOf(made({ groundspeedKt: () => 110, airspeedIndicatedKt }, 20))).toBeUndefined();
    const gone = (i: number) => (i < 40 ? NaN : 110);
    expect(doubtOf(made({ groundspeedKt: gone, airspeedIndicatedKt }))).toBeUndefined();
  });
});
