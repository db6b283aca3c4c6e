import { describe, expect, it } from 'vitest';
import { buildTrack, type TrackSettings } from '../../../core/track/build-track.ts';
import { calibrated, positionErrorOf, sinkErrorFpm } from '../../../core/track/position-error.ts';
import { seededRandom } from '../../support/flight/random.ts';
import { flyingNorth, makeLog } from './make-log.ts';

const COUNT = 20;
const FLOWN = flyingNorth(COUNT, 100);
const FEET_PER_METRE = 1 / 0.3048;
/** Half-width in one dimension over the radius in two, at 95 %: 1.96 ÷ 2.4477 (normal and Rayleigh; computed). */
const SIDE_OF_RADIUS = 1.959964 / 2.447747;

type Values = NonNullable<Parameters<typeof makeLog>[0]['values']>;

function trackOf(values: Values = {}, settings: Partial<TrackSettings> = {}, header = '') {
  const log = makeLog({ ...FLOWN, values: { altitudeGeometricFt: Array(COUNT).fill(1000), ...values } });
  const columns = [
    {
      index: 0,
      header,
      unitText: null,
      unitRead: null,
      role: 'verticalAccuracyM' as const,
      confidence: 1,
      why: '',
    },
  ];
  const outcome = buildTrack({ ...log, columns }, { undulationM: null, ...settings });
  if (!outcome.ok) throw new Error(outcome.refusal.message);
  return outcome.value;
}

const all = (value: number) => Array<number>(COUNT).fill(value);
const errorOf = (...[values, settings, header]: Parameters<typeof trackOf>) =>
  positionErrorOf(trackOf(values, settings, header), 0);

describe('the receiver of a log', () => {
  it.each([
    ['a phone, with positions alone', {}, 'phone'],
    ['a phone, also with an attitude', { bankDeg: all(0), pitchDeg: all(0) }, 'phone'],
    ['installed and augmented, with airspeed', { airspeedIndicatedKt: all(90) }, 'augmented'],
    ['installed and augmented, with an engine', { engineRpm: all(2300) }, 'augmented'],
    ['augmented, with protection levels', { verticalProtectionM: all(20) }, 'augmented'],
  ] as const)('is taken for %s', (_, values, kind) => {
    expect(trackOf({ ...values }).receiver).toMatchObject({ kind, isStated: false });
  });

  it('is what the user says, whatever the log holds', () => {
    const { receiver } = trackOf({ airspeedIndicatedKt: all(90) }, { receiver: 'plain' });
    expect(receiver).toMatchObject({ kind: 'plain', isStated: true });
  });
});

describe('the error of a position', () => {
  /** GPS SPS Performance Standard, 5th edition, table 3.8-3; FAA WAAS Performance Analysis Report 10. */
  it.each([
    ['plain', 8, 13],
    ['augmented', 1.06, 1.79],
  ] as const)('of the %s class is the published one', (receiver, horizontalM, verticalM) => {
    const error = errorOf({}, { receiver });
    expect(error).toMatchObject({ sideFrom: 'class', heightFrom: 'class' });
    expect(error.sideFt(3)).toBeCloseTo(horizontalM * SIDE_OF_RADIUS * FEET_PER_METRE, 4);
    expect(error.heightFt(3)).toBeCloseTo(verticalM * FEET_PER_METRE, 6);
  });

  it('is what the log says of itself, 68 % of it widened to 95', () => {
    const error = errorOf({ horizontalAccuracyM: all(3), verticalAccuracyM: all(5) });
    // A radius that holds 68 % is 1.5096 standard deviations, a half-width 0.9945; 95 % are 1.96 of them.
    expect(error.sideFt(0)).toBeCloseTo((3 / 1.5096) * 1.96 * FEET_PER_METRE, 2);
    expect(error.heightFt(0)).toBeCloseTo((5 / 0.9945) * 1.96 * FEET_PER_METRE, 2);
    expect(error).toMatchObject({ sideFrom: 'accuracy', heightFrom: 'accuracy' });
  });

  it('of a figure of merit is the figure itself, which is a 95 % one', () => {
    const error = errorOf({ verticalAccuracyM: all(5) }, {}, 'VFOM');
    expect(error.heightFt(0)).toBeCloseTo(5 * FEET_PER_METRE, 6);
  });

  it('of a protection level is a share of it: 1.96 of 5.33 standard deviations, 1.96 of 6 to the side', () => {
    const error = errorOf({ verticalProtectionM: all(20), horizontalProtectionM: all(12) });
    expect(error.heightFt(0)).toBeCloseTo(((20 * 1.96) / 5.33) * FEET_PER_METRE, 2);
    expect(error.sideFt(0)).toBeCloseTo(((12 * 1.96) / 6) * FEET_PER_METRE, 2);
  });

  it('grows with the dilution of precision', () => {
    const error = errorOf({ hdop: all(2), vdop: all(3.2) }, { receiver: 'plain' });
    expect(error.sideFt(0)).toBeCloseTo(2 * 8 * SIDE_OF_RADIUS * FEET_PER_METRE, 4);
    expect(error.heightFt(0)).toBeCloseTo(2 * 13 * FEET_PER_METRE, 6);
  });

  it('is that of the class in a row that says nothing, or nothing that can be', () => {
    const verticalAccuracyM = all(5).map((m, i) => [m, NaN, 0, -1][i % 4]!);
    const error = errorOf({ verticalAccuracyM }, { receiver: 'plain' });
    const inClass = 13 * FEET_PER_METRE;
    for (const i of [1, 2, 3]) expect(error.heightFt(i)).toBeCloseTo(inClass, 9);
    expect(error.heightFt(0)).not.toBeCloseTo(inClass, 0);
  });
});

describe('the error of a height', () => {
  const indicated = { altitudeGeometricFt: all(NaN), altitudeIndicatedFt: all(1000) };

  it('of an altimeter holds the air: 8 % of the height above the aerodrome where it is not known', () => {
    const track = trackOf(indicated);
    expect(positionErrorOf(track, 1000).heightFt(0)).toBe(50);
    expect(positionErrorOf(track, 0).heightFt(0)).toBeCloseTo(Math.hypot(50, 80), 9);
    const aerodrome = { elevationFt: 0, temperatureC: 15 };
    expect(positionErrorOf(trackOf(indicated, { aerodrome }), 0).heightFt(0)).toBeCloseTo(
      Math.hypot(50, 20),
      1,
    );
  });

  it('of an altimeter at 1013.25 holds the setting that is not known', () => {
    const pressure = { altitudeGeometricFt: all(NaN), altitudePressureFt: all(1000) };
    expect(errorOf(pressure).heightFt(0)).toBeGreaterThan(680);
  });

  it('that the altimeter showed is none: the pilot flew by it', () => {
    expect(errorOf({ altitudeIndicatedFt: all(1000) }).decidingFt(0)).toBe(0);
    // Without an altimeter gates and decision altitude are as good as the heights.
    const bare = errorOf();
    expect(bare.decidingFt(0)).toBe(bare.heightFt(0));
    // Worked out from pressure and a whole hectopascal of setting it is half of one off: 27.3 ÷ 2 ft.
    const set = errorOf({ altitudePressureFt: all(1000) }, { altimeterSettingHpa: 1013 });
    expect(set.decidingFt(0)).toBeCloseTo(27.3 / 2, 0);
  });
});

describe('of values that the log rounded', () => {
  const steps = (stepFt: number) => all(0).map((_, i) => 1000 - Math.floor(i / 2) * stepFt);

  it('half a step is added', () => {
    const plain = errorOf({}, { receiver: 'plain' });
    const rounded = errorOf({ altitudeGeometricFt: steps(100) }, { receiver: 'plain' });
    expect(rounded.heightFt(0)).toBeCloseTo(Math.hypot(13 * FEET_PER_METRE, 50), 9);
    expect(rounded.decidingFt(0)).toBe(rounded.heightFt(0));
    expect(plain.roundingFt).toBe(0);
    // No roll takes it away.
    const narrow = calibrated(rounded, Float64Array.of(600), [600], true);
    expect(narrow.heightFt(0)).toBeCloseTo(Math.hypot(13, 50), 9);
  });

  it('an altimeter that was flown by is known to half a step', () => {
    expect(errorOf({ altitudeIndicatedFt: steps(20) }).decidingFt(0)).toBe(10);
    expect(errorOf({ altitudeIndicatedFt: steps(7) }).decidingFt(0)).toBe(0);
  });

  it('of heights that hardly change round figures say nothing', () => {
    expect(errorOf({ altitudeIndicatedFt: all(1000) }).decidingFt(0)).toBe(0);
  });

  it('a step in the middle of the line makes all of a sink rate', () => {
    const track = trackOf({
      altitudeGeometricFt: all(NaN),
      altitudeTransponderFt: steps(100),
    });
    const error = positionErrorOf(track, 0);
    // 50 ft to either side of the middle of 5 s: 3 × 50 ÷ 5 ft/s.
    expect(sinkErrorFpm(error, 0, 5)).toBeCloseTo(30 * 60, 6);
  });

  it('a position to 0.001° is known to half of that, 182 ft', () => {
    const log = makeLog({ ...FLOWN, values: { altitudeGeometricFt: all(1000) } });
    const coarse = (values: Float64Array) => values.map((deg) => Math.round(deg * 1000) / 1000);
    const built = buildTrack(
      {
        ...log,
        values: {
          ...log.values,
          latDeg: coarse(log.values.latDeg).map((d, i) => d + i * 0.001),
          lonDeg: coarse(log.values.lonDeg),
        },
      },
      { undulationM: null, receiver: 'augmented' },
    );
    if (!built.ok) throw new Error(built.refusal.message);
    const side = 1.06 * SIDE_OF_RADIUS * FEET_PER_METRE;
    expect(positionErrorOf(built.value, 0).sideFt(0)).toBeCloseTo(
      Math.hypot(side, 0.0005 * 60 * 6076.115),
      0,
    );
  });
});

it('the error of an altitude of no named kind is a phone’s at least, since it may be another kind', () => {
  const unnamed = { altitudeGeometricFt: all(NaN), altitudeUnnamedFt: all(1000) };
  const error = errorOf(unnamed, { receiver: 'augmented' });
  expect(error.heightFrom).toBe('unnamed');
  expect(error.heightFt(0)).toBeCloseTo(20 * FEET_PER_METRE, 9);
  expect(errorOf({ ...unnamed, verticalAccuracyM: all(5) }, { receiver: 'augmented' }).heightFrom).toBe(
    'accuracy',
  );
});

describe('a height that was held to a roll', () => {
  const error = errorOf({}, { receiver: 'phone' });
  const timeS = Float64Array.of(0, 100, 300, 500, 600, 640);
  const narrow = calibrated(error, timeS, [600], true);
  const inClass = 20 * FEET_PER_METRE;

  it('is within 13 ft at the roll, 24 where the far end of the runway has no elevation', () => {
    expect(narrow.heightFt(4)).toBe(13);
    expect(calibrated(error, timeS, [600], false).heightFt(4)).toBeCloseTo(Math.hypot(13, 20), 9);
    expect(narrow.heightFrom).toBe('roll');
  });

  it('is off by more the longer before or after, by the class ten minutes away, and never more', () => {
    const halves = [...timeS.keys()].map((i) => narrow.heightFt(i));
    expect(halves[0]).toBeCloseTo(inClass, 9);
    for (const [from, to] of [
      [1, 0],
      [2, 1],
      [3, 2],
      [4, 3],
      [4, 5],
    ] as const)
      expect(halves[from]!).toBeLessThan(halves[to]!);
    expect(Math.max(...halves)).toBeCloseTo(inClass, 9);
    // Half of the variance departs with a time constant of 300 s: 13² + 65.6² (1 − e^(−100/300)) at 100 s.
    expect(halves[3]).toBeCloseTo(Math.hypot(13, inClass * Math.sqrt(1 - Math.exp(-1 / 3))), 9);
  });

  it('holds a drift of 30 ft in five minutes', () => {
    for (const [i, s] of timeS.entries())
      if (s >= 300 && s <= 600) expect(narrow.heightFt(i)).toBeGreaterThan((30 * (600 - s)) / 300);
  });

  it('counts from the nearest roll', () => {
    expect(calibrated(error, timeS, [0, 600], true).heightFt(0)).toBe(13);
  });

  it('decides gates as well as it is, where no altimeter does', () => {
    expect(narrow.decidingFt(4)).toBe(13);
    const both = errorOf({ altitudeIndicatedFt: all(1000) }, { receiver: 'phone' });
    expect(calibrated(both, timeS, [600], true).decidingFt(4)).toBe(0);
  });

  it('says nothing more of a sink rate', () => {
    expect(sinkErrorFpm(narrow, 4, 5)).toBe(sinkErrorFpm(error, 4, 5));
  });
});

/** Heights that err by a first-order walk, fitted by a line: the formula is held against a thousand walks. */
it('the error of a sink rate is that of a line through heights that wander', () => {
  const error = errorOf({}, { receiver: 'plain' });
  const sd = (13 * FEET_PER_METRE) / 1.959964 / Math.SQRT2;
  const random = seededRandom('heights that wander');
  const normal = () => random.gaussian();
  const slopes = Array.from({ length: 1000 }, () => {
    const [kept, step] = [Math.exp(-0.1 / 300), 0.1];
    let height = sd * normal();
    let [sum, moment] = [0, 0];
    // From −2.5 to 2.5 s: times whose mean is 0 need no intercept.
    for (let tenth = -25; tenth <= 25; tenth++) {
      const t = tenth * step;
      height = height * kept + sd * Math.sqrt(1 - kept ** 2) * normal();
      sum += t * height;
      moment += t * t;
    }
    return (sum / moment) * 60;
  });
  const measured = 1.959964 * Math.sqrt(slopes.reduce((a, b) => a + b * b, 0) / slopes.length);
  expect(Math.abs(sinkErrorFpm(error, 0, 5) / measured - 1)).toBeLessThan(0.08);
});
