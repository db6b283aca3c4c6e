import { readFileSync } from 'node:fs';
import { analyze, defineFacility, type DefinedFacility } from '../../../core/analyze.ts';
import { compose, type Composed, type Material } from '../../../core/debrief/compose-debrief.ts';
import { debrief as command } from '../../../electron/cli/debrief.ts';
import { judgingOf } from '../../../electron/cli/judging-options.ts';
import { logSettings } from '../../../electron/cli/log-options.ts';
import { parseArguments } from '../../../electron/cli/parse-arguments.ts';
import { optionsOf } from './sample-options.ts';

const JOB = { progress: () => {}, cancelled: () => false };

interface ComposedSample extends Composed {
  readonly material: Material;
}

/** A shipped flight, judged as its people stated it, with what it was judged from. */
export async function composedSample(file: string): Promise<ComposedSample> {
  const { flights } = JSON.parse(readFileSync('samples/catalogue.json', 'utf8')) as {
    flights: { file: string; facility: string }[];
  };
  const { facility } = flights.find((flight) => flight.file === file)!;
  const args = usable(parseArguments(command, [file, '--facility', facility, ...optionsOf(file)]));
  const text = readFileSync(`samples/${file}`, 'utf8');
  const source = { name: file, sha256: () => '', size: text.length, chunks: [text.replace(/^\uFEFF/, '')] };
  const defined: DefinedFacility = usable(
    defineFacility(readFileSync(`samples/${facility}`, 'utf8'), facility),
  );
  const material = usable(await analyze(source, defined, usable(logSettings(args)), JOB));
  return { material, ...compose(material, usable(judgingOf(args))) };
}

function usable<T>(outcome: { ok: true; value: T } | { ok: false; refusal: { message: string } }): T {
  if (!outcome.ok) throw new Error(outcome.refusal.message);
  return outcome.value;
}
