import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT, sourceFiles } from './source-files.ts';

/** What asks another machine for something, and who of ours may use it: for this machine alone. */
const ASKING: readonly (readonly [what: RegExp, who: readonly string[]])[] = [
  [/\bfetch\(['"`/]/, ['renderer/state/host.ts']],
  [
    /from 'node:(https?|http2|net|tls|dgram|dns)'/,
    ['electron/loopback/server.ts', 'electron/loopback/policy.ts'],
  ],
  [/XMLHttpRequest|WebSocket|EventSource|sendBeacon|WebTransport|RTCPeerConnection|importScripts/, []],
  [/\bhttps?:\/\/(?!127\.0\.0\.1|\$\{own\}|www\.w3\.org\/|www\.topografix\.com\/)/, []],
];

describe('no machine is asked for anything', () => {
  const files = ['core', 'electron', 'renderer'].flatMap((room) => sourceFiles(room));

  it('by anything that is written here', () => {
    expect(files.length).toBeGreaterThan(500);
    const asking = files.flatMap(({ path, text }) => {
      const code = text.replaceAll(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '');
      return ASKING.filter(([what, who]) => what.test(code) && !who.includes(path)).map(
        ([what]) => `${path}: ${what}`,
      );
    });
    expect(asking).toEqual([]);
  });

  // Only who may take a network away can see what is done without.
  const canBeAlone = spawnSync('unshare', ['-n', 'true']).status === 0;
  it.skipIf(!canBeAlone)('by the command, which does all of its work where there is no network', () => {
    const alone = ['-n', process.execPath, join(ROOT, 'dist', 'halfdot.js')];
    const debrief = ['debrief', 'samples/first-approach.csv', '--facility', 'samples/petrelholm-ils-07.json'];
    const { status, stdout, stderr } = spawnSync('unshare', [...alone, ...debrief], {
      cwd: ROOT,
      encoding: 'utf8',
    });
    expect(status, stderr).toBe(0);
    expect(stdout).toContain('Petrelholm ILS 07');
  });
});
