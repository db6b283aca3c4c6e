import { describe, expect, it } from 'vitest';
import { facilityProblems, parseFacility } from '../../../core/facility/parse-facility.ts';
import { FULL, LEAST, withValue } from './full-facility.ts';

const parse = (values: unknown) => parseFacility(JSON.stringify(values, null, 2), 'f.json');

function refusalOf(values: unknown) {
  const outcome = parse(values);
  if (outcome.ok) throw new Error('was not refused');
  return outcome.refusal;
}

/** Every value of a facility with its dotted path, groups included. */
function paths(group: object, above = ''): [string, unknown][] {
  const found: [string, unknown][] = [];
  for (const [key, value] of Object.entries(group)) {
    found.push([above + key, value]);
    if (typeof value === 'object') found.push(...paths(value as object, `${above}${key}.`));
  }
  return found;
}
const ALL = paths(FULL);

describe('a facility is read as it stands', () => {
  it('with every key', () => {
    expect(parse(FULL)).toEqual({ ok: true, value: FULL, issues: [] });
  });

  it('with the least that it needs', () => {
    expect(parse(LEAST)).toEqual({ ok: true, value: LEAST, issues: [] });
  });

  it('with a byte-order mark', () => {
    expect(parseFacility(`\uFEFF${JSON.stringify(LEAST)}`, 'f.json').ok).toBe(true);
  });

  it.each(ALL.map(([path]) => path))('without the optional %s, or refused for want of it', (path) => {
    const outcome = parse(withValue(FULL, path, undefined));
    const needed =
      /^(format|name|runway|glidepath|runway\.designator|.*\.threshold|.*(farEnd|threshold|antenna)\.(latDeg|lonDeg)|(runway\.threshold|glidepath\.antenna)\.elevationFt|glidepath\.(angleDeg|thresholdCrossingHeightFt))$/;
    expect(outcome.ok).toBe(!needed.test(path));
    if (!outcome.ok) expect(outcome.refusal.message).toContain(`${path} is missing`);
  });
});

describe('a slip in any key is refused by its name, with the right key beside it', () => {
  const slips: [string, (key: string) => string][] = [
    ['a letter too few', (key) => key.slice(0, 2) + key.slice(3)],
    ['a letter too many', (key) => `${key.slice(0, 2)}q${key.slice(2)}`],
    ['two letters swapped', (key) => key[1]! + key[0]! + key.slice(2)],
    ['a capital', (key) => key[0]!.toUpperCase() + key.slice(1)],
  ];
  it.each(ALL.map(([path]) => path))('%s', (path) => {
    const above = path.includes('.') ? path.slice(0, path.lastIndexOf('.') + 1) : '';
    const key = path.slice(above.length);
    for (const [, slip] of slips) {
      const renamed = withValue(withValue(FULL, path, undefined), above + slip(key), 'anything');
      const refusal = refusalOf(renamed);
      expect(refusal.code).toBe('facility-unknown-key');
      expect(refusal.message).toContain(`${above}${slip(key)} is not a key`);
      expect(refusal.tip).toBe(`Did you mean ${path}?`);
    }
  });
});

const wrongFor = (value: unknown): unknown[] => {
  if (typeof value === 'number') return [`${value}`, 1e9, -1e9, null, true, [value], { value }];
  if (typeof value === 'string') return [7, '', '  ', 'x\u0007', null, false, [value], 'x'.repeat(3000)];
  return [7, 'x', null, true, []];
};

describe('a slip in any value is refused by its key', () => {
  it.each(ALL)('%s', (path, value) => {
    for (const wrong of wrongFor(value)) {
      const refusal = refusalOf(withValue(FULL, path, wrong));
      expect(refusal.message).toMatch(new RegExp(`^f\\.json, line \\d+: ${path.replaceAll('.', '\\.')} `));
      expect(refusal.message).not.toContain('Invalid');
      expect(refusal.code).toMatch(/^facility-(wrong-type|impossible-value|wrong-format)$/);
    }
  });
});

describe('the sentence says what was found, where, and what would be right', () => {
  it.each([
    [
      'runway.threshold.latDeg',
      95,
      'facility-impossible-value',
      'f.json, line 10: runway.threshold.latDeg is 95: a latitude lies between -90 and 90.',
      null,
    ],
    [
      'runway.threshold.lonDeg',
      180,
      'facility-impossible-value',
      'f.json, line 11: runway.threshold.lonDeg is 180: a longitude lies from -180 to below 180.',
      null,
    ],
    [
      'glidepath.angleDeg',
      '3,0',
      'facility-wrong-type',
      'f.json, line 36: glidepath.angleDeg is "3,0": a glidepath angle is a number.',
      'Write numbers without quotes, and decimals with a point.',
    ],
    [
      'minimums.rvrFt',
      null,
      'facility-wrong-type',
      'f.json, line 47: minimums.rvrFt is null: a runway visual range is a number.',
      'What is not known is left out, key and all; it is not written as null.',
    ],
    [
      'runway.designator',
      '37',
      'facility-impossible-value',
      'f.json, line 8: runway.designator is "37": a runway designator is 01 to 36, with L, C or R where runways are parallel.',
      null,
    ],
    [
      'format',
      'halfdot-facility/2',
      'facility-wrong-format',
      'f.json, line 2: format must be "halfdot-facility/1".',
      'The file should begin { "format": "halfdot-facility/1", ...',
    ],
    [
      'glidepath',
      undefined,
      'facility-localizer-only',
      'f.json, line 1: glidepath is missing: a glidepath (localizer-only approaches are not supported yet) is needed.',
      null,
    ],
    [
      'minimums',
      [1],
      'facility-wrong-type',
      'f.json, line 45: minimums is a list: minimums is a group in braces.',
      null,
    ],
    [
      'ident',
      'IQLM-AND-MORE-AND-MORE-AND-MORE-AND-MORE-AND',
      'facility-impossible-value',
      'f.json, line 4: ident is too long: an ident has at most 8 characters.',
      null,
    ],
  ])('%s: %j', (path, value, code, message, tip) => {
    expect(refusalOf(withValue(FULL, path, value))).toMatchObject({
      severity: 'refusal',
      code,
      message,
      tip,
    });
  });

  it('a long text is cut where it is quoted', () => {
    const message = refusalOf(withValue(FULL, 'frequencyMHz', 'x'.repeat(500))).message;
    expect(message.length).toBeLessThan(140);
    expect(message).toContain('xxx...');
  });

  it('a known key in the wrong group is told its home', () => {
    const refusal = refusalOf({ ...LEAST, decisionAltitudeFt: 300 });
    expect(refusal.tip).toBe('It belongs in minimums.decisionAltitudeFt.');
  });

  it('a key that resembles nothing is told what is known there', () => {
    const refusal = refusalOf(withValue(FULL, 'minimums.weather', 'fine'));
    expect(refusal.tip).toBe('Known here are decisionAltitudeFt, rvrFt.');
  });

  it('a key that every object inherits is still unknown', () => {
    const text = JSON.stringify(LEAST).replace('{', '{"__proto__":{},"constructor":1,');
    const outcome = parseFacility(text, 'f.json');
    expect(outcome.issues.map(({ message }) => message)).toEqual([
      'f.json, line 1: __proto__ is not a key of a facility file.',
      'f.json, line 1: constructor is not a key of a facility file.',
    ]);
  });

  it('several problems are all told, the first is the refusal', () => {
    const wrong = withValue(withValue(FULL, 'runway.threshold.latDeg', 95), 'glidepath.angel', 3);
    const outcome = parse(withValue(wrong, 'name', ''));
    if (outcome.ok) throw new Error('was not refused');
    expect(outcome.issues.map(({ code }) => code)).toEqual([
      'facility-unknown-key',
      'facility-impossible-value',
      'facility-impossible-value',
    ]);
    expect(outcome.refusal).toBe(outcome.issues[0]);
    expect(outcome.issues.map(({ firstLine }) => firstLine)).toEqual([44, 3, 10]);
  });
});

describe('a file of another format is told so before anything else', () => {
  it('also when keys of that format are unknown here', () => {
    const outcome = parse({ ...LEAST, format: 'halfdot-facility/2', somethingNew: 1, name: 7 });
    expect(outcome.issues.map(({ code }) => code)).toEqual([
      'facility-wrong-format',
      'facility-unknown-key',
      'facility-wrong-type',
    ]);
  });
});

describe('what is no facility file at all is refused in one sentence', () => {
  it('broken JSON, with line and column', () => {
    const outcome = parseFacility('{\n "format": "halfdot-facility/1",\n "name": Quillmere\n}', 'f.json');
    expect(outcome).toMatchObject({
      ok: false,
      refusal: {
        code: 'facility-not-json',
        message: 'f.json, line 3, column 10: a value was expected, it has "Q".',
        firstLine: 3,
      },
      issues: [],
    });
  });

  it.each([['[]'], ['7'], ['null'], ['"text"']])('%s is no group', (text) => {
    const outcome = parseFacility(text, 'f.json');
    expect(outcome).toMatchObject({ ok: false, refusal: { code: 'facility-wrong-type' } });
    expect(!outcome.ok && outcome.refusal.message).toMatch(
      /^f\.json, line 1: the file is .*a group in braces\.$/,
    );
  });

  it('an empty group lacks everything that is needed', () => {
    const outcome = parseFacility('{}', 'f.json');
    expect(outcome.issues.map(({ message }) => message.split(': ')[1])).toEqual([
      'format is missing.',
      'name is missing',
      'runway is missing',
      'glidepath is missing',
    ]);
  });

  it('a file far too large is not read', () => {
    const log = `{"a":"${'x'.repeat(200_000)}"}`;
    expect(parseFacility(log, 'log.csv')).toMatchObject({
      ok: false,
      refusal: { code: 'facility-too-large', message: expect.stringContaining('log.csv') as string },
    });
    const room = 200_000 - JSON.stringify(LEAST).length;
    expect(parseFacility(JSON.stringify(LEAST) + ' '.repeat(room), 'f.json').ok).toBe(true);
  });

  it('a key given twice is refused, though each would do', () => {
    const text = JSON.stringify(LEAST).replace('"name"', '"name":"Other","name"');
    expect(parseFacility(text, 'f.json')).toMatchObject({
      ok: false,
      refusal: { code: 'facility-repeated-key', message: 'f.json, line 1: name is given twice.' },
    });
  });
});

describe('what is wrong with a facility is told by its key as well', () => {
  it('as many times, and in the order, that it is told in sentences', () => {
    const text = JSON.stringify({ ...FULL, name: '', notes: 'x', glidepath: { angleDeg: 33 } });
    const outcome = parseFacility(text, 'f.json');
    const problems = facilityProblems(text);
    expect(problems.map(({ path }) => path.join('.'))).toEqual([
      'notes',
      'name',
      'glidepath.angleDeg',
      'glidepath.thresholdCrossingHeightFt',
    ]);
    expect(problems.map(({ code }) => code)).toEqual(outcome.issues.map(({ code }) => code));
  });

  it('also what only its values together are, and a key given twice', () => {
    const low = withValue(FULL, 'minimums.decisionAltitudeFt', -100);
    expect(facilityProblems(JSON.stringify(low))).toMatchObject([
      { code: 'facility-impossible-value', path: ['minimums', 'decisionAltitudeFt'] },
    ]);
    const twice = JSON.stringify(FULL).replace('{', '{"name":"Twice",');
    expect(facilityProblems(twice)).toMatchObject([{ code: 'facility-repeated-key', path: ['name'] }]);
  });

  it('not at all where nothing is wrong, or where there are no keys', () => {
    expect(facilityProblems(JSON.stringify(FULL))).toEqual([]);
    expect(facilityProblems('{"name": ')).toEqual([]);
  });
});
