import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { CODE_CACHE, loadProgram } from './load-program.ts';

/**
 * The last step of the build: debriefs samples as a user would, in both formats, and keeps the code that was compiled
 * for it. Run from the project's folder; the answers go nowhere.
 */
const SAMPLES = ['first-approach.csv', 'went-around.csv', 'touch-and-go-then-again.csv'];
const FACILITY = ['--facility', 'samples/petrelholm-ils-07.json'];

const folder = resolve('dist');
const { program, script } = loadProgram(folder);
process.stdout.write = () => true;
process.stderr.write = () => true;
for (const format of ['text', 'json'])
  await program.main([
    'debrief',
    ...SAMPLES.map((name) => join('samples', name)),
    ...FACILITY,
    '--format',
    format,
  ]);
writeFileSync(join(folder, CODE_CACHE), script.createCachedData());
