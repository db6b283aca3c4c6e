import { describe, expect, it } from 'vitest';
import { issue } from '../../../core/issue/issue.ts';
import type { LogColumn } from '../../../core/log/log.ts';
import type { Inspection } from '../../../core/report/inspection.ts';
import { inspectionText } from '../../../core/report/inspection-text.ts';

const column = (
  index: number,
  header: string,
  role: LogColumn['role'],
  confidence: number,
  unitText: string | null,
  unitRead: LogColumn['unitRead'],
): LogColumn => ({ index, header, unitText, unitRead, role, confidence, why: '' });

const FOUND: Inspection = {
  file: 'flight.csv',
  sha256: '',
  kind: 'csv',
  recognised: 'comma-separated',
  rowsSeen: 1200,
  fixes: 1199,
  startUtc: '2026-05-04T14:02:11Z',
  endUtc: '2026-05-04T14:22:10Z',
  durationS: 1199,
  timeReference: 'utc',
  medianIntervalS: 1,
  gaps: [],
  altitudeReference: 'geometric',
  altitudeFt: { lowest: 41, highest: 3012 },
  derived: { groundspeedKt: true, trackTrueDeg: true, verticalSpeedFpm: true },
  columns: [
    column(0, 'Lat', 'latDeg', 0.95, 'deg', { name: 'deg', from: 'header' }),
    column(1, 'Alt', 'altitudeUnnamedFt', 0.7, null, { name: 'ft', from: 'assumed' }),
    column(2, 'X', 'pitchDeg', 0.4, null, { name: 'deg', from: 'usual' }),
  ],
  uses: [
    {
      quantity: 'position',
      from: '"Lat" and "Lon"',
      halfWidth: 2.3,
      unit: 'ft',
      errorFrom: "the log's own accuracy",
      usedFor: 'both needles',
    },
    {
      quantity: 'groundspeed',
      from: '"GS"',
      halfWidth: 0.4,
      unit: 'kt',
      errorFrom: 'a receiver',
      usedFor: 'the roll',
    },
    {
      quantity: 'wind',
      from: 'four columns',
      halfWidth: null,
      unit: null,
      errorFrom: null,
      usedFor: 'telling it',
    },
    { quantity: 'bank', from: null, halfWidth: null, unit: null, errorFrom: null, usedFor: 'the gates' },
  ],
  headerKey: '',
  issues: [],
};
const text = (changes: Partial<Inspection> = {}) =>
  inspectionText({ ...FOUND, ...changes }).replace(/\s+/g, ' ');

describe('inspectionText', () => {
  it('says what a log holds, in sentences', () => {
    expect(text()).toContain('It holds 1,199 fixes over 19 min 59 s: 4 May 2026, 14:02:11 to 14:22:10 UTC.');
    expect(text()).toContain('One fix a second, without a gap. Heights from 41 to 3,012 ft');
    expect(text()).toContain('Nothing in it looks wrong.');
    expect(text()).toContain('not read: groundspeed, ground track and vertical speed.');
  });
  it('says what a debrief takes from it, how far off that is, and what it cannot tell', () => {
    expect(text()).toContain(
      `position from "Lat" and "Lon", ± 3 ft (the log's own accuracy); for both needles groundspeed from "GS", ± 0.4 kt`,
    );
    expect(text()).toContain('wind from four columns; for telling it');
    expect(text()).toContain('Not in this log, and so not told: bank.');
    expect(text({ uses: FOUND.uses.slice(0, 1) })).not.toContain('Not in this log');
  });
  it('says how sure each column is, and how its unit is known where the header does not name it', () => {
    expect(text()).toMatch(
      /latitude "Lat" deg sure .* "Alt" ft, assumed likely .* "X" deg, as usual a guess: please check/,
    );
  });
  it.each([
    ['user', 'm, as you said'],
    ['others', 'm, as the other columns'],
    ['positions', 'm, as the positions show'],
    ['values', 'm, as its values show'],
  ] as const)('says that a unit is known by %s', (from, words) => {
    const columns = [column(0, 'Alt', 'altitudeUnnamedFt', 0.7, 'ft', { name: 'm', from })];
    expect(text({ columns })).toContain(`"Alt" ${words} likely`);
  });
  it.each([
    [0.1, '10 fixes a second'],
    [5, 'A fix every 5 s'],
  ])('a median interval of %d s is "%s"', (medianIntervalS, words) => {
    expect(text({ medianIntervalS })).toContain(words);
  });
  it('speaks of gaps, of a flight past midnight, of local and of elapsed time', () => {
    const gap = { startUtc: '', endUtc: '', seconds: 40 };
    expect(text({ gaps: [gap] })).toContain('with one gap of 40 s in all');
    expect(text({ gaps: [gap, gap] })).toContain('with 2 gaps of 1 min 20 s in all');
    expect(text({ endUtc: '2026-05-05T00:10:00Z' })).toContain('to 00:10:00 on 5 May 2026 UTC');
    expect(text({ timeReference: 'local' })).toContain('14:22:10 as written');
    const elapsed = { timeReference: 'elapsed', startUtc: '1970-01-01T00:00:00Z' } as const;
    expect(text(elapsed)).toContain('counted from its own start');
  });
  it('lists issues with their first line and tip, and columns that are not used', () => {
    const unused = Array.from({ length: 14 }, (_, i) => ({
      ...FOUND.columns[0]!,
      header: `c${i}`,
      role: null,
    }));
    const issues = [
      issue('caution', 'a', 'Something.', { firstLine: 7, tip: 'Look.' }),
      issue('note', 'b', 'On line 3 another.', { firstLine: 3 }),
    ];
    const said = text({
      columns: unused,
      issues,
      derived: { ...FOUND.derived, groundspeedKt: false, verticalSpeedFpm: false },
    });
    expect(said).toContain('Caution: Something. (First on line 7.) Look.');
    expect(said).toContain('Note: On line 3 another. Worked out');
    expect(said).toContain('"c11" and 2 more.');
    expect(said).toContain('not read: ground track.');
  });
});
