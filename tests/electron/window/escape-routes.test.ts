import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { gateTo } from '../../../electron/bridge/gate.ts';
import { CALLS_CHANNEL } from '../../../electron/window/page-bridge.ts';
import type { CallEvent } from '../../../electron/window/electron-parts.ts';
import { Happening, StandInContents } from './stand-in.ts';
import { removeFolders, start, type Started } from './started-window.ts';

let started: Started;
beforeEach(async () => {
  started = await start();
});
afterAll(removeFolders);

const asked = (method: string, url: string) => started.electron.serve!(new Request(url, { method }));

describe('a page that wants out', () => {
  it.each([
    'https://elsewhere.example/',
    'http://127.0.0.1:80/',
    'file:///etc/passwd',
    'halfdot://elsewhere/',
    'halfdot://app/other.html',
    'halfdot://app@elsewhere/',
    'halfdot://somebody@app/',
    'data:text/html,<script>1</script>',
    'about:blank',
  ])('navigates to %s in vain', (url) => {
    for (const event of ['will-navigate', 'will-frame-navigate', 'will-redirect']) {
      const navigation = new Happening(url);
      started.window.webContents.events.emit(event, navigation);
      expect([event, navigation.wasPrevented]).toEqual([event, true]);
    }
  });

  it('may be loaded again', () => {
    const again = new Happening('halfdot://app/');
    started.window.webContents.events.emit('will-navigate', again);
    expect(again.wasPrevented).toBe(false);
  });

  it('has a link to the web opened by the system, never with a name or password in it', () => {
    started.window.webContents.events.emit('will-navigate', new Happening('https://elsewhere.example/a'));
    for (const who of ['me:secret', 'me', ':secret']) {
      const url = `https://${who}@elsewhere.example/`;
      started.window.webContents.events.emit('will-navigate', new Happening(url));
    }
    started.window.webContents.events.emit(
      'will-frame-navigate',
      new Happening('https://elsewhere.example/b'),
    );
    started.window.webContents.events.emit('will-redirect', new Happening('https://elsewhere.example/c'));
    expect(started.electron.opened).toEqual(['https://elsewhere.example/a']);
  });

  it('is kept in wherever its contents were made, not in the window alone', () => {
    const other = new StandInContents();
    started.electron.app.emit('web-contents-created', {}, other);
    expect(other.openWindow({ url: 'about:blank' })).toEqual({ action: 'deny' });
    expect(other.events.heard()).toEqual(
      started.window.webContents.events.heard().filter((name) => name !== 'render-process-gone'),
    );
  });

  it.each([
    ['https://elsewhere.example/', true],
    ['http://127.0.0.1/', true],
    ['wss://elsewhere.example/', true],
    ['file:///etc/passwd', true],
    ['blob:https://elsewhere.example/1', true],
    ['halfdot://elsewhere/', true],
    ['halfdot://somebody@app/', true],
    ['halfdot://:secret@app/', true],
    ['halfdot://app/assets/a.js', false],
    ['blob:halfdot://app/1', false],
    ['data:image/svg+xml,x', false],
  ])('asks for %s: cancelled %j', (url, cancel) => {
    let answer: unknown;
    started.electron.session.request({ url }, (response) => (answer = response));
    expect(answer).toEqual({ cancel });
  });

  it.each([
    ['data:application/json,%7B%7D', false],
    ['blob:halfdot://app/0b1f', false],
    ['blob:halfdot://app.elsewhere/0b1f', true],
    ['blob:https://elsewhere.example/0b1f', true],
    ['data:text/html,x', true],
    ['https://elsewhere.example/a.exe', true],
    ['halfdot://app/assets/a.js', true],
  ])('saves %s: prevented %j', (url, isPrevented) => {
    const saving = new Happening();
    started.electron.session.events.emit('will-download', saving, { getURL: () => url });
    expect(saving.wasPrevented).toBe(isPrevented);
  });

  it('has no spelling checked, whose word lists come from a server', () => {
    expect(started.electron.session.spellChecker).toBe(false);
    expect(started.window.options.webPreferences!.spellcheck).toBe(false);
  });
});

describe("the page's scheme", () => {
  it('gives the files of the page, by their types', async () => {
    const page = asked('GET', 'halfdot://app/');
    expect([page.status, page.headers.get('content-type'), await page.text()]).toEqual([
      200,
      'text/html; charset=utf-8',
      '<!doctype html>',
    ]);
    expect(await asked('GET', 'halfdot://app/assets/a.js?v=1#x').text()).toBe('1');
  });

  it.each([
    ['GET', 'halfdot://app/../secret.js'],
    ['GET', 'halfdot://app/%2e%2e/secret.js'],
    ['GET', 'halfdot://app/..%2fsecret.js'],
    ['GET', 'halfdot://app/assets/..%5c..%5csecret.js'],
    ['GET', 'halfdot://app/assets/..\\..\\secret.js'],
    ['GET', 'halfdot://app//secret.js'],
    ['GET', 'halfdot://app/assets'],
    ['GET', 'halfdot://elsewhere/assets/a.js'],
    ['POST', 'halfdot://app/assets/a.js'],
  ])('gives nothing to %s %s', async (method, url) => {
    const answer = asked(method, url);
    expect([answer.status, await answer.text()]).toEqual([404, '']);
  });
});

describe('a call', () => {
  const call = (event: CallEvent, ...said: unknown[]) =>
    started.electron.channels[CALLS_CHANNEL]!(event, ...said);
  const own = (): CallEvent => ({
    sender: started.window.webContents,
    senderFrame: { url: 'halfdot://app/', parent: null },
  });

  it('of the page goes to the gate, and its answer back', async () => {
    expect(await call(own(), 'notes', {})).toEqual({ ok: true, value: 7 });
    expect(started.calls).toEqual([['notes', {}]]);
  });

  it.each<[string, () => CallEvent]>([
    ['another page', () => ({ ...own(), senderFrame: { url: 'https://elsewhere.example/', parent: null } })],
    ['a file', () => ({ ...own(), senderFrame: { url: 'file:///app/', parent: null } })],
    [
      'a host of a like name',
      () => ({ ...own(), senderFrame: { url: 'halfdot://app.elsewhere/', parent: null } }),
    ],
    ['a frame within the page', () => ({ ...own(), senderFrame: { url: 'halfdot://app/', parent: {} } })],
    ['a frame that is gone', () => ({ ...own(), senderFrame: null })],
    ['the contents of another window', () => ({ ...own(), sender: new StandInContents() })],
    ['no address', () => ({ ...own(), senderFrame: { url: '', parent: null } })],
  ])('of %s is not heard', async (_, event) => {
    expect(await call(event(), 'notes', {})).toEqual({
      ok: false,
      code: 'unknown-call',
      message: 'There is no such call.',
    });
    expect(started.calls).toEqual([]);
  });

  it('of an unknown name or value is refused by the gate, whatever it is', async () => {
    const { electron } = await start({ gate: gateTo({} as never) });
    const [window] = electron.windows;
    const event: CallEvent = {
      sender: window!.webContents,
      senderFrame: { url: 'halfdot://app/', parent: null },
    };
    for (const said of [[], ['eval', '1'], [{}, {}], ['__proto__', {}], [null]])
      expect(await electron.channels[CALLS_CHANNEL]!(event, ...said)).toMatchObject({ code: 'unknown-call' });
    for (const said of [['notes'], ['notes', 7], ['readGiven', { token: '/etc/passwd', path: 'x' }]])
      expect(await electron.channels[CALLS_CHANNEL]!(event, ...said)).toMatchObject({ code: 'bad-value' });
  });
});
