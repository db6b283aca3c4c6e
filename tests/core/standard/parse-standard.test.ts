import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CRITERION_IDS } from '../../../core/standard/criterion-ids.ts';
import { parseStandard } from '../../../core/standard/parse-standard.ts';
import { SHIPPED } from '../../../core/standard/standards.ts';
import { ROOT } from '../../house/source-files.ts';
import { withValue } from '../facility/full-facility.ts';
import { FULL, LEAST, parse, standardOf } from './full-standard.ts';

function refusalOf(values: unknown) {
  const outcome = parse(values);
  if (outcome.ok) throw new Error('was not refused');
  return outcome.refusal;
}

/** Every value of a group with its dotted path, groups included; list entries as the sentences count them too. */
function paths(group: object, above = '', said = ''): [path: string, said: string, value: unknown][] {
  return Object.entries(group).flatMap(([key, value]: [string, unknown]) => {
    const isEntry = Array.isArray(group);
    const here = above === '' ? key : `${above}.${key}`;
    const words = isEntry ? `${said} #${Number(key) + 1}` : said === '' ? key : `${said}.${key}`;
    const inner = typeof value === 'object' && value !== null ? paths(value, here, words) : [];
    return [[here, words, value] as [string, string, unknown], ...inner];
  });
}
const ALL = paths(FULL);
const KEYS = ALL.filter(([path]) => !/\d$/.test(path));

describe('a slip in any key is refused by its name, with the right key beside it', () => {
  it.each(KEYS)('%s', (path, said) => {
    const at = path.lastIndexOf('.') + 1;
    const key = path.slice(at);
    const slip = key[1]! + key[0]! + key.slice(2);
    const refusal = refusalOf(
      withValue(withValue(FULL, path, undefined), path.slice(0, at) + slip, 'anything'),
    );
    expect(refusal.code).toBe('standard-unknown-key');
    const above = said.slice(0, said.length - key.length);
    expect(refusal.message).toMatch(/^s\.json, line \d+: /);
    expect(refusal.message).toContain(`: ${above}${slip} is not a key of a standard file.`);
    expect(refusal.tip).toBe(`Did you mean ${said}?`);
  });
});

const wrongFor = (value: unknown): unknown[] => {
  if (typeof value === 'number') return [`${value}`, 1e9, -1e9, null, true, [value], { value }];
  if (typeof value === 'string') return [7, '', '  ', 'x\u0007', null, false, [value], 'X'.repeat(3000)];
  return Array.isArray(value) ? [7, 'x', null, true, [7]] : ['x', null, true, []];
};

describe('a slip in any value is refused by its key', () => {
  it.each(ALL)('%s', (path, said, value) => {
    for (const wrong of wrongFor(value)) {
      const { message, code } = refusalOf(withValue(FULL, path, wrong));
      expect(message.replace(/^s\.json, line \d+: /, '').startsWith(said)).toBe(true);
      expect(message).not.toContain('Invalid');
      expect(code).toMatch(/^standard-(wrong-type|impossible-value|wrong-format|unknown-key)$/);
    }
  });
});

/** Keys that cannot be left out, and those without which what stands beside them makes no sense. */
const NEEDED =
  /^(format|id|title|source|own\.\d\.(id|title|quantity)|own\.1\.upper|(final|gates)\.airspeedKt|gates\.glidepathFullScale\.lower|minimums\.startWithinFt|minimums\.startWithinFt\.upper)$/;

describe('without a key the file is usable, or refused for want of it', () => {
  it.each(KEYS)('%s', (path) => {
    expect(parse(withValue(FULL, path, undefined)).ok).toBe(!NEEDED.test(path));
  });
});

const IMPOSSIBLE: [path: string, value: unknown, sentence: string][] = [
  // Needles: above 0 and at most full scale.
  [
    'final.localizerFullScale',
    0,
    'is 0: a localizer limit given as one number is above 0 and at most 1 of full scale',
  ],
  [
    'final.localizerFullScale',
    -0.5,
    'is -0.5: a localizer limit given as one number is above 0 and at most 1 of full scale',
  ],
  [
    'final.localizerFullScale',
    1.001,
    'is 1.001: a localizer limit given as one number is above 0 and at most 1 of full scale',
  ],
  [
    'gates.glidepathFullScale',
    75,
    'is 75: a glidepath limit given as one number is above 0 and at most 1 of full scale',
  ],
  [
    'final.glidepathFullScale',
    { lower: 0.5, upper: 0.2 },
    'has lower 0.5 and upper 0.2: lower lies below upper',
  ],
  ['final.glidepathFullScale', { lower: 0, upper: 0 }, 'has lower 0 and upper 0: lower lies below upper'],
  [
    'final.glidepathFullScale',
    { lower: 0.1, upper: 0.2 },
    'leaves out the centre: a glidepath limit has lower at most 0 and upper at least 0',
  ],
  [
    'final.glidepathFullScale',
    { upper: -0.1 },
    'leaves out the centre: a glidepath limit has lower at most 0 and upper at least 0',
  ],
  ['final.glidepathFullScale', {}, 'has neither lower nor upper: one of them is needed'],
  // The others.
  [
    'beforeFinal.altitudeFt',
    1001,
    'is 1001: an altitude limit given as one number is above 0 and at most 1000 ft',
  ],
  ['final.airspeedKt', 0, 'is 0: an airspeed limit given as one number is above 0 and at most 50 kt'],
  ['final.airspeedKt', { lower: 10, upper: -10 }, 'has lower 10 and upper -10: lower lies below upper'],
  ['final.airspeedBasis', 'vreff', 'is "vreff": an airspeed basis is target or vref'],
  ['final.countsFrom', 'localizer', 'is "localizer": where final counts from is fix or gate'],
  [
    'basedOn',
    'instrument',
    'is "instrument": a standard to build on is instrument-rating, airline-transport, skill-test, stabilized-approach or light-aircraft',
  ],
  ['gates.datum', 'runway', 'is "runway": a datum is airport, touchdown-zone or threshold'],
  ['gates.sinkFpm', 99, 'is 99: a sink rate (positive down) lies between 100 and 3000 ft/min'],
  ['gates.bankDeg', 61, 'is 61: a bank to either side lies between 1 and 60 degrees'],
  [
    'minimums',
    {},
    'has neither of startWithinFt and startWithinS: a missed approach is judged by one of them',
  ],
  [
    'minimums',
    { startWithinFt: 50, startWithinS: 3 },
    'has both of startWithinFt and startWithinS: a missed approach is judged by one of them',
  ],
  [
    'minimums.startWithinFt',
    { lower: 0 },
    'has no upper: a start far above decision altitude is no missed approach at minimums',
  ],
  [
    'minimums.startWithinFt',
    501,
    'is 501: a height above decision altitude given as one number is above 0 and at most 500 ft',
  ],
  [
    'minimums',
    { startWithinFt: { lower: 30, upper: 20 } },
    '.startWithinFt has lower 30 and upper 20: lower lies below upper',
  ],
  [
    'id',
    'Club 2',
    'is "Club 2": an id is lower-case letters and digits with hyphens between, at most 40 characters',
  ],
  ['own.0.quantity', 'bank', 'is "bank": a quantity is groundspeedKt, verticalSpeedFpm, bankDeg or pitchDeg'],
  ['own.0.lower', -91, 'is -91: bankDeg lies between -90 and 90 degrees'],
  ['own.1.upper', 401, 'is 401: groundspeedKt lies between 0 and 400 kt'],
  ['own.0.lower', 9, ' has lower 9 and upper 9: lower lies below upper'],
  ['own', Array.from({ length: 21 }, () => FULL.own[0]), 'is too long: own criteria are at most 20'],
];

describe('an impossible value is refused by name', () => {
  it.each(IMPOSSIBLE)('%s: %j %s', (path, value, sentence) => {
    const { message, code } = refusalOf(withValue(FULL, path, value));
    expect(code).toBe('standard-impossible-value');
    expect(message).toContain(`${sentence}.`);
  });

  it.each([
    ['final.glidepathFullScale', 'half', 'is "half": a glidepath limit'],
    ['beforeFinal.localizerFullScale', [0.5], 'is a list: a localizer limit'],
    ['final.airspeedKt', true, 'is true: an airspeed limit'],
  ])('and what is no limit at all is told what one is: %s: %j', (path, value, words) => {
    const { message, code } = refusalOf(withValue(FULL, path, value));
    expect(code).toBe('standard-wrong-type');
    expect(message).toContain(`${words} is a number, or a group in braces with lower and upper.`);
  });

  it.each([
    ['final.localizerFullScale', 1],
    ['final.localizerFullScale', 0.001],
    ['final.glidepathFullScale', { lower: 0, upper: 0.5 }],
    ['final.glidepathFullScale', { lower: -0.5, upper: 0 }],
    ['final.glidepathFullScale', { lower: -1 }],
    ['final.airspeedKt', { lower: 5, upper: 10 }],
    ['minimums.startWithinFt', 500],
    ['own.0.lower', 8.9],
    ['own.1.upper', 400],
  ])('but %s: %j is possible', (path, value) => {
    expect(parse(withValue(FULL, path, value)).ok).toBe(true);
  });
});

describe('a basis without its limit, and gates at other heights, are told', () => {
  it.each([
    [
      { final: { airspeedBasis: 'vref' } },
      'final.airspeedBasis is "vref": that says what a limit counts from, and no limit stands beside it.',
    ],
    [
      { gates: { airspeedBasis: 'target' } },
      'gates.airspeedBasis is "target": that says what a limit counts from, and no limit stands beside it.',
    ],
    // The gates are two events of the approach: a standard that moved them would be judged where they stand.
    [{ gates: { visualFt: 400 } }, 'gates.visualFt is not a key of a standard file.'],
    [{ gates: { instrumentFt: 1200 } }, 'gates.instrumentFt is not a key of a standard file.'],
  ])('%j', (more, sentence) => {
    for (const base of [{}, { basedOn: 'skill-test' }])
      expect(refusalOf({ ...LEAST, ...base, ...more }).message).toContain(`: ${sentence}`);
  });
});

describe('an id that is taken is refused', () => {
  const own = (...ids: string[]) => ({
    ...LEAST,
    own: ids.map((id) => ({ id, title: 'T', quantity: 'pitchDeg', lower: -5 })),
  });

  it.each(SHIPPED.map(({ id }) => id))('%s, which comes with the program', (id) => {
    expect(refusalOf({ ...LEAST, id })).toMatchObject({
      code: 'standard-id-taken',
      message: `s.json, line 3: id is "${id}": that is the id of a standard that comes with the program.`,
      tip: `To build on it, give "basedOn": "${id}" and an id of your own.`,
    });
    expect(refusalOf(own('fine', id)).message).toContain(
      `own #2.id is "${id}": that is the id of a standard that comes with the program.`,
    );
  });

  it.each(CRITERION_IDS)('%s, which every standard has', (id) => {
    expect(refusalOf(own(id))).toMatchObject({
      code: 'standard-id-taken',
      message: `s.json, line 8: own #1.id is "${id}": that is the id of a criterion that every standard has.`,
      firstLine: 8,
      tip: 'Choose another id.',
    });
  });

  it('one given twice', () => {
    expect(refusalOf(own('pitch', 'nose', 'pitch')).message).toContain(
      'own #3.id is "pitch": that is the id of a criterion above.',
    );
    expect(standardOf(own('pitch', 'nose')).own.map(({ id }) => id)).toEqual(['pitch', 'nose']);
  });
});

describe('the tip says what to do', () => {
  it.each([
    ['final.airspeedBasis', 'vreff', 'Did you mean vref?'],
    ['gates.datum', 'touchdown zone', 'Did you mean touchdown-zone?'],
    ['gates.datum', 'somewhere', null],
    ['final.localizerFullScale', '0,5', 'Write numbers without quotes, and decimals with a point.'],
    ['final.airspeedKt', '±10', 'Write numbers without quotes, and decimals with a point.'],
    ['final.airspeedKt', 'ten', null],
    ['gates.sinkFpm', '900', 'Write numbers without quotes, and decimals with a point.'],
    ['final.airspeedKt', null, 'What is not known is left out, key and all; it is not written as null.'],
    ['glidepathFullScale', 0.5, 'It belongs in final.glidepathFullScale or gates.glidepathFullScale.'],
    ['quantity', 'bankDeg', 'It belongs in own.quantity.'],
    [
      'lower',
      -5,
      'Known here are format, id, title, source, basedOn, beforeFinal, final, gates, minimums, own.',
    ],
    ['format', 'halfdot-facility/1', 'The file should begin { "format": "halfdot-standard/1", ...'],
  ])('%s: %j', (path, value, tip) => expect(refusalOf(withValue(FULL, path, value)).tip).toBe(tip));
});

describe('what is no standard file at all is refused in one sentence', () => {
  it('broken JSON, with line and column', () => {
    expect(parseStandard('{\n "id": club }', 's.json')).toMatchObject({
      ok: false,
      refusal: {
        code: 'standard-not-json',
        message: 's.json, line 2, column 8: a value was expected, it has "c".',
        tip: expect.stringMatching(/^A standard file is JSON: /) as string,
      },
    });
  });

  it('a list', () => {
    expect(refusalOf([])).toMatchObject({
      code: 'standard-wrong-type',
      message: 's.json, line 1: the file is a list: a standard is a group in braces.',
    });
  });

  it('a facility file, told first of all that it is another format', () => {
    expect(refusalOf({ ...LEAST, format: 'halfdot-facility/1', runway: {} }).code).toBe(
      'standard-wrong-format',
    );
  });

  it('a log', () => {
    expect(parseStandard('x'.repeat(200_001), 'log.csv')).toMatchObject({
      ok: false,
      refusal: {
        code: 'standard-too-large',
        message: 'log.csv is no standard file: it has more than 200000 characters.',
      },
    });
  });

  it('a key given twice', () => {
    const text = JSON.stringify(LEAST).replace('"id"', '"id":"other","id"');
    expect(parseStandard(text, 's.json')).toMatchObject({
      ok: false,
      refusal: { code: 'standard-repeated-key' },
    });
  });
});

it("the developers' page shows a file that is usable", () => {
  const page = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8');
  const example = /```json\n(\{\s*"format": "halfdot-standard\/1"[^`]*)```/.exec(page)![1]!;
  const parsed = parseStandard(example, 'example.json');
  expect(parsed).toMatchObject({
    ok: true,
    value: {
      id: 'before-the-checkride',
      final: {
        localizer: { lower: -0.5, upper: 0.5 },
        glidepath: { lower: -0.25, upper: 0.5 },
        airspeedKt: { upper: 10 },
      },
      own: [{ id: 'bank-on-final', quantity: 'bankDeg', limit: { lower: -10, upper: 10 } }],
    },
  });
  for (const { id } of SHIPPED) expect(page).toContain(`\`${id}\``);
});
