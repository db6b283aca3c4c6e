import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { CODE_CACHE, loadProgram } from './load-program.ts';
import type { ProcessOutput } from './output.ts';

/**
 * The last step of the build: debriefs samples as a user would, in both formats, and keeps the code that was compiled
 * for it. Run from the project's folder; the answers go nowhere.
 */
const SAMPLES = ['first-approach.csv', 'went-around.csv', 'touch-and-go-then-again.csv'];
const FACILITY = ['--facility', 'samples/petrelholm-ils-07.json'];

const folder = resolve('dist');
const { program, script } = loadProgram(folder);
const nowhere: ProcessOutput = {
  answer: async () => true,
  message: () => {},
  job: () => ({ progress: () => {}, cancelled: () => false }),
  written: async () => {},
};
for (const format of ['text', 'json'])
  await program.main(
    ['debrief', ...SAMPLES.map((name) => join('samples', name)), ...FACILITY, '--format', format],
    nowhere,
  );
writeFileSync(join(folder, CODE_CACHE), script.createCachedData());
