import { spawnSync } from 'node:child_process';
import { closeSync, existsSync, openSync, readFileSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { BENCH_FACILITY, benchLog } from './bench-log.ts';
import { sideBySide } from './measure.ts';
import { assert, timedRow, type Row } from './rows.ts';

/** Debian's own: its packages python3-pandas and python3-pyproj are for no other. */
const PYTHON = '/usr/bin/python3';
const FIXES = 300_000;
const ROUNDS = 3;
/** Design, section 4: what independent computations of one angle agree within. */
const SAME_DEG = 1e-6;

/**
 * The deviations of 300,000 fixes, whole process and CSV written, over a script of pandas and pyproj that computes the
 * same; both answers are compared first. Null where that script cannot run.
 */
export async function deviationsOverPeer(
  folder: string,
  command: string,
  script: string,
): Promise<Row | null> {
  const asked = spawnSync(PYTHON, ['-c', 'import pandas, pyproj'], { encoding: 'utf8' });
  if (asked.status !== 0 || !existsSync(script)) return null;
  const [log, facility] = [join(folder, 'peer.csv'), join(folder, 'peer.json')];
  const file = openSync(log, 'w');
  for (const block of benchLog(FIXES, 10)) writeSync(file, block);
  closeSync(file);
  writeFileSync(facility, JSON.stringify(BENCH_FACILITY));
  const [ours, theirs] = [join(folder, 'ours.csv'), join(folder, 'theirs.csv')];
  const runOurs = () => {
    const out = openSync(ours, 'w');
    const words = [command, 'deviations', log, '--facility', facility];
    const { status } = spawnSync(process.execPath, words, { stdio: ['ignore', out, 'ignore'] });
    closeSync(out);
    assert(status === 0, `the command ended with ${status}`);
  };
  const runTheirs = () => {
    const { status, stderr } = spawnSync(PYTHON, [script, log, facility, theirs], { encoding: 'utf8' });
    assert(status === 0, stderr);
  };
  const result = await sideBySide(ROUNDS, runOurs, runTheirs);
  const farthestDeg = farthestApart(ours, theirs);
  assert(farthestDeg <= SAME_DEG, `angles are ${farthestDeg} degrees apart`);
  const what = 'deviations of 300,000 fixes with CSV written, over a script of pandas and pyproj';
  const row = timedRow(what, 0.5, result);
  return { ...row, detail: `${row.detail}; angles at most ${farthestDeg.toExponential(1)} degrees apart` };
}

/** The largest difference of the two angles in two files of deviations, in degrees. */
function farthestApart(one: string, other: string): number {
  const [ours, theirs] = [one, other].map((path) => readFileSync(path, 'utf8').trimEnd().split('\n'));
  assert(ours!.length === FIXES + 1 && theirs!.length === FIXES + 1, 'fixes are missing');
  assert(ours![0] === theirs![0], 'other columns');
  const columns = ['localizerDeg', 'glidepathDeg'].map((name) => ours![0]!.split(',').indexOf(name));
  let farthestDeg = 0;
  for (let i = 1; i < ours!.length; i++) {
    const [a, b] = [ours![i]!.split(','), theirs![i]!.split(',')];
    for (const column of columns)
      farthestDeg = Math.max(farthestDeg, Math.abs(Number(a[column]) - Number(b[column])));
  }
  return farthestDeg;
}
