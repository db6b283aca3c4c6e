import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { chooseOpening, findRuntime } from '../../../electron/cli/window-runtime.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'halfdot-runtime-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe("the window's runtime", () => {
  it('is where its package says, once it was fetched', () => {
    const electron = join(folder, 'node_modules', 'electron');
    expect(findRuntime(folder)).toBeNull();
    mkdirSync(join(electron, 'dist'), { recursive: true });
    expect(findRuntime(folder)).toBeNull();
    writeFileSync(join(electron, 'path.txt'), 'electron\n');
    expect(findRuntime(folder)).toBeNull();
    writeFileSync(join(electron, 'dist', 'electron'), '');
    expect(findRuntime(folder)).toBe(join(electron, 'dist', 'electron'));
  });
});

describe('the app is opened', () => {
  const SCREEN = { DISPLAY: ':0' };

  it('in the window where runtime and display are there', () => {
    expect(chooseOpening(undefined, '/r', SCREEN, 'linux')).toEqual({
      in: 'window',
      runtime: '/r',
      why: null,
    });
    expect(chooseOpening(undefined, '/r', { WAYLAND_DISPLAY: 'w' }, 'linux').in).toBe('window');
    expect(chooseOpening(undefined, '/r', {}, 'darwin').in).toBe('window');
    expect(chooseOpening(undefined, '/r', {}, 'win32').in).toBe('window');
  });

  it('in a browser without them, with the reason in one line, and where the user says so', () => {
    const without = chooseOpening(undefined, null, SCREEN, 'linux');
    expect(without.in).toBe('browser');
    expect(without.why).toMatch(/^[^\n]*npm run fetch-window[^\n]*\.$/);
    expect(chooseOpening(undefined, '/r', {}, 'linux')).toEqual({ in: 'browser', why: null });
    expect(chooseOpening('yes', '/r', SCREEN, 'linux')).toEqual({ in: 'browser', why: null });
    expect(chooseOpening('no', null, SCREEN, 'linux')).toEqual({ in: 'browser', why: null });
  });
});
