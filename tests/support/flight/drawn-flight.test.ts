import { describe, expect, it } from 'vitest';
import { CHOUGHFELL } from '../samples/choughfell.ts';
import { PETRELHOLM } from '../samples/petrelholm.ts';
import { WHIMBRELNESS } from '../samples/whimbrelness.ts';
import { drawFlight } from './drawn-flight.ts';

const straight = { fromNm: 8, toNm: 0.3, groundspeedKt: 90 };
const largest = (values: Float64Array): number => values.reduce((most, v) => Math.max(most, Math.abs(v)), 0);

describe('a drawn flight', () => {
  it.each([PETRELHOLM, CHOUGHFELL, WHIMBRELNESS])('holds both needles of $name at zero', (facility) => {
    const { beam } = drawFlight({
      ...straight,
      facility,
      localizerFullScale: () => 0,
      glidepathFullScale: () => 0,
    });
    expect(largest(beam.localizerDeg)).toBeLessThan(1e-9);
    expect(largest(beam.glidepathDeg)).toBeLessThan(1e-9);
  });

  it('has the needles that were asked for, at the tenth of a second asked for', () => {
    const { beam, columns } = drawFlight({
      ...straight,
      facility: PETRELHOLM,
      localizerFullScale: ({ timeS }) => 0.5 * Math.sin(timeS / 20),
      glidepathFullScale: ({ timeS }) => (timeS >= 100 && timeS < 110 ? 0.8 : 0.1),
    });
    const over = [...beam.glidepathFullScale].flatMap((v, i) => (v > 0.75 ? [i] : []));
    expect([over[0], over.at(-1), over.length]).toEqual([1000, 1099, 100]);
    for (let i = 0; i < columns.timeS.length; i += 50) {
      expect(beam.localizerFullScale[i]).toBeCloseTo(0.5 * Math.sin(i / 200), 8);
      expect(beam.distanceToThresholdNm[i]).toBeCloseTo(8 - (90 * i) / 36000, 7);
    }
  });

  it('sinks at the rate that the groundspeed needs: 478 ft/min at 90 kt on 3 degrees', () => {
    const { columns } = drawFlight({
      ...straight,
      facility: PETRELHOLM,
      localizerFullScale: () => 0,
      glidepathFullScale: () => 0,
    });
    const middle = Math.floor(columns.timeS.length / 2);
    expect(columns.groundspeedKt[middle]).toBeCloseTo(90, 1);
    // 90 kt × 101.27 × tan 3° = 477.7 ft/min (computed), and 0.06° more for the curved earth at 4 NM.
    expect(-columns.verticalSpeedFpm[middle]!).toBeGreaterThan(478);
    expect(-columns.verticalSpeedFpm[middle]!).toBeLessThan(492);
  });

  it('flies a given height where there is one, and the needle elsewhere', () => {
    const { columns, beam } = drawFlight({
      ...straight,
      facility: PETRELHOLM,
      localizerFullScale: () => 0,
      glidepathFullScale: () => 0,
      heightFt: ({ distanceNm }) => (distanceNm > 5.5 ? 1700 : null),
    });
    expect(columns.heightFt[0]).toBe(1700);
    expect(beam.glidepathFullScale[0]).toBeLessThan(-0.5);
    expect(Math.abs(beam.glidepathFullScale.at(-1)!)).toBeLessThan(1e-8);
  });

  it('cannot draw a needle that no place has', () => {
    expect(() =>
      drawFlight({
        ...straight,
        facility: PETRELHOLM,
        localizerFullScale: () => Number.NaN,
        glidepathFullScale: () => 0,
      }),
    ).toThrow('no place has these needles at 8 NM');
  });
});
