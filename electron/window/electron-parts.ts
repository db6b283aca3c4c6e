import type {
  BrowserWindowConstructorOptions,
  CustomScheme,
  Display,
  Menu,
  MenuItemConstructorOptions,
  MessageBoxOptions,
  OpenDialogOptions,
  Rectangle,
} from 'electron';

/**
 * The parts of Electron that the window uses, and no more of each. `main.ts` passes the real ones, which the compiler
 * holds to these; the tests pass a stand-in, which it holds to the same. Written as properties, not as methods, since
 * the compiler is strict about the parameters of properties alone.
 */
export interface ElectronParts<W extends WindowPart = WindowPart> {
  readonly app: AppPart;
  readonly BrowserWindow: new (options: BrowserWindowConstructorOptions) => W;
  readonly protocol: {
    readonly registerSchemesAsPrivileged: (schemes: CustomScheme[]) => void;
    readonly handle: (scheme: string, handler: (request: Request) => Response) => void;
  };
  readonly session: { readonly defaultSession: SessionPart };
  readonly ipcMain: {
    readonly handle: (channel: string, listener: (event: CallEvent, ...said: unknown[]) => unknown) => void;
  };
  readonly Menu: {
    readonly buildFromTemplate: (template: MenuItemConstructorOptions[]) => Menu;
    readonly setApplicationMenu: (menu: Menu | null) => void;
  };
  readonly dialog: DialogPart<W>;
  readonly shell: { readonly openExternal: (url: string) => Promise<void> };
  readonly screen: {
    readonly getAllDisplays: () => readonly Pick<Display, 'workArea'>[];
    readonly getPrimaryDisplay: () => Pick<Display, 'workArea'>;
  };
}

interface Preventable {
  readonly preventDefault: () => void;
}

/** A navigation that is about to begin. */
export interface Navigation extends Preventable {
  readonly url: string;
}

interface AppPart {
  readonly isPackaged: boolean;
  readonly on: {
    (
      event: 'second-instance',
      listener: (event: unknown, argv: string[], folder: string, data: unknown) => void,
    ): unknown;
    (event: 'open-file', listener: (event: Preventable, path: string) => void): unknown;
    (event: 'web-contents-created', listener: (event: unknown, contents: ContentsPart) => void): unknown;
    (event: 'window-all-closed', listener: () => void): unknown;
  };
  readonly enableSandbox: () => void;
  readonly setPath: (name: 'userData', path: string) => void;
  readonly requestSingleInstanceLock: (data: Record<string, unknown>) => boolean;
  readonly whenReady: () => Promise<void>;
  readonly addRecentDocument: (path: string) => void;
  readonly quit: () => void;
}

export interface WindowPart {
  readonly webContents: ContentsPart;
  readonly once: (event: 'ready-to-show', listener: () => void) => unknown;
  readonly on: {
    (event: 'close', listener: () => void): unknown;
    (event: 'closed', listener: () => void): unknown;
  };
  readonly loadURL: (url: string) => Promise<void>;
  readonly show: () => void;
  readonly focus: () => void;
  readonly restore: () => void;
  readonly maximize: () => void;
  readonly close: () => void;
  readonly isMinimized: () => boolean;
  readonly isMaximized: () => boolean;
  readonly getNormalBounds: () => Rectangle;
}

export interface ContentsPart {
  readonly on: {
    (event: 'will-navigate', listener: (navigation: Navigation) => void): unknown;
    (event: 'will-frame-navigate', listener: (navigation: Navigation) => void): unknown;
    (event: 'will-redirect', listener: (navigation: Navigation) => void): unknown;
    (event: 'will-attach-webview', listener: (event: Preventable) => void): unknown;
    (
      event: 'render-process-gone',
      listener: (event: unknown, details: { readonly reason: string }) => void,
    ): unknown;
  };
  readonly setWindowOpenHandler: (
    handler: (details: { readonly url: string }) => { readonly action: 'deny' },
  ) => void;
  readonly send: (channel: string, value: unknown) => void;
  readonly reload: () => void;
}

export interface SessionPart {
  readonly setPermissionRequestHandler: (
    handler: (contents: unknown, permission: string, answer: (granted: boolean) => void) => void,
  ) => void;
  readonly setPermissionCheckHandler: (handler: () => boolean) => void;
  readonly setDevicePermissionHandler: (handler: () => boolean) => void;
  readonly setSpellCheckerEnabled: (isEnabled: boolean) => void;
  readonly on: (
    event: 'will-download',
    listener: (event: Preventable, item: { readonly getURL: () => string }) => void,
  ) => unknown;
  readonly webRequest: {
    readonly onBeforeRequest: (
      listener: (
        details: { readonly url: string },
        answer: (response: { readonly cancel: boolean }) => void,
      ) => void,
    ) => void;
  };
}

/** A call as it comes from a page: who sent it. */
export interface CallEvent {
  readonly sender: unknown;
  readonly senderFrame: { readonly url: string; readonly parent: unknown } | null;
}

interface DialogPart<W> {
  readonly showOpenDialog: (
    window: W,
    options: OpenDialogOptions,
  ) => Promise<{ readonly canceled: boolean; readonly filePaths: string[] }>;
  readonly showMessageBox: (window: W, options: MessageBoxOptions) => Promise<{ readonly response: number }>;
}
