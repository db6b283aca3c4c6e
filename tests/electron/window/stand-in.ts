import type {
  BrowserWindowConstructorOptions,
  CustomScheme,
  Menu,
  MenuItemConstructorOptions,
  MessageBoxOptions,
  OpenDialogOptions,
  Rectangle,
} from 'electron';
import type {
  CallEvent,
  ContentsPart,
  ElectronParts,
  SessionPart,
  WindowPart,
} from '../../../electron/window/electron-parts.ts';

type Listener = (...said: never[]) => unknown;

/** Keeps who listens for what, and lets a test be the one who speaks. */
class Events {
  readonly #listeners: [event: string, listener: Listener][] = [];

  readonly on = (event: string, listener: Listener): void => void this.#listeners.push([event, listener]);

  emit(event: string, ...said: unknown[]): void {
    for (const [name, listener] of this.#listeners) if (name === event) listener(...(said as never[]));
  }

  heard(): string[] {
    return [...new Set(this.#listeners.map(([event]) => event))];
  }
}

/** An event that may be prevented, and whether it was. */
export class Happening {
  wasPrevented = false;
  readonly preventDefault = (): void => void (this.wasPrevented = true);
  readonly url: string;

  constructor(url = '') {
    this.url = url;
  }
}

export class StandInContents implements ContentsPart {
  readonly events = new Events();
  readonly on = this.events.on;
  readonly sent: unknown[] = [];
  readonly did: string[] = [];
  openWindow: (details: { url: string }) => { action: string } = () => ({ action: 'allow' });

  readonly setWindowOpenHandler: ContentsPart['setWindowOpenHandler'] = (handler) => {
    this.openWindow = handler;
  };
  readonly send = (channel: string, value: unknown): void => void this.sent.push([channel, value]);
  readonly reload = (): void => void this.did.push('reload');
}

export class StandInWindow implements WindowPart {
  readonly webContents = new StandInContents();
  readonly events = new Events();
  readonly on = this.events.on;
  readonly once = this.events.on;
  readonly did: string[] = [];
  bounds: Rectangle = { x: 0, y: 0, width: 1, height: 1 };
  isSmall = false;
  isLarge = false;
  readonly options: BrowserWindowConstructorOptions;

  constructor(options: BrowserWindowConstructorOptions) {
    this.options = options;
  }

  readonly loadURL = async (url: string): Promise<void> => void this.did.push(`load ${url}`);
  readonly show = (): void => void this.did.push('show');
  readonly focus = (): void => void this.did.push('focus');
  readonly restore = (): void => void this.did.push('restore');
  readonly maximize = (): void => void this.did.push('maximize');
  readonly close = (): void => void this.did.push('close');
  readonly isMinimized = (): boolean => this.isSmall;
  readonly isMaximized = (): boolean => this.isLarge;
  readonly getNormalBounds = (): Rectangle => this.bounds;
}

class StandInSession implements SessionPart {
  readonly events = new Events();
  readonly on = this.events.on;
  permission: Parameters<SessionPart['setPermissionRequestHandler']>[0] = (_c, _p, answer) => answer(true);
  check: () => boolean = () => true;
  device: () => boolean = () => true;
  spellChecker = true;
  request: Parameters<SessionPart['webRequest']['onBeforeRequest']>[0] = (_, answer) =>
    answer({ cancel: false });

  readonly setPermissionRequestHandler: SessionPart['setPermissionRequestHandler'] = (handler) => {
    this.permission = handler;
  };
  readonly setPermissionCheckHandler = (handler: () => boolean): void => void (this.check = handler);
  readonly setDevicePermissionHandler = (handler: () => boolean): void => void (this.device = handler);
  readonly setSpellCheckerEnabled = (isEnabled: boolean): void => void (this.spellChecker = isEnabled);
  readonly webRequest: SessionPart['webRequest'] = {
    onBeforeRequest: (listener) => void (this.request = listener),
  };
}

/**
 * What stands in for Electron: as permissive as Electron is by itself where nobody says otherwise, so that what is
 * denied is denied by the program. The compiler holds it to the same parts as the real one.
 */
export class StandIn {
  readonly app = new Events();
  readonly session = new StandInSession();
  readonly windows: StandInWindow[] = [];
  /** What was done, in order. */
  readonly did: string[] = [];
  readonly recent: string[] = [];
  readonly opened: string[] = [];
  readonly paths: Record<string, string> = {};
  schemes: CustomScheme[] = [];
  serve: ((request: Request) => Response) | null = null;
  readonly channels: Record<string, (event: CallEvent, ...said: unknown[]) => unknown> = {};
  menu: MenuItemConstructorOptions[] = [];
  lockData: unknown;
  readonly asked: (OpenDialogOptions | MessageBoxOptions)[] = [];
  // What the test wants the machine and its user to be like.
  isFirst = true;
  isPackaged = true;
  chosen: string[] | null = null;
  button = 0;
  displays: Rectangle[] = [{ x: 0, y: 0, width: 1920, height: 1040 }];
  makeReady: () => void = () => {};

  parts(): ElectronParts<StandInWindow> {
    const ready = new Promise<void>((resolve) => (this.makeReady = resolve));
    const { windows, did } = this;
    const made = (window: StandInWindow): void => {
      did.push('window');
      windows.push(window);
      this.app.emit('web-contents-created', {}, window.webContents);
    };
    return {
      app: {
        isPackaged: this.isPackaged,
        on: this.app.on,
        enableSandbox: () => void did.push('sandbox'),
        setPath: (name, path) => void (this.paths[name] = path),
        requestSingleInstanceLock: (data) => {
          this.lockData = data;
          did.push('lock');
          return this.isFirst;
        },
        whenReady: () => ready,
        addRecentDocument: (path) => void this.recent.push(path),
        quit: () => void did.push('quit'),
      },
      BrowserWindow: class extends StandInWindow {
        constructor(options: BrowserWindowConstructorOptions) {
          super(options);
          made(this);
        }
      },
      protocol: {
        registerSchemesAsPrivileged: (schemes) => {
          did.push('schemes');
          this.schemes = schemes;
        },
        handle: (scheme, handler) => {
          did.push(`handle ${scheme}`);
          this.serve = handler;
        },
      },
      session: { defaultSession: this.session },
      ipcMain: { handle: (channel, listener) => void (this.channels[channel] = listener) },
      Menu: {
        buildFromTemplate: (template) => {
          this.menu = template;
          return {} as Menu;
        },
        setApplicationMenu: () => {},
      },
      dialog: {
        showOpenDialog: async (_, options) => {
          this.asked.push(options);
          return { canceled: this.chosen === null, filePaths: this.chosen ?? [] };
        },
        showMessageBox: async (_, options) => {
          this.asked.push(options);
          return { response: this.button };
        },
      },
      shell: { openExternal: async (url) => void this.opened.push(url) },
      screen: {
        getAllDisplays: () => this.displays.map((workArea) => ({ workArea })),
        getPrimaryDisplay: () => ({ workArea: this.displays[0]! }),
      },
    };
  }
}
