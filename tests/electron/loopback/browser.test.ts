import { describe, expect, it } from 'vitest';
import { browserFor } from '../../../electron/loopback/browser.ts';

const ADDRESS = 'http://127.0.0.1:1/#token';
const SCREEN = { DISPLAY: ':0' };
const nothing = () => false;

describe('the browser that shows the page', () => {
  it('is an installed Chromium, as a window of its own', () => {
    const browser = browserFor(SCREEN, 'linux', (path) => path === '/usr/bin/chromium')!;
    expect(browser.command(ADDRESS)).toEqual(['/usr/bin/chromium', `--app=${ADDRESS}`]);
    expect(browser.why).toContain('/usr/bin/chromium');
  });

  it("is the system's own where there is none", () => {
    expect(browserFor(SCREEN, 'linux', nothing)!.command(ADDRESS)).toEqual(['xdg-open', ADDRESS]);
    expect(browserFor({ WAYLAND_DISPLAY: 'w' }, 'linux', nothing)!.command(ADDRESS)[0]).toBe('xdg-open');
    expect(browserFor({}, 'darwin', nothing)!.command(ADDRESS)).toEqual(['open', ADDRESS]);
    expect(browserFor({}, 'win32', nothing)!.command(ADDRESS)[0]).toBe('rundll32');
  });

  it('is none without a display: the address is printed', () =>
    expect(browserFor({}, 'linux', () => true)).toBeNull());

  it('is said, in one line', () => {
    for (const platform of ['linux', 'darwin', 'win32'] as const) {
      const { why } = browserFor(SCREEN, platform, nothing)!;
      expect(why).not.toContain('\n');
      expect(why).toMatch(/^Opened .*\.$/);
    }
  });
});
