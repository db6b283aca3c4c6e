import { join } from 'node:path';
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, screen, session, shell } from 'electron';
import { gateTo } from '../bridge/gate.ts';
import { GivenFiles } from '../services/given-files.ts';
import { LibraryHost } from '../services/library-host.ts';
import { libraryFolder } from '../services/library-folder.ts';
import { Samples } from '../services/samples.ts';
import { servicesOf } from '../services/services.ts';
import { userFolder } from '../services/user-folder.ts';
import type { ElectronParts } from './electron-parts.ts';
import { runWindow } from './run-window.ts';

/** The desktop window, run by Electron's runtime: hands its parts to what decides, and decides nothing itself. */
const electron: ElectronParts<BrowserWindow> = {
  app,
  BrowserWindow,
  dialog,
  ipcMain,
  Menu,
  protocol,
  screen,
  session,
  shell,
};
const dist = join(__dirname, '..');
const folder = userFolder(process.env, process.platform);
const given = new GivenFiles();
const library = new LibraryHost(libraryFolder(process.argv, folder));
const services = servicesOf('window', {
  samples: new Samples(join(dist, '..', 'samples')),
  given,
  userFolder: folder,
  library,
});
// What was written is settled into its file; a crash would leave that to the next opening.
app.on('will-quit', () => void library.close());
runWindow(electron, {
  gate: gateTo(services),
  given,
  page: join(dist, 'page'),
  preload: join(__dirname, 'preload.cjs'),
  userFolder: folder,
  // Unpacked, the runtime is told which program to run: that word is not the user's.
  words: process.argv.slice(process.defaultApp ? 2 : 1),
  folder: process.cwd(),
  platform: process.platform,
}).catch(() => {
  dialog.showErrorBox('Halfdot', 'The window could not be opened: this is a fault of the program.');
  app.exit(1);
});
