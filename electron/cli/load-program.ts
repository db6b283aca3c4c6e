import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { Script } from 'node:vm';

/** What the built program exports, see `program.ts`; the build wraps it into a function of this kind. */
interface Program {
  main(words: readonly string[]): Promise<void>;
}

type Wrapped = (exports: object, require: NodeJS.Require) => void;

/** Beside the program: what the engine had compiled when the build ran it once. */
export const CODE_CACHE = 'program.cache';

/**
 * How much of a function V8 runs before it optimizes it: fifteen times as much as by itself. What a log of two hours
 * optimizes is hardly used afterwards, and took a third of the processor's time; a log of 300,000 fixes takes no longer.
 */
const PATIENCE = '--interrupt-budget=2000000';

/**
 * Loads the built program of a folder with its compiled code. Compiling would take a third of the time that a debrief
 * takes. Another version of the engine rejects the code and compiles for itself, as it does when there is none.
 */
export function loadProgram(folder: string): { readonly program: Program; readonly script: Script } {
  // First: code that was compiled under other flags is rejected.
  setFlagsFromString(PATIENCE);
  const filename = join(folder, 'program.js');
  // Every character is ASCII, the build sees to it: an eighth of the time that UTF-8 takes.
  const source = readFileSync(filename, 'latin1');
  const cachedData = codeCache(folder);
  const script = new Script(source, { filename, ...(cachedData && { cachedData }) });
  const program = {};
  (script.runInThisContext() as Wrapped)(program, createRequire(filename));
  return { program: program as Program, script };
}

function codeCache(folder: string): Buffer | null {
  try {
    return readFileSync(join(folder, CODE_CACHE));
  } catch {
    return null;
  }
}
