import { recordFlight } from '../files/logged-fix.ts';
import type { FacilityFile } from '../flight/facility-file.ts';
import type { FlightPlan } from '../flight/flight-plan.ts';
import type { FlightTruth } from '../flight/flight-truth.ts';
import { fly } from '../flight/fly.ts';
import { regionRecords } from '../records/fictional-region.ts';
import { CHOUGHFELL } from './choughfell.ts';
import { PETRELHOLM } from './petrelholm.ts';
import { optionsOf } from './sample-options.ts';
import { readmeText } from './readme.ts';
import { SAMPLE_FLIGHTS, type SampleFlight } from './sample-flights.ts';
import { WHIMBRELNESS } from './whimbrelness.ts';

/** Facility files by their name in samples/. */
export const SAMPLE_FACILITIES: ReadonlyMap<string, FacilityFile> = new Map([
  ['petrelholm-ils-07.json', PETRELHOLM],
  ['choughfell-ils-32.json', CHOUGHFELL],
  ['whimbrelness-ils-13.json', WHIMBRELNESS],
]);

/** Every file that the generator makes, by its path inside samples/. */
export function sampleFiles(): Map<string, string> {
  const flown = new Map<FlightPlan, FlightTruth>();
  const files = new Map<string, string>();
  for (const [name, facility] of SAMPLE_FACILITIES) files.set(name, `${JSON.stringify(facility, null, 2)}\n`);
  for (const sample of SAMPLE_FLIGHTS) {
    const truth = flown.get(sample.plan) ?? fly(sample.plan);
    flown.set(sample.plan, truth);
    files.set(sample.file, logText(sample, truth));
  }
  files.set('records.txt', regionRecords());
  files.set('catalogue.json', `${JSON.stringify(catalogue(), null, 1)}\n`);
  files.set('README.md', readmeText(SAMPLE_FACILITIES, SAMPLE_FLIGHTS));
  return files;
}

/** What the app offers to try: each flight with its facility, what it shows, and what its people state. */
function catalogue() {
  const facilityOf = ({ plan }: SampleFlight) =>
    [...SAMPLE_FACILITIES].find(([, facility]) => facility === plan.facility)![0];
  return {
    facilities: [...SAMPLE_FACILITIES.keys()],
    flights: SAMPLE_FLIGHTS.map((sample) => ({
      file: sample.file,
      facility: facilityOf(sample),
      flown: `${sample.plan.startUtc.slice(0, 10)}, ${sample.student}${sample.instructor ? ` with ${sample.instructor}` : ', alone'}`,
      shows: sample.shows,
      stated: statedPairs(optionsOf(sample.file)),
    })),
  };
}

/** Words of the command, two by two, as names and values. */
function statedPairs(words: readonly string[]): Record<string, string> {
  const pairs: Record<string, string> = {};
  for (let i = 0; i < words.length; i += 2) pairs[words[i]!.replace(/^--/, '')] = words[i + 1]!;
  return pairs;
}

function logText(sample: SampleFlight, truth: FlightTruth): string {
  const fixes = recordFlight(truth, sample.recorder);
  const marred = (sample.mishaps ?? []).reduce((before, mishap) => mishap(before), fixes);
  return sample.write(marred);
}
