import { sampleFiles } from './samples/sample-files.ts';
import { differingSamples, writeSamples } from './samples/write-samples.ts';

/**
 * Makes samples/; with `--verify` it writes nothing, names each file that differs from what it would make, and exits
 * with 1 when there is one. Run from the project's folder.
 */
const made = sampleFiles();
if (process.argv.includes('--verify')) {
  const differing = differingSamples(made, 'samples');
  for (const path of differing) console.error(`${path} differs from what the generator makes`);
  process.exitCode = differing.length > 0 ? 1 : 0;
} else {
  writeSamples(made, 'samples');
}
