import { describe, expect, it } from 'vitest';
import { LOG_ISSUES } from '../../../core/log/issue-codes.ts';
import type { LogIssueCode } from '../../../core/log/issue-codes.ts';
import type { LogSettings } from '../../../core/log/log.ts';
import { readLog } from '../../../core/log/read-log.ts';
import { idle, read } from './reading.ts';

const HEADER = 'Time,Latitude,Longitude,AltMSL (ft)';
const ROW = '2024-05-01T10:00:00Z,47.1,8.1,3000';
const POINT = '<trkpt lat="1" lon="2"><ele>3</ele><time>2024-05-01T10:00:00Z</time></trkpt>';
const csv = (...rows: string[]) => [HEADER, ...rows].join('\n');
const gpx = (inside: string) => `<gpx><trk><trkseg>${inside}</trkseg></trk></gpx>`;
const flight = Array.from({ length: 121 }, (_, i) => `${1714557600 + i},${47 + i / 2160},8,1000,100`);

/** For each code a text that makes it be said. */
const SAID: Readonly<Record<Exclude<LogIssueCode, 'cancelled'>, readonly [string, LogSettings?]>> = {
  'file-empty': [''],
  'file-is-picture': ['GIF89a'],
  'file-is-spreadsheet': ['\u00d0\u00cf\u0011\u00e0'],
  'file-is-archive': ['PK\u0003\u0004'],
  'file-is-document': ['%PDF-1.7'],
  'file-is-web-page': ['<html>'],
  'file-encoding': ['T\0i\0m\0e\0'],
  'not-a-track-log': ['hello'],
  'no-rows': [HEADER],
  'no-position': ['Time,Latitude,AltMSL (ft)\n2024-05-01T10:00:00Z,47,1'],
  'no-time': ['Latitude,Longitude,AltMSL (ft)\n47,8,1'],
  'no-altitude': ['Time,Latitude,Longitude,Note\n2024-05-01T10:00:00Z,47,8,1'],
  'no-usable-rows': [csv('2024-05-01T10:00:00Z,,,1')],
  'position-swapped': [csv('2024-05-01T10:00:00Z,-118,34,1')],
  'line-too-long': [csv(ROW, 'x'.repeat(1 << 21))],
  'xml-doctype': ['<!DOCTYPE gpx><gpx></gpx>'],
  'xml-too-deep': [gpx('<a>'.repeat(40))],
  'xml-text-too-long': [gpx(`<!--${'x'.repeat(70_000)}-->`)],
  'xml-damaged-at-start': ['<gpx></trk>'],
  'time-zone-invalid': [csv(ROW), { timeZone: 'Nowhere/Atall' }],
  'unit-unknown': [csv(ROW), { units: { 'AltMSL (ft)': 'parsec' } }],
  'unit-unfit': [csv(ROW), { units: { 'AltMSL (ft)': 'kt' } }],
  'xml-not-well-formed': [gpx(`${POINT}</wrong>`)],
  'row-under-other-header': [csv(ROW, 'Longitude,Latitude,Time,AltMSL (ft)', ROW)],
  'row-without-position': [csv(ROW, '2024-05-01T10:00:00Z,,,1')],
  'row-without-time': [csv(ROW, ',47,8,1')],
  'row-too-short': [csv(ROW, '1,2', ROW)],
  'row-too-long': [csv(ROW, `${ROW},5`)],
  'row-cut-short': [csv(ROW, '2024')],
  'quote-unclosed': [csv(ROW, '"stray', ROW)],
  'value-unreadable': [csv(ROW, '2024-05-01T10:00:00Z,47,8,high')],
  'value-marked-invalid': [csv(ROW, '2024-05-01T10:00:00Z,47,8,-9999')],
  'height-of-2d-fix': [gpx(POINT + POINT.replace('<time>', '<fix>2d</fix><time>'))],
  'longitude-wrapped': [csv('2024-05-01T10:00:00Z,47,359,1')],
  'altitude-kind-assumed': ['Time,Lat,Lon,Alt (ft)\n2024-05-01T10:00:00Z,1,2,3'],
  'altitude-kind-unused': [csv(ROW), { altitudeKind: 'ellipsoid' }],
  'gpx-ele-assumed-msl': [gpx(POINT)],
  'unit-assumed': ['Time,Lat,Lon,GPS altitude\n2024-05-01T10:00:00Z,1,2,3'],
  'unit-unused': [csv(ROW), { units: { Elsewhere: 'm' } }],
  'unit-over-header': [csv(ROW), { units: { 'AltMSL (ft)': 'm' } }],
  'unit-from-positions': [`Epoch,Lat,Lon,GPS altitude,Speed\n${flight.join('\n')}`],
  'needle-scale-assumed': [`${HEADER},LOC dev (dots)\n${ROW},0.5`],
  'needle-scale-unknown': [`${HEADER},HCDI\n${ROW},80`],
  'date-order-assumed': ['UTC,Lat,Lon,AltMSL (ft)\n03/05/2024 10:00:00,1,2,3'],
  'time-zone-unknown': ['Time,Lat,Lon,AltMSL (ft)\n2024-05-01 10:00:00,1,2,3'],
  'time-without-date': ['UTC time,Lat,Lon,AltMSL (ft)\n10:00:00,1,2,3'],
  'time-elapsed': ['Elapsed,Lat,Lon,AltMSL (ft)\n0,1,2,3'],
};

describe('the table of issues', () => {
  it.each(Object.entries(SAID))(
    '%s can be met, as severe as the table has it',
    async (code, [text, settings]) => {
      const outcome = await read(text, settings);
      const said = outcome.ok ? outcome.value.issues : [outcome.refusal];
      const found = said.find((issue) => issue.code === code);
      expect(found?.severity).toBe(LOG_ISSUES[code as LogIssueCode][0]);
      for (const { message, tip } of said) {
        expect(message).toMatch(/^[A-Z0-9"f].*[^.]\.$/s);
        if (tip !== null) expect(tip).toMatch(/^[A-Z].*[^.]\.$/);
      }
    },
  );

  it('warns of what may change the answer, notes what needs no deed, and cautions for the rest', () => {
    const of = (severity: string) =>
      Object.entries(LOG_ISSUES).flatMap(([code, [its]]) => (its === severity ? code : []));
    expect(of('warning')).toEqual(['xml-not-well-formed', 'row-under-other-header']);
    expect(of('note')).toEqual([
      'value-marked-invalid',
      'height-of-2d-fix',
      'longitude-wrapped',
      'gpx-ele-assumed-msl',
      'unit-over-header',
      'unit-from-positions',
    ]);
    expect(of('caution').length).toBe(17);
    expect(of('refusal').length).toBe(23);
  });

  it('holds every code that a text here brings about, "cancelled", and no other', async () => {
    expect([...Object.keys(SAID), 'cancelled'].toSorted()).toEqual(Object.keys(LOG_ISSUES).toSorted());
    const outcome = await readLog(
      { name: 'flight', sha256: () => '', size: null, chunks: [csv(ROW)] },
      {},
      { ...idle, cancelled: () => true },
    );
    expect(!outcome.ok && [outcome.refusal.code, outcome.refusal.message]).toEqual([
      'cancelled',
      'Reading flight was stopped.',
    ]);
  });
});
