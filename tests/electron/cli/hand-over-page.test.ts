import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { CAUTIONS } from '../../../core/debrief/cautions.ts';
import type { Debrief } from '../../../core/debrief/debrief.ts';
import { ROOT } from '../../house/source-files.ts';
import { optionsOf } from '../../support/samples/sample-options.ts';
import { runCommand } from './run-command.ts';

interface Flown {
  readonly file: string;
  readonly facility: string;
}
const { flights } = JSON.parse(readFileSync(join(ROOT, 'samples/catalogue.json'), 'utf8')) as {
  flights: Flown[];
};
const sample = (name: string) => join(ROOT, 'samples', name);
const facilityOf = (file: string) => flights.find((flight) => flight.file === file)!.facility;

function debriefed(file: string, format: string, ...more: string[]) {
  const words = ['--facility', sample(facilityOf(file)), ...optionsOf(file), '--format', format, ...more];
  return runCommand('debrief', sample(file), ...words);
}

const pageOf = async (file: string, ...more: string[]) => (await debriefed(file, 'html', ...more)).answer;

/** What a reader sees of a piece of the page. */
const textOf = (html: string) =>
  html
    .replaceAll(/<style>[^]*?<\/style>/g, '')
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll('&#x27;', "'")
    .replaceAll('&amp;', '&')
    .replaceAll(/\s+/g, ' ');

/** The first piece of the page between two marks. */
function between(page: string, from: string, to: string): string {
  const start = page.indexOf(from);
  const end = page.indexOf(to, start);
  if (start < 0 || end < 0) throw new Error(`the page has no ${from} … ${to}`);
  return page.slice(start, end);
}

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'halfdot-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('the page to hand over, of every sample', () => {
  it.each(flights.map(({ file }) => file))('%s', async (file) => {
    const { status, answer: page } = await debriefed(file, 'html');
    const debrief = JSON.parse((await debriefed(file, 'json')).answer) as Debrief;
    expect(status).toBe(0);
    // One file, and small enough to be sent: 400 kB for each approach.
    expect(page.length).toBeLessThan(400_000 * Math.max(1, debrief.approaches.length));
    expect(page).toMatch(/^<!doctype html>\n<html lang="en">/);
    expect(page).not.toMatch(
      /<script|<link|<img|<iframe|<object|\son[a-z]+=|javascript:|https?:|url\((?!#)/i,
    );
    expect(page.match(/<svg /g) ?? []).toHaveLength(debrief.approaches.length);
    const ids = [...page.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, id] of page.matchAll(/(?:url\(#|href="#)([^)"]+)/g)) expect(ids).toContain(id);
    const text = textOf(page);
    for (const { summary, criteria, events } of debrief.approaches) {
      expect(text).toContain(summary);
      for (const { title } of criteria) expect(text).toContain(title);
      for (const { utc } of events) expect(text).toContain(utc.slice(11, 19));
    }
    for (const { message } of debrief.issues) expect(text).toContain(message);
    for (const caution of CAUTIONS) expect(text).toContain(caution);
    // What is not known is left out, and never shown as what it is to the program.
    expect(text).not.toMatch(/NaN|null|undefined|Infinity/);
    expect(page).not.toMatch(/"[^"]*NaN[^"]*"/);
  });
});

describe('the page of the same debrief', () => {
  const zone = process.env['TZ'];
  afterEach(() => {
    if (zone === undefined) delete process.env['TZ'];
    else process.env['TZ'] = zone;
  });

  it('is the same to the last byte, wherever and whenever it is made', async () => {
    const once = await pageOf('first-approach.csv');
    process.env['TZ'] = 'Asia/Tokyo';
    const copy = join(folder, 'first-approach.csv');
    writeFileSync(copy, readFileSync(sample('first-approach.csv')));
    const words = ['--facility', sample('petrelholm-ils-07.json'), ...optionsOf('first-approach.csv')];
    const { answer } = await runCommand('debrief', copy, ...words, '--format', 'html');
    expect(answer).toBe(once);
    for (const own of [ROOT, folder, hostname()]) expect(once).not.toContain(own);
  });
});

describe('text that is not ours', () => {
  it('is shown as the text that it is', async () => {
    const nasty = '<img src=x onerror=alert(1)> & "</style><script>1</script>';
    const text = readFileSync(sample('petrelholm-ils-07.json'), 'utf8');
    const facility = join(folder, 'nasty.json');
    writeFileSync(facility, JSON.stringify({ ...(JSON.parse(text) as object), name: nasty }));
    const log = join(folder, '<b>&log.csv');
    writeFileSync(log, readFileSync(sample('first-approach.csv')));
    const stated = [
      '--turbulence',
      '<i>light</i>',
      '--allow',
      'airspeed-final=5: </td><script>gusts</script>',
    ];
    const words = [log, '--facility', facility, '--format', 'html', '--target-airspeed', '90', ...stated];
    const { status, answer: page } = await runCommand('debrief', ...words);
    expect(status).toBe(0);
    expect(page).not.toMatch(/<script|<img|<b>|<i>/);
    expect(page.match(/<\/style>/g)).toHaveLength(1);
    for (const shown of ['&lt;img src=x', '&lt;b&gt;&amp;log.csv', '&lt;i&gt;light', '&lt;script&gt;gusts'])
      expect(page).toContain(shown);
  });
});

describe('a caution stands where it matters', () => {
  it('below the needles, over the profile, with stability and inside the working', async () => {
    const page = await pageOf('first-approach.csv');
    expect(between(page, '</svg>', '</figure>')).toContain(
      'Computed from position and published data. The real needles may have differed.',
    );
    expect(textOf(between(page, '<g class="profile">', '<g class="plan-panel">'))).toContain(
      'no terrain or obstacles are shown',
    );
    expect(between(page, '<table class="stability">', '</caption>')).toContain(
      'as far as this log shows; not seen: configuration, power, checklists',
    );
    const working = textOf(between(page, '<div class="working">', '</div>'));
    expect(working).toContain('no authority’s. Not a sign-off and not a minimum.');
    expect(working).toMatch(/Level 4 of 5, .*; score \d+ of 100/);
    // Level and score are told nowhere else.
    expect(textOf(page).match(/Level \d of 5/g)).toHaveLength(1);
    expect(page).not.toContain('Going around never lowers the level.');
  });

  it('at decision altitude where satellites tell it, and not where the altimeter does', async () => {
    const at = async (file: string) =>
      textOf(between(await pageOf(file), '<g class="height decision">', '</g>'));
    expect(await at('phone.gpx')).toMatch(/GNSS height, ± \d+ ft\. Your altimeter decides\./);
    expect(await at('first-approach.csv')).not.toContain('GNSS');
  });

  it('by the sentence after a go-around', async () => {
    const page = await pageOf('went-around.csv');
    expect(between(page, '<h2>', '<figure>')).toContain('Going around never lowers the level.');
  });

  it('by heights that were corrected for the air', async () => {
    const log = join(folder, 'altimeter.csv');
    const text = readFileSync(sample('first-approach.csv'), 'utf8');
    writeFileSync(log, text.replace('GNSS Altitude (ft MSL)', 'Note'));
    const words = [log, '--facility', sample('petrelholm-ils-07.json'), '--format', 'html'];
    const caution = 'Shown to explain altimeter readings; apply corrections only as your rules require.';
    expect((await runCommand('debrief', ...words, '--temperature', '-12')).answer).toContain(caution);
    expect((await runCommand('debrief', ...words)).answer).not.toContain(caution);
  });

  it('at the foot of each printed page', async () => {
    const page = await pageOf('first-approach.csv');
    expect(between(page, '@bottom-left', '}')).toContain(`content: '${CAUTIONS.slice(0, 2).join(' ')}';`);
  });
});

describe('several logs', () => {
  it('are one page with a head for each, or a folder of pages', async () => {
    const logs = [sample('first-approach.csv'), sample('touch-and-go-then-again.csv')];
    const words = [...logs, '--facility', sample('petrelholm-ils-07.json'), '--format', 'html'];
    const { answer: page } = await runCommand('debrief', ...words);
    expect(page.match(/<h1>/g)).toHaveLength(2);
    expect(page.match(/<svg /g)).toHaveLength(3);
    const ids = [...page.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const out = join(folder, 'pages');
    await runCommand('debrief', ...words, '--out', out);
    expect(readFileSync(join(out, 'first-approach.debrief.html'), 'utf8')).toMatch(/^<!doctype html>/);
  });

  it('are one collection for a map, with the facility in it once', async () => {
    const logs = [sample('first-approach.csv'), sample('went-around.csv')];
    const words = [...logs, '--facility', sample('petrelholm-ils-07.json'), '--format', 'geojson'];
    const { answer } = await runCommand('debrief', ...words);
    const { features } = JSON.parse(answer) as { features: { properties: { feature: string } }[] };
    const kinds = features.map(({ properties }) => properties.feature);
    expect(kinds.filter((kind) => kind === 'runway')).toHaveLength(1);
    expect(kinds.filter((kind) => kind === 'approach track')).toHaveLength(2);
  });
});
