import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { MenuItemConstructorOptions } from 'electron';
import { GivenFiles } from '../../../electron/services/given-files.ts';
import { runWindow, type WindowHost } from '../../../electron/window/run-window.ts';
import { StandIn, type StandInWindow } from './stand-in.ts';

/** The window's program, run against what stands in for Electron. */
export interface Started {
  readonly electron: StandIn;
  readonly window: StandInWindow;
  readonly given: GivenFiles;
  readonly userFolder: string;
  /** Calls that came through to the gate. */
  readonly calls: unknown[];
}

const folders: string[] = [];

/** A folder with a page in it, a secret beside the page, and a user's own. */
export function makeFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'halfdot-window-'));
  folders.push(folder);
  mkdirSync(join(folder, 'page', 'assets'), { recursive: true });
  writeFileSync(join(folder, 'page', 'index.html'), '<!doctype html>');
  writeFileSync(join(folder, 'page', 'assets', 'a.js'), '1');
  writeFileSync(join(folder, 'secret.js'), 'secret');
  return folder;
}

export function removeFolders(): void {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
}

export function hostIn(folder: string, but: Partial<WindowHost> = {}): WindowHost & { calls: unknown[] } {
  const calls: unknown[] = [];
  return {
    gate: async (name, value) => {
      calls.push([name, value]);
      return { ok: true, value: 7 };
    },
    given: new GivenFiles(),
    page: join(folder, 'page'),
    preload: '/program/preload.cjs',
    userFolder: join(folder, 'user'),
    words: [],
    folder: '/logs',
    platform: 'linux',
    ...but,
    calls,
  };
}

export async function start(
  but: Partial<WindowHost> = {},
  machine: Partial<StandIn> = {},
  folder = makeFolder(),
): Promise<Started> {
  const electron = Object.assign(new StandIn(), machine);
  const host = hostIn(folder, but);
  const running = runWindow(electron.parts(), host);
  electron.makeReady();
  await running;
  return {
    electron,
    window: electron.windows[0]!,
    given: host.given,
    userFolder: host.userFolder,
    calls: host.calls,
  };
}

/** An item of the window's menu. */
export function itemOf({ electron }: Started, menu: string, label: string): MenuItemConstructorOptions {
  const items = electron.menu.find((item) => item.label === menu)!.submenu as MenuItemConstructorOptions[];
  return items.find((item) => item.label === label)!;
}
