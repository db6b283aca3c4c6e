import { describe, expect, it } from 'vitest';
import { runwaysIn } from '../../../core/records/runways-in.ts';
import { RUNWAY_HEADER, runwayTableText, SAMPLE_RUNWAYS } from '../../support/samples/runway-table.ts';
import { idle } from '../log/reading.ts';
import { readTable, tableOf } from './reading-runways.ts';

const SAMPLE = runwayTableText(SAMPLE_RUNWAYS);
const PETRELHOLM = SAMPLE_RUNWAYS[0]!;
const codesOf = (issues: readonly { code: string; count: number }[]) =>
  issues.map(({ code, count }) => [code, count]);
const refusalOf = async (text: string) => {
  const outcome = await readTable(text, 'ZZPE');
  if (outcome.ok) throw new Error('a table that must be refused was read');
  return outcome.refusal;
};

describe('a table of runways', () => {
  it('gives the runways of the airport that was asked for, as they are written', async () => {
    const { runways, rowsSeen, airports } = await tableOf(SAMPLE, 'ZZPE');
    expect(rowsSeen).toBe(5);
    expect(airports).toEqual(['ZZPE', 'ZZCH', 'ZZWH']);
    expect(runways).toHaveLength(1);
    expect(runways[0]).toEqual({
      line: 2,
      airportIdent: 'ZZPE',
      lengthFt: 6500,
      widthFt: 150,
      surface: 'ASP',
      halfStepDeg: 0.0000005,
      low: {
        ident: '07',
        position: { latDeg: -31.2, lonDeg: -16.4 },
        elevationFt: 34,
        headingTrueDeg: 46,
        displacedThresholdFt: 0,
      },
      high: {
        ident: '25',
        position: { latDeg: -31.187676, lonDeg: -16.384948 },
        elevationFt: 46,
        headingTrueDeg: 226,
        displacedThresholdFt: 0,
      },
    });
  });

  it('leaves out and counts what is closed, and what has no positions, of that airport', async () => {
    expect(codesOf((await tableOf(SAMPLE, 'ZZPE')).issues)).toEqual([['runway-closed', 1]]);
    expect(codesOf((await tableOf(SAMPLE, 'ZZWH')).issues)).toEqual([['runway-without-position', 1]]);
    expect(codesOf((await tableOf(SAMPLE, 'ZZCH')).issues)).toEqual([]);
    expect((await tableOf(SAMPLE, 'ZZPE')).issues[0]).toMatchObject({ firstLine: 3, severity: 'note' });
  });

  it('gives the airports alone when none is asked for, and counts over all of it', async () => {
    const { runways, airports, issues } = await tableOf(SAMPLE, null);
    expect([runways, airports.length]).toEqual([[], 3]);
    expect(codesOf(issues)).toEqual([
      ['runway-closed', 1],
      ['runway-without-position', 1],
    ]);
  });

  it('is asked in capitals or not', async () => {
    expect((await tableOf(SAMPLE, ' zzpe ')).runways).toHaveLength(1);
  });

  it('says that it has no such airport, and which one is near', async () => {
    const { runways, issues } = await tableOf(SAMPLE, 'ZZPQ');
    expect(runways).toEqual([]);
    expect(issues).toMatchObject([
      { code: 'runways-no-such-airport', severity: 'warning', tip: 'Is it ZZPE?' },
    ]);
  });

  it.each([
    ['in another order', runwayTableText(SAMPLE_RUNWAYS, RUNWAY_HEADER.toReversed())],
    ['with columns more', SAMPLE.replaceAll('\n', ',"x, y"\n').replace('"x, y"', '"note"')],
    ['with a mark at its beginning', `\u{feff}${SAMPLE}`],
    ['with the line ends of another system', SAMPLE.replaceAll('\n', '\r\n')],
    ['with those of a third', SAMPLE.replaceAll('\n', '\r')],
    ['without a line end behind its last row', SAMPLE.trimEnd()],
    ['parted by semicolons', SAMPLE.replaceAll(',', ';')],
    ['with a quoted text over two lines', SAMPLE.replace('"ASP"', '"AS\nP"')],
    ['with names as a spreadsheet shows them', SAMPLE.replace('le_heading_degT', 'LE Heading DegT')],
    ['with every number quoted', SAMPLE.replaceAll(/(?<=^|,)(-?\d[\d.]*)/gm, '"$1"')],
    ['behind blank lines', `\n\n${SAMPLE}`],
    ['in chunks of one character', SAMPLE],
  ])('is the same %s', async (what, text) => {
    const usual = (await tableOf(SAMPLE, 'ZZCH')).runways[0]!;
    const { runways } = await tableOf(text, 'ZZCH', what.includes('chunks') ? 1 : undefined);
    expect(runways.map((row) => ({ ...row, line: 0 }))).toEqual([{ ...usual, line: 0 }]);
  });

  it('takes the digits that single precision added for none', async () => {
    const single = {
      ...PETRELHOLM,
      le_latitude_deg: Math.fround(-31.2001),
      he_latitude_deg: Math.fround(-31.1877),
    };
    const { runways } = await tableOf(
      runwayTableText([
        { ...single, le_longitude_deg: Math.fround(-16.4), he_longitude_deg: Math.fround(-16.385) },
      ]),
      'ZZPE',
    );
    expect(runways[0]!.low.position).toEqual({ latDeg: -31.2001, lonDeg: -16.4 });
    expect(runways[0]!.halfStepDeg).toBe(0.00005);
  });

  it('counts what is no number that can be, and takes it for not known', async () => {
    const odd = {
      ...PETRELHOLM,
      le_elevation_ft: 'high',
      width_ft: '1e2',
      length_ft: '6,500',
      he_latitude_deg: 91,
    };
    const { runways, issues } = await tableOf(runwayTableText([odd]), 'ZZPE');
    expect(codesOf(issues)).toEqual([['runway-value-unreadable', 1]]);
    expect(runways[0]).toMatchObject({ lengthFt: null, widthFt: null, low: { elevationFt: null } });
    expect(runways[0]!.high.position).toBeNull();
  });

  it('takes a displacement that is no number for not known, and none for none', async () => {
    const rows = [{ ...PETRELHOLM, le_displaced_threshold_ft: 'some', he_displaced_threshold_ft: '' }];
    const { low, high } = (await tableOf(runwayTableText(rows), 'ZZPE')).runways[0]!;
    expect([low.displacedThresholdFt, high.displacedThresholdFt]).toEqual([null, 0]);
  });

  it('counts rows that are too short and quotes that never close', async () => {
    const { issues, runways } = await tableOf(`${SAMPLE}1,2,"ZZPE"\n1,2,"ZZPE,3\n`, 'ZZPE');
    expect(codesOf(issues).slice(1)).toEqual([
      ['runway-row-too-short', 1],
      ['runway-quote-unclosed', 1],
    ]);
    expect(runways).toHaveLength(1);
  });

  it('reads a table without lengths, elevations and headings, which then are not known', async () => {
    const bare = RUNWAY_HEADER.filter((name) => !/length|width|surface|elevation|heading/.test(name));
    const { runways } = await tableOf(runwayTableText(SAMPLE_RUNWAYS, bare), 'ZZPE');
    expect(runways[0]).toMatchObject({ lengthFt: null, widthFt: null, surface: '' });
    expect(runways[0]!.low).toMatchObject({ ident: '07', elevationFt: null, headingTrueDeg: null });
  });
});

describe('what is no table of runways', () => {
  it('is refused with the names of the columns that it lacks, or has twice', async () => {
    const without = RUNWAY_HEADER.filter((name) => name !== 'he_longitude_deg' && name !== 'closed');
    expect(await refusalOf(runwayTableText(SAMPLE_RUNWAYS, without))).toMatchObject({
      code: 'runways-column-missing',
      message: 'runways.csv lacks the columns closed and he_longitude_deg.',
    });
    expect(await refusalOf(runwayTableText(SAMPLE_RUNWAYS, [...RUNWAY_HEADER, 'le_ident']))).toMatchObject({
      code: 'runways-column-twice',
      message: 'runways.csv names le_ident twice.',
    });
  });

  it.each([
    ['', 'runways-empty'],
    ['\0\n \n', 'runways-empty'],
    ['Time,Latitude,Longitude\n1,2,3\n', 'runways-not-a-table'],
    ['hello', 'runways-not-a-table'],
    [SAMPLE.split('\n')[0]!, 'runways-no-rows'],
    [`${SAMPLE}${'x'.repeat(1 << 21)}`, 'runways-line-too-long'],
  ])('%# is refused as what it is', async (text, code) => expect((await refusalOf(text)).code).toBe(code));
});

describe('a job of reading runways', () => {
  const source = (text: string) => ({
    name: 'runways.csv',
    sha256: () => '',
    size: text.length,
    chunks: [text],
  });

  it('tells how far it is, and stops when it is told to', async () => {
    const text = SAMPLE + '1,2,3\n'.repeat(100_000);
    const shares: (number | null)[] = [];
    const progress = (share: number | null) => void shares.push(share);
    expect((await runwaysIn(source(text), 'ZZPE', { ...idle, progress })).ok).toBe(true);
    expect(shares.length).toBeGreaterThan(5);
    expect(shares.at(-1)).toBe(1);
    const stopped = await runwaysIn(source(text), 'ZZPE', { progress, cancelled: () => shares.length > 12 });
    expect(stopped).toMatchObject({ ok: false, refusal: { code: 'cancelled' } });
    const atOnce = await runwaysIn(source(text), 'ZZPE', { progress, cancelled: () => true });
    expect(atOnce).toMatchObject({ ok: false, refusal: { code: 'cancelled' } });
  });

  it('keeps no more of one airport than an airport has', async () => {
    const rows = Array.from({ length: 150 }, () => PETRELHOLM);
    const { runways, issues } = await tableOf(runwayTableText(rows), 'ZZPE');
    expect(runways).toHaveLength(100);
    expect(codesOf(issues)).toEqual([['runways-too-many', 50]]);
  });
});
