import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';

/** `NAME.<process>.part`, with what SQLite puts beside a file. */
const PART = /^(.*)\.(\d+)\.part(?:-wal|-shm|-journal)?$/;

/** Removes what copies left in a folder that were cut off, where `mine` knows the name; not what a process still makes. */
export function sweepParts(folder: string, mine: (name: string) => boolean): void {
  if (!existsSync(folder)) return;
  for (const name of readdirSync(folder)) {
    const [, made, pid] = PART.exec(name) ?? [];
    if (made && mine(made) && !isRunning(Number(pid)))
      rmSync(join(folder, name), { recursive: true, force: true });
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
