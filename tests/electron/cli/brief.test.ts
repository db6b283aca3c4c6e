import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Briefing } from '../../../core/briefing/briefing.ts';
import { ROOT } from '../../house/source-files.ts';
import { runCommand } from './run-command.ts';

const FACILITY = ['--facility', join(ROOT, 'samples/petrelholm-ils-07.json')];
const brief = (...words: string[]) => runCommand('brief', ...FACILITY, '--groundspeed', '90', ...words);
const TWICE = ['--decision-altitude', '240', '--decision-altitude-again', '240'];

describe('halfdot brief', () => {
  it('prints the sheet as text, and says nothing beside it', async () => {
    const { status, answer, messages } = await brief(...TWICE, '--entered-by', 'Hazel Wren');
    expect(status).toBe(0);
    expect(messages).toEqual([]);
    expect(answer).toMatch(/^Petrelholm ILS 07, IZPE, 110\.95 MHz\n/);
    expect(answer).toContain('Data entered by Hazel Wren, of ________.');
    expect(answer).toMatch(/Decision altitude\s+240 ft\s+200 ft above the touchdown zone/);
    expect(answer.endsWith('\n')).toBe(true);
  });

  it('gives everything that was said on to the sheet', async () => {
    const said = ['--airspeed', '95', '--wind', '100/12', '--temperature', '-20', '--dots', '5'];
    const lesson = ['--objective', 'Steady needles', '--entered-on', '2026-03-01'];
    const { answer } = await brief(...said, ...lesson, ...TWICE, '--format', 'json');
    const sheet = JSON.parse(answer) as Briefing;
    expect(sheet).toMatchObject({
      format: 'halfdot-briefing/1',
      temperatureC: -20,
      decision: { altitudeFt: 240, aboveTouchdownZoneFt: 200 },
      wind: { fromTrueDeg: 100, speedKt: 12, airspeedKt: 95 },
      needles: { dots: 5 },
      objective: 'Steady needles',
      enteredBy: null,
      enteredOn: '2026-03-01',
    });
    expect(sheet.descents.find(({ isAsked }) => isAsked)!.groundspeedKt).toBe(90);
  });

  it.each(['a5', 'half-letter'])('makes one page without a script, to be printed on %s', async (paper) => {
    const { answer } = await brief(...TWICE, '--paper', paper, '--format', 'html');
    expect(answer).toMatch(/^<!doctype html>\n<html lang="en">/);
    expect(answer).toContain(`<div class="briefing ${paper}">`);
    expect(answer).toContain('Not for navigation. Use the current chart.');
    expect(answer).toContain('<strong>240\u00A0ft</strong>');
    expect(answer).not.toMatch(/<script|<link|<img|https?:|javascript:/i);
  });

  it.each([
    [['--decision-altitude', '240'], 'type it again'],
    [['--decision-altitude', '240', '--decision-altitude-again', '250'], '240 ft and 250 ft'],
    [['--decision-altitude', '30', '--decision-altitude-again', '30'], 'not above the touchdown zone'],
    [['--wind', 'strong'], 'is no wind'],
    [['--airspeed', 'fast'], '--airspeed is a number'],
    [['--temperature', '90'], '--temperature is a number'],
    [['--entered-on', '2026-02-30'], 'is no day'],
    [['--paper', 'a4'], '--paper is a5 or half-letter'],
  ])('refuses %j in one sentence and prints nothing', async (words, sentence) => {
    const { status, answer, messages } = await brief(...words);
    expect(status).toBe(2);
    expect(answer).toBe('');
    expect(messages).toHaveLength(1);
    expect(messages[0]).toContain(sentence);
  });

  it('needs a groundspeed, and a facility that can be used', async () => {
    expect((await runCommand('brief', ...FACILITY)).messages[0]).toContain('needs --groundspeed');
    const log = join(ROOT, 'samples/first-approach.csv');
    const wrong = await runCommand('brief', '--facility', log, '--groundspeed', '90');
    expect(wrong.status).toBe(2);
    expect(wrong.answer).toBe('');
  });

  it('refuses a draft of which anything is not confirmed, in every format', async () => {
    const plain = JSON.parse(readFileSync(FACILITY[1]!, 'utf8')) as object;
    const landing = { logSha256: 'ab'.repeat(32), unconfirmed: ['runway.threshold.elevationFt'] };
    const file = join(mkdtempSync(join(tmpdir(), 'halfdot-brief-')), 'draft.json');
    writeFileSync(file, JSON.stringify({ ...plain, origin: { landing } }));
    for (const format of ['text', 'json', 'html']) {
      const told = await runCommand('brief', '--facility', file, '--groundspeed', '90', '--format', format);
      expect(told).toMatchObject({ status: 2, answer: '' });
      expect(told.messages.join()).toContain(
        'Petrelholm ILS 07 is a draft from a landing, and nobody has confirmed these values of it: elevation of the threshold.',
      );
    }
  });

  it('puts the contradictions of the facility on the sheet', async () => {
    const offset = ['--facility', join(ROOT, 'samples/whimbrelness-ils-13.json'), '--groundspeed', '90'];
    for (const format of ['text', 'html']) {
      const { answer } = await runCommand('brief', ...offset, '--format', format);
      expect(answer.replaceAll(/\s+/g, ' ')).toContain('is 2.11 degrees off the runway');
    }
  });
});
