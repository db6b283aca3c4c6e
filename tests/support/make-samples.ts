import { expectedDebriefs } from './samples/expected-debriefs.ts';
import { sampleFiles } from './samples/sample-files.ts';
import { differingSamples, writeSamples } from './samples/write-samples.ts';

/**
 * Makes samples/, with the debrief of each; with `--verify` it writes nothing, names each file that differs from what it would make, and exits
 * with 1 when there is one. Run from the project's folder.
 */
const files = sampleFiles();
const made = new Map([...files, ...(await expectedDebriefs(files))]);
if (process.argv.includes('--verify')) {
  const differing = differingSamples(made, 'samples');
  for (const path of differing) console.error(`${path} differs from what the generator makes`);
  process.exitCode = differing.length > 0 ? 1 : 0;
} else {
  writeSamples(made, 'samples');
}
