import { join } from 'node:path';
import { CAUTIONS } from '../../core/debrief/cautions.ts';
import { ENGINE_VERSION } from '../../core/debrief/engine-version.ts';
import type { HostEvent } from '../bridge/calls.ts';
import type { Answer } from '../bridge/gate.ts';
import { makeFolder } from '../files/write-atomically.ts';
import type { GivenFiles } from '../services/given-files.ts';
import { denyToContents, denyToSession, outsideOpener } from './deny.ts';
import type { CallEvent, ElectronParts, WindowPart } from './electron-parts.ts';
import { menuTemplate } from './menu-template.ts';
import { filesOfSecond, namedFiles } from './named-files.ts';
import { isOwnAddress, PAGE_ADDRESS, SCHEME } from './page-address.ts';
import { CALLS_CHANNEL, EVENTS_CHANNEL } from './page-bridge.ts';
import { pageServer } from './serve-page.ts';
import { fitted, keepPlace, readPlace, SMALLEST } from './window-place.ts';

export interface WindowHost {
  readonly gate: (name: unknown, value: unknown) => Promise<Answer>;
  readonly given: GivenFiles;
  /** Folder of the built page. */
  readonly page: string;
  /** The built preload file. */
  readonly preload: string;
  readonly userFolder: string;
  /** Words of the command line behind the program's own, and the folder that they were said in. */
  readonly words: readonly string[];
  readonly folder: string;
  readonly platform: NodeJS.Platform;
}

/**
 * Runs the desktop window until it is closed. Whoever starts a second one hands its files to the first, which comes
 * to the front. Has to be called before Electron is ready: what is denied to pages is settled before there are any.
 */
export async function runWindow<W extends WindowPart>(
  electron: ElectronParts<W>,
  host: WindowHost,
): Promise<void> {
  const { app } = electron;
  app.enableSandbox();
  // What the runtime keeps for itself lies apart from what is the user's; the lock below lies there as well.
  const own = makeFolder(join(host.userFolder, 'window'));
  if (own.ok) app.setPath('userData', own.value);
  const files = namedFiles(host.words, host.folder);
  if (!app.requestSingleInstanceLock({ files })) return app.quit();

  const openOutside = outsideOpener(electron.shell);
  app.on('web-contents-created', (_, contents) => denyToContents(contents, openOutside));
  electron.protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);

  let window: W | null = null;
  const ready = app.whenReady();
  const give = (paths: readonly string[]): void => {
    host.given.add(paths);
    void ready.then(() => paths.forEach((path) => app.addRecentDocument(path)));
    if (paths.length > 0) window?.webContents.send(EVENTS_CHANNEL, { kind: 'given' } satisfies HostEvent);
    if (window !== null) toFront(window);
  };
  app.on('second-instance', (_event, _words, _folder, data) => give(filesOfSecond(data)));
  app.on('open-file', (event, path) => {
    event.preventDefault();
    give([path]);
  });
  app.on('window-all-closed', () => app.quit());
  give(files);

  await ready;
  denyToSession(electron.session.defaultSession);
  electron.protocol.handle(SCHEME, pageServer(host.page));
  window = openWindow(electron, host);
  window.on('closed', () => (window = null));
  answerCalls(electron, host, window);
  setMenu(electron, host, window, give);
  await window.loadURL(PAGE_ADDRESS);
}

function openWindow<W extends WindowPart>(electron: ElectronParts<W>, host: WindowHost): W {
  const kept = readPlace(host.userFolder);
  const { screen } = electron;
  const displays = screen.getAllDisplays().map(({ workArea }) => workArea);
  const place = fitted(kept, [screen.getPrimaryDisplay().workArea, ...displays]);
  const window = new electron.BrowserWindow({
    ...place,
    minWidth: Math.min(SMALLEST.width, place.width),
    minHeight: Math.min(SMALLEST.height, place.height),
    title: 'Halfdot',
    // Shown when there is something to see.
    show: false,
    webPreferences: {
      preload: host.preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      devTools: !electron.app.isPackaged,
    },
  });
  window.once('ready-to-show', () => {
    if (kept?.isMaximized) window.maximize();
    window.show();
  });
  window.on('close', () =>
    keepPlace(host.userFolder, { ...window.getNormalBounds(), isMaximized: window.isMaximized() }),
  );
  window.webContents.on('render-process-gone', (_, { reason }) => {
    if (reason !== 'clean-exit') void askAfterCrash(electron, window);
  });
  return window;
}

/** Only the window's own page is heard, and of it only the outermost frame; to others there is no call at all. */
function answerCalls<W extends WindowPart>(electron: ElectronParts<W>, host: WindowHost, window: W): void {
  const isOwnPage = ({ sender, senderFrame }: CallEvent): boolean =>
    sender === window.webContents &&
    senderFrame !== null &&
    senderFrame.parent === null &&
    isOwnAddress(senderFrame.url);
  electron.ipcMain.handle(CALLS_CHANNEL, (event, name, value): Promise<Answer> | Answer => {
    if (isOwnPage(event)) return host.gate(name, value);
    return { ok: false, code: 'unknown-call', message: 'There is no such call.' };
  });
}

function setMenu<W extends WindowPart>(
  electron: ElectronParts<W>,
  host: WindowHost,
  window: W,
  give: (paths: readonly string[]) => void,
): void {
  const { app, dialog, Menu } = electron;
  const template = menuTemplate(host.platform, app.isPackaged, {
    open: () =>
      void dialog
        .showOpenDialog(window, {
          title: 'Open track logs',
          properties: ['openFile', 'multiSelections'],
          // What a log is is told by its content, so that all files come first.
          filters: [
            { name: 'All files', extensions: ['*'] },
            { name: 'Track logs', extensions: ['csv', 'txt', 'log', 'gpx'] },
          ],
        })
        .then(({ canceled, filePaths }) => {
          if (!canceled) give(filePaths);
        }),
    // The page knows what is to be on paper: the page to hand over, and not the app's own.
    print: () => window.webContents.send(EVENTS_CHANNEL, { kind: 'print' } satisfies HostEvent),
    showCautions: () =>
      void dialog.showMessageBox(window, {
        type: 'info',
        title: 'Halfdot',
        message: `Halfdot ${ENGINE_VERSION}`,
        detail: CAUTIONS.join('\n\n'),
      }),
  });
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
}

async function askAfterCrash<W extends WindowPart>({ dialog }: ElectronParts<W>, window: W): Promise<void> {
  const { response } = await dialog.showMessageBox(window, {
    type: 'error',
    title: 'Halfdot',
    message: 'The page stopped: this is a fault of the program.',
    detail: 'What you kept is on the disk. Load the page again, and open your logs anew.',
    buttons: ['Load again', 'Close'],
    defaultId: 0,
    cancelId: 1,
  });
  if (response === 0) window.webContents.reload();
  else window.close();
}

function toFront(window: WindowPart): void {
  if (window.isMinimized()) window.restore();
  window.focus();
}
