import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from '../../house/source-files.ts';

const WINDOW = join(ROOT, 'dist', 'window');

/** Runs the built file as a sandboxed page does: as a script with `require`, which knows `electron` alone. */
function loadPreload() {
  const exposed: Record<string, unknown> = {};
  const invoked: unknown[][] = [];
  const listeners: [channel: string, listener: (...said: unknown[]) => void][] = [];
  const electron = {
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
    return electron;
  };
  const text = readFileSync(join(WINDOW, 'preload.cjs'), 'utf8');
  // oxlint-disable-next-line typescript/no-implied-eval -- the file under test is a script
  new Function('require', 'module', 'exports', text)(require, { exports: {} }, {});
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

  it('is what the runtime is told to run, with the main file, by a package of its own', () => {
    expect(JSON.parse(readFileSync(join(WINDOW, 'package.json'), 'utf8'))).toMatchObject({
      productName: 'Halfdot',
      main: 'main.cjs',
    });
    const needed = readFileSync(join(WINDOW, 'main.cjs'), 'utf8').matchAll(/require\(["'`]([^"'`]+)["'`]\)/g);
    expect(
      [...new Set([...needed].map(([, name]) => name!))].filter((name) => !name.startsWith('node:')),
    ).toEqual(['electron']);
  });
});
