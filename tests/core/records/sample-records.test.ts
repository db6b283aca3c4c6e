import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { analyze, defineFacility, type DefinedFacility } from '../../../core/analyze.ts';
import { compose, type Material } from '../../../core/debrief/compose-debrief.ts';
import { draftFromRecords } from '../../../core/records/draft-from-records.ts';
import { ROOT } from '../../house/source-files.ts';
import { idle, indexOf } from './reading.ts';

const sample = (name: string) => readFileSync(join(ROOT, 'samples', name), 'utf8');

function defined(text: string): DefinedFacility {
  const facility = defineFacility(text, 'facility');
  if (!facility.ok) throw new Error(facility.refusal.message);
  return facility.value;
}

async function flown(log: string, facility: DefinedFacility): Promise<Material> {
  const source = { name: log, sha256: () => '', size: null, chunks: [sample(log)] };
  const material = await analyze(source, facility, {}, idle);
  if (!material.ok) throw new Error(material.refusal.message);
  return material.value;
}

function degrees({ deviations, geometry }: Material, needle: 'localizer' | 'glidepath', i: number): number {
  return deviations[`${needle}FullScale`][i]! * geometry[`${needle}FullScaleDeg`];
}

describe('samples/records.txt', async () => {
  const index = await indexOf(...sample('records.txt').trimEnd().split('\n'));
  const draft = (airport: string, localizer: string) =>
    defined(JSON.stringify(draftFromRecords(index, { airport, localizer }).facility));

  it('is small', () => expect(sample('records.txt').length).toBeLessThan(40_000));

  it.each([
    ['first-approach.csv', 'petrelholm-ils-07.json', 'XPEH', 'IZPE'],
    ['offset-course.csv', 'whimbrelness-ils-13.json', 'XWHN', 'IZWH'],
  ] as const)('makes of %s what %s makes of it', async (log, file, airport, localizer) => {
    const byRecords = await flown(log, draft(airport, localizer));
    const byFile = await flown(log, defined(sample(file)));
    const outcomes = (material: Material) =>
      compose(material).debrief.approaches.map(({ outcome }) => outcome);
    expect(outcomes(byRecords)).toEqual(['landed']);
    expect(outcomes(byFile)).toEqual(['landed']);
    const [theirs, ours] = [byFile.deviations, byRecords.deviations];
    for (let i = 0; i < theirs.localizerFullScale.length; i++) {
      // Antennas to a foot, widths to a hundredth of a degree; the needles are looked at down to half a mile.
      if (theirs.distanceToThresholdNm[i]! < 0.5 || Math.abs(theirs.localizerFullScale[i]!) > 1) continue;
      expect(Math.abs(degrees(byRecords, 'localizer', i) - degrees(byFile, 'localizer', i))).toBeLessThan(
        0.01,
      );
      expect(Math.abs(ours.localizerFullScale[i]! - theirs.localizerFullScale[i]!)).toBeLessThan(0.01);
      expect(Math.abs(ours.distanceToThresholdNm[i]! - theirs.distanceToThresholdNm[i]!)).toBeLessThan(0.001);
      expect(Math.abs(degrees(byRecords, 'glidepath', i) - degrees(byFile, 'glidepath', i))).toBeLessThan(
        0.05,
      );
    }
  });
});
