import { describe, expect, it } from 'vitest';
import { readLog } from '../../../core/log/read-log.ts';
import { idle, readRefused, readUsable } from './reading.ts';

const HEADER = 'Time,Latitude,Longitude,AltMSL (ft)';
const ROW = '2024-05-01T10:00:00Z,47.1,8.1,3000';

describe('files that are no track log', () => {
  it.each([
    ['nothing', '', 'file-empty'],
    ['blanks', ' \r\n\t\n', 'file-empty'],
    ['a byte-order mark alone', '\ufeff', 'file-empty'],
    ['NULs alone', '\0'.repeat(5000), 'file-empty'],
    ['a picture (PNG, decoded byte by byte)', '\u2030PNG\r\n\u001a\n\0\0\0\rIHDR', 'file-is-picture'],
    ['a picture (JPEG)', '\u00ff\u00d8\u00ff\u00e0\0\u0010JFIF', 'file-is-picture'],
    ['a picture (GIF)', 'GIF89a\u0001\0', 'file-is-picture'],
    [
      'a spreadsheet workbook',
      'PK\u0003\u0004\u0014\0\u0006\0\b\0\0\0!\0[Content_Types].xml',
      'file-is-spreadsheet',
    ],
    [
      'an open spreadsheet',
      'PK\u0003\u0004\n\0\0\b\0\0mimetypeapplication/vnd.oasis.opendocument.spreadsheet',
      'file-is-spreadsheet',
    ],
    [
      'an older spreadsheet workbook',
      '\u00d0\u00cf\u0011\u00e0\u00a1\u00b1\u001a\u00e1',
      'file-is-spreadsheet',
    ],
    ['a packed archive', 'PK\u0003\u0004\u0014\0\0\0log.csv', 'file-is-archive'],
    ['a gzipped file', '\u001f\u2039\b\0', 'file-is-archive'],
    ['a PDF', '%PDF-1.7\n', 'file-is-document'],
    ['a web page', '<!DOCTYPE html>\n<html lang="en">', 'file-is-web-page'],
    ['a web page without doctype', '\n<HTML><body>', 'file-is-web-page'],
    ['JSON', '{"type":"FeatureCollection"}', 'not-a-track-log'],
    ['a JSON list', '[{"lat":1}]', 'not-a-track-log'],
    ['a database', 'SQLite format 3\0', 'not-a-track-log'],
    ['UTF-16 without a mark', 'T\0i\0m\0e\0,\0L\0a\0t\0', 'file-encoding'],
    ['prose', 'Dear student,\nplease find the log of our flight, as promised.\n', 'not-a-track-log'],
    ['one word', 'hello', 'not-a-track-log'],
    ['a table of other things', 'name,price\napple,1\npear,2', 'not-a-track-log'],
    ['numbers without a header', '1,2,3\n4,5,6', 'not-a-track-log'],
  ])('%s', async (_, text, code) => {
    const refusal = await readRefused(text);
    expect(refusal).toMatchObject({ code, severity: 'refusal', count: 1 });
    expect(refusal.message).toMatch(/^flight .*\.$/s);
    expect(refusal.tip).not.toBeNull();
  });

  it('a spreadsheet comes with the way out', async () => {
    const { message, tip } = await readRefused('PK\u0003\u0004xl/workbook.xml');
    expect([message, tip]).toEqual([
      'flight is a spreadsheet workbook, no track log.',
      'Open it in the spreadsheet program and save the sheet with the fixes as CSV.',
    ]);
  });

  it.each(['facility', 'standard'])('a %s of this program is told where it belongs', async (kind) => {
    const { code, tip } = await readRefused(`{\n  "format": "halfdot-${kind}/1",\n  "name": "Quillmere"\n}`);
    expect([code, tip]).toEqual([
      'not-a-track-log',
      expect.stringContaining('under Facilities and Standards'),
    ]);
  });

  it('a metadata line in square brackets does not make a CSV JSON', async () => {
    expect((await readUsable(`[Header]\n${HEADER}\n${ROW}`)).timeS.length).toBe(1);
  });
});

describe('tables that lack something', () => {
  it('a header only', async () => {
    for (const text of [HEADER, `${HEADER}\n`, `x\n${HEADER}\n\n`])
      expect(await readRefused(text)).toMatchObject({ code: 'no-rows' });
    expect((await readRefused(`x\n${HEADER}`)).message).toBe(
      'flight has a header on line 2 but no rows of data under it.',
    );
  });

  it('a header and nothing but comments', async () => {
    expect(await readRefused(`${HEADER}\n# a,b\n# c,d\n`)).toMatchObject({ code: 'no-rows' });
  });

  it.each([
    ['Latitude,Longitude,AltMSL (ft)\n47,8,1', 'no-time', 'the time'],
    [
      'Time,Latitude,AltMSL (ft)\n2024-05-01T10:00:00Z,47,1',
      'no-position',
      'the position (latitude and longitude)',
    ],
    [
      'Time,Ground speed (kt),AltMSL (ft)\n2024-05-01T10:00:00Z,47,1',
      'no-position',
      'the position (latitude and longitude)',
    ],
    ['Time,Latitude,Longitude,AGL (ft)\n2024-05-01T10:00:00Z,47,8,1', 'no-altitude', 'an altitude'],
    ['Date,Latitude,Longitude,AltMSL (ft)\n2024-05-01,47,8,1', 'no-time', 'the time'],
  ])('%j is refused as %s', async (text, code, what) => {
    const refusal = await readRefused(text);
    expect(refusal).toMatchObject({
      code,
      firstLine: 1,
      tip: 'If a column holds it under another name, say which one.',
    });
    expect(refusal.message).toBe(
      `flight, line 1: no column holds ${what}; the columns are ${text.split('\n')[0]!.replaceAll(',', ', ')}.`,
    );
  });

  it('an altitude of the cabin alone', async () => {
    expect(
      await readRefused('Time,Latitude,Longitude,Cabin altitude (ft)\n2024-05-01T10:00:00Z,47,8,1'),
    ).toMatchObject({ code: 'no-altitude', firstLine: 1 });
  });

  it('altitudes that no row holds, by the names of their columns', async () => {
    const refusal = await readRefused(
      'x\nTime,Latitude,Longitude,GPS alt (ft),Pressure altitude (ft)\n2024-05-01T10:00:00Z,47,8,,-9999',
    );
    expect(refusal).toMatchObject({ code: 'no-altitude', firstLine: 2 });
    expect(refusal.message).toBe(
      'flight, line 2: no row holds a usable altitude in column "GPS alt (ft)" or "Pressure altitude (ft)".',
    );
  });

  it('of many columns only the first are listed', async () => {
    const names = Array.from({ length: 20 }, (_, i) => `x${i}`);
    const { message } = await readRefused(`Latitude,Longitude,${names.join(',')}\n${'1,'.repeat(21)}1`);
    expect(message).toContain(
      'the columns are Latitude, Longitude, x0, x1, x2, x3, x4, x5, x6, x7, x8, x9 and 10 more.',
    );
  });

  it('a table whose every row is unusable says why and where', async () => {
    const refusal = await readRefused(
      `${HEADER}\n2024-05-01T10:00:00Z,,,3000\n2024-05-01T10:00:01Z,,,3000\n,47,8,1`,
    );
    expect(refusal).toMatchObject({ code: 'no-usable-rows', firstLine: 2 });
    expect(refusal.message).toBe(
      'flight: none of the 3 rows can be used. 2 rows without a usable position left out.',
    );
  });
});

describe("latitude and longitude in each other's place", () => {
  it('are refused by the names of the columns and the line', async () => {
    const rows = [
      '2024-05-01T10:00:00Z,-118.2,34.1,1',
      '2024-05-01T10:00:01Z,-118.3,34.1,1',
      '2024-05-01T10:00:02Z,-18.3,34.1,1',
    ];
    const refusal = await readRefused([HEADER, ...rows].join('\n'));
    expect(refusal).toMatchObject({ code: 'position-swapped', firstLine: 2, count: 2 });
    expect(refusal.message).toBe(
      'flight, line 2: latitude and longitude look swapped: "Latitude" goes beyond 90 and "Longitude" does not.',
    );
  });

  it('are not seen where neither column holds a latitude', async () => {
    expect(await readRefused(`${HEADER}\n2024-05-01T10:00:00Z,120,130,1`)).toMatchObject({
      code: 'no-usable-rows',
    });
  });

  it('in half of the rows only are single faults', async () => {
    const log = await readUsable([HEADER, ROW, '2024-05-01T10:00:01Z,-118.3,34.1,1'].join('\n'));
    expect(log.timeS.length).toBe(1);
  });
});

describe('lines without an end', () => {
  /** A file far larger than what may be read of it; counts the chunks that were asked for. */
  function endless(start: string, chunk: string, chunks: number) {
    const asked = { chunks: 0 };
    function* source(): Generator<string> {
      yield start;
      for (; asked.chunks < chunks; asked.chunks++) yield chunk;
    }
    return { asked, source: { name: 'flight', sha256: () => '', size: null, chunks: source() } };
  }

  it('200 MB in one line are refused after a few chunks', async () => {
    const { asked, source } = endless(`${HEADER}\n${ROW}\n`, '1,'.repeat(50_000), 2000);
    const outcome = await readLog(source, {}, idle);
    expect(!outcome.ok && outcome.refusal).toMatchObject({ code: 'line-too-long', firstLine: 3 });
    expect(asked.chunks).toBeLessThan(30);
  });

  it('so are 200 MB behind a quote that is never closed', async () => {
    const { asked, source } = endless(`${HEADER}\n${ROW}\n"`, 'x'.repeat(100_000), 2000);
    const outcome = await readLog(source, {}, idle);
    expect(!outcome.ok && outcome.refusal).toMatchObject({ code: 'line-too-long', firstLine: 3 });
    expect(asked.chunks).toBeLessThan(30);
  });

  it('so is a line of 200 MB inside a quote that was opened on the line before', async () => {
    const start = `${HEADER},Note\n${`${ROW},\n`.repeat(40_000)}${ROW},"open\n`;
    const { asked, source } = endless(start, 'x'.repeat(100_000), 2000);
    const outcome = await readLog(source, {}, idle);
    expect(!outcome.ok && outcome.refusal).toMatchObject({ code: 'line-too-long', firstLine: 40_003 });
    expect(asked.chunks).toBeLessThan(30);
  });

  it('a row over several lines is given up when together they are too long, however it is cut', async () => {
    const rest = (1 << 20) - `${ROW},"`.length - 1;
    const text = (length: number) =>
      `${HEADER},Note\n${ROW},\n${ROW},"\n${'x'.repeat(length - 1)}"\n${ROW},\n`;
    for (const chunkSize of [50_001, 99_999, 1 << 24]) {
      expect((await readUsable(text(rest), {}, chunkSize)).issues).toEqual([]);
      const log = await readUsable(text(rest + 1), {}, chunkSize);
      expect([...log.line]).toEqual([2, 5]);
      expect(log.issues.map(({ code, count, firstLine }) => [code, count, firstLine])).toEqual([
        ['quote-unclosed', 1, 3],
        ['row-too-short', 1, 4],
      ]);
    }
  });

  it('a line too long behind a quote left open is refused, however it is cut', async () => {
    const text = `${HEADER},Note\n${ROW},\n${ROW},"open\n${'x'.repeat((1 << 20) + 1)}\n${ROW},\n`;
    for (const chunkSize of [40_000, 50_001, 99_999, 1 << 24]) {
      expect(await readRefused(text, {}, chunkSize)).toMatchObject({ code: 'line-too-long', firstLine: 4 });
    }
  });

  it('a first line of 200 MB is refused too', async () => {
    const { asked, source } = endless('', 'Time,Latitude,'.repeat(10_000), 2000);
    const outcome = await readLog(source, {}, idle);
    expect(outcome.ok).toBe(false);
    expect(asked.chunks).toBeLessThan(30);
  });

  it('a line of exactly the longest length is read, one more character is refused', async () => {
    const long = (length: number) =>
      `${HEADER},Note\n${ROW},${'x'.repeat(length - ROW.length - 1)}\n${ROW},\n`;
    expect((await readUsable(long(1 << 20), {}, 99_999)).timeS.length).toBe(2);
    for (const chunkSize of [99_999, 1 << 24]) {
      expect(await readRefused(long((1 << 20) + 1), {}, chunkSize)).toMatchObject({
        code: 'line-too-long',
        firstLine: 2,
      });
    }
  });

  it("the host's chunks are let go when a file is refused", async () => {
    let closed = false;
    function* chunks(): Generator<string> {
      try {
        for (let i = 0; i < 100; i++) yield '%PDF'.repeat(100_000);
      } finally {
        closed = true;
      }
    }
    await readLog({ name: 'flight', sha256: () => '', size: null, chunks: chunks() }, {}, idle);
    expect(closed).toBe(true);
  });
});
