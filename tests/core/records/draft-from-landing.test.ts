import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { geodesicBetween, geodesicFrom } from '../../../core/earth/geodesic.ts';
import { placeOnAxis } from '../../../core/facility/runway-axis.ts';
import { parseFacility } from '../../../core/facility/parse-facility.ts';
import { draftsFromLanding } from '../../../core/records/draft-from-landing.ts';
import { leavesOf } from '../../../core/records/leaves.ts';
import type { Track } from '../../../core/track/track.ts';
import { climbRows, LANDING, landingRows, trackOfRows } from './made-landing.ts';

const LOG = { name: 'flight.csv', sha256: 'f00d' };
const outcomeOf = (track: Track, onDate: number | null = null) => draftsFromLanding(LOG, track, { onDate });
const draftsOf = (track: Track, onDate: number | null = null) => {
  const outcome = outcomeOf(track, onDate);
  if (!outcome.ok) throw new Error(outcome.refusal.message);
  return outcome.value;
};
const refusalOf = (track: Track) => {
  const outcome = outcomeOf(track);
  if (outcome.ok) throw new Error('a log that must be refused left a draft');
  return outcome.refusal;
};
const codesOf = ({ issues }: { issues: readonly { code: string }[] }) => issues.map(({ code }) => code);
const whereOf = (place: { latDeg?: number; lonDeg?: number } | undefined) => ({
  latDeg: place!.latDeg!,
  lonDeg: place!.lonDeg!,
});

describe('a draft from a landing', () => {
  const draft = draftsOf(trackOfRows(landingRows()))[0]!;

  it('has the bearing, the elevation and the assumed threshold of a roll on a straight line', () => {
    const { runway, glidepath } = draft.facility;
    // 1,000 ft back from the touchdown, to the foot that one fix a second tells it by: 70 kt are 118 ft a second.
    const back = geodesicBetween(whereOf(runway!.threshold), LANDING.touchdown);
    expect(Math.abs(back.distanceM / 0.3048 - 1000)).toBeLessThan(130);
    expect(runway!.trueBearingDeg).toBeCloseTo(123.4, 1);
    expect(Math.abs(back.startBearingDeg - 123.4)).toBeLessThan(0.05);
    // The antenna stood 506 ft up, and 6 ft above the ground.
    expect(runway!.threshold!.elevationFt).toBe(500);
    expect(glidepath).toEqual({ angleDeg: 3, thresholdCrossingHeightFt: 50 });
  });

  it('has a length of at least the roll and what lies before it', () => {
    // From 70 to 25 kt at 2 kt/s: 22.5 s at 47.5 kt are 1,804 ft.
    expect(Math.abs(draft.rollFt - 1804)).toBeLessThan(150);
    expect(draft.facility.runway!.lengthFt).toBe(Math.floor(1000 + draft.rollFt));
  });

  it('is a facility once it is named and numbered, and says where each value is from', () => {
    const { facility, origins, landing } = draft;
    const runway = { ...facility.runway, designator: '13' };
    const text = JSON.stringify({ name: 'Made', ...facility, runway });
    expect(parseFacility(text, 'made.json').ok).toBe(true);
    expect(landing.unconfirmed).toEqual(Object.keys(origins));
    expect(landing.unconfirmed).toHaveLength(7);
    for (const origin of Object.values(origins)) expect(origin).toContain('from a landing: to be confirmed');
    expect(origins['glidepath.angleDeg']).toContain('assumed');
    expect(origins['runway.threshold.latDeg']).toContain('assumed 1,000 ft before the touchdown');
    // 1,000 ft × tan 3° = 52.4 ft, by hand.
    expect(draft.issues.map(({ message }) => message)).toContain(
      'The threshold lies before the touchdown, nobody knows how far: 1,000 ft were assumed, and 1,000 ft along the runway are 52 ft in the height of the path.',
    );
    expect(facility.runway).not.toHaveProperty('designator');
  });

  it('says that it is a draft which grades no approach of its log, and names the log', () => {
    expect(draft.log).toEqual(LOG);
    expect(draft.issues[0]).toMatchObject({ code: 'landing-draft', severity: 'warning' });
    expect(draft.issues[0]!.message).toContain('it grades no approach of that log');
  });

  it('follows the slope of the runway back to the threshold', () => {
    const up = draftsOf(trackOfRows(landingRows({ slope: 0.01 })))[0]!;
    // 10 ft lower 1,000 ft before.
    expect(Math.abs(up.facility.runway!.threshold!.elevationFt! - 490)).toBeLessThanOrEqual(2);
  });

  it('has its touchdown on the line of the roll, though the fix there is off', () => {
    const rows = landingRows().map((row) =>
      row.timeS === LANDING.startS + 1 ? { ...row, ...geodesicFrom(row, 213.4, 10) } : row,
    );
    const { touchdown } = draftsOf(trackOfRows(rows))[0]!;
    const { rightFt } = placeOnAxis({ threshold: LANDING.touchdown, trueBearingDeg: 123.4 }, touchdown);
    // 33 ft to the right; of some twenty fixes the first pulls the line there by 4 ÷ 20 of that.
    expect(Math.abs(rightFt)).toBeLessThan(10);
  });

  it('is held to the antenna that is stated', () => {
    const track = trackOfRows(landingRows());
    const outcome = draftsFromLanding(LOG, track, { onDate: null, antennaHeightFt: 11 });
    expect(outcome.ok && outcome.value[0]!.facility.runway!.threshold!.elevationFt).toBe(495);
  });

  it('suggests a number where the day is known, and never enters it', () => {
    expect(draft.suggestedDesignator).toBeNull();
    // 123.4° true; the World Magnetic Model has 12.1° west there in 2025 (computed by it): 135.5° magnetic.
    expect(draftsOf(trackOfRows(landingRows()), 2025.5)[0]!.suggestedDesignator).toBe('14');
    expect(draftsOf(trackOfRows(landingRows()), 1999)[0]!.suggestedDesignator).toBeNull();
  });

  it('has no elevation of heights that are none above the sea', () => {
    for (const kind of ['altitudePressureFt', 'altitudeTransponderFt'] as const) {
      const made = draftsOf(trackOfRows(landingRows(), kind))[0]!;
      expect(made.facility.runway!.threshold).not.toHaveProperty('elevationFt');
      expect(codesOf(made)).toContain('landing-elevation-unknown');
      expect(made.landing.unconfirmed).toHaveLength(6);
    }
  });

  it('crosses the date line and north', () => {
    const touchdown = { latDeg: -5, lonDeg: 179.9999 };
    const north = draftsOf(trackOfRows(landingRows({ touchdown, bearingDeg: 359.99 })))[0]!;
    expect(Math.abs(((north.facility.runway!.trueBearingDeg! + 180) % 360) - 179.99)).toBeLessThan(0.05);
    const east = draftsOf(trackOfRows(landingRows({ touchdown, bearingDeg: 90 })))[0]!;
    expect(Math.abs(east.facility.runway!.trueBearingDeg! - 90)).toBeLessThan(0.05);
    const { lonDeg } = whereOf(east.facility.runway!.threshold);
    expect(lonDeg >= -180 && lonDeg < 180).toBe(true);
  });
});

describe('a landing that was recorded badly', () => {
  const rows = landingRows();
  const whole = draftsOf(trackOfRows(rows))[0]!;

  it('is the same without some of its heights', () => {
    const holes = rows.map((row) => (row.timeS % 3 === 0 ? { ...row, heightFt: NaN } : row));
    const { runway } = draftsOf(trackOfRows(holes))[0]!.facility;
    expect(runway!.threshold!.elevationFt).toBe(whole.facility.runway!.threshold!.elevationFt);
    expect(runway!.trueBearingDeg).toBeCloseTo(123.4, 1);
  });

  it('leaves a draft of numbers, or is refused with a code, whatever is missing or wrong of it', () => {
    let drafted = 0;
    const faults = fc.array(
      fc.tuple(fc.nat(rows.length - 1), fc.constantFrom('gone', 'no height', 'held', 'aside', 'up')),
      { maxLength: 40 },
    );
    fc.assert(
      fc.property(faults, fc.constantFrom('augmented', 'phone'), (all, receiver) => {
        let made: typeof rows = rows;
        for (const [k, fault] of all)
          made = made.flatMap((row, i) => {
            if (row.timeS !== rows[k]!.timeS) return [row];
            if (fault === 'gone') return [];
            if (fault === 'no height') return [{ ...row, heightFt: NaN }];
            if (fault === 'up') return [{ ...row, heightFt: row.heightFt + 90 }];
            const { latDeg, lonDeg } = fault === 'held' ? (made[i - 1] ?? row) : geodesicFrom(row, 33.4, 90);
            return [{ ...row, latDeg, lonDeg }];
          });
        const outcome = outcomeOf(trackOfRows(made, 'altitudeGeometricFt', receiver), 2025.5);
        if (!outcome.ok) expect(outcome.refusal.code).toMatch(/^landing-/);
        for (const one of outcome.ok ? outcome.value : []) {
          drafted++;
          for (const { value } of leavesOf(one)) expect(Number.isFinite(value)).toBe(true);
          expect(Number.isFinite(one.bearingHalfWidthDeg)).toBe(true);
        }
      }),
      { numRuns: 1000 },
    );
    expect(drafted).toBeGreaterThan(200);
  });
});

describe('a log of several landings', () => {
  const AFTER_S = LANDING.startS + 3600;

  it('leaves one draft for each runway, and for each direction of it', () => {
    const elsewhere = { touchdown: geodesicFrom(LANDING.touchdown, 33.4, 1500), startS: AFTER_S };
    const otherWay = { bearingDeg: 303.4, startS: AFTER_S };
    for (const second of [elsewhere, otherWay]) {
      const drafts = draftsOf(trackOfRows([...landingRows(), ...landingRows(second)]));
      expect(drafts.map(({ touchdownS }) => touchdownS > LANDING.startS + 1000)).toEqual([false, true]);
    }
  });

  it('leaves one of its longest roll where all were on one runway', () => {
    const longer = { brakingKtPerS: 1, startS: AFTER_S };
    const drafts = draftsOf(trackOfRows([...landingRows(), ...landingRows(longer)]));
    expect(drafts).toHaveLength(1);
    expect(drafts[0]!.touchdownS).toBeGreaterThan(LANDING.startS + 1000);
    expect(drafts[0]!.issues[1]!.message).toContain('the longest of 2 on it');
  });
});

describe('a log that tells of no runway', () => {
  it('holds no landing', () => {
    const final = landingRows().filter(({ timeS }) => timeS < LANDING.startS);
    expect(refusalOf(trackOfRows(final))).toMatchObject({ code: 'landing-none', severity: 'refusal' });
  });

  it('is of taxiing alone, or of a take-off that was given up', () => {
    const ground = landingRows().filter(({ timeS }) => timeS >= LANDING.startS);
    expect(refusalOf(trackOfRows(ground)).code).toBe('landing-none');
  });

  it('comes down and climbs away again', () => {
    const touch = landingRows({ slowKt: 45 });
    const rows = [...touch, ...climbRows(touch, LANDING.bearingDeg)];
    expect(refusalOf(trackOfRows(rows))).toMatchObject({
      code: 'landing-touch-and-go',
      message:
        'flight.csv holds no landing to a stop: it comes down and climbs away again, as in a touch-and-go.',
    });
  });

  it('rolls too short a way', () => {
    const short = trackOfRows(landingRows({ touchdownKt: 50, brakingKtPerS: 5 }));
    expect(refusalOf(short).code).toBe('landing-roll-too-short');
    expect(refusalOf(short).message).toMatch(/has \d{3} ft: a direction takes 500 ft/);
  });

  it('was not recorded where it rolled', () => {
    const gap = landingRows().filter(({ timeS }) => Math.abs(timeS - LANDING.startS - 8) > 8);
    expect(refusalOf(trackOfRows(gap)).code).toBe('landing-none');
  });
});
