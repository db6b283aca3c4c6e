import { beforeAll, describe, expect, it } from 'vitest';
import { glidepathAltitudeFt } from '../../../core/facility/path-altitude.ts';
import { courseOffsetFt, glidepathFeetAt, localizerFeetAt } from '../../../core/sheet/beam-lines.ts';
import type { Sheet } from '../../../core/sheet/sheet.ts';
import { compose } from '../../../core/debrief/compose-debrief.ts';
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
        excursions: glidepath.excursions.map((one) => ({
          startS: secondsOf(one.startUtc),
          endS: secondsOf(one.endUtc),
        })),
      })),
    );
    const target = approach!.stated.targetAirspeedKt!;
    expect(bandOf('airspeed')[0]).toMatchObject({
      lower: target + airspeed.lower!,
      upper: target + airspeed.upper!,
    });
    const found = sheet.excursions.map(({ strip, peak, outsideS }) => [strip, peak, outsideS]);
    const told = [
      ...glidepath.excursions.map(({ peak, outsideS }) => ['glidepath', peak, outsideS]),
      ...airspeed.excursions.map(({ peak, outsideS }) => ['airspeed', peak, outsideS]),
    ];
    expect(told.length).toBeGreaterThan(1);
    expect(found.toSorted()).toEqual(told.toSorted());
  });

  it('limit the sink where the gate that counts followed it: below decision altitude too, without the instructor', () => {
    const { sample, sheets } = samples.get('unstable-and-continued.csv')!;
    const [sheet] = sheets as [Sheet];
    const { debrief, material } = sample;
    const sink = (one: Sheet) => one.bands.filter(({ strip }) => strip === 'verticalSpeed');
    const timeOf = (kind: string) => sheet.events.find((event) => event.kind === kind)!.timeS;
    const counting = debrief.approaches[0]!.stability.find(({ counts }) => counts)!;
    const gateS = timeOf(counting.gate);
    expect(sink(sheet)).toHaveLength(1);
    expect(sink(sheet)[0]!.startS).toBe(gateS);
    expect(sink(sheet)[0]!.endS).toBeGreaterThan(timeOf('decision-altitude'));
    expect(sink(sheet)[0]!.endS).toBeLessThan(timeOf('threshold'));
    expect(sink(sheet)[0]).toMatchObject({ upper: null, excursions: null });
    expect(sink(sheet)[0]!.lower).toBeLessThanOrEqual(-1000);

    const { standard } = sample.sittings[0]!;
    const stated = {
      ...sample.sittings[0]!.stated,
      instructorFlew: [{ startS: gateS + 4, endS: gateS + 9 }],
    };
    const [taken] = sheetsOf(compose(material, { standard, stated })) as [Sheet];
    expect(sink(taken).map(({ startS }) => startS)).toEqual([gateS, gateS + 9]);
  });

  it('limit no sink that could not be judged', async () => {
    const slow = sheetsOf(await composedSample('every-five-seconds.csv'))[0]!;
    expect(slow.bands.filter(({ strip }) => strip === 'verticalSpeed')).toEqual([]);
  });

  it('tell everything that was outside, also what has no strip, and whether anything was counted', () => {
    const { material, sittings } = samples.get('first-approach.csv')!.sample;
    const { standard, stated } = sittings[0]!;
    const low = compose(material, { standard, stated: { ...stated, assignedAltitudeFt: 1500 } });
    const altitude = low.debrief.approaches[0]!.criteria.find(({ id }) => id === 'altitude-before-final')!;
    expect(altitude.verdict).toBe('not-met');
    const [sheet] = sheetsOf(low) as [Sheet];
    expect(sheet.excursions).toEqual([
      expect.objectContaining({ criterionId: 'altitude-before-final', strip: null, unit: 'ft' }),
    ]);
    expect(sheet.isCounted).toBe(true);
  });

  it('have a user’s own limits on the strips that they are of', () => {
    const { material, sittings } = samples.get('unstable-and-continued.csv')!.sample;
    const { standard, stated } = sittings[0]!;
    const limit = { lower: -900, upper: null, code: null, source: 'ours', status: 'own choice' } as const;
    const own = { id: 'own-sink', title: 'Sink', quantity: 'verticalSpeedFpm', limit } as const;
    const [sheet] = sheetsOf(compose(material, { standard: { ...standard, own: [own] }, stated })) as [Sheet];
    expect(sheet.excursions.filter(({ criterionId }) => criterionId === 'own-sink').length).toBeGreaterThan(
      0,
    );
    expect(sheet.bands.some(({ strip, lower }) => strip === 'verticalSpeed' && lower === -900)).toBe(true);
  });

  it('tell needles to decision altitude and to its very moment, be it assumed', () => {
    for (const { sheets } of samples.values())
      for (const sheet of sheets) {
        const decision = sheet.events.find(({ kind }) => kind === 'decision-altitude');
        expect(sheet.needlesUntilS).toBe(decision?.timeS ?? null);
      }
    expect(only('first-approach.csv').needlesUntilS).not.toBeNull();
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
