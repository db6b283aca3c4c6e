import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { issue } from '../../../core/issue/issue.ts';
import { worthAsking } from '../../../electron/library/worth-asking.ts';
import { command, FACILITY, newFolder, SAMPLE, SAMPLES } from './some-library.ts';

const TEXT = readFileSync(SAMPLE, 'utf8');

function written(files: Record<string, string>): string {
  const folder = newFolder();
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  return folder;
}

const imported = (...words: string[]) =>
  command(join(newFolder(), 'library'), 'import', '--facility', FACILITY, ...words);

/** A phone's positions and heights as somebody makes a table of them: no unit, and days before months or after. */
function table(): string {
  const points = readFileSync(join(SAMPLES, 'phone.gpx'), 'utf8').matchAll(
    /lat="([^"]+)" lon="([^"]+)"><ele>([^<]+)<\/ele><time>2026-05-30T([^<]+)Z/g,
  );
  return [
    'time,lat,lon,alt',
    ...[...points].map(([, lat, lon, ele, at]) => `06/05/2026 ${at},${lat},${lon},${ele}`),
  ].join('\n');
}

describe('the lines of an import', () => {
  it('tell logs of one name apart by their folders, and whose each became', async () => {
    const logs = written({
      'Rowan Teal/log.csv': TEXT,
      'Hazel Wren/log.csv': `${TEXT}\n`,
      'log.csv': `${TEXT}\n\n`,
      'Hazel Wren/broken/log.csv': 'no log',
    });
    const { answer, messages } = await imported(logs, '--student-from', 'folder', '--add-students', 'yes');
    const end = '1 approach at Petrelholm ILS 07\n';
    expect(answer).toContain(`Hazel Wren/log.csv: kept for Hazel Wren, ${end}`);
    expect(answer).toContain(`Rowan Teal/log.csv: kept for Rowan Teal, ${end}`);
    expect(answer).toContain(`\nlog.csv: kept, ${end}`);
    expect(messages.join('\n')).toContain('Hazel Wren/broken/log.csv: ');
  });

  it('name the whole path of logs that lie the same below what was named', async () => {
    const logs = written({ 'a/log.csv': TEXT, 'b/log.csv': `${TEXT}\n`, 'c/other.csv': `${TEXT}\n\n` });
    const paths = ['a/log.csv', 'b/log.csv', 'c/other.csv'].map((name) => join(logs, name));
    const { answer } = await imported(...paths);
    expect(answer.match(/^.*(?=: kept)/gm)).toEqual([paths[0], paths[1], 'other.csv']);
  });

  it('say with each log what was assumed that a verdict or its date stands on', async () => {
    const logs = written({ 'sound/log.csv': TEXT, 'doubtful/log.csv': table() });
    const { messages } = await imported(logs);
    const told = messages.filter((line) => line.startsWith('  doubtful/log.csv: '));
    expect(messages.filter((line) => line.includes('sound/log.csv'))).toEqual([]);
    for (const words of [
      'Warning: Column "alt" names no unit',
      'names no unit: taken as ft',
      'does not say which altitude',
    ])
      expect(told.join('\n')).toContain(words);
    expect(told.join('\n')).toMatch(/Caution: Dates such as 6\/5\/2026 can be read in more than one order/);
  });
});

describe('what is worth asking of a log', () => {
  it('is every warning, and of cautions what a verdict or the date stands on', () => {
    const issues = [
      issue('warning', 'jump', 'A jump.'),
      issue('caution', 'unit-assumed', 'A unit.'),
      issue('caution', 'row-too-short', 'A row.'),
      issue('note', 'unit-from-positions', 'A unit shown.'),
    ];
    expect(worthAsking(issues).map(({ code }) => code)).toEqual(['jump', 'unit-assumed']);
  });
});
