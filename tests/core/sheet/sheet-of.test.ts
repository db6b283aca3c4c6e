import { beforeAll, describe, expect, it } from 'vitest';
import { glidepathAltitudeFt } from '../../../core/facility/path-altitude.ts';
import { courseOffsetFt, glidepathFeetAt, localizerFeetAt } from '../../../core/sheet/beam-lines.ts';
import type { Sheet } from '../../../core/sheet/sheet.ts';
import { sheetsOf } from '../../../core/sheet/sheet-of.ts';
import { FEET_PER_NM } from '../../../core/units/units.ts';
import { secondsOf } from '../../../core/units/utc.ts';
import { composedSample } from '../../support/samples/composed-sample.ts';

type Sample = Awaited<ReturnType<typeof composedSample>>;
const FILES = ['first-approach.csv', 'offset-course.csv', 'unstable-and-continued.csv', 'steep-and-high.csv'];
const samples = new Map<string, { sample: Sample; sheets: readonly Sheet[] }>();
beforeAll(async () => {
  for (const file of [...FILES, 'touch-and-go-then-again.csv', 'recorder-fault.csv', 'phone.gpx']) {
    const sample = await composedSample(file);
    samples.set(file, { sample, sheets: sheetsOf(sample) });
  }
});
const only = (file: string) => samples.get(file)!.sheets[0]!;
const rows = ({ columns }: Sheet) => Array.from(columns.timeS, (_, row) => row);

describe("a sheet's columns", () => {
  it.each(FILES)('are the fixes of the approach in %s, as they were projected', (file) => {
    const { sample, sheets } = samples.get(file)!;
    const { timeS } = sample.sittings[0]!.flown.track;
    const { deviations } = sample.sittings[0]!.flown;
    const [{ columns, span }] = sheets as [Sheet];
    const first = timeS.indexOf(columns.timeS[0]!);
    expect(columns.timeS[1]).toBeGreaterThanOrEqual(span.startS);
    expect(columns.timeS.at(-2)).toBeLessThanOrEqual(span.endS);
    for (const row of rows(sheets[0]!)) {
      expect(columns.timeS[row]).toBe(timeS[first + row]);
      expect(columns.localizer[row]).toBe(deviations.localizerFullScale[first + row]);
      expect(columns.distanceNm[row]).toBe(deviations.distanceToThresholdNm[first + row]);
    }
  });

  it.each(FILES)('turn a fraction of full scale into the feet that %s was off', (file) => {
    const sheet = only(file);
    const { columns, beam } = sheet;
    const { deviations } = samples.get(file)!.sample.sittings[0]!.flown;
    const { timeS } = samples.get(file)!.sample.sittings[0]!.flown.track;
    const first = timeS.indexOf(columns.timeS[0]!);
    for (const row of rows(sheet)) {
      const acrossFt = deviations.acrossCourseNm[first + row]! * FEET_PER_NM;
      expect(localizerFeetAt(beam, columns.localizerAlongFt[row]!, columns.localizer[row]!)).toBeCloseTo(
        acrossFt,
        3,
      );
      const upFt = glidepathFeetAt(beam, columns.glidepathAlongFt[row]!, columns.glidepath[row]!);
      expect(upFt).toBeCloseTo(deviations.heightAboveGlidepathFt[first + row]!, 3);
    }
  });

  it('part at the gaps of the track, and nowhere else', () => {
    const { columns } = only('recorder-fault.csv');
    const { gaps } = samples.get('recorder-fault.csv')!.sample.sittings[0]!.flown.track;
    const parted = Array.from(columns.timeS).filter((_, row) => columns.gapBefore[row] === 1);
    const inside = gaps.map(({ endS }) => endS).filter((s) => columns.timeS.includes(s));
    expect(inside.length).toBeGreaterThan(0);
    expect(parted).toEqual(inside);
  });

  it('have the needles that a log recorded in the sense of the computed ones', () => {
    const withNeedles = only('offset-course.csv').columns;
    const { recordedLocalizer, localizer } = withNeedles;
    expect(recordedLocalizer).not.toBeNull();
    let same = 0;
    for (const [row, recorded] of recordedLocalizer!.entries()) same += Math.sign(recorded * localizer[row]!);
    expect(same / localizer.length).toBeGreaterThan(0.5);
  });
});

describe("a sheet's lines", () => {
  it.each(FILES)('put each fix of %s as far between the sector’s edges as its needle says', (file) => {
    const { columns, beam } = only(file);
    for (const row of rows(only(file))) {
      const nm = columns.distanceNm[row]!;
      const needle = columns.localizer[row]!;
      if (nm < 0 || Math.abs(needle) > 1) continue;
      // The earth bends away from the plane that both are drawn in: a few feet at the far end of an approach.
      const drawnFt = courseOffsetFt(beam, nm, needle);
      expect(Math.abs(drawnFt - columns.offsetFt[row]!)).toBeLessThan(2 + Math.abs(drawnFt) * 0.002);
    }
  });

  it.each(FILES)('put each fix of %s as far from the path as it was, in feet', (file) => {
    const { sample } = samples.get(file)!;
    const { facility } = sample.sittings[0]!.flown;
    const { columns, beam } = only(file);
    for (const row of rows(only(file))) {
      const nm = columns.distanceNm[row]!;
      if (nm < 0.3 || Math.abs(columns.localizer[row]!) > 0.5) continue;
      const pathFt = glidepathAltitudeFt(facility, nm);
      const aboveFt = glidepathFeetAt(beam, columns.glidepathAlongFt[row]!, columns.glidepath[row]!);
      expect(Math.abs(columns.altitudeFt[row]! - pathFt - aboveFt)).toBeLessThan(8);
    }
  });

  it('reach as far out as was flown, full scale farther from the path than half of it', () => {
    const { beam, columns } = only('first-approach.csv');
    expect(beam.path.at(-1)!.distanceNm).toBeGreaterThanOrEqual(Math.max(...columns.distanceNm));
    for (const { upFt, downFt } of beam.path) {
      expect(upFt[3]).toBeGreaterThan(upFt[1]);
      expect(downFt[3]).toBeLessThan(downFt[1]);
    }
  });
});

describe("a sheet's marks", () => {
  it('are the events, bands and excursions of the debrief', () => {
    const { sample, sheets } = samples.get('unstable-and-continued.csv')!;
    const [approach] = sample.debrief.approaches;
    const [sheet] = sheets as [Sheet];
    expect(sheet.events.map(({ kind }) => kind)).toEqual(approach!.events.map(({ kind }) => kind));
    const glidepath = approach!.criteria.find(({ id }) => id === 'glidepath-final')!;
    const airspeed = approach!.criteria.find(({ id }) => id === 'airspeed-final')!;
    const bandOf = (strip: string) => sheet.bands.filter((band) => band.strip === strip);
    expect(bandOf('glidepath')).toEqual(
      glidepath.counted.map(({ startUtc, endUtc }) => ({
        strip: 'glidepath',
        startS: secondsOf(startUtc),
        endS: secondsOf(endUtc),
        lower: glidepath.lower,
        upper: glidepath.upper,
        target: 0,
      })),
    );
    const target = approach!.stated.targetAirspeedKt!;
    expect(bandOf('airspeed')[0]).toMatchObject({
      lower: target + airspeed.lower!,
      upper: target + airspeed.upper!,
    });
    const found = sheet.excursions.map(({ axis, peak }) => [axis, peak]);
    const told = [
      ...glidepath.excursions.map(({ peak }) => ['glidepath', peak]),
      ...airspeed.excursions.map(({ peak }) => ['airspeed', peak]),
    ];
    expect(told.length).toBeGreaterThan(1);
    expect(found.toSorted()).toEqual(told.toSorted());
    expect(sheet.excursions.find(({ axis }) => axis === 'airspeed')!.side).toBe('fast');
  });

  it('limit the sink from the gate that counts, and draw nothing where no gate was passed', () => {
    const sheet = only('unstable-and-continued.csv');
    const band = sheet.bands.find(({ strip }) => strip === 'verticalSpeed');
    const gate = sheet.events.find(({ kind }) => kind === 'gate-500' || kind === 'gate-1000')!;
    expect(band!.startS).toBeGreaterThanOrEqual(gate.timeS);
    expect(band!.upper).toBeNull();
    expect(band!.lower).toBeLessThanOrEqual(-1000);
  });

  it('show a fix only where the chart gives one, and one sheet an approach', () => {
    expect(only('first-approach.csv').fixes).toEqual([{ name: 'PETRU', distanceNm: 5 }]);
    expect(samples.get('touch-and-go-then-again.csv')!.sheets.map(({ index }) => index)).toEqual([1, 2]);
  });

  it('say what a phone’s heights are worth', () => {
    const { heights } = only('phone.gpx');
    expect(heights.judgedBy).toBe('geometric');
    expect(heights.halfWidthFt).toBeGreaterThan(20);
  });
});
