import fc from 'fast-check';
import { expect, it } from 'vitest';
import { checkFacility } from '../../../core/facility/contradictions.ts';
import { deriveGeometry } from '../../../core/facility/derive-geometry.ts';
import { parseFacility } from '../../../core/facility/parse-facility.ts';
import { decodeAirport } from '../../../core/records/airport-record.ts';
import { draftFromRecords } from '../../../core/records/draft-from-records.ts';
import { decodeFix, isFix } from '../../../core/records/fix-record.ts';
import { ilsIn } from '../../../core/records/ils-listing.ts';
import { RECORDS_ISSUES } from '../../../core/records/issue-codes.ts';
import { decodeLeg } from '../../../core/records/leg-record.ts';
import { decodeLocalizer } from '../../../core/records/localizer-record.ts';
import { kindOfRecord } from '../../../core/records/record-kind.ts';
import type { RecordsIndex } from '../../../core/records/records-index.ts';
import { decodeRunway } from '../../../core/records/runway-record.ts';
import { scanRecords } from '../../../core/records/scan-records.ts';
import { regionRecords } from '../../support/records/fictional-region.ts';
import published from '../../reference/official-records.json' with { type: 'json' };
import { idle } from './reading.ts';

/** Mutated inputs, of which a tenth are whole files: 20,000; HALFDOT_LONG tries a million (`npm run test:long`). */
const LONG = process.env['HALFDOT_LONG'] !== undefined;
const INPUTS = LONG ? 1_000_000 : 20_000;
const FILES = INPUTS / 10;
/** The same ones each time, but for the long run. */
const RUN = LONG ? {} : { seed: 20_260_314 };
const TIMEOUT_MS = LONG ? 3_600_000 : 120_000;

const REGION = regionRecords().trimEnd().split('\n');
const LINES = [...REGION, ...published.rows.map(({ record }) => record)];
const known = new Set(Object.keys(RECORDS_ISSUES));

interface Slip {
  readonly at: number;
  readonly kind: 'replace' | 'insert' | 'delete' | 'cut' | 'blank' | 'copy';
  readonly text: string;
}
const slips = fc.array(
  fc.record({
    at: fc.nat(140),
    kind: fc.constantFrom<Slip['kind']>('replace', 'insert', 'delete', 'cut', 'blank', 'copy'),
    text: fc.oneof(
      fc.string({ minLength: 1, maxLength: 6 }),
      fc.constantFrom(
        '0',
        '9',
        '-',
        '+',
        'N',
        'S',
        'E',
        'W',
        'T',
        'FL',
        ' ',
        '\0',
        '\r',
        '\u00df',
        '99999999',
        '\u{1f6ec}',
      ),
    ),
  }),
  { maxLength: 4 },
);

function slipped(line: string, made: readonly Slip[]): string {
  return made.reduce((text, { at, kind, text: put }) => {
    const [head, tail] = [text.slice(0, at), text.slice(at)];
    if (kind === 'insert') return head + put + tail;
    if (kind === 'delete') return head + tail.slice(put.length);
    if (kind === 'cut') return head;
    if (kind === 'blank') return head + ' '.repeat(9) + tail.slice(9);
    if (kind === 'copy') return head + head.slice(0, put.length) + tail.slice(put.length);
    return head + put + tail.slice(put.length);
  }, line);
}

/** A value, all of whose numbers are numbers, or a sentence. */
function expectRead(record: { ok: true; value: unknown } | { ok: false; fault: string }): void {
  if (record.ok) expect(JSON.parse(JSON.stringify(record.value))).toEqual(record.value);
  else expect(record.fault).toMatch(/^columns \d+ to \d+ (?:are blank|hold ")/);
}

it('a record with slips in it is read whole or told where it is at fault', { timeout: TIMEOUT_MS }, () => {
  fc.assert(
    fc.property(fc.constantFrom(...LINES), slips, (line, made) => {
      const text = slipped(line, made);
      const kind = kindOfRecord(text);
      for (const decode of [decodeAirport, decodeRunway, decodeLocalizer, decodeLeg])
        expectRead(decode(text));
      if (isFix(kind)) expectRead(decodeFix(text, kind));
    }),
    { ...RUN, numRuns: INPUTS - FILES },
  );
});

function expectFacilities(index: RecordsIndex): void {
  for (const { airport, localizer } of ilsIn(index).slice(0, 2)) {
    const { facility, origins, issues } = draftFromRecords(index, {
      airport,
      localizer,
      onDay: '2026-03-14',
    });
    expect(issues.map(({ code }) => code).filter((code) => !known.has(code))).toEqual([]);
    const text = JSON.stringify(facility);
    expect(text).not.toContain('null');
    for (const path of Object.keys(origins))
      expect(
        path.split('.').reduce<unknown>((branch, key) => (branch as never)[key], facility),
      ).toBeDefined();
    const parsed = parseFacility(text, 'draft');
    if (parsed.ok) checkFacility(parsed.value, deriveGeometry(parsed.value), 2026.2);
    else expect(parsed.refusal.code).toMatch(/^facility-/);
  }
}

/** Some lines of the invented aerodrome and of the published one, with slips, in any order, some of them twice. */
const PETRELHOLM = REGION.filter((line) => /^HDR|^SXXXD|EAENRT|XPEH/.test(line));
const files = fc.record({
  from: fc.constantFrom(PETRELHOLM, LINES),
  moved: fc.array(fc.tuple(fc.nat(90), fc.nat(90)), { maxLength: 3 }),
  slips: fc.array(fc.tuple(fc.nat(90), slips), { maxLength: 4 }),
  left: fc.array(fc.nat(90), { maxLength: 3 }),
  end: fc.constantFrom('\n', '\r\n', '\r', ''),
  size: fc.integer({ min: 1, max: 4000 }),
});

it(
  'a file with slips in it gives an index and facilities, or a refusal',
  { timeout: TIMEOUT_MS },
  async () => {
    const said = { facilities: 0, refusals: 0 };
    await fc.assert(
      fc.asyncProperty(files, async ({ from, moved, slips: made, left, end, size }) => {
        const lines = [...from];
        for (const [a, b] of moved) lines.splice(b % lines.length, 0, lines[a % lines.length]!);
        for (const [at, slip] of made) lines[at % lines.length] = slipped(lines[at % lines.length]!, slip);
        for (const at of left) lines.splice(at % lines.length, 1);
        const text = lines.join(end);
        const chunks = Array.from({ length: Math.ceil(text.length / size) }, (_, at) =>
          text.slice(at * size, (at + 1) * size),
        );
        const index = await scanRecords(chunks, text.length, idle);
        if (!index.ok) {
          said.refusals++;
          expect([...known]).toContain(index.refusal.code);
          return;
        }
        expect(JSON.parse(JSON.stringify(index.value))).toEqual(index.value);
        said.facilities += ilsIn(index.value).length;
        expectFacilities(index.value);
      }),
      { ...RUN, numRuns: FILES },
    );
    expect(said.facilities).toBeGreaterThan(FILES);
  },
);
