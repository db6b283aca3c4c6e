import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { defineFacility, type DefinedFacility } from '../../../core/analyze.ts';
import { DEFAULT_STANDARD } from '../../../core/standard/standards.ts';
import { NOTHING_STATED } from '../../../core/standard/stated.ts';
import { debriefBytes } from '../../../electron/library/debrief-bytes.ts';
import { SAMPLES } from './some-library.ts';

const JOB = { progress: () => {}, cancelled: () => false };

/** A facility whose fix lies far above its glidepath, which it says of itself. */
function slipped(name: string): DefinedFacility {
  const facility = JSON.parse(readFileSync(join(SAMPLES, `${name}.json`), 'utf8')) as {
    finalApproachFix: { altitudeFt: number };
  };
  facility.finalApproachFix.altitudeFt += 900;
  const defined = defineFacility(JSON.stringify(facility), name);
  if (!defined.ok) throw new Error(defined.refusal.message);
  return defined.value;
}

const FLOWN_TO = slipped('petrelholm-ils-07');
const NOT_FLOWN_TO = slipped('choughfell-ils-32');

describe('what is worth saying of a log that is tried at more than one facility', () => {
  it.each([
    ['read once', {}],
    ['read for each, since the air is another', { temperatureC: 25 }],
  ])('is the same in whatever order they come, each once: %s', async (_, settings) => {
    const log = { name: 'recorder-fault.csv', bytes: readFileSync(join(SAMPLES, 'recorder-fault.csv')) };
    const asked = { settings, judging: { standard: DEFAULT_STANDARD, stated: NOTHING_STATED } };
    const said = async (...facilities: [DefinedFacility, ...DefinedFacility[]]) => {
      const made = await debriefBytes(log, facilities, asked, JOB);
      return made.issues.map(({ code, message }) => `${code}: ${message}`).sort();
    };
    const alone = await said(FLOWN_TO);
    expect(alone.filter((text) => text.startsWith('facility-'))).toHaveLength(1);
    expect(alone.filter((text) => !text.startsWith('facility-')).length).toBeGreaterThan(0);
    expect(await said(FLOWN_TO, NOT_FLOWN_TO)).toEqual(alone);
    expect(await said(NOT_FLOWN_TO, FLOWN_TO)).toEqual(alone);
  });
});
