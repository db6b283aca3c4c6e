import { readFileSync } from 'node:fs';
import { createRequire, Module } from 'node:module';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { Script } from 'node:vm';
import type { ProcessOutput } from './output.ts';

/** What the built program exports, see `program.ts`; the build wraps it into a function of this kind. */
interface Program {
  main(words: readonly string[], output?: ProcessOutput): Promise<void>;
}

type Wrapped = (exports: object, require: NodeJS.Require) => void;

/** Beside the program: what the engine had compiled when the build ran it once. */
export const CODE_CACHE = 'program.cache';

/**
 * How V8 is to work. What a log of two hours optimizes is hardly used afterwards: V8 waits twelve times as long as by
 * itself before it does. Almost nothing of what a debrief allocates lives on: one thread sweeps it sooner than several
 * have begun. A log of 300,000 fixes is read sooner, too.
 */
const ENGINE = ['--interrupt-budget=800000', '--no-parallel-scavenge'];

/**
 * Loads the built program of a folder with its compiled code. Compiling would take a third of the time that a debrief
 * takes. Another version of the engine rejects the code and compiles for itself, as it does when there is none.
 */
export function loadProgram(folder: string): { readonly program: Program; readonly script: Script } {
  // First: code that was compiled under other flags is rejected.
  for (const flag of ENGINE) setFlagsFromString(flag);
  const filename = join(folder, 'program.js');
  // Every character is ASCII, the build sees to it: an eighth of the time that UTF-8 takes.
  const source = readFileSync(filename, 'latin1');
  const cachedData = codeCache(folder);
  const script = new Script(source, { filename, ...(cachedData && { cachedData }) });
  const program = {};
  const require = createRequire(filename);
  // A part that is loaded later requires what it shares with the program from its file: from this one, and no second.
  // By its real path, which is what a part of it asks for.
  const own = require.resolve(filename);
  require.cache[own] = Object.assign(new Module(own), { exports: program, loaded: true });
  (script.runInThisContext() as Wrapped)(program, require);
  return { program: program as Program, script };
}

function codeCache(folder: string): Buffer | null {
  try {
    return readFileSync(join(folder, CODE_CACHE));
  } catch {
    return null;
  }
}
