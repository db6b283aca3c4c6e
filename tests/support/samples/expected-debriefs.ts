import { createHash } from 'node:crypto';
import { debriefLog, defineFacility } from '../../../core/analyze.ts';
import { debriefText } from '../../../core/report/debrief-text.ts';
import { debrief as command } from '../../../electron/cli/debrief.ts';
import { judgingOf } from '../../../electron/cli/judging-options.ts';
import { logSettings } from '../../../electron/cli/log-options.ts';
import { parseArguments } from '../../../electron/cli/parse-arguments.ts';
import { SAMPLE_FACILITIES } from './sample-files.ts';
import { SAMPLE_FLIGHTS } from './sample-flights.ts';
import { optionsOf } from './sample-options.ts';

const JOB = { progress: () => {}, cancelled: () => false };

/**
 * What the program answers to each sample, as text and as JSON, by path inside samples/. These are no truth: that is
 * the generator's. They are kept so that every change of an answer is seen and read.
 */
export async function expectedDebriefs(files: ReadonlyMap<string, string>): Promise<Map<string, string>> {
  const expected = new Map<string, string>();
  for (const { file, plan } of SAMPLE_FLIGHTS) {
    const [facilityFile] = [...SAMPLE_FACILITIES].find(([, facility]) => facility === plan.facility)!;
    const text = files.get(file)!;
    const words = [file, '--facility', facilityFile, ...optionsOf(file)];
    const args = usable(parseArguments(command, words));
    const judging = usable(judgingOf(args));
    const source = {
      name: file,
      sha256: () => createHash('sha256').update(text).digest('hex'),
      size: Buffer.byteLength(text),
      chunks: [text.replace(/^\uFEFF/, '')],
    };
    const defined = usable(defineFacility(files.get(facilityFile)!, facilityFile));
    const debrief = usable(await debriefLog(source, defined, usable(logSettings(args)), JOB, judging));
    expected.set(`debriefs/${file}.txt`, debriefText(debrief));
    expected.set(`debriefs/${file}.json`, `${JSON.stringify(debrief, null, 1)}\n`);
  }
  return expected;
}

function usable<T>(outcome: { ok: true; value: T } | { ok: false; refusal: { message: string } }): T {
  if (!outcome.ok) throw new Error(outcome.refusal.message);
  return outcome.value;
}
