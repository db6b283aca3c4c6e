import { describe, expect, it } from 'vitest';
import { SHIPPED, standardById } from '../../../core/standard/standards.ts';
import { FULL, LEAST, standardOf } from './full-standard.ts';
import { limitsOf } from './limits-of.ts';

const from = (source: string) => ({ code: null, source, status: 'own choice' });
const OWN = from(FULL.source);
const based = (basedOn: string, more: object = {}) => standardOf({ ...LEAST, basedOn, ...more });

it('a standard with every key is that and nothing of its base', () => {
  expect(standardOf(FULL)).toEqual({
    id: 'club-2',
    title: 'Club standard',
    source: 'Club handbook, section 4',
    referenceId: null,
    beforeFinal: {
      localizer: { lower: -0.8, upper: 0.8, ...OWN },
      altitudeFt: { lower: -50, upper: 150, ...OWN },
      airspeedKt: { lower: -12, upper: 12, ...OWN },
    },
    final: {
      localizer: { lower: -0.6, upper: 0.6, ...OWN },
      glidepath: { lower: -0.4, upper: 0.7, ...OWN },
      airspeedKt: { lower: 0, upper: 15, ...OWN },
      speedBasis: 'vref',
      airspeedAsymmetricKt: { lower: 0, upper: 25, ...OWN },
      countsFrom: 'gate',
    },
    gates: {
      instrumentFt: 1000,
      visualFt: 500,
      datum: 'threshold',
      source: `Club handbook, section 4; what it leaves open: ${standardById('skill-test')!.gates.source}`,
      localizer: { lower: -0.55, upper: 0.55, ...OWN },
      glidepath: { lower: -0.35, upper: null, ...OWN },
      airspeed: { lower: -7, upper: 7, ...OWN },
      speedBasis: 'target',
      sinkFpm: { lower: null, upper: 900, ...OWN },
      bankDeg: { lower: -12, upper: 12, ...OWN },
    },
    minimums: { kind: 'start-within-height', limit: { lower: -10, upper: 40, ...OWN } },
    tasks: [],
    own: [
      {
        id: 'bank',
        title: 'Bank on final',
        quantity: 'bankDeg',
        limit: { lower: -8, upper: 9, ...from('Chief instructor') },
      },
      {
        id: 'groundspeed',
        title: 'Groundspeed',
        quantity: 'groundspeedKt',
        limit: { lower: null, upper: 130, ...OWN },
      },
    ],
    lacks: {},
  });
});

describe('a standard that gives nothing', () => {
  it.each(SHIPPED.map((shipped) => [shipped.id, shipped] as const))(
    'has the limits of %s when based on it, and covers no task of it',
    (id, shipped) => {
      const { beforeFinal, final, gates, minimums, lacks } = shipped;
      expect(based(id)).toEqual({
        id: 'least',
        title: 'Least',
        source: 'Nobody',
        referenceId: null,
        beforeFinal,
        final,
        gates,
        minimums,
        tasks: [],
        own: [],
        lacks: lacks ?? {},
      });
    },
  );

  it('has, based on nothing, the gates of the handbook and no other limit, and says so of each criterion', () => {
    const bare = standardOf(LEAST);
    expect(limitsOf(bare).map(([path, { lower, upper }]) => [path, lower, upper])).toEqual([
      ['gates.sinkFpm', null, 1000],
      ['gates.bankDeg', -15, 15],
    ]);
    expect(bare.gates).toMatchObject({ instrumentFt: 1000, visualFt: 500, datum: 'touchdown-zone' });
    expect(bare.final).toMatchObject({ speedBasis: 'target', countsFrom: 'fix' });
    expect(bare.minimums).toBeNull();
    expect(Object.keys(bare.lacks!)).toEqual([
      'localizer-before-final',
      'altitude-before-final',
      'localizer-final',
      'glidepath-final',
      'airspeed-final',
      'minimums',
    ]);
    expect(new Set(Object.values(bare.lacks!))).toEqual(new Set(['the standard gives no limit for it']));
  });
});

describe('what is given for final', () => {
  const { gates } = based('instrument-rating', { final: { localizerFullScale: 0.5 } });

  it('holds at the gates too, and what is not given stays', () => {
    expect(gates.localizer).toEqual({ lower: -0.5, upper: 0.5, ...from('Nobody') });
    expect(gates.glidepath).toEqual(standardById('instrument-rating')!.gates.glidepath);
    expect(gates.source).toMatch(
      /^Nobody; what it leaves open: 500 ft, sink rate and bank after FAA-H-8083-3C/,
    );
  });

  it('brings its own basis of speed to the gates', () => {
    const vref = based('light-aircraft', { final: { airspeedKt: 10, airspeedBasis: 'vref' } });
    expect([vref.final.speedBasis, vref.gates.speedBasis]).toEqual(['vref', 'vref']);
    const target = based('stabilized-approach', { final: { airspeedKt: 10, airspeedBasis: 'target' } });
    expect([target.final.speedBasis, target.gates.speedBasis]).toEqual(['target', 'target']);
  });

  it('counts from what the base counts from when it does not say', () => {
    const narrower = based('stabilized-approach', { final: { airspeedKt: { lower: 0, upper: 10 } } });
    expect(narrower.final).toMatchObject({ speedBasis: 'vref', airspeedKt: { lower: 0, upper: 10 } });
    expect(narrower.gates).toMatchObject({ speedBasis: 'vref', airspeed: { lower: 0, upper: 10 } });
  });

  it('leaves the engine-out band of its base alone, unless that counted from something else', () => {
    const wider = based('skill-test', { final: { airspeedKt: 8 } });
    expect(wider.final.airspeedAsymmetricKt).toMatchObject({ lower: -5, upper: 10 });
    const vref = based('skill-test', { final: { airspeedKt: 8, airspeedBasis: 'vref' } });
    expect(vref.final.airspeedAsymmetricKt).toBeNull();
  });
});

describe('at the gates alone', () => {
  it('a speed limit counts from what final counts from, else from what is said there', () => {
    const plain = based('stabilized-approach', { gates: { airspeedKt: 5 } });
    expect(plain.gates).toMatchObject({ speedBasis: 'vref', airspeed: { lower: -5, upper: 5 } });
    expect(plain.final).toEqual(standardById('stabilized-approach')!.final);
    const said = based('stabilized-approach', { gates: { airspeedKt: 5, airspeedBasis: 'target' } });
    expect(said.gates.speedBasis).toBe('target');
    expect(said.final.speedBasis).toBe('vref');
  });
});

describe('at minimums', () => {
  it.each([
    [{ startWithinFt: 30 }, { kind: 'start-within-height', limit: { lower: 0, upper: 30 } }],
    [{ startWithinFt: { upper: 30 } }, { kind: 'start-within-height', limit: { lower: null, upper: 30 } }],
    [{ startWithinS: 5 }, { kind: 'start-within-time', seconds: 5, limit: { lower: null, upper: 5 } }],
  ])('%j is %j, whatever the base asks', (minimums, rule) => {
    for (const { id } of SHIPPED) expect(based(id, { minimums }).minimums).toMatchObject(rule);
  });
});

it('a reason of the base goes when the limit is given', () => {
  const given = based('airline-transport', { beforeFinal: { localizerFullScale: 1 } });
  expect(given.beforeFinal.localizer).toMatchObject({ lower: -1, upper: 1 });
  expect(given.lacks).toEqual({});
});
