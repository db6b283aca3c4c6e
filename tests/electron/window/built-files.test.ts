import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire, isBuiltin } from 'node:module';
import { join } from 'node:path';
import { compileFunction } from 'node:vm';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { NO_NOTES } from '../../../electron/bridge/no-notes.ts';
import { CALLS_CHANNEL } from '../../../electron/window/page-bridge.ts';
import { ROOT } from '../../house/source-files.ts';
import { StandIn } from './stand-in.ts';
import { makeFolder, removeFolders } from './started-window.ts';

afterAll(() => {
  vi.unstubAllEnvs();
  removeFolders();
});

const WINDOW = join(ROOT, 'dist', 'window');

/** Runs a built file as the CommonJS that it is. */
function runScript(name: string, require: (name: string) => unknown): void {
  const text = readFileSync(join(WINDOW, name), 'utf8');
  const script = compileFunction(text, ['require', 'module', 'exports', '__dirname'], { filename: name });
  script(require, { exports: {} }, {}, WINDOW);
}

/** Runs the built file as a sandboxed page does: as a script with `require`, which knows `electron` alone. */
function loadPreload() {
  const exposed: Record<string, unknown> = {};
  const invoked: unknown[][] = [];
  const listeners: [channel: string, listener: (...said: unknown[]) => void][] = [];
  const parts = {
    contextBridge: { exposeInMainWorld: (name: string, value: unknown) => void (exposed[name] = value) },
    ipcRenderer: {
      invoke: async (...said: unknown[]) => {
        invoked.push(said);
        return { ok: true, value: 7 };
      },
      on: (channel: string, listener: (...said: unknown[]) => void) => listeners.push([channel, listener]),
    },
  };
  const require = (name: string) => {
    if (name !== 'electron') throw new Error(`a sandboxed page has no ${name}`);
    return parts;
  };
  runScript('preload.cjs', require);
  return { exposed, invoked, listeners };
}

describe('the built preload file', () => {
  it('is one CommonJS file that needs nothing but electron', () => {
    expect(readdirSync(WINDOW).sort()).toEqual(['main.cjs', 'package.json', 'preload.cjs']);
    expect(loadPreload).not.toThrow();
  });

  it('puts two functions into the page and nothing else', () => {
    const { exposed } = loadPreload();
    expect(Object.keys(exposed)).toEqual(['halfdot']);
    const kinds = Object.entries(exposed['halfdot'] as object).map(([name, value]) => [name, typeof value]);
    expect(kinds).toEqual([
      ['call', 'function'],
      ['onEvent', 'function'],
    ]);
  });

  it('calls by one channel, and hands the page what happened but not who told it', async () => {
    const { exposed, invoked, listeners } = loadPreload();
    const bridge = exposed['halfdot'] as {
      call(...said: unknown[]): Promise<unknown>;
      onEvent(listener: (...said: unknown[]) => void): unknown;
    };
    expect(await bridge.call('notes', {}, 'another word')).toEqual({ ok: true, value: 7 });
    expect(invoked).toEqual([['halfdot:call', 'notes', {}]]);
    const heard: unknown[][] = [];
    expect(bridge.onEvent((...said) => heard.push(said))).toBeUndefined();
    expect(listeners.map(([channel]) => channel)).toEqual(['halfdot:event']);
    listeners[0]![1]({ sender: 'ipcRenderer' }, { kind: 'given' });
    expect(heard).toEqual([[{ kind: 'given' }]]);
  });
});

describe('the built main file', () => {
  it('is what the runtime is told to run, by a package of its own, and needs nothing but electron', () => {
    expect(JSON.parse(readFileSync(join(WINDOW, 'package.json'), 'utf8'))).toMatchObject({
      productName: 'Halfdot',
      main: 'main.cjs',
    });
    const text = readFileSync(join(WINDOW, 'main.cjs'), 'utf8');
    const needed = (by: string) => {
      const names = text.matchAll(new RegExp(`\\b${by}\\(["'\`]([^"'\`]+)["'\`]\\)`, 'g'));
      return [...new Set([...names].map(([, name]) => name!))].filter((name) => !isBuiltin(name));
    };
    expect(needed('require')).toEqual(['electron']);
    // Asked for where the runtime has no SQLite of its own, and not before a library is opened.
    expect(needed('import')).toEqual(['@photostructure/sqlite']);
  });

  it('serves the built page, the samples and the notes where it lies', async () => {
    const electron = new StandIn();
    const parts = { ...electron.parts(), app: { ...electron.parts().app, exit: () => {} } };
    const require = (name: string): unknown =>
      name === 'electron' ? parts : createRequire(import.meta.url)(name);
    vi.stubEnv('HALFDOT_USER_FOLDER', makeFolder());
    runScript('main.cjs', require);
    electron.makeReady();
    await vi.waitFor(() => expect(electron.windows[0]?.did).toEqual(['load halfdot://app/']));

    const html = await electron.serve!(new Request('halfdot://app/')).text();
    const linked = [...html.matchAll(/(?:src|href)="\.\/([^"]+)"/g)].map(([, path]) => path!);
    expect(linked.length).toBeGreaterThan(2);
    for (const path of linked)
      expect([path, electron.serve!(new Request(`halfdot://app/${path}`)).status]).toEqual([path, 200]);

    const [window] = electron.windows;
    expect(existsSync(window!.options.webPreferences!.preload!)).toBe(true);
    const event = { sender: window!.webContents, senderFrame: { url: 'halfdot://app/', parent: null } };
    const call = (name: string, value: unknown) => electron.channels[CALLS_CHANNEL]!(event, name, value);
    expect(await call('about', {})).toMatchObject({ ok: true, value: { host: 'window' } });
    expect(await call('notes', {})).toMatchObject({ ok: true, value: { notes: NO_NOTES } });
    expect(await call('readSample', { file: 'first-approach.csv' })).toMatchObject({ ok: true });
  });
});
