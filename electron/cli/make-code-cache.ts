import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { CODE_CACHE, loadProgram } from './load-program.ts';

/**
 * The last step of the build: debriefs the bundled sample as a user would, and keeps the code that was compiled for it.
 * Run from the project's folder; the answer goes nowhere.
 */
const folder = resolve('dist');
const { program, script } = loadProgram(folder);
process.stdout.write = () => true;
await program.main(['debrief', 'samples/first-approach.csv', '--facility', 'samples/petrelholm-ils-07.json']);
writeFileSync(join(folder, CODE_CACHE), script.createCachedData());
