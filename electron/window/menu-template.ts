import type { MenuItemConstructorOptions } from 'electron';

interface MenuActions {
  readonly open: () => void;
  readonly print: () => void;
  readonly showCautions: () => void;
}

/** The window's menu, as the system has it. What concerns a debrief stands in the page, where both hosts show it. */
export function menuTemplate(
  platform: NodeJS.Platform,
  isPackaged: boolean,
  actions: MenuActions,
): MenuItemConstructorOptions[] {
  const isMac = platform === 'darwin';
  const recent: MenuItemConstructorOptions = {
    label: 'Open Recent',
    role: 'recentDocuments',
    submenu: [{ role: 'clearRecentDocuments' }],
  };
  return [
    ...(isMac ? [{ role: 'appMenu' } as const] : []),
    {
      label: 'File',
      submenu: [
        { label: 'Open…', accelerator: 'CmdOrCtrl+O', click: actions.open },
        // Elsewhere the system lists them itself, or nowhere.
        ...(isMac ? [recent] : []),
        { type: 'separator' },
        { label: 'Print…', accelerator: 'CmdOrCtrl+P', click: actions.print },
        { type: 'separator' },
        { role: 'close' },
        ...(isMac ? [] : [{ role: 'quit' } as const]),
      ],
    },
    {
      label: 'Edit',
      submenu: [
        { role: 'undo' },
        { role: 'redo' },
        { type: 'separator' },
        { role: 'cut' },
        { role: 'copy' },
        { role: 'paste' },
        { role: 'selectAll' },
      ],
    },
    {
      label: 'View',
      submenu: [
        { role: 'resetZoom' },
        { role: 'zoomIn' },
        { role: 'zoomOut' },
        { type: 'separator' },
        { role: 'togglefullscreen' },
        ...(isPackaged ? [] : [{ role: 'toggleDevTools' } as const]),
      ],
    },
    { label: 'Help', role: 'help', submenu: [{ label: 'Cautions', click: actions.showCautions }] },
  ];
}
