import fc from 'fast-check';
import { expect, it } from 'vitest';
import { draftFromRunway } from '../../../core/records/draft-from-runway.ts';
import { RUNWAY_HEADER, runwayTableText, SAMPLE_RUNWAYS } from '../../support/samples/runway-table.ts';
import { readTable } from './reading-runways.ts';

/** Tables of chance; HALFDOT_LONG reads a million (`npm run test:long`). */
const TABLES = process.env['HALFDOT_LONG'] ? 1_000_000 : 20_000;

const text = runwayTableText(SAMPLE_RUNWAYS);
const [header, ...rows] = text.trimEnd().split('\n');
const names = header!.split(',');

/** A cell of chance: what such cells hold, at its limits and beyond, and what no cell should. */
const cell = fc.oneof(
  fc.constantFrom(
    '',
    '0',
    '-0',
    '90',
    '-90',
    '180',
    '-180.0000001',
    '1e3',
    'NaN',
    '"07"',
    '36R',
    'H1',
    '"ZZPE"',
  ),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
  fc.double({ min: -181, max: 181, noNaN: true }).map((deg) => String(Math.fround(deg))),
  fc.integer({ min: -100, max: 30_000 }).map(String),
  fc.string({ unit: 'binary', maxLength: 6 }),
);
/** A whole row of cells that such a row may have, some of them of chance. */
const row = fc
  .tuple(fc.constantFrom(...rows), fc.array(fc.tuple(fc.nat(names.length - 1), cell), { maxLength: 4 }))
  .map(([line, changes]) => {
    const cells = line.split(',');
    for (const [at, value] of changes) cells[at] = value;
    return cells.join(',');
  });
const headers = fc.oneof(
  { weight: 6, arbitrary: fc.constant(header!) },
  fc.shuffledSubarray(names, { minLength: 8 }).map((some) => some.join(',')),
  fc.constantFrom('', '\u{feff}', names.join(';'), RUNWAY_HEADER.join('\t'), `${header!},"le_ident"`),
);
const bit = fc.oneof(
  { weight: 5, arbitrary: row },
  fc.constantFrom('', '"', ',', '\0\0', '"a\nb"', '\r'),
  fc.string({ unit: 'binary', maxLength: 30 }),
);
const table = fc
  .tuple(headers, fc.array(bit, { maxLength: 5 }), fc.constantFrom('\n', '\r\n', '\r'))
  .map(([first, more, end]) => [first, ...more].join(end));

it('any table is read or refused with a code, and any row of it drafted, never an exception', async () => {
  const seen = new Set<string>();
  let drafted = 0;
  const airport = fc.constantFrom('ZZPE', 'ZZCH', 'zzwh', '', null);
  await fc.assert(
    fc.asyncProperty(table, airport, fc.integer({ min: 1, max: 2000 }), async (made, asked, size) => {
      const outcome = await readTable(made, asked, size);
      for (const { code } of outcome.ok ? outcome.issues : [outcome.refusal]) {
        expect(code).toMatch(/^[a-z]+(?:-[a-z]+)+$/);
        seen.add(code);
      }
      for (const runway of outcome.ok ? outcome.value.runways : [])
        for (const end of ['low', 'high'] as const) {
          const { facility, origins, issues } = draftFromRunway(runway, end);
          expect(issues.length).toBeGreaterThan(0);
          expect(JSON.stringify(facility)).not.toMatch(/null|\{\}\}/);
          expect(Object.values(origins).every((origin) => origin.includes('(line '))).toBe(true);
          for (const { code } of issues) seen.add(code);
          drafted++;
        }
    }),
    { numRuns: TABLES },
  );
  // That the tables are of every kind, the good ones among them.
  expect(drafted).toBeGreaterThan(TABLES / 4);
  expect([...seen].toSorted()).toEqual(
    [
      'runway-closed',
      'runway-elevation-unknown',
      'runway-ends-exchanged',
      'runway-heading-disagrees',

      'runway-length-disagrees',
      'runway-position-coarse',
      'runway-quote-unclosed',
      'runway-row-too-short',
      'runway-second-hand',
      'runway-threshold-unknown',
      'runway-value-unreadable',
      'runway-without-position',
      'runways-column-missing',
      'runways-column-twice',
      'runways-empty',
      'runways-no-rows',
      'runways-no-such-airport',
      'runways-not-a-table',
    ].toSorted(),
  );
}, 1_200_000);
