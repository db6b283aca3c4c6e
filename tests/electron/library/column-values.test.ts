import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { columnValues } from '../../../electron/library/column-values.ts';
import { ROOT } from '../../house/source-files.ts';

const HEADER = 'Time,Latitude,Longitude,Pilot';
const row = (pilot: string, i = 0) =>
  `2026-05-03T10:00:${String(i % 60).padStart(2, '0')}Z,48.1,11.${i},${pilot}`;
const values = (lines: readonly string[], header = 'Pilot') =>
  columnValues(Buffer.from(lines.join('\r\n')), header, {});

it("gives the different values of a log's column, without rows that have none", () => {
  const lines = [
    HEADER,
    row(''),
    row('Nils Brambling'),
    row('"Finch, Hugo"'),
    row(' Nils Brambling '),
    row('\0'),
  ];
  expect(values(lines)).toEqual(['Nils Brambling', 'Finch, Hugo']);
  expect(values(lines, ' PILOT')).toEqual(['Nils Brambling', 'Finch, Hugo']);
  expect(values([HEADER, row('')])).toEqual([]);
  expect(values(lines, 'Student')).toBeNull();
});

it('takes no title, unit, remark or repeated header for a value', () => {
  const head = ['# Recorder,1,2,Hazel Wren', HEADER, 'ISO,deg,deg,text'];
  const lines = [...head, row('Nils Brambling'), HEADER, '# on,again,,Hazel Wren', row('Nils Brambling')];
  expect(values(lines)).toEqual(['Nils Brambling']);
});

it('reads a long log to its end, over the edges of the blocks in which it comes', () => {
  const lines = [HEADER, ...Array.from({ length: 60_000 }, (_, i) => row('Jörg Möwe', i)), row('Hugo Finch')];
  expect(Buffer.from(lines.join('\r\n')).length).toBeGreaterThan(2 << 20);
  expect(values(lines)).toEqual(['Jörg Möwe', 'Hugo Finch']);
});

it('finds no column in GPX, nor in what is no log', () => {
  const gpx = readFileSync(join(ROOT, 'samples/first-approach.gpx'));
  expect(columnValues(gpx, 'name', {})).toBeNull();
  expect(values(['these are', 'no values'])).toBeNull();
  expect(values([])).toBeNull();
});
