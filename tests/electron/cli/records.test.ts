import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Drafted } from '../../../core/records/drafted.ts';
import type { ListedIls } from '../../../core/records/ils-listing.ts';
import { ROOT } from '../../house/source-files.ts';
import { runCommand } from './run-command.ts';

const RECORDS = join(ROOT, 'samples/records.txt');
const LOG = join(ROOT, 'samples/first-approach.csv');
const ON = ['--day', '2026-03-14'];

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'halfdot-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const records = (...words: string[]) => runCommand('records', RECORDS, ...ON, ...words);

describe('halfdot records', () => {
  it('lists what a file holds, narrowed by airport or words', async () => {
    const { status, answer, messages } = await records();
    expect({ status, messages }).toEqual({ status: 0, messages: [] });
    expect(answer).toContain('cycle 2602, in force from 2026-02-19 to 2026-03-18: 40 read, 0 unreadable');
    expect(answer.match(/^ {2}X.*$/gm)).toHaveLength(3);
    expect(answer).toMatch(/XDOS .*no glideslope: not usable$/m);
    expect(answer.split('\n').every((line) => line.length <= 110)).toBe(true);
    expect((await records('--airport', 'xpeh')).answer.match(/^ {2}X.*$/gm)).toHaveLength(1);
    expect((await records('--find', 'whimbrel 13')).answer).toMatch(/^ {2}XWHN /m);
  });

  it('lists as data', async () => {
    const { answer } = await records('--format', 'json');
    const list = JSON.parse(answer) as { cycle: string; ils: ListedIls[]; airports?: unknown };
    expect(list.cycle).toBe('2602');
    expect(list.ils.map(({ localizer }) => localizer)).toEqual(['IZDS', 'IZPE', 'IZWH']);
    expect(list.airports).toBeUndefined();
  });

  it('tells of one runway each value and where it is from', async () => {
    const { status, answer } = await records('--airport', 'XPEH', '--runway', '7');
    expect(status).toBe(0);
    expect(answer).toMatch(/^ {2}glidepath\.angleDeg +3 +official record, cycle 2602: glideslope of$/m);
    expect(answer).toMatch(/^ {2}finalApproachFix\.distanceNm +5 +computed from the positions of PETRU/m);
    expect(answer).toContain('Nothing in it contradicts anything else in it.');
    expect(answer).toContain('In no record, and left out: minimums');
    expect(answer.split('\n').every((line) => line.length <= 100)).toBe(true);
    const data = await records('--localizer', 'IZWH', '--format', 'json');
    const drafted = JSON.parse(data.answer) as Drafted;
    expect(drafted.facility.name).toBe('XWHN ILS 13');
    expect(drafted.issues.map(({ code }) => code)).toEqual(['facility-offset']);
  });

  it('writes a facility by which a flight is debriefed, with where its values are from and of which cycle', async () => {
    const out = join(folder, 'petrelholm.json');
    const { status } = await records('--airport', 'XPEH', '--runway', '07', '--out', out);
    expect(status).toBe(0);
    const { origin } = JSON.parse(readFileSync(out, 'utf8'));
    expect(origin.cycle).toBe('2602');
    expect(origin.sources['glidepath.angleDeg']).toContain('official record, cycle 2602');
    const checked = await runCommand('facility', out);
    expect(checked.status).toBe(0);
    const debrief = await runCommand('debrief', LOG, '--facility', out);
    expect(debrief.status).toBe(0);
    expect(debrief.answer).toContain('landed');
    expect(debrief.answer).not.toContain('cycle 2602');
    // Cycle 2603 begins on 19 March 2026.
    const later = join(folder, 'later.csv');
    writeFileSync(later, readFileSync(LOG, 'utf8').replaceAll('2026-03-14', '2026-03-19'));
    const outdated = await runCommand('debrief', later, '--facility', out);
    expect(outdated.answer.replaceAll(/\s+/g, ' ')).toContain(
      'To be checked: The facility is from records of cycle 2602, 2026-02-19 to 2026-03-18: on 2026-03-19 they are no longer in force.',
    );
  });

  it('says of a day outside of the cycle that it is', async () => {
    const late = await runCommand('records', RECORDS, '--day', '2026-03-19');
    expect(late.messages).toEqual([expect.stringContaining('on 2026-03-19 they are no longer in force')]);
    const draft = await runCommand('records', RECORDS, '--localizer', 'IZPE', '--day', '2026-03-19');
    expect(draft.answer).toMatch(/no longer\s+in force/);
  });

  it.each([
    ['no localizer', ['--airport', 'XPEH', '--runway', '25'], 'The records hold no such localizer.'],
    ['none with a glideslope', ['--airport', 'XDOS', '--runway', '22'], 'has no glideslope in the records'],
    ['an unknown procedure', ['--localizer', 'IZPE', '--procedure', 'I07Q'], 'there is I07'],
    ['a file without a runway', ['--out', 'x.json'], 'say which with --airport and --runway'],
    ['a day that is none', ['--day', 'today'], '--day is'],
  ])('%s: one sentence, exit 2 and nothing written', async (_, words, sentence) => {
    const { status, answer, messages } = await runCommand('records', RECORDS, ...words);
    expect({ status, answer }).toEqual({ status: 2, answer: '' });
    expect(messages.join(' ')).toContain(sentence);
  });

  it('names two localizers of one runway, and takes neither', async () => {
    const path = join(folder, 'two.txt');
    const text = readFileSync(RECORDS, 'utf8');
    writeFileSync(path, text + text.replaceAll('IZPE', 'IZPQ'));
    const { status, messages } = await runCommand('records', path, '--airport', 'XPEH', '--runway', '07');
    expect(status).toBe(2);
    expect(messages.join(' ')).toContain('more than one localizer: IZPE at XPEH and IZPQ at XPEH.');
  });

  it('never writes over its own file, nor a facility that is not whole', async () => {
    const copy = join(folder, 'records.txt');
    const text = readFileSync(RECORDS, 'utf8');
    writeFileSync(copy, text);
    const over = await runCommand('records', copy, '--localizer', 'IZPE', '--out', copy);
    expect(over.status).toBe(2);
    expect(readFileSync(copy, 'utf8')).toBe(text);
    writeFileSync(copy, text.replaceAll(/^SXXXP XPEHX1GRW07.*\n/gm, ''));
    const out = join(folder, 'half.json');
    const half = await runCommand('records', copy, '--localizer', 'IZPE', '--out', out);
    expect(half.status).toBe(2);
    expect(existsSync(out)).toBe(false);
    const shown = await runCommand('records', copy, '--localizer', 'IZPE');
    expect(shown.status).toBe(0);
    expect(shown.answer).toContain('no readable record of runway 07');
  });

  it('says what it cannot read', async () => {
    expect((await runCommand('records', LOG)).messages.join(' ')).toContain('holds no record of ARINC 424');
    expect((await runCommand('records', join(folder, 'nowhere'))).status).toBe(2);
  });
});
