import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { debriefLog, defineFacility } from '../../core/analyze.ts';
import { facilityProblems } from '../../core/facility/parse-facility.ts';
import type { Issue, Outcome } from '../../core/issue/issue.ts';
import { debriefText } from '../../core/report/debrief-text.ts';
import { parseStandard } from '../../core/standard/parse-standard.ts';
import { bookingsOf } from '../../electron/library/bookings.ts';
import { rosterOf } from '../../electron/library/roster.ts';
import { idle, read } from '../core/log/reading.ts';
import { fuzz } from './mutated.ts';

const sample = (name: string) => readFileSync(`samples/${name}`, 'utf8');
/** The beginning of a log, which is read as quickly as it is broken. */
const lines = (name: string, count: number) => sample(name).split('\n').slice(0, count).join('\n');
const LOGS = [
  lines('first-approach.csv', 30),
  lines('recorder-fault.csv', 30),
  lines('every-five-seconds.csv', 30),
  'Time,Latitude,Longitude,AltMSL (ft),GS (kt)\n10:00:00,47.1,8.1,3000,100\n10:00:01,47.2,8.2,3010,101\n',
  'Zeit;Breite;Länge;Höhe (m)\n01.05.2024 10:00:00;47,1;8,1;900\n01.05.2024 10:00:01;47,2;8,2;901\n',
];
const TRACKS = [
  lines('phone.gpx', 40),
  `${lines('first-approach.gpx', 40)}\n</trkseg></trk></gpx>`,
  '<gpx version="1.1"><trk><trkseg><trkpt lat="47" lon="8"><ele>1</ele><time>2024-05-01T10:00:00Z</time></trkpt></trkseg></trk></gpx>',
];
const FACILITIES = ['petrelholm-ils-07', 'choughfell-ils-32', 'whimbrelness-ils-13'].map((name) =>
  sample(`${name}.json`),
);
const STANDARDS = [
  JSON.stringify({
    format: 'halfdot-standard/1',
    id: 'ours',
    title: 'Ours',
    source: 'our plan',
    basedOn: 'instrument-rating',
    own: [{ id: 'bank', title: 'Bank', quantity: 'bankDeg', lower: -20, upper: 20 }],
  }),
];
const ROSTERS = [
  'Name,Role\nRowan Teal,student\n"Crane, Juniper",instructor\n',
  'Vorname;Nachname\nRowan;Teal\n',
];
const BOOKINGS = ['Date,Aircraft,Student,Instructor\n2026-05-03,D-EXYZ,Rowan Teal,Juniper Crane\n'];

const CODE = /^[a-z0-9]+(-[a-z0-9]+)*$/;

function expectTold(issues: readonly Issue[]): void {
  for (const { code, message, count } of issues) {
    expect(code).toMatch(CODE);
    expect(message.length).toBeGreaterThan(10);
    expect(message.length).toBeLessThanOrEqual(700);
    expect(count).toBeGreaterThan(0);
  }
}

function expectOutcome(outcome: Outcome<unknown>): void {
  expectTold(outcome.ok ? outcome.issues : [outcome.refusal, ...outcome.issues]);
}

describe('a broken file is read or refused in time, with a sentence', () => {
  it.each([
    ['CSV', LOGS],
    ['GPX', TRACKS],
  ])(
    '%s',
    (name, seeds) => fuzz(name, seeds, 4000, async (text) => expectOutcome(await read(text))),
    3_600_000,
  );

  it('CSV, all the way to its debrief', async () => {
    const defined = defineFacility(FACILITIES[0]!, 'f.json');
    if (!defined.ok) throw new Error(defined.refusal.message);
    const whole = ['first-approach.csv', 'went-around.csv', 'missed-at-minimums.csv'].map(sample);
    await fuzz('debrief', whole, 60, async (text) => {
      const source = { name: 'a.csv', sha256: () => '0'.repeat(64), size: text.length, chunks: [text] };
      const debrief = await debriefLog(source, defined.value, {}, idle);
      expectOutcome(debrief);
      if (debrief.ok) expect(debriefText(debrief.value)).not.toMatch(/\bNaN\b|undefined|Infinity/);
    });
  }, 3_600_000);

  it(
    'a facility, and what follows from it',
    () =>
      fuzz('facility', FACILITIES, 4000, (text) => {
        const defined = defineFacility(text, 'f.json');
        expectOutcome(defined);
        facilityProblems(text);
        if (defined.ok) expect(defined.value.geometry.lengthFt).toBeGreaterThan(0);
      }),
    3_600_000,
  );

  it(
    'a standard',
    () => fuzz('standard', STANDARDS, 3000, (text) => expectOutcome(parseStandard(text, 's.json'))),
    3_600_000,
  );

  it('a roster', () => fuzz('roster', ROSTERS, 2000, (text) => expectTold(rosterOf(text).issues)), 3_600_000);

  it(
    'bookings',
    () => fuzz('bookings', BOOKINGS, 1000, (text) => expectTold(bookingsOf(text).issues)),
    3_600_000,
  );
});
