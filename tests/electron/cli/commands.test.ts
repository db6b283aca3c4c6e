import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Debrief } from '../../../core/debrief/debrief.ts';
import { METRES_PER_FOOT } from '../../../core/units/units.ts';
import { ROOT } from '../../house/source-files.ts';
import { columnInstead } from '../../support/files/column-instead.ts';
import { runCommand } from './run-command.ts';

const LOG = join(ROOT, 'samples/first-approach.csv');
const GPX = join(ROOT, 'samples/first-approach.gpx');
const FACILITY = join(ROOT, 'samples/petrelholm-ils-07.json');

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'halfdot-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('halfdot deviations', () => {
  it('prints the agreed columns, one line a fix, at full precision', async () => {
    const { status, answer } = await runCommand('deviations', LOG, '--facility', FACILITY);
    const lines = answer.trimEnd().split('\n');
    expect(status).toBe(0);
    expect(lines[0]).toBe(
      'timeUtc,latDeg,lonDeg,altitudeFt,distanceToThresholdNm,centrelineOffsetFt,localizerDeg,localizerFullScale,glidepathDeg,glidepathFullScale,heightAboveGlidepathFt',
    );
    const rows = readFileSync(LOG, 'utf8').trimEnd().split('\n').slice(1);
    expect(lines.length - 1).toBe(rows.length);
    const first = lines[1]!.split(',');
    const logged = rows[0]!.split(',');
    expect(first.slice(0, 3)).toEqual(logged.slice(0, 3));
    expect(Number(first[3])).toBe(Number(logged[4]));
    // Nothing is rounded: deviation and fraction are one number to the last digit.
    expect(Number(first[6]) / Number(first[7])).toBeCloseTo(
      Number(lines[2]!.split(',')[6]) / Number(lines[2]!.split(',')[7]),
      9,
    );
    for (const line of lines.slice(1)) expect(line.split(',').every((cell) => cell !== '')).toBe(true);
  });

  it('leaves a cell empty where the height is missing', async () => {
    const path = join(folder, 'no-height.csv');
    writeFileSync(
      path,
      'time,lat,lon,alt ft msl\n2026-01-01T00:00:00Z,-31.21,-16.42,\n2026-01-01T00:00:01Z,-31.2099,-16.4199,500\n',
    );
    const { answer } = await runCommand('deviations', path, '--facility', FACILITY);
    const [, without, withHeight] = answer.split('\n').map((line) => line.split(','));
    expect(without!.map((cell) => cell === '')).toEqual([0, 0, 0, 1, 0, 0, 0, 0, 1, 1, 1].map(Boolean));
    expect(withHeight!.every((cell) => cell !== '')).toBe(true);
  });
});

describe('halfdot debrief', () => {
  it('prints text, and as data the same bytes each time', async () => {
    const text = await runCommand('debrief', LOG, '--facility', FACILITY);
    expect(text.status).toBe(0);
    expect(text.answer.split('\n').every((line) => line.length <= 100)).toBe(true);
    expect(text.answer).toContain('never for navigation');
    const once = await runCommand('debrief', LOG, '--facility', FACILITY, '--format', 'json');
    const again = await runCommand('debrief', LOG, '--facility', FACILITY, '--format=json');
    expect(once.answer).toBe(again.answer);
    const debrief = JSON.parse(once.answer) as Debrief;
    expect(debrief.format).toBe('halfdot-debrief/1');
    expect(debrief.log.file).toBe('first-approach.csv');
    expect(once.answer).not.toContain(ROOT);
  });

  it('takes several logs: an array, and a folder; a refused one gets its sentence', async () => {
    const empty = join(folder, 'empty.csv');
    writeFileSync(empty, '');
    const several = await runCommand('debrief', LOG, empty, GPX, '--facility', FACILITY, '--format', 'json');
    expect(several.status).toBe(0);
    expect((JSON.parse(several.answer) as Debrief[]).map(({ log }) => log.file)).toEqual([
      'first-approach.csv',
      'first-approach.gpx',
    ]);
    expect(several.messages.filter((line) => line.includes('empty.csv'))).toHaveLength(1);

    const out = join(folder, 'debriefs');
    await runCommand('debrief', LOG, GPX, '--facility', FACILITY, '--out', out);
    expect(readdirSync(out).sort()).toEqual(['first-approach-2.debrief.txt', 'first-approach.debrief.txt']);
    const both = await runCommand('debrief', LOG, GPX, '--facility', FACILITY);
    expect(both.answer.match(/first-approach\.(csv|gpx) at Petrelholm/g)).toHaveLength(2);
  });

  it('writes to a file, and never over one that it reads', async () => {
    const out = join(folder, 'debrief.json');
    const written = await runCommand(
      'debrief',
      LOG,
      '--facility',
      FACILITY,
      '--format',
      'json',
      '--out',
      out,
    );
    expect(written).toMatchObject({ status: 0, answer: '' });
    expect((JSON.parse(readFileSync(out, 'utf8')) as Debrief).format).toBe('halfdot-debrief/1');
    const copy = join(folder, 'copy.csv');
    writeFileSync(copy, readFileSync(LOG));
    const over = await runCommand('debrief', copy, '--facility', FACILITY, '--out', copy);
    expect(over.status).toBe(2);
    expect(readFileSync(copy)).toEqual(readFileSync(LOG));
    const nowhere = await runCommand(
      'debrief',
      LOG,
      '--facility',
      FACILITY,
      '--out',
      join(folder, 'no', 'x.txt'),
    );
    expect(nowhere).toMatchObject({ status: 2, answer: '' });
    const inTheWay = await runCommand('debrief', LOG, GPX, '--facility', FACILITY, '--out', copy);
    expect(inTheWay.status).toBe(2);
  });

  it('of a log far from the facility is an answer, with exit status 0', async () => {
    const elsewhere = await runCommand(
      'debrief',
      LOG,
      '--facility',
      join(ROOT, 'samples/choughfell-ils-32.json'),
      '--format',
      'json',
    );
    expect(elsewhere.status).toBe(0);
    expect((JSON.parse(elsewhere.answer) as Debrief).approaches).toEqual([]);
  });
});

describe('halfdot inspect and facility', () => {
  it('inspect speaks of columns, and as data has them', async () => {
    const text = await runCommand('inspect', LOG);
    expect(text.answer).toContain('"Indicated Altitude (ft)"');
    const data = JSON.parse((await runCommand('inspect', LOG, '--format', 'json')).answer) as {
      fixes: number;
    };
    expect(data.fixes).toBe(606);
  });

  it('reads a column in the unit that it is told, over its header and over what it would assume', async () => {
    const path = join(folder, 'metres.csv');
    const metres = (header: string) =>
      columnInstead(readFileSync(LOG, 'utf8'), 'GNSS Altitude (ft MSL)', header, METRES_PER_FOOT);
    const altitudes = async (...words: string[]) =>
      (await runCommand('deviations', ...words, '--facility', FACILITY)).answer
        .trimEnd()
        .split('\n')
        .map((line) => Number(line.split(',')[3]))
        .slice(1);
    const right = await altitudes(LOG);
    for (const header of ['GNSS Altitude MSL', 'GNSS Altitude (ft MSL)']) {
      writeFileSync(path, metres(header));
      const assumed = await altitudes(path);
      const said = await altitudes(path, '--unit', `${header}=m`);
      expect(said).toHaveLength(right.length);
      for (const [i, altitudeFt] of said.entries()) expect(altitudeFt).toBeCloseTo(right[i]!, 0);
      expect(assumed[0]).toBeCloseTo(right[0]! * METRES_PER_FOOT, 1);
    }
  });

  it('says which unit was stated, and refuses one that the column cannot be in', async () => {
    const told = await runCommand('inspect', LOG, '--unit', 'Groundspeed (kt)=km/h');
    expect(told.answer).toContain('km/h, as you said');
    expect(told.answer).toContain('names the unit "kt": it is read in km/h');
    const refused = await runCommand('inspect', LOG, '--unit', 'Groundspeed (kt)=ft');
    expect([refused.status, refused.answer]).toEqual([2, '']);
    expect(refused.messages).toEqual([
      'halfdot: first-approach.csv: column "Groundspeed (kt)" (groundspeed) cannot be in ft, as was stated. Units of it are kt, km/h, mph, m/s.',
    ]);
    const none = await runCommand('inspect', LOG, '--unit', 'Groundspeed (kt)=parsec');
    expect([none.status, none.answer]).toEqual([2, '']);
    expect((await runCommand('debrief', '--help')).answer).toContain('--unit');
  });

  it('inspect takes a column as it is told to', async () => {
    const told = await runCommand('inspect', LOG, '--column', 'GNSS Altitude (ft MSL)=none');
    expect(told.answer).toContain('Not used: "GNSS Altitude (ft MSL)"');
  });

  it('facility prints what follows, and as data has it', async () => {
    expect((await runCommand('facility', FACILITY)).answer).toContain('Sink rate');
    const data = JSON.parse((await runCommand('facility', FACILITY, '--format', 'json')).answer) as {
      derived: { trueBearingDeg: number };
    };
    expect(data.derived.trueBearingDeg).toBeCloseTo(46.4, 1);
  });
});

describe('halfdot', () => {
  it('says what it can do', async () => {
    for (const words of [[], ['help'], ['--help']])
      expect(await runCommand(...words)).toMatchObject({
        status: 0,
        answer: expect.stringContaining('halfdot deviations'),
      });
    expect((await runCommand('debrief', '--help')).answer).toContain('--facility');
  });

  it('refuses what it does not know, with exit status 2 and one sentence', async () => {
    expect(await runCommand('fly')).toMatchObject({ status: 2, answer: '' });
    expect(await runCommand('debrief', LOG)).toMatchObject({
      status: 2,
      messages: [expect.stringContaining('needs --facility')],
    });
    for (const command of ['debrief', 'deviations', 'inspect'])
      expect(await runCommand(command, LOG, '--facility', FACILITY, '--start', 'noon')).toMatchObject({
        status: 2,
      });
  });

  it('leaves nothing behind when an input is refused', async () => {
    const out = join(folder, 'never.json');
    const bad = join(folder, 'bad.json');
    writeFileSync(bad, '{');
    expect(await runCommand('debrief', LOG, '--facility', bad, '--out', out)).toMatchObject({ status: 2 });
    expect(await runCommand('debrief', bad, '--facility', FACILITY, '--out', out)).toMatchObject({
      status: 2,
    });
    expect(existsSync(out)).toBe(false);
  });
});
