import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Debrief, DebriefCriterion } from '../../../core/debrief/debrief.ts';
import { ROOT } from '../../house/source-files.ts';
import { fly } from '../../support/flight/fly.ts';
import { SAMPLE_FLIGHTS } from '../../support/samples/sample-flights.ts';

function debriefOf(file: string): Debrief {
  return JSON.parse(readFileSync(join(ROOT, 'samples', 'debriefs', `${file}.json`), 'utf8')) as Debrief;
}

function criteriaOf(file: string): DebriefCriterion[] {
  return debriefOf(file).approaches.flatMap(({ criteria }) => criteria);
}

/** Miles that the aircraft truly flew between two moments, from its speed over the ground ten times a second. */
function trulyNm({ timeS, groundspeedKt }: ReturnType<typeof fly>['columns'], fromS: number, toS: number) {
  let nm = 0;
  for (let i = 1; i < timeS.length; i++) {
    const seconds = Math.min(toS, timeS[i]!) - Math.max(fromS, timeS[i - 1]!);
    nm += (Math.max(0, seconds) * (groundspeedKt[i]! + groundspeedKt[i - 1]!)) / 2 / 3600;
  }
  return nm;
}

describe('the miles of every sample', () => {
  it('lie between none and those assessed, and are known wherever the seconds are', () => {
    const all = SAMPLE_FLIGHTS.flatMap(({ file }) => criteriaOf(file));
    const timed = all.filter(({ timeOutsideS }) => timeOutsideS !== null);
    expect(timed.length).toBeGreaterThan(50);
    for (const { assessedNm, outsideNm, timeOutsideS } of timed) {
      expect(outsideNm).toBeGreaterThanOrEqual(0);
      expect(outsideNm).toBeLessThanOrEqual(assessedNm! + 1e-9);
      expect(outsideNm! > 0).toBe(timeOutsideS!.best > 0);
    }
    for (const { assessedNm, outsideNm, timeOutsideS } of all)
      if (timeOutsideS === null) expect([assessedNm, outsideNm]).toEqual([null, null]);
  });

  it('are those that were flown, within 1 % of each and 0.1 % of all together', () => {
    let assessed = 0;
    let truth = 0;
    for (const { file, plan } of SAMPLE_FLIGHTS) {
      // The times of one begin anywhere.
      if (debriefOf(file).log.timeReference === 'elapsed') continue;
      const { columns } = fly(plan);
      for (const { assessedNm, assessedS, counted } of criteriaOf(file)) {
        const spans = counted.map(({ startUtc, endUtc }) =>
          [startUtc, endUtc].map((utc) => Date.parse(utc) / 1000),
        );
        const wholeS = spans.reduce((sum, [startS, endS]) => sum + endS! - startS!, 0);
        // What was not recorded is not assessed; moments are told to the millisecond.
        if (assessedNm === null || Math.abs(wholeS - assessedS) > 0.01) continue;
        const flownNm = spans.reduce((sum, [startS, endS]) => sum + trulyNm(columns, startS!, endS!), 0);
        expect(Math.abs(assessedNm / flownNm - 1), file).toBeLessThan(0.01);
        assessed += assessedNm;
        truth += flownNm;
      }
    }
    expect(truth).toBeGreaterThan(150);
    expect(Math.abs(assessed / truth - 1)).toBeLessThan(0.001);
  });
});
