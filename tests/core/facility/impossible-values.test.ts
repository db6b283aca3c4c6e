import { describe, expect, it } from 'vitest';
import { geodesicFrom, type Position } from '../../../core/earth/geodesic.ts';
import { parseFacility } from '../../../core/facility/parse-facility.ts';
import { METRES_PER_FOOT } from '../../../core/units/units.ts';
import { FULL, LEAST, withValue } from './full-facility.ts';

const outcomeOf = (values: object) => parseFacility(JSON.stringify(values), 'f.json');

function refusalOf(values: object) {
  const outcome = outcomeOf(values);
  if (outcome.ok) throw new Error('was not refused');
  return outcome.refusal;
}

/** A point so many feet down LEAST's runway from its threshold, and to the right of it. */
function spot(alongFt: number, rightFt = 0): Position {
  const { threshold, trueBearingDeg } = LEAST.runway;
  const along = geodesicFrom(threshold, trueBearingDeg, alongFt * METRES_PER_FOOT);
  const { latDeg, lonDeg } = geodesicFrom(along, along.endBearingDeg + 90, rightFt * METRES_PER_FOOT);
  return { latDeg, lonDeg };
}

describe('the direction of the runway must follow from the file', () => {
  it.each(['runway.trueBearingDeg', 'runway.lengthFt'])(
    'without %s and without a far end it does not',
    (path) => {
      const refusal = refusalOf(withValue(LEAST, path, undefined));
      expect(refusal.code).toBe('facility-missing-key');
      expect(refusal.message).toContain('runway.farEnd is missing, and so is a bearing with a length');
    },
  );

  it('other problems are told beside it', () => {
    const wrong = withValue(
      withValue(LEAST, 'runway.lengthFt', undefined),
      'minimums.decisionAltitudeFt',
      90,
    );
    const outcome = outcomeOf(wrong);
    expect(outcome.issues.map(({ code }) => code)).toEqual([
      'facility-missing-key',
      'facility-impossible-value',
    ]);
  });

  it('two ends are enough', () => {
    const { trueBearingDeg: _, lengthFt: __, ...runway } = LEAST.runway;
    expect(outcomeOf({ ...LEAST, runway: { ...runway, farEnd: spot(8000) } }).ok).toBe(true);
  });

  it.each([
    [990, 'is 990 ft from the threshold'],
    [20_010, 'is 3.3 NM from the threshold'],
  ])('ends %i ft apart are no runway', (alongFt, words) => {
    const refusal = refusalOf(withValue(LEAST, 'runway.farEnd', spot(alongFt)));
    expect(refusal.message).toContain(`runway.farEnd ${words}: a runway is 1,000 to 20,000 ft long`);
    expect(refusal.code).toBe('facility-impossible-value');
  });

  it.each([1001, 19_999])('ends %i ft apart are', (alongFt) => {
    expect(outcomeOf(withValue(LEAST, 'runway.farEnd', spot(alongFt))).ok).toBe(true);
  });
});

describe('altitudes lie above the runway', () => {
  it.each(['minimums.decisionAltitudeFt', 'finalApproachFix.altitudeFt', 'missedApproach.climbToFt'])(
    '%s at the runway is refused, a foot above it is not',
    (path) => {
      const refusal = refusalOf(withValue(LEAST, path, 100));
      expect(refusal.message).toContain(`${path} is 100: that is not above the runway, which lies at 100 ft`);
      expect(refusal.tip).toContain('height above the runway?');
      expect(outcomeOf(withValue(LEAST, path, 101)).ok).toBe(true);
    },
  );

  it('the touchdown zone counts where it is higher than the threshold', () => {
    const facility = withValue(LEAST, 'runway.touchdownZoneElevationFt', 120);
    expect(refusalOf(withValue(facility, 'minimums.decisionAltitudeFt', 120)).message).toContain(
      'lies at 120 ft',
    );
    const lower = withValue(LEAST, 'runway.touchdownZoneElevationFt', 80);
    expect(refusalOf(withValue(lower, 'minimums.decisionAltitudeFt', 100)).message).toContain(
      'lies at 100 ft',
    );
  });
});

describe('the elevations of one aerodrome lie near one another', () => {
  it.each([
    'airportElevationFt',
    'runway.farEnd.elevationFt',
    'runway.touchdownZoneElevationFt',
    'localizer.antenna.elevationFt',
    'glidepath.antenna.elevationFt',
  ])('%s more than 500 ft from the threshold is refused', (path) => {
    const inside = withValue(FULL, 'minimums', undefined);
    expect(refusalOf(withValue(inside, path, 601)).message).toContain(
      `${path} is 601: the threshold lies at 100 ft`,
    );
    expect(refusalOf(withValue(inside, path, -401)).message).toContain(`${path} is -401`);
    expect(outcomeOf(withValue(inside, path, 600)).ok).toBe(true);
  });
});

describe('antennas stand where antennas stand', () => {
  it('a localizer antenna before the threshold is a back course, and not supported', () => {
    const refusal = refusalOf(withValue(LEAST, 'localizer.antenna', spot(-900)));
    expect(refusal.code).toBe('facility-back-course');
    expect(refusal.message).toContain(
      'localizer.antenna stands 900 ft before the threshold: that is a back course, which is not supported',
    );
  });

  it.each([
    [14_100, 0, '14,100 ft past the threshold and 0 ft right'],
    [9000, 5100, '9,000 ft past the threshold and 5,100 ft right'],
    [9000, -5100, '9,000 ft past the threshold and 5,100 ft left'],
  ])('a localizer antenna %i ft along and %i ft aside is a slip', (alongFt, rightFt, words) => {
    const refusal = refusalOf(withValue(LEAST, 'localizer.antenna', spot(alongFt, rightFt)));
    expect(refusal).toMatchObject({ code: 'facility-impossible-value' });
    expect(refusal.message).toContain(`localizer.antenna stands ${words} of the centreline`);
  });

  it.each([
    [-100, 400, '100 ft before the threshold and 400 ft right'],
    [4100, 400, '4,100 ft past'],
    [1000, -1600, '1,600 ft left'],
  ])('a glidepath antenna %i ft along and %i ft aside is a slip', (alongFt, rightFt, words) => {
    const antenna = { ...spot(alongFt, rightFt), elevationFt: 100 };
    const refusal = refusalOf(withValue(LEAST, 'glidepath.antenna', antenna));
    expect(refusal.message).toContain('glidepath.antenna stands');
    expect(refusal.message).toContain(words);
  });

  it('the last possible places are accepted', () => {
    const near = withValue(LEAST, 'glidepath.antenna', { ...spot(3950, 1450), elevationFt: 100 });
    expect(outcomeOf(near).ok).toBe(true);
    expect(outcomeOf(withValue(LEAST, 'localizer.antenna', spot(13_950, 4950))).ok).toBe(true);
  });
});

describe('a localizer course leads to the runway', () => {
  it('a course 45 degrees and more off is a slip, with or without an antenna', () => {
    const reversed = withValue(LEAST, 'localizer.courseTrueDeg', 251);
    expect(refusalOf(reversed).message).toContain(
      'localizer.courseTrueDeg is 251: the runway lies 071.0 true, 180 degrees away',
    );
    const sideways = withValue(reversed, 'localizer.courseTrueDeg', 117);
    expect(refusalOf(withValue(sideways, 'localizer.antenna', spot(9000))).code).toBe(
      'facility-impossible-value',
    );
  });

  it('an offset course needs its antenna, for on the centreline it would be wrong', () => {
    const offset = withValue(LEAST, 'localizer.courseTrueDeg', 73);
    const refusal = refusalOf(offset);
    expect(refusal.code).toBe('facility-offset-without-antenna');
    expect(refusal.message).toContain('offset by 1.97 degrees');
    expect(outcomeOf(withValue(offset, 'localizer.antenna', spot(9000, -300))).ok).toBe(true);
  });

  it('up to 0.3 degrees it is the runway’s own course, given more finely', () => {
    const carried = 71.02512;
    expect(outcomeOf(withValue(LEAST, 'localizer.courseTrueDeg', carried + 0.2999)).ok).toBe(true);
    expect(outcomeOf(withValue(LEAST, 'localizer.courseTrueDeg', carried - 0.2999)).ok).toBe(true);
    expect(outcomeOf(withValue(LEAST, 'localizer.courseTrueDeg', carried + 0.3001)).ok).toBe(false);
  });
});
