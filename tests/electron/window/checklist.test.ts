import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CALLS_CHANNEL } from '../../../electron/window/page-bridge.ts';
import { ROOT, sourceFiles } from '../../house/source-files.ts';
import { Happening } from './stand-in.ts';
import { removeFolders, start, type Started } from './started-window.ts';

let started: Started;
beforeAll(async () => {
  started = await start();
});
afterAll(removeFolders);

const preferences = () => started.window.options.webPreferences!;
const read = (path: string) => readFileSync(join(ROOT, path), 'utf8');
const windowSources = () =>
  sourceFiles('electron')
    .filter(({ path }) => path.startsWith('electron/window/'))
    .map(({ text }) => text)
    .join('\n');
const navigated = (event: string) => {
  const navigation = new Happening('https://elsewhere.example/');
  started.window.webContents.events.emit(event, navigation);
  return navigation.wasPrevented;
};

/**
 * Electron's security checklist (docs/tutorial/security.md, lines 1 to 17 read in the source; 18 to 20, of its later
 * versions, from memory), each line held to what the main process really passes.
 */
const CHECKLIST: readonly (readonly [line: string, check: () => void])[] = [
  [
    '1. only secure content is loaded',
    () => {
      expect(started.window.did).toEqual(['load halfdot://app/']);
      expect(started.electron.schemes).toEqual([
        { scheme: 'halfdot', privileges: { standard: true, secure: true, supportFetchAPI: true } },
      ]);
    },
  ],
  [
    '2. no Node.js in any page',
    () =>
      expect(preferences()).toMatchObject({
        nodeIntegration: false,
        nodeIntegrationInWorker: false,
        nodeIntegrationInSubFrames: false,
      }),
  ],
  ['3. contexts are isolated', () => expect(preferences().contextIsolation).toBe(true)],
  [
    '4. pages run in a sandbox, all of them',
    () => {
      expect(preferences().sandbox).toBe(true);
      expect(started.electron.did.indexOf('sandbox')).toBe(0);
    },
  ],
  [
    '5. permissions are refused',
    () => {
      const answers: boolean[] = [];
      for (const permission of ['media', 'geolocation', 'notifications', 'clipboard-read', 'usb'])
        started.electron.session.permission(null, permission, (granted) => answers.push(granted));
      expect(answers).toEqual([false, false, false, false, false]);
      expect(started.electron.session.check()).toBe(false);
      expect(started.electron.session.device()).toBe(false);
    },
  ],
  ['6. web security is on', () => expect(preferences().webSecurity).toBe(true)],
  [
    '7. a policy for content comes with every answer',
    () => {
      for (const path of ['', 'assets/a.js', 'none.js']) {
        const { headers } = started.electron.serve!(new Request(`halfdot://app/${path}`));
        expect(headers.get('content-security-policy')).toContain("default-src 'none'");
        expect(headers.get('content-security-policy')).toContain("script-src 'self'");
        expect(headers.get('content-security-policy')).not.toContain('unsafe');
      }
    },
  ],
  ['8. no insecure content runs', () => expect(preferences().allowRunningInsecureContent).toBe(false)],
  ['9. no experimental features', () => expect(preferences().experimentalFeatures).toBe(false)],
  [
    '10. no features of the engine are enabled',
    () => expect(preferences()).not.toHaveProperty('enableBlinkFeatures'),
  ],
  ['11. no page within a page opens windows', () => expect(preferences().webviewTag).toBe(false)],
  [
    '12. no page within a page is made at all',
    () => {
      const attaching = new Happening();
      started.window.webContents.events.emit('will-attach-webview', attaching);
      expect(attaching.wasPrevented).toBe(true);
    },
  ],
  [
    '13. navigation is refused, in every frame and by every way',
    () => {
      expect(['will-navigate', 'will-frame-navigate', 'will-redirect'].map(navigated)).toEqual([
        true,
        true,
        true,
      ]);
      expect(preferences().navigateOnDragDrop).toBe(false);
    },
  ],
  [
    '14. new windows are refused',
    () => {
      for (const url of ['https://elsewhere.example/', 'halfdot://app/', 'about:blank'])
        expect(started.window.webContents.openWindow({ url })).toEqual({ action: 'deny' });
    },
  ],
  [
    '15. the system opens https links and nothing else',
    () => {
      started.electron.opened.length = 0;
      for (const url of [
        'file:///etc/passwd',
        'http://elsewhere.example/',
        'ms-settings:',
        'javascript:1',
        'smb://x/y',
      ])
        started.window.webContents.openWindow({ url });
      started.window.webContents.openWindow({ url: 'https://elsewhere.example/charts' });
      expect(started.electron.opened).toEqual(['https://elsewhere.example/charts']);
    },
  ],
  [
    '16. the version of Electron is named exactly, and is one that was current',
    () => {
      const { devDependencies } = JSON.parse(read('package.json')) as {
        devDependencies: Record<string, string>;
      };
      expect(devDependencies['electron']).toMatch(/^\d+\.\d+\.\d+$/);
      expect(parseInt(devDependencies['electron']!)).toBeGreaterThanOrEqual(45);
    },
  ],
  [
    '17. who sends a call is checked',
    async () => {
      const answer = await started.electron.channels[CALLS_CHANNEL]!(
        {
          sender: started.window.webContents,
          senderFrame: { url: 'https://elsewhere.example/', parent: null },
        },
        'notes',
        {},
      );
      expect(answer).toMatchObject({ ok: false });
      expect(started.calls).toEqual([]);
    },
  ],
  ['18. no page is a file', () => expect(windowSources()).not.toMatch(/file:\/\/|loadFile|pathToFileURL/)],
  [
    '19. the fuses are set for packages',
    () => {
      const { electronFuses } = JSON.parse(read('electron/window/packaging.json')) as {
        electronFuses: Record<string, boolean>;
      };
      expect(electronFuses).toMatchObject({
        runAsNode: false,
        enableCookieEncryption: true,
        enableNodeOptionsEnvironmentVariable: false,
        enableNodeCliInspectArguments: false,
        enableEmbeddedAsarIntegrityValidation: true,
        onlyLoadAppFromAsar: true,
        grantFileProtocolExtraPrivileges: false,
      });
    },
  ],
  [
    '20. the page gets nothing of Electron: see built-files.test.ts; the window names that file and no other',
    () => {
      expect(preferences().preload).toBe('/program/preload.cjs');
      expect(Object.keys(started.electron.channels)).toEqual([CALLS_CHANNEL]);
    },
  ],
];

describe("Electron's security checklist, in what the main process passes", () => {
  it.each(CHECKLIST)('%s', async (_, check) => check());

  it('has everything settled before Electron is ready and the first window is made', () => {
    expect(started.electron.did).toEqual(['sandbox', 'lock', 'schemes', 'handle halfdot', 'window']);
  });
});
