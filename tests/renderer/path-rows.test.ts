import { describe, expect, it } from 'vitest';
import type { Sheet, SheetColumns } from '../../core/sheet/sheet.ts';
import { pathRows } from '../../renderer/tables/path-rows.ts';

/** Towards the threshold, a fix every ten seconds and a fifth of a mile, until `toNm`. */
function sheetTo(toNm: number, change: Partial<Sheet> = {}, columns: Partial<SheetColumns> = {}): Sheet {
  const count = Math.round((1.3 - toNm) / 0.2) + 1;
  const filled = (valueOf: (i: number) => number) =>
    Float64Array.from({ length: count }, (_, i) => valueOf(i));
  const none = filled(() => NaN);
  return {
    index: 1,
    title: '',
    facilityName: '',
    span: { startS: 0, endS: (count - 1) * 10 },
    columns: {
      timeS: filled((i) => i * 10),
      gapBefore: new Uint8Array(count),
      distanceNm: filled((i) => 1.3 - 0.2 * i),
      offsetFt: none,
      altitudeFt: filled((i) => 500 - 50 * i),
      indicatedFt: null,
      localizer: filled(() => 0.25),
      glidepath: filled(() => 0.5),
      localizerHalf: none,
      glidepathHalf: none,
      localizerAlongFt: none,
      glidepathAlongFt: filled(() => 6000),
      airspeedKt: null,
      airspeedHalfKt: 0,
      groundspeedKt: none,
      verticalSpeedFpm: none,
      verticalSpeedHalf: none,
      neededVerticalSpeedFpm: none,
      recordedLocalizer: null,
      recordedGlidepath: null,
      extras: {},
      ...columns,
    },
    segments: [],
    events: [],
    excursions: [],
    isCounted: false,
    needlesUntilS: null,
    bands: [],
    beam: {
      localizerFullScaleDeg: 2.5,
      glidepathFullScaleDeg: 0.7,
      glidepathAngleDeg: 3,
      courseOffsetDeg: 0,
      antennaAlongFt: -8000,
      antennaRightFt: 0,
      runwayLengthFt: 7000,
      runwayWidthFt: 150,
      path: [],
    },
    heights: {
      thresholdFt: 0,
      gate1000Ft: 1000,
      gate500Ft: 500,
      decisionFt: 200,
      isDecisionAssumed: false,
      source: 'geometric',
      judgedBy: 'geometric',
      halfWidthFt: 10,
    },
    fixes: [],
    zone: 'UTC',
    ...change,
  };
}

const event = (timeS: number, words: string): Sheet['events'][number] => ({
  kind: 'gate-500',
  words,
  timeS,
  told: {
    kind: 'gate-500',
    utc: '',
    remark: null,
    distanceToThresholdNm: null,
    altitudeFt: 540,
    altitudeSource: 'geometric',
    localizerFullScale: -0.5,
    glidepathFullScale: null,
    localizerHalfWidth: null,
    glidepathHalfWidth: null,
    heightAboveGlidepathFt: null,
    centrelineOffsetFt: null,
    groundspeedKt: null,
    verticalSpeedFpm: null,
    airspeedKt: 91,
    unknown: {},
  },
});

describe('the table behind the sheet', () => {
  it('has a row where each half mile is crossed, between the fixes', () => {
    const rows = pathRows(sheetTo(-0.7));
    expect(rows.map(({ distanceNm }) => Number(distanceNm.toFixed(6)) + 0)).toEqual([1, 0.5, 0, -0.5]);
    expect(rows[0]!.timeS).toBeCloseTo(15, 9);
    expect(rows[0]!.altitudeFt).toBeCloseTo(425, 9);
  });

  it('has each event at its moment, and no half mile within a second of it', () => {
    const rows = pathRows(sheetTo(-0.1, { events: [event(15.4, 'A gate'), event(33, 'Another')] }));
    expect(rows.map(({ words }) => words)).toEqual(['A gate', 'Another', null, null]);
  });

  it('tells an event as the debrief tells it, and not by the one fix that stands there', () => {
    const [row] = pathRows(sheetTo(-0.1, { events: [event(15.4, 'A gate')] }));
    expect(row).toMatchObject({ localizer: -0.5, glidepath: null, altitudeFt: 540, airspeedKt: 91 });
    expect(row!.indicatedFt).toBeNaN();
  });

  it('crosses nothing in a gap', () => {
    const gapBefore = new Uint8Array(7);
    gapBefore[2] = 1;
    expect(pathRows(sheetTo(0.1, {}, { gapBefore })).map(({ distanceNm }) => distanceNm.toFixed(1))).toEqual([
      '0.5',
    ]);
  });

  it('tells the needles to decision altitude, feet until the threshold, and nothing that is not known', () => {
    const rows = pathRows(sheetTo(-0.7, { needlesUntilS: 30 }));
    expect(rows.map(({ localizer }) => localizer)).toEqual([0.25, null, null, null]);
    // Tan 3.35° less tan 3° over 6,000 ft is 36.76 ft: half of 0.7° above a path of 3°.
    expect(rows[1]!.aboveFt).toBeCloseTo(36.76, 1);
    expect(rows[3]!.aboveFt).toBeNull();
    expect(rows[0]!.airspeedKt).toBeNaN();
  });

  it('has a half mile as often as it was flown over, and a fix on it once', () => {
    const there = [1.3, 1.1, 0.9, 0.9, 1.1, 1, 0.8];
    const distanceNm = Float64Array.from(there);
    expect(pathRows(sheetTo(0.1, {}, { distanceNm })).map(({ timeS }) => Math.round(timeS))).toEqual([
      15, 35, 50,
    ]);
  });
});
