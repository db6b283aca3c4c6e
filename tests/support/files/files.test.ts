import { beforeAll, describe, expect, it } from 'vitest';
import { PANEL } from '../flight/altimeter-error.ts';
import type { FlightTruth } from '../flight/flight-truth.ts';
import { fly } from '../flight/fly.ts';
import { AUGMENTED, PLAIN } from '../flight/gnss-error.ts';
import { PETRELHOLM } from '../samples/petrelholm.ts';
import { endsOnFinal } from '../scenarios/approaches.ts';
import { csvText, decimal } from './csv.ts';
import { elapsedLayout, englishLayout, epochLayout, germanLayout, unitsRowLayout } from './csv-layouts.ts';
import { gpxText } from './gpx.ts';
import { EXACT, recordFlight, type LoggedFix } from './logged-fix.ts';
import { disorder, duplicates, endsAfter, gap } from './mishaps.ts';
import { germanDate, isoUtc, timeText } from './time-text.ts';

let truth: FlightTruth;
let fixes: LoggedFix[];
beforeAll(() => {
  truth = fly(endsOnFinal(PETRELHOLM));
  fixes = recordFlight(truth, { ...EXACT, rateHz: 1 });
});

function latitudeErrorDeg(seed: string): number {
  const fix = recordFlight(truth, { rateHz: 1, gnss: AUGMENTED, altimeter: PANEL, seed })[100]!;
  return fix.latDeg - fixes[100]!.latDeg;
}

function textOf(gpx: string, name: string): string {
  return new RegExp(`<${name}>([^<]*)</${name}>`).exec(gpx)![1]!;
}

function times(some: readonly LoggedFix[]): number[] {
  return some.map((fix) => fix.timeS - fixes[0]!.timeS);
}

describe('a recorder', () => {
  it('with its errors switched off, writes the truth itself', () => {
    const all = recordFlight(truth, EXACT);
    expect(all).toHaveLength(truth.columns.timeS.length);
    all.forEach((fix, i) => {
      expect(fix.latDeg).toBe(truth.columns.latDeg[i]);
      expect(fix.lonDeg).toBe(truth.columns.lonDeg[i]);
      expect(fix.gnssAltitudeFt).toBe(truth.columns.heightFt[i]);
      expect(fix.indicatedAltitudeFt).toBe(truth.columns.indicatedFt[i]);
      expect(fix.localizerFullScale).toBe(truth.beam.localizerFullScale[i]);
    });
  });

  it.each([10, 5, 2, 1, 0.5, 0.2])('at %d Hz, keeps that many fixes a second', (rateHz) => {
    const kept = recordFlight(truth, { ...EXACT, rateHz });
    expect(kept[1]!.timeS - kept[0]!.timeS).toBeCloseTo(1 / rateHz, 6);
    expect(kept).toHaveLength(Math.ceil(truth.columns.timeS.length / (10 / rateHz)));
  });

  it('makes the same errors whatever its rate', () => {
    const fast = recordFlight(truth, { rateHz: 10, gnss: PLAIN, altimeter: PANEL });
    const slow = recordFlight(truth, { rateHz: 0.5, gnss: PLAIN, altimeter: PANEL });
    expect(slow[7]).toEqual(fast[140]);
  });

  it('is off by metres, not by miles, and by another amount for another recorder', () => {
    const one = latitudeErrorDeg('one');
    expect(Math.abs(one)).toBeLessThan(3 / 111_000);
    expect(one).not.toBe(0);
    expect(one).not.toBe(latitudeErrorDeg('two'));
  });

  it('carries a phone with its height bias', () => {
    const biased = recordFlight(truth, { ...EXACT, rateHz: 1, heightBiasFt: 35 });
    expect(biased[10]!.gnssAltitudeFt - fixes[10]!.gnssAltitudeFt).toBeCloseTo(35, 9);
  });

  it('takes the variation off the heading, west being negative', () => {
    const difference = fixes[5]!.headingMagneticDeg - truth.columns.headingTrueDeg[50]!;
    expect(((difference % 360) + 360) % 360).toBeCloseTo(23.6, 9);
  });
});

describe('CSV', () => {
  it('in English carries a unit in each name and ISO 8601 in UTC', () => {
    const lines = csvText(englishLayout(), fixes).split('\n');
    expect(lines[0]!.split(',').every((name) => /\(.+\)/.test(name))).toBe(true);
    expect(lines[1]!.split(',')[0]).toBe('2026-03-14T09:00:00Z');
    expect(Number(lines[1]!.split(',')[1])).toBeCloseTo(fixes[0]!.latDeg, 7);
    expect(lines).toHaveLength(fixes.length + 2);
    expect(lines.at(-1)).toBe('');
  });

  it('with needles, points them at the course and stops them at two dots', () => {
    const rows = csvText(englishLayout(0, true), fixes).split('\n');
    const needle = (row: number): number[] => rows[row + 1]!.split(',').slice(-2).map(Number);
    expect(rows[0]).toMatch(/Localizer Deviation \(dots\),Glidepath Deviation \(dots\)$/);
    expect(fixes[0]!.localizerFullScale).toBeLessThan(-1);
    expect(needle(0)).toEqual([2, 2]);
    const last = fixes.at(-1)!;
    expect(needle(fixes.length - 1)[0]).toBeCloseTo(-2 * last.localizerFullScale, 2);
    expect(needle(fixes.length - 1)[1]).toBeCloseTo(-2 * last.glidepathFullScale, 2);
  });

  it('with a row of units has remarks, names, units and padded local rows', () => {
    const lines = csvText(unitsRowLayout(['a remark'], -120), fixes).split('\r\n');
    expect(lines[0]).toBe('# a remark');
    expect(lines[1]).toContain('Ground Speed');
    expect(lines[2]).toContain('feet above sea level');
    const cells = lines[3]!.split(',');
    expect(cells.slice(-3).map((cell) => cell.trim())).toEqual(['2026-03-14', '07:00:00', '-02:00']);
    expect(cells.every((cell) => cell.length >= 9)).toBe(true);
  });

  it('in German has decimal commas, kilometres an hour and a mark at its start', () => {
    const text = csvText(germanLayout(), fixes);
    expect(text.startsWith('\uFEFFDatum;')).toBe(true);
    const cells = text.split('\r\n')[11]!.split(';');
    expect(cells.slice(0, 2)).toEqual(['14.03.2026', '09:00:10']);
    expect(Number(cells[2]!.replace(',', '.'))).toBeCloseTo(fixes[10]!.latDeg, 7);
    expect(Number(cells[6]!.replace(',', '.'))).toBeCloseTo(fixes[10]!.groundspeedKt * 1.852, 1);
    const withPoint = text
      .split('\r\n')
      .slice(1)
      .filter((line) => line.split(';').slice(2).join('').includes('.'));
    expect(withPoint).toEqual([]);
  });

  it('in epoch milliseconds is in metres and metres a second', () => {
    const cells = csvText(epochLayout(), fixes).split('\n')[2]!.split(',').map(Number);
    expect(cells[0]).toBe(Date.UTC(2026, 2, 14, 9, 0, 1));
    expect(cells[3]).toBeCloseTo(fixes[1]!.gnssAltitudeFt * 0.3048, 2);
    expect(cells[4]).toBeCloseTo(fixes[1]!.groundspeedKt * 0.514444, 2);
  });

  it('in elapsed seconds begins at nought and names no date', () => {
    const text = csvText(elapsedLayout(fixes[0]!.timeS), fixes);
    expect(text.split('\n')[1]!.startsWith('0.0,')).toBe(true);
    expect(text.split('\n')[61]!.startsWith('60.0,')).toBe(true);
    expect(text).not.toContain('2026');
  });

  it('writes no minus before a zero', () => {
    expect([decimal(-0.04, 1), decimal(-0.06, 1), decimal(0, 0)]).toEqual(['0.0', '-0.1', '0']);
  });

  it('writes a header alone when there are no fixes', () => {
    expect(csvText(elapsedLayout(0), []).split('\n')).toHaveLength(2);
  });
});

describe('GPX', () => {
  it('1.0 has course and speed as elements, in the order of its schema', () => {
    const text = gpxText({ version: '1.0', trackName: 'a', motion: true }, fixes);
    expect(text).toContain('xmlns="http://www.topografix.com/GPX/1/0"');
    expect(text).toMatch(/<ele>[^<]+<\/ele><time>[^<]+<\/time><course>[^<]+<\/course><speed>/);
    expect(Number(textOf(text, 'ele'))).toBeCloseTo(fixes[0]!.gnssAltitudeFt * 0.3048, 2);
    expect(Number(textOf(text, 'speed'))).toBeCloseTo(fixes[0]!.groundspeedKt * 0.514444, 2);
  });

  it('1.1 has them in extensions, and the geoid beside the height', () => {
    const text = gpxText({ version: '1.1', trackName: 'a', motion: true, geoidHeightM: -3.25 }, fixes);
    expect(text).toMatch(/<geoidheight>-3\.[23]<\/geoidheight><extensions><motion:speed>/);
    expect(text).not.toContain('<speed>');
  });

  it('cuts the track into segments and loses no fix', () => {
    const text = gpxText({ version: '1.1', trackName: 'a', motion: false, segmentsAt: [10, 200] }, fixes);
    const segments = text.split('<trkseg>').slice(1);
    expect(segments.map((segment) => segment.split('<trkpt').length - 1)).toEqual([
      10,
      190,
      fixes.length - 200,
    ]);
    expect(text).not.toContain('extensions');
  });
});

describe('mishaps', () => {
  it('a gap keeps both its ends and nothing between', () => {
    const kept = times(gap(100, 140)(fixes));
    expect(kept.filter((s) => s >= 99 && s <= 141)).toEqual([99, 100, 140, 141]);
  });

  it('duplicates, disorder and an early end do what they say and leave the given fixes alone', () => {
    const before = times(fixes);
    expect(times(duplicates(3)(fixes)).slice(0, 8)).toEqual([0, 1, 2, 2, 3, 4, 5, 5]);
    expect(times(disorder(4)(fixes)).slice(0, 9)).toEqual([0, 1, 2, 4, 3, 5, 6, 8, 7]);
    expect(times(endsAfter(2)(fixes))).toEqual([0, 1, 2]);
    expect(times(fixes)).toEqual(before);
  });

  it('of no fixes makes no fixes', () => {
    for (const mishap of [gap(1, 2), duplicates(2), disorder(2), endsAfter(1)])
      expect(mishap([])).toEqual([]);
  });
});

describe('times as text', () => {
  const timeS = Date.UTC(2026, 11, 31, 23, 59, 59, 400) / 1000;

  it('keep tenths and thousandths, and cut the rest', () => {
    expect([isoUtc(timeS), isoUtc(timeS, 1), isoUtc(timeS, 3)]).toEqual([
      '2026-12-31T23:59:59Z',
      '2026-12-31T23:59:59.4Z',
      '2026-12-31T23:59:59.400Z',
    ]);
    expect(timeText(timeS, 1)).toBe('23:59:59.4');
    expect(germanDate(timeS)).toBe('31.12.2026');
  });
});
