/** A browser that can show the page, how it is called, and a sentence that says which and why. */
export interface Browser {
  readonly why: string;
  command(address: string): readonly [string, ...string[]];
}

const CHROMIUM = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/microsoft-edge',
];

/**
 * What to open the page with: an installed Chromium as a window of its own, else the system's default browser. Null
 * without a display, where nothing can be opened.
 */
export function browserFor(
  env: NodeJS.ProcessEnv,
  platform: NodeJS.Platform,
  exists: (path: string) => boolean,
): Browser | null {
  if (platform === 'win32')
    return {
      why: 'Opened in your browser.',
      command: (address) => ['rundll32', 'url.dll,FileProtocolHandler', address],
    };
  if (platform === 'darwin')
    return { why: 'Opened in your browser.', command: (address) => ['open', address] };
  if (!env['DISPLAY'] && !env['WAYLAND_DISPLAY']) return null;
  const chromium = CHROMIUM.find(exists);
  if (chromium)
    return {
      why: `Opened as a window of ${chromium}, which is installed.`,
      command: (address) => [chromium, `--app=${address}`],
    };
  return { why: 'Opened in your browser.', command: (address) => ['xdg-open', address] };
}
