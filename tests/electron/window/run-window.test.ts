import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { MenuItemConstructorOptions } from 'electron';
import { afterAll, describe, expect, it } from 'vitest';
import { CAUTIONS } from '../../../core/debrief/cautions.ts';
import { EVENTS_CHANNEL } from '../../../electron/window/page-bridge.ts';
import { runWindow } from '../../../electron/window/run-window.ts';
import { Happening, StandIn } from './stand-in.ts';
import { hostIn, itemOf, makeFolder, removeFolders, start, type Started } from './started-window.ts';

afterAll(removeFolders);

const GIVEN = ['halfdot:event', { kind: 'given' }];
const names = ({ given }: Started) => given.list().map(({ name }) => name);
const soon = () => new Promise((resolve) => setTimeout(resolve));

describe('files', () => {
  it('of the command line are given, also those of a second start, which goes no further', async () => {
    const started = await start({ words: ['a.csv', '--inspect', '/b.gpx', ''] });
    expect(names(started)).toEqual(['a.csv', 'b.gpx']);
    expect(started.electron.lockData).toEqual({ files: [resolve('/logs/a.csv'), resolve('/b.gpx')] });
    expect(started.electron.recent).toEqual([resolve('/logs/a.csv'), resolve('/b.gpx')]);

    const second = new StandIn();
    second.isFirst = false;
    await runWindow(second.parts(), hostIn(makeFolder(), { words: ['c.csv'] }));
    expect(second.did).toEqual(['sandbox', 'lock', 'quit']);
    started.window.isSmall = true;
    started.electron.app.emit('second-instance', {}, ['electron', '--x'], '/', second.lockData);
    expect(names(started)).toEqual(['a.csv', 'b.gpx', 'c.csv']);
    expect(started.window.webContents.sent).toEqual([GIVEN]);
    expect(started.window.did.slice(1)).toEqual(['restore', 'focus']);
  });

  it('are none in what a second start says otherwise; the window comes to the front all the same', async () => {
    const started = await start();
    for (const data of [null, 'a.csv', { files: 'a.csv' }, { files: [7] }])
      started.electron.app.emit('second-instance', {}, ['a.csv'], '/', data);
    expect(names(started)).toEqual([]);
    expect(started.window.webContents.sent).toEqual([]);
    expect(started.window.did).toContain('focus');
  });

  it('that the system opens are given, before there is a window and afterwards', async () => {
    const electron = new StandIn();
    const host = hostIn(makeFolder());
    const running = runWindow(electron.parts(), host);
    const early = new Happening();
    electron.app.emit('open-file', early, '/early.csv');
    expect(electron.recent).toEqual([]);
    electron.makeReady();
    await running;
    electron.app.emit('open-file', new Happening(), '/late.csv');
    await soon();
    expect(early.wasPrevented).toBe(true);
    expect(host.given.list().map(({ name }) => name)).toEqual(['early.csv', 'late.csv']);
    expect(electron.recent).toEqual(['/early.csv', '/late.csv']);
    expect(electron.windows[0]!.webContents.sent).toEqual([GIVEN]);
  });

  it('are chosen in a dialog; none where it is cancelled', async () => {
    const started = await start();
    const click = () => itemOf(started, 'File', 'Open…').click!(null as never, undefined, null as never);
    click();
    await soon();
    expect(names(started)).toEqual([]);
    started.electron.chosen = ['/c.csv', '/d.csv'];
    click();
    await soon();
    expect(names(started)).toEqual(['c.csv', 'd.csv']);
    expect(started.electron.asked[0]).toMatchObject({ properties: ['openFile', 'multiSelections'] });
    expect(started.window.webContents.sent).toEqual([GIVEN]);
  });
});

const outline = ({ electron }: Started) =>
  electron.menu.map(({ label, role, submenu }) => [
    label ?? role,
    ...((submenu ?? []) as MenuItemConstructorOptions[]).flatMap((item) => item.label ?? item.role ?? []),
  ]);

describe('the menu', () => {
  it('is the native one', async () => {
    expect(outline(await start())).toEqual([
      ['File', 'Open…', 'Print…', 'close', 'quit'],
      ['Edit', 'undo', 'redo', 'cut', 'copy', 'paste', 'selectAll'],
      ['View', 'resetZoom', 'zoomIn', 'zoomOut', 'togglefullscreen'],
      ['Help', 'Cautions'],
    ]);
    const [app, file] = outline(await start({ platform: 'darwin' }));
    expect(app).toEqual(['appMenu']);
    expect(file).toEqual(['File', 'Open…', 'Open Recent', 'Print…', 'close']);
  });

  it("shows the developer's tools to developers alone", async () => {
    const unpacked = await start({}, { isPackaged: false });
    expect(outline(unpacked)[2]).toContain('toggleDevTools');
    expect(unpacked.window.options.webPreferences!.devTools).toBe(true);
    expect((await start()).window.options.webPreferences!.devTools).toBe(false);
  });

  it('prints, and shows every caution', async () => {
    const started = await start();
    itemOf(started, 'File', 'Print…').click!(null as never, undefined, null as never);
    // The page is asked for its paper: printing it as it stands would print the app.
    expect(started.window.webContents.sent).toEqual([[EVENTS_CHANNEL, { kind: 'print' }]]);
    expect(started.window.webContents.did).toEqual([]);
    itemOf(started, 'Help', 'Cautions').click!(null as never, undefined, null as never);
    for (const caution of CAUTIONS)
      expect((started.electron.asked[0] as { detail: string }).detail).toContain(caution);
  });
});

describe('the window', () => {
  it('is shown when there is something to see, and ends the program when it is closed', async () => {
    const { window, electron } = await start();
    expect(window.options.show).toBe(false);
    window.events.emit('ready-to-show');
    expect(window.did).toEqual(['load halfdot://app/', 'show']);
    window.events.emit('closed');
    electron.app.emit('window-all-closed');
    expect(electron.did.at(-1)).toBe('quit');
    // What comes after that finds no window, and harms nothing.
    electron.app.emit('second-instance', {}, [], '/', { files: ['/a.csv'] });
    expect(window.webContents.sent).toEqual([]);
  });

  it("keeps what is the runtime's apart from what is the user's", async () => {
    const { electron, userFolder } = await start();
    expect(electron.paths).toEqual({ userData: join(userFolder, 'window') });
  });

  it('stands where it stood, and as large', async () => {
    const folder = makeFolder();
    const { window, userFolder } = await start({}, {}, folder);
    window.bounds = { x: 100, y: 50, width: 1000, height: 700 };
    window.isLarge = true;
    window.events.emit('close');
    expect(JSON.parse(readFileSync(join(userFolder, 'window.json'), 'utf8'))).toEqual({
      format: 'halfdot-window/1',
      ...window.bounds,
      isMaximized: true,
    });
    const again = await start({}, {}, folder);
    expect(again.window.options).toMatchObject(window.bounds);
    again.window.events.emit('ready-to-show');
    expect(again.window.did.slice(1)).toEqual(['maximize', 'show']);
  });

  it.each([
    'no JSON',
    '{}',
    '{"format":"halfdot-window/1","x":0,"y":0,"width":-5,"height":700,"isMaximized":false}',
    '{"format":"halfdot-window/1","x":1e300,"y":0,"width":900,"height":700,"isMaximized":false}',
  ])('is as at first where what was kept is %s', async (text) => {
    const folder = makeFolder();
    mkdirSync(join(folder, 'user'));
    writeFileSync(join(folder, 'user', 'window.json'), text);
    const { window } = await start({}, {}, folder);
    expect(window.options).toMatchObject({ x: 320, y: 90, width: 1280, height: 860 });
  });

  it('asks what to do when its page has broken down', async () => {
    const { window, electron } = await start();
    window.webContents.events.emit('render-process-gone', {}, { reason: 'clean-exit' });
    expect(electron.asked).toEqual([]);
    window.webContents.events.emit('render-process-gone', {}, { reason: 'crashed' });
    await soon();
    expect(window.webContents.did).toEqual(['reload']);
    electron.button = 1;
    window.webContents.events.emit('render-process-gone', {}, { reason: 'oom' });
    await soon();
    expect(window.did.at(-1)).toBe('close');
  });
});
