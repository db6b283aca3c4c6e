import { describe, expect, it } from 'vitest';
import { geodesicBetween, geodesicFrom } from '../../../core/earth/geodesic.ts';
import { glidepathAltitudeFt } from '../../../core/facility/path-altitude.ts';
import { placeOnAxis } from '../../../core/facility/runway-axis.ts';
import { decodeLocalizer, type LocalizerRecord } from '../../../core/records/localizer-record.ts';
import { decodeRunway, type RunwayRecord } from '../../../core/records/runway-record.ts';
import { oppositeRunway } from '../../../core/records/runway-names.ts';
import {
  FEET_PER_METRE,
  FEET_PER_NM,
  METRES_PER_FOOT,
  RADIANS_PER_DEGREE,
} from '../../../core/units/units.ts';
import { figures, positionText, writtenRecord } from '../../support/records/written-record.ts';
import worked from '../../reference/facility-worked-checks.json' with { type: 'json' };
import { codesOf, indexOf, publishedLines, wholeDraft } from './reading.ts';

type Figures = Record<string, number>;
function row(id: string) {
  const { inputs, expected, tolerance, source } = worked.rows.find(
    (known) => known.id === id,
  )! as unknown as {
    inputs: Figures;
    expected: Figures;
    tolerance: Figures;
    source: string;
  };
  return { inputs, expected, tolerance, source };
}
const recordOf = (id: string) => (row(id).inputs as unknown as { record: string }).record;
const within = (found: number, expected: number, tolerance: number): void =>
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(tolerance);

function runwayRecord(line: string): RunwayRecord {
  const record = decodeRunway(line);
  if (!record.ok) throw new Error(record.fault);
  return record.value;
}

/** What "PG" positions are: of 10 published runway ends, whatever is displaced. */
describe('published thresholds are landing thresholds (FAA CIFP, KJFK and KBTV)', () => {
  const runways = publishedLines('kjfk-runway', 'kbtv')
    .filter((line) => line[12] === 'G')
    .map(runwayRecord);
  const pairs = runways.flatMap((from) => {
    const to = runways.find(
      ({ airport, runway }) => airport === from.airport && runway === oppositeRunway(from.runway),
    )!;
    return from.runway < to.runway
      ? [[`${from.airport} ${from.runway} and ${to.runway}`, from, to] as const]
      : [];
  });

  it.each(pairs)('%s lie as far apart as length less both displacements', (_, from, to) => {
    const apartFt = geodesicBetween(from.threshold, to.threshold).distanceM * FEET_PER_METRE;
    within(apartFt, from.lengthFt - from.displacedThresholdFt - to.displacedThresholdFt, 2);
  });

  it('five of those six are displaced', () => {
    expect(pairs).toHaveLength(6);
    const displaced = pairs.filter(([, a, b]) => a.displacedThresholdFt + b.displacedThresholdFt > 0);
    expect(displaced).toHaveLength(5);
  });
});

describe('a whole published airport (FAA CIFP cycle 2609, KBTV)', async () => {
  const index = await indexOf(...publishedLines('kbtv'));
  const fifteen = wholeDraft(index, { airport: 'KBTV', localizer: 'IBTV', onDay: '2026-09-10' });
  const thirtyThree = wholeDraft(index, { airport: 'KBTV', localizer: 'IVOE', onDay: '2026-09-10' });

  it('gives a facility for each ILS in which nothing contradicts anything', () => {
    expect(codesOf(fifteen.issues)).toEqual([]);
    expect(codesOf(thirtyThree.issues)).toEqual([]);
  });

  it('has the values of the records', () => {
    expect(fifteen.facility).toMatchObject({
      name: 'KBTV ILS 15',
      ident: 'IBTV',
      frequencyMHz: 110.3,
      airportElevationFt: 335,
      runway: { designator: '15', lengthFt: 8319, widthFt: 150, threshold: { elevationFt: 306 } },
      localizer: { courseWidthDeg: 4.5, courseMagneticDeg: 145.8 },
      glidepath: { angleDeg: 3, thresholdCrossingHeightFt: 51, antenna: { elevationFt: 308 } },
      finalApproachFix: { name: 'FOVES', altitudeFt: 2000, dmeNm: 6.6 },
      missedApproach: { climbToFt: 3600 },
      magneticVariationDeg: -15,
    });
    expect(thirtyThree.facility).toMatchObject({
      runway: { lengthFt: 7819, threshold: { elevationFt: 334 } },
      glidepath: { angleDeg: 3.2, thresholdCrossingHeightFt: 55 },
      finalApproachFix: { name: 'EHIKO', altitudeFt: 3800 },
      missedApproach: { climbToFt: 3100 },
    });
  });

  it('never has a touchdown zone or minimums, and no course where the localizer is not offset', () => {
    for (const { facility } of [fifteen, thirtyThree]) {
      expect(facility.runway.touchdownZoneElevationFt).toBeUndefined();
      expect(facility.minimums).toBeUndefined();
      expect(facility.localizer!.courseTrueDeg).toBeUndefined();
    }
  });

  it('ends where the pavement does: behind the displaced threshold of 33, at the threshold of 15', () => {
    within(fifteen.geometry.lengthFt, 8319, 1);
    within(thirtyThree.geometry.lengthFt, 7819, 1);
    expect(thirtyThree.facility.runway.farEnd).toEqual(fifteen.facility.runway.threshold);
    // 306 ft at 15 and 334 at 33, 7,819 ft on: 500 ft more go up 1.8.
    expect(fifteen.facility.runway.farEnd!.elevationFt).toBe(335.8);
    expect(fifteen.drafted.origins['runway.farEnd.latDeg']).toContain('displaced by 500 ft');
  });

  it('has the antennas where the records say: 613 and 904 ft past the end, 848 and 998 ft from the threshold', () => {
    const places = [
      [fifteen, 613, 848],
      [thirtyThree, 904, 998],
    ] as const;
    for (const [{ geometry, facility }, pastEndFt, fromThresholdFt] of places) {
      within(placeOnAxis(geometry, geometry.localizerAntenna).alongFt, geometry.lengthFt + pastEndFt, 2);
      within(placeOnAxis(geometry, facility.glidepath.antenna!).alongFt, fromThresholdFt, 2);
    }
  });

  it('has the fixes where the legs say: 5.2 and 10.0 NM', () => {
    within(fifteen.facility.finalApproachFix!.distanceNm!, 5.2, 0.05);
    within(thirtyThree.facility.finalApproachFix!.distanceNm!, 10, 0.05);
  });
});

/** A runway record that is invented: no published one of that runway is in the reference. */
function inventedRunway(
  { airport, runway }: Pick<LocalizerRecord, 'airport' | 'runway'>,
  threshold: { latDeg: number; lonDeg: number },
  lengthFt: number,
  bearingDeg: number,
  elevationFt: number,
): string {
  return writtenRecord(
    [
      [1, `SUSAP ${airport}XXG`],
      [14, runway],
      [22, '0'],
      [23, figures(lengthFt, 5)],
      [28, figures(bearingDeg, 4, 10)],
      [33, positionText(threshold)],
      [67, figures(elevationFt, 5)],
      [72, '0000'],
      [78, '150'],
    ],
    1,
    '0000',
  );
}

function localizerOf(id: string): LocalizerRecord {
  const record = decodeLocalizer(recordOf(id));
  if (!record.ok) throw new Error(record.fault);
  return record.value;
}

/** Both ends of a runway, so that the landing threshold lies that far before the antenna. */
function inventedEnds(
  localizer: LocalizerRecord,
  courseTrueDeg: number,
  baselineFt: number,
  lengthFt: number,
  elevationsFt: readonly [here: number, there: number],
): string[] {
  const before = (distanceFt: number) =>
    geodesicFrom(localizer.antenna, courseTrueDeg + 180, distanceFt * METRES_PER_FOOT);
  const magneticDeg = localizer.bearing!.deg;
  const opposite = { airport: localizer.airport, runway: oppositeRunway(localizer.runway)! };
  return [
    inventedRunway(localizer, before(baselineFt), lengthFt, magneticDeg, elevationsFt[0]),
    inventedRunway(
      opposite,
      before(baselineFt - lengthFt),
      lengthFt,
      (magneticDeg + 180) % 360,
      elevationsFt[1],
    ),
  ];
}

describe.each([
  ['kden-17r', 12_000, [5378, 5423]],
  ['kden-35l', 12_000, [5423, 5378]],
  ['kden-17l', 12_000, [5326, 5350]],
] as const)(
  '%s from its published localizer record (runway records invented)',
  (id, lengthFt, elevationsFt) => {
    const localizer = localizerOf(`${id}-record`);
    const width = row(`${id}-width`);
    const course = row(`${id}-true-course`);
    const antennas = row(`${id}-localizer-to-glideslope`);
    const drafted = async () => {
      // Both arrays stand on one centreline, 0.528° or 180.528° (the reference's own line).
      const centrelineDeg = course.expected['true_course_deg']! + 0.028;
      const baselineFt = width.expected['baseline_ft']!;
      const ends = inventedEnds(localizer, centrelineDeg, baselineFt, lengthFt, elevationsFt);
      const index = await indexOf(recordOf(`${id}-record`), ...publishedLines('kden-airport'), ...ends);
      return wholeDraft(index, { airport: 'KDEN', localizer: localizer.ident });
    };

    it(`has the course of ${course.source}`, async () => {
      const { facility, geometry } = await drafted();
      const { courseMagneticDeg } = facility.localizer!;
      const trueDeg = courseMagneticDeg! + facility.magneticVariationDeg!;
      within(trueDeg % 360, course.expected['true_course_deg']!, course.tolerance['deg']!);
      expect(facility.localizer!.courseTrueDeg).toBeUndefined();
      within(geometry.courseTrueDeg, trueDeg % 360, 0.05);
    });

    it('has its antennas where the reference computes them', async () => {
      const { facility } = await drafted();
      const { antenna } = facility.localizer!;
      const axis = { threshold: antenna!, trueBearingDeg: antennas.inputs['true_course_deg']! + 180 };
      const { alongFt, rightFt } = placeOnAxis(axis, facility.glidepath.antenna!);
      within(alongFt, antennas.expected['along_ft']!, antennas.tolerance['computed_ft']!);
      within(rightFt, antennas.expected['cross_ft']!, antennas.tolerance['computed_ft']!);
      within(alongFt, antennas.expected['baseline_minus_gs_position_ft']!, antennas.tolerance['closure_ft']!);
    });

    it('has the published width, which is what 700 ft at the threshold give', async () => {
      const { geometry, facility } = await drafted();
      expect(facility.localizer!.courseWidthDeg).toBe(width.expected['published_width_deg']);
      const fromAntennaFt =
        geodesicBetween(geometry.localizerAntenna, geometry.threshold).distanceM * FEET_PER_METRE;
      const tailoredDeg = (2 * Math.atan(350 / fromAntennaFt)) / RADIANS_PER_DEGREE;
      // A record holds positions to a foot, which is 0.0003° here.
      within(tailoredDeg, width.expected['course_width_deg']!, 0.0004);
      within(2 * geometry.localizerFullScaleDeg, tailoredDeg, width.tolerance['published_deg']!);
    });

    // Level with the antenna, as the reference reckons: 50.6 ft of 66 at 17R, 57.7 of 57 and 51.6 of 48 at the others.
    it('says what is missing, and of 17R that its antenna implies another crossing height', async () => {
      const expected = id === 'kden-17r' ? ['facility-crossing-height-disagrees'] : [];
      expect(codesOf((await drafted()).issues)).toEqual(['records-no-fix', ...expected]);
    });
  },
);

it('KDEN: the line between both published arrays runs through two drafts', async () => {
  const { expected } = row('kden-35l-17r-localizer-line');
  const antennas = await Promise.all(
    (['kden-35l', 'kden-17r'] as const).map(async (id) => {
      const localizer = localizerOf(`${id}-record`);
      const courseDeg = row(`${id}-true-course`).expected['true_course_deg']! + 0.028;
      const ends = inventedEnds(localizer, courseDeg, 13_019, 12_000, [5370, 5400]);
      const index = await indexOf(recordOf(`${id}-record`), ...ends);
      return wholeDraft(index, { airport: 'KDEN', localizer: localizer.ident }).facility.localizer!.antenna!;
    }),
  );
  const line = geodesicBetween(antennas[0]!, antennas[1]!);
  // A facility holds a seventh decimal: a centimetre.
  within(line.distanceM, expected['distance_m']!, 0.02);
  within(line.startBearingDeg, expected['initial_true_bearing_deg']!, 0.001);
});

describe('KLNS 08 from its published localizer record (runway records invented)', () => {
  const localizer = localizerOf('klns-08-record');
  const drafted = async (lengthFt: number) => {
    const ends = inventedEnds(localizer, 68, 7176, lengthFt, [395, 403]);
    const index = await indexOf(recordOf('klns-08-record'), ...ends);
    return wholeDraft(index, { airport: 'KLNS', localizer: 'ILNS' });
  };

  it('keeps the published 5.46°, where 700 ft would be 5.58°', async () => {
    const { geometry, facility } = await drafted(6576);
    expect(facility.localizer!.courseWidthDeg).toBe(row('klns-08-record').expected['loc_width_deg']);
    const widthFt = 2 * 7176 * Math.tan(geometry.localizerFullScaleDeg * RADIANS_PER_DEGREE);
    within(widthFt, 684, 1);
  });

  it('has a variation to the west', async () => {
    const { facility } = await drafted(6576);
    expect(facility.magneticVariationDeg).toBe(-9);
    expect(facility.localizer!.courseMagneticDeg).toBe(77);
  });

  it('is asked about where the antenna does not stand as far past the end as its record says', async () => {
    expect(codesOf((await drafted(6576)).drafted.issues)).not.toContain('records-antenna-disagrees');
    const { drafted: off } = await drafted(6740);
    expect(off.issues.find(({ code }) => code === 'records-antenna-disagrees')?.message).toContain(
      '7,340 ft',
    );
  });
});

describe('KJFK ILS 04R, worked path (FAA CIFP cycle 2609)', async () => {
  const path = row('kjfk-04r-glidepath-at-pfaf');
  const here = runwayRecord(publishedLines('kjfk-runway').find((line) => line.includes('RW04R'))!);
  const there = runwayRecord(publishedLines('kjfk-runway').find((line) => line.includes('RW22L'))!);
  const bearingDeg = geodesicBetween(here.threshold, there.threshold).startBearingDeg;
  const from = (alongFt: number) => geodesicFrom(here.threshold, bearingDeg, alongFt * METRES_PER_FOOT);
  // Its localizer and its DME are in no reference: invented. Without a crossing height, which the runway's record has.
  const localizer = writtenRecord(
    [
      [1, 'SUSAP KJFKK6IIJFK3'],
      [22, '0'],
      [23, '10950RW04R'],
      [33, positionText(from(9400))],
      [52, '0440'],
      [56, positionText(from(1000))],
      [75, '1000'],
      [88, '300W0130'],
    ],
    1,
    '0000',
  );
  const dme = writtenRecord(
    [
      [1, 'SUSAD KJFKK6 IJFK  K60'],
      [56, positionText(from(1000))],
    ],
    1,
    '0000',
  );
  const lines = publishedLines('kjfk-04r', 'kjfk-runway');
  const index = await indexOf(dme, ...lines, localizer);
  const { facility, geometry, issues } = wholeDraft(index, { airport: 'KJFK', localizer: 'IJFK' });

  it('has EBBEE 4.5 NM out by the leg, at 1,500 ft, DME 6.1', () => {
    expect(facility.finalApproachFix).toEqual({
      name: 'EBBEE',
      distanceNm: path.inputs['leg_nm'],
      altitudeFt: path.expected['published_altitude_ft'],
      dmeNm: 6.1,
    });
    expect(codesOf(issues)).toEqual(['records-fix-place-unknown']);
  });

  it('has the crossing height of the runway record, and so the published 65 ft over the threshold', () => {
    const crossingFt = facility.runway.threshold.elevationFt + facility.glidepath.thresholdCrossingHeightFt;
    expect(crossingFt).toBe(path.inputs['threshold_crossing_altitude_ft']);
  });

  it('has a path that stands where the reference has it at the fix', () => {
    const { distanceNm } = facility.finalApproachFix!;
    const { angleDeg, thresholdCrossingHeightFt } = facility.glidepath;
    const slope = Math.tan(angleDeg * RADIANS_PER_DEGREE);
    const flatFt =
      facility.runway.threshold.elevationFt + thresholdCrossingHeightFt + distanceNm! * FEET_PER_NM * slope;
    within(flatFt, path.expected['flat_ft']!, path.tolerance['computed_ft']!);
    within(flatFt, path.expected['published_altitude_ft']!, path.tolerance['published_ft']!);
    // The reference lets the earth curve from the threshold on; a beam does from its antenna, 1,011 ft farther.
    const fartherFt = (1011 * distanceNm! * FEET_PER_NM) / (6_371_000 * FEET_PER_METRE);
    within(glidepathAltitudeFt(geometry, distanceNm!), path.expected['curved_ft']! + fartherFt, 0.2);
  });

  it('climbs to 4,000 ft, where the hold of its missed approach is', () => {
    expect(facility.missedApproach).toEqual({ climbToFt: 4000 });
  });
});
