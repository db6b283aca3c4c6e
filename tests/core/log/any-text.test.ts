import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseNumber } from '../../../core/log/parse-number.ts';
import { read } from './reading.ts';

/** Bits of logs, whole and broken, from which files are put together. */
const bits = [
  'Time,Latitude,Longitude,AltMSL (ft),GS (kt),Note\n',
  '2024-05-01T10:00:00Z,47.1,8.1,3000,100,\n',
  '2024-05-01T10:00:01Z,47.2,8.2,3010,101,"a ""b"" c"\r\n',
  '2024-05-01T10:00:02Z,47.3,8.3,3020,102,"two\nlines"\n',
  '2024-05-01T10:00:03Z,47.3,8.3,3020,102,"stray\n',
  '01/02/2024 10:00:00,47.3,8.3,x,-1,\n',
  '# comment, with "quote\n',
  '\n',
  '\0\0\0',
  '"',
  ',',
  '<gpx><trk><trkseg>',
  '<trkpt lat="47" lon="8"><ele>1</ele><time>2024-05-01T10:00:00Z</time></trkpt>',
  '<!-- c --><a b="&lt;">',
  '</trkseg></trk></gpx>',
];
const file = fc.array(fc.constantFrom(...bits), { maxLength: 14 }).map((parts) => parts.join(''));

describe('any text', () => {
  it('gives the same answer however it is cut into chunks', async () => {
    await fc.assert(
      fc.asyncProperty(file, fc.integer({ min: 1, max: 40 }), async (text, chunkSize) => {
        expect(await read(text, {}, chunkSize)).toEqual(await read(text));
      }),
      { numRuns: 300 },
    );
  });

  it('a long log gives the same answer in chunks of one character', async () => {
    const rows = Array.from(
      { length: 4000 },
      (_, i) => `${1714557600 + i},47.${i},8.${i},${i},"n ${i % 7 === 0 ? '""' : ''}"`,
    );
    const text = ['Unix time,Lat,Lon,AltMSL (ft),Note', ...rows].join('\r\n');
    const whole = await read(text);
    expect(whole.ok && whole.value.timeS.length).toBe(4000);
    expect(await read(text, {}, 1)).toEqual(whole);
  });

  it('is read or refused, never an exception', async () => {
    await fc.assert(
      fc.asyncProperty(fc.oneof(fc.string({ unit: 'binary', maxLength: 300 }), file), async (text) => {
        const outcome = await read(text);
        if (!outcome.ok) expect(outcome.refusal.severity).toBe('refusal');
        else expect(outcome.value.timeS.length).toBeGreaterThan(0);
      }),
      { numRuns: 300 },
    );
  });
});

describe('numbers', () => {
  it('every number that JavaScript writes is read back exactly', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.double({ noNaN: true, noDefaultInfinity: true }),
          fc.integer(),
          fc.double({ min: -1e4, max: 1e4, noNaN: true }),
        ),
        (number) => {
          const expected = Number(String(number));
          expect(parseNumber(String(number), '.')).toBe(
            expected === 0 ? parseNumber(String(number), '.') : expected,
          );
          expect(parseNumber(`  ${String(number).replace('.', ',')}\r`, ',')).toBe(
            parseNumber(String(number), '.'),
          );
        },
      ),
    );
  });

  it('decimals of up to 15 digits are the nearest double', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 999_999_999 }),
        fc.integer({ min: 0, max: 9 }),
        (digits, decimals) => {
          const text = `${digits}`.padStart(decimals + 1, '0');
          const number = decimals === 0 ? text : `${text.slice(0, -decimals)}.${text.slice(-decimals)}`;
          expect(parseNumber(number, '.')).toBe(Number(number));
        },
      ),
    );
  });

  it.each([
    ['12', 12],
    ['+12.5', 12.5],
    ['-.5', -0.5],
    ['5.', 5],
    ['1.5e3', 1500],
    ['1E-2', 0.01],
    ['−3', -3],
    ['1,234,567.5', 1234567.5],
    ["1'234", 1234],
    ['1 234', 1234],
    ['12345678901234567890', 1.2345678901234567e19],
    ['0.1000000000000000055', 0.1],
    ['\u00a07', 7],
  ])('%j is %d', (text, value) => {
    expect(parseNumber(text, '.')).toBe(value);
  });

  it.each([
    '',
    ' ',
    '-',
    '.',
    '-.',
    '1.2.3',
    '1,5',
    '12ft',
    '0x10',
    'Infinity',
    'NaN',
    '1e',
    'e5',
    '--1',
    '1-2',
    '12,34.5',
    '1\u00002',
  ])('%j is none', (text) => {
    expect(parseNumber(text, '.')).toBeNaN();
  });
});
