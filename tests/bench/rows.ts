import { spawnSync } from 'node:child_process';
import { writeFileSync, openSync, writeSync, closeSync, statSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { analyze, debriefLog, defineFacility, type DefinedFacility } from '../../core/analyze.ts';
import { compose, composeDebrief } from '../../core/debrief/compose-debrief.ts';
import { projectTrack } from '../../core/deviation/project-track.ts';
import type { Debrief } from '../../core/debrief/debrief.ts';
import type { Job, LogSource } from '../../core/log/log.ts';
import { BENCH_FACILITY, benchLog, CYCLE_S } from './bench-log.ts';
import { sideBySide, timingOf } from './measure.ts';

export interface Row {
  readonly what: string;
  readonly budget: number;
  readonly ratio: number;
  /** Ratio of each pair, or of each run: least, middle, most. */
  readonly spread: { readonly min: number; readonly median: number; readonly max: number };
  readonly detail: string;
}

/** The avionics that fill a log of a million fixes record ten a second. */
const TEN_HZ = 10;
export const JOB: Job = { progress: () => {}, cancelled: () => false };

export function assert(holds: boolean, what: string): asserts holds {
  if (!holds) throw new Error(`a benchmark computed a wrong answer: ${what}`);
}

export function benchFacility(): DefinedFacility {
  const outcome = defineFacility(JSON.stringify(BENCH_FACILITY), 'bench.json');
  assert(outcome.ok, 'the facility is refused');
  return outcome.value;
}

/** The text in pieces of a megabyte, as a host hands them over. */
export function sourceOf(text: string): LogSource {
  const pieces = function* () {
    for (let at = 0; at < text.length; at += 1 << 20) yield text.slice(at, at + (1 << 20));
  };
  return { name: 'bench.csv', sha256: () => '', size: text.length, chunks: pieces() };
}

function assertDebrief(debrief: Debrief, fixes: number, perSecond: number): void {
  const [approach] = debrief.approaches;
  assert(debrief.log.fixes === fixes, `${debrief.log.fixes} fixes`);
  assert(
    debrief.log.issues.every(({ severity }) => severity !== 'warning'),
    'the log has warnings',
  );
  assert(approach !== undefined, 'no approach');
  assert(
    debrief.approaches.length === Math.ceil(fixes / perSecond / CYCLE_S),
    `${debrief.approaches.length} approaches`,
  );
  const final = approach.segments.find(({ kind }) => kind === 'final');
  // Made with 60 m to each side, a third of full scale near decision altitude, and 8 ft of 20 above and below.
  const largest = final?.localizer?.maxAbsFullScale ?? NaN;
  assert(largest > 0.2 && largest < 0.6, 'the localizer is off');
  assert((final?.glidepath?.maxAbsFullScale ?? NaN) < 0.75, 'the glidepath is off');
}

export function timedRow(what: string, budget: number, result: Awaited<ReturnType<typeof sideBySide>>): Row {
  const { ratio, pairs, work, reference } = result;
  const detail = `${work.median.toFixed(0)} ms over ${reference.median.toFixed(0)} ms`;
  return { what, budget, ratio, spread: pairs, detail };
}

/** Row 1: everything from text to debrief, over parsing the same text with PapaParse and keeping the result. */
export async function pipelineOverParsing(): Promise<Row> {
  const fixes = 300_000;
  const text = [...benchLog(fixes, TEN_HZ)].join('');
  const defined = benchFacility();
  const result = await sideBySide(
    5,
    async () => {
      const debrief = await debriefLog(sourceOf(text), defined, {}, JOB);
      assert(debrief.ok, 'the log is refused');
      assertDebrief(debrief.value, fixes, TEN_HZ);
    },
    () => {
      const parsed = Papa.parse(text, { skipEmptyLines: true });
      assert(parsed.data.length === fixes + 1, 'PapaParse lost a row');
    },
  );
  return timedRow('whole pipeline on 300,000 fixes, over PapaParse with its result kept', 1.0, result);
}

/** Row 2: from track to debrief on a million fixes, over filling four columns with sines. */
export async function numbersOverSines(): Promise<Row> {
  const fixes = 1_000_000;
  const defined = benchFacility();
  const material = await analyze(sourceOf([...benchLog(fixes, TEN_HZ)].join('')), defined, {}, JOB);
  assert(material.ok, 'the log is refused');
  const { track } = material.value;
  // With the last flight of a run goes the code that was compiled for its kind, and each run compiled it anew: the time
  // of that is measured by the row of the command. One short flight stays.
  const kept = await analyze(sourceOf([...benchLog(CYCLE_S, 1)].join('')), defined, {}, JOB);
  assert(kept.ok, 'the short log is refused');
  const keptAt = compose(kept.value).sittings[0]!.flown;
  const result = await sideBySide(
    15,
    () => {
      const deviations = projectTrack(track, defined.geometry);
      assertDebrief(composeDebrief({ ...material.value, deviations }), fixes, TEN_HZ);
    },
    () => {
      const columns = [0, 1, 2, 3].map(() => new Float64Array(fixes));
      for (const column of columns) for (let i = 0; i < fixes; i++) column[i] = Math.sin(i / 1000);
      assert(Math.abs(columns[3]![1000]! - Math.sin(1)) < 1e-12, 'a sine is wrong');
    },
  );
  assert(keptAt.track.count === CYCLE_S, 'the short flight is gone');
  return timedRow(
    'deviations, approaches and verdicts of 1,000,000 fixes, over four columns of sines',
    8,
    result,
  );
}

/** Row 3: the command on two hours at 1 Hz, over a Node.js that does nothing. */
export async function commandOverNothing(folder: string, command: string): Promise<Row> {
  const log = join(folder, 'two-hours.csv');
  const facilityFile = join(folder, 'bench.json');
  writeFileSync(log, [...benchLog(7200, 1)].join(''));
  writeFileSync(facilityFile, JSON.stringify(BENCH_FACILITY));
  const node = (...words: string[]) => spawnSync(process.execPath, words, { encoding: 'utf8' });
  const words = [command, 'debrief', log, '--facility', facilityFile, '--format', 'json'];
  let answer = '';
  const result = await sideBySide(
    15,
    () => {
      const { status, stdout } = node(...words);
      assert(status === 0, `the command ended with ${status}`);
      answer = stdout;
    },
    () => assert(node('-e', '0').status === 0, 'node -e 0 failed'),
  );
  // Reading the answer is no part of giving it.
  assertDebrief(JSON.parse(answer) as Debrief, 7200, 1);
  return timedRow('debrief command on a 2-hour 1 Hz log, over node -e 0', 2.5, result);
}

/** Row 4: peak memory of the deviations command's work on a million fixes, over the size of the text. */
export function memoryOverText(folder: string, self: string): Row {
  const log = join(folder, 'million.csv');
  const facilityFile = join(folder, 'bench.json');
  const file = openSync(log, 'w');
  for (const block of benchLog(1_000_000, TEN_HZ)) writeSync(file, block);
  closeSync(file);
  writeFileSync(facilityFile, JSON.stringify(BENCH_FACILITY));
  const bytes = statSync(log).size;
  const peaks = [1, 2, 3].map(() => {
    const words = [self, '--peak-memory', log, '--facility', facilityFile];
    const { status, stderr } = spawnSync(process.execPath, words, { encoding: 'utf8', maxBuffer: 1 << 28 });
    assert(status === 0, `the debrief of a million fixes ended with ${status}: ${stderr}`);
    return Number(/peak (\d+) kB/.exec(stderr)?.[1]) * 1024;
  });
  const spread = timingOf(peaks.map((peak) => peak / bytes));
  return {
    what: 'peak memory for a 1,000,000-fix log, over the size of the text',
    budget: 4,
    ratio: spread.median,
    spread,
    detail: `${(timingOf(peaks).median / 1e6).toFixed(0)} MB over ${(bytes / 1e6).toFixed(0)} MB`,
  };
}
