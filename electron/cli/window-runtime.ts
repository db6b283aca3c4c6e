import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** How the app is opened, and why so; null where the user asked for it or nothing else is to be expected. */
export type Opening =
  | { readonly in: 'window'; readonly runtime: string; readonly why: null }
  | { readonly in: 'browser'; readonly why: string | null };

/** The window's runtime as its package keeps it; null where it was not fetched. To import the package would fetch it. */
export function findRuntime(folder: string): string | null {
  const electron = join(folder, 'node_modules', 'electron');
  try {
    const runtime = join(electron, 'dist', readFileSync(join(electron, 'path.txt'), 'utf8').trim());
    return existsSync(runtime) ? runtime : null;
  } catch {
    return null;
  }
}

/** The desktop window where its runtime and a display are there, unless a browser was spoken of; else a browser. */
export function chooseOpening(
  browser: string | undefined,
  runtime: string | null,
  env: NodeJS.ProcessEnv,
  platform: NodeJS.Platform,
): Opening {
  if (browser !== undefined) return { in: 'browser', why: null };
  if (runtime === null)
    return {
      in: 'browser',
      why: "The desktop window's runtime is not on this machine (`npm run fetch-window` fetches it).",
    };
  const hasDisplay =
    platform === 'win32' || platform === 'darwin' || env['DISPLAY'] || env['WAYLAND_DISPLAY'];
  // The loopback host says itself that there is no display.
  if (!hasDisplay) return { in: 'browser', why: null };
  return { in: 'window', runtime, why: null };
}
