import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The app as `npm start` serves it, with a folder of its own for what is the user's. */
export interface ServedApp {
  readonly address: string;
  /** Resolves with the exit status when it ends by itself. */
  readonly ended: Promise<number | null>;
  stop(): Promise<void>;
}

export async function serveApp(...files: string[]): Promise<ServedApp> {
  const userFolder = mkdtempSync(join(tmpdir(), 'halfdot-user-'));
  const served = await serveAppIn(userFolder, ...files);
  const stop = async () => {
    await served.stop();
    rmSync(userFolder, { recursive: true, force: true });
  };
  return { ...served, stop };
}

/** The same with a folder that is there already, and stays. */
export async function serveAppIn(userFolder: string, ...files: string[]): Promise<ServedApp> {
  const child = spawn(process.execPath, ['dist/halfdot.js', 'app', '--browser', 'no', ...files], {
    env: { ...process.env, HALFDOT_USER_FOLDER: userFolder },
    stdio: ['ignore', 'pipe', 'inherit'],
    detached: true,
  });
  const ended = new Promise<number | null>((resolve) => child.on('exit', resolve));
  const address = await firstLine(child);
  return {
    address,
    ended,
    stop: async () => {
      if (child.exitCode === null) process.kill(-child.pid!, 'SIGINT');
      await ended;
    },
  };
}

function firstLine(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = '';
    child.stdout!.on('data', (part: Buffer) => {
      text += part.toString();
      const end = text.indexOf('\n');
      if (end !== -1) resolve(text.slice(0, end));
    });
    child.on('exit', () => reject(new Error('the app ended before it said where it is')));
  });
}
