import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Papa from 'papaparse';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Debrief } from '../../../core/debrief/debrief.ts';
import { loadGeoid } from '../../../core/earth/geoid.ts';
import { ROOT } from '../../house/source-files.ts';
import { runCommand } from './run-command.ts';

const sample = (name: string) => join(ROOT, 'samples', name);
const AT_PETRELHOLM = ['--facility', sample('petrelholm-ils-07.json')];
const SAID = ['--target-airspeed', '90', '--runway', 'seen'];

async function asData(...words: string[]): Promise<Debrief> {
  return JSON.parse((await runCommand('debrief', ...words, ...AT_PETRELHOLM, '--format', 'json')).answer);
}

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'halfdot-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('halfdot debrief --standard', () => {
  it('judges by the instrument rating unless told otherwise, and by what it is told', async () => {
    const log = sample('went-around.csv');
    expect((await asData(log)).standard.id).toBe('instrument-rating');
    const { standard, approaches } = await asData(log, '--standard', 'skill-test');
    expect(standard.id).toBe('skill-test');
    const localizer = approaches[0]!.criteria.find(({ id }) => id === 'localizer-final');
    expect(localizer).toMatchObject({ limit: 0.5, unit: 'full scale', sourceStatus: 'published' });
  });

  it("reads a user's own, and judges its own criteria", async () => {
    const own = join(folder, 'ours.json');
    writeFileSync(
      own,
      JSON.stringify({
        format: 'halfdot-standard/1',
        id: 'ours',
        title: 'Ours',
        source: 'our training plan',
        basedOn: 'instrument-rating',
        own: [{ id: 'no-climb', title: 'No climb', quantity: 'verticalSpeedFpm', lower: null, upper: 0 }],
      }).replace('"lower":null,', ''),
    );
    const debrief = await asData(sample('went-around.csv'), '--standard', own);
    expect(debrief.standard).toMatchObject({ id: 'ours', tasks: [] });
    expect(debrief.approaches[0]!.criteria.at(-1)).toMatchObject({
      id: 'no-climb',
      unit: 'ft/min',
      upper: 0,
    });
  });

  it('refuses a name that is none, and a file that is not there, in one sentence', async () => {
    const log = sample('went-around.csv');
    const unknown = await runCommand('debrief', log, ...AT_PETRELHOLM, '--standard', 'private-pilot');
    expect(unknown.status).toBe(2);
    expect(unknown.messages[0]).toContain('There is no standard "private-pilot". Use instrument-rating, ');
    const missing = await runCommand('debrief', log, ...AT_PETRELHOLM, '--standard', join(folder, 'no.json'));
    expect(missing.status).toBe(2);
    expect(missing.answer).toBe('');
  });
});

describe('a facility that was drafted from a landing', () => {
  it('judges no log that it was drafted from, and warns in every other debrief until it is confirmed', async () => {
    const log = sample('first-approach.csv');
    const logSha256 = createHash('sha256').update(readFileSync(log)).digest('hex');
    const drafted = join(folder, 'drafted.json');
    const plain = JSON.parse(readFileSync(sample('petrelholm-ils-07.json'), 'utf8')) as object;
    const landing = { logSha256, unconfirmed: ['runway.threshold.elevationFt'] };
    writeFileSync(drafted, JSON.stringify({ ...plain, origin: { landing } }));
    for (const command of ['debrief', 'deviations']) {
      const own = await runCommand(command, log, '--facility', drafted);
      expect(own).toMatchObject({ status: 2, answer: '' });
      expect(own.messages.join()).toContain(
        'Petrelholm ILS 07 was drafted from a landing in this log (first-approach.csv)',
      );
    }
    const other = await runCommand('debrief', sample('went-around.csv'), '--facility', drafted);
    expect(other.status).toBe(0);
    expect(other.answer).toContain(
      'Check the facility first: This facility is a draft from a landing: 1 value',
    );
    expect(other.answer).toContain('Not graded: the facility is a draft from a landing');
    const page = ['--facility', drafted, '--format', 'html'];
    const { answer } = await runCommand('debrief', sample('went-around.csv'), ...page);
    expect(answer).toContain('<strong>Check the facility first.</strong> This facility is a draft');
  });
});

describe('a graded debrief', () => {
  it('says what was stated, and the level with working that adds up', async () => {
    const { status, answer } = await runCommand(
      'debrief',
      sample('tidy-landing.csv'),
      ...AT_PETRELHOLM,
      ...SAID,
    );
    expect(status).toBe(0);
    expect(answer).toContain('Stated: runway in sight at minimums, target airspeed on final 90 kt.');
    expect(answer).toMatch(/^Level [1-5] of 5, .*; score \d+ of 100$/m);
    expect(answer).toContain("This scale is this program's own and no authority's.");
    const points = [...answer.matchAll(/^[●▲].* (\d+\.\d) of (\d+) /gm)];
    const given = points.reduce((sum, [, value]) => sum + Number(value), 0);
    const possible = points.reduce((sum, [, , value]) => sum + Number(value), 0);
    expect(answer).toContain(`Sum: ${Number(given.toFixed(1))} of ${possible} points assessed`);
    expect(answer.split('\n').every((line) => line.length <= 100)).toBe(true);
  });

  it('makes an indicated altitude of pressure altitude with a setting, the stated one before the logged one', async () => {
    const log = join(folder, 'pressure.csv');
    const text = readFileSync(sample('first-approach.csv'), 'utf8');
    writeFileSync(log, text.replace('Indicated Altitude (ft)', 'Pressure Altitude (ft)'));
    const gateAt = ({ approaches }: Debrief) =>
      approaches[0]!.events.find(({ kind }) => kind === 'gate-1000')!;
    const logged = await asData(log);
    expect(logged.log.issues.map(({ code }) => code)).toContain('altitude-indicated-derived');
    expect(gateAt(logged).altitudeSource).toBe('indicated');
    // Set 10 hPa lower, the altimeter shows some 270 ft less, and the gate is passed earlier.
    const [high, low] = [await asData(log, '--qnh', '1013.25'), await asData(log, '--qnh', '1003.25')];
    expect(Date.parse(gateAt(low).utc)).toBeLessThan(Date.parse(gateAt(high).utc) - 20_000);
    expect((await runCommand('debrief', log, ...AT_PETRELHOLM, '--qnh', '27')).status).toBe(2);
  });

  it('takes an altitude of no named kind for what it is stated to be', async () => {
    const text = readFileSync(sample('first-approach.gpx'), 'utf8');
    const asLogged = await asData(sample('first-approach.gpx'));
    const threshold = JSON.parse(readFileSync(sample('petrelholm-ils-07.json'), 'utf8')).runway.threshold;
    const undulationM = (await loadGeoid())(threshold.latDeg, threshold.lonDeg);
    const log = join(folder, 'ellipsoid.gpx');
    writeFileSync(
      log,
      text.replaceAll(/<ele>(.*?)<\/ele>/g, (_, m) => `<ele>${(Number(m) + undulationM).toFixed(4)}</ele>`),
    );
    const { log: about, approaches } = await asData(log, '--altitude-kind', 'ellipsoid');
    expect(about.altitudeReference).toBe('ellipsoid-less-geoid');
    // GPX leaves the kind open, which is said only while it is.
    expect(about.issues.map(({ code }) => code)).toEqual(['heights-from-rollout']);
    const heights = ({ events }: (typeof approaches)[number]) => events.map(({ altitudeFt }) => altitudeFt!);
    for (const [i, heightFt] of heights(asLogged.approaches[0]!).entries())
      expect(heights(approaches[0]!)[i]).toBeCloseTo(heightFt, 2);
  });

  it('takes it for pressure altitude, with a setting and a temperature, as the same under its name', async () => {
    const text = readFileSync(sample('first-approach.csv'), 'utf8')
      .replace('GNSS Altitude (ft MSL)', 'Height above ground (ft)')
      .replace('Altimeter Setting (hPa)', 'Note');
    const air = ['--qnh', '1019', '--temperature', '-10'];
    const [unnamed, named] = [join(folder, 'air.csv'), join(folder, 'named/air.csv')];
    mkdirSync(join(folder, 'named'));
    writeFileSync(unnamed, text.replace('Indicated Altitude (ft)', 'Altitude (ft)'));
    writeFileSync(named, text.replace('Indicated Altitude (ft)', 'Pressure Altitude (ft)'));
    const stated = await asData(unnamed, '--altitude-kind', 'pressure', ...air);
    const known = await asData(named, ...air);
    expect(stated.log).toMatchObject({ altitudeReference: 'indicated' });
    expect(stated.log.issues.map(({ code }) => code)).toEqual([
      'altitude-indicated-corrected',
      'altitude-indicated-derived',
      // It was an indicated altitude: set by 1019 hPa once more it stands 157 ft too high.
      'altimeter-off-on-roll',
    ]);
    expect(stated.approaches).toEqual(known.approaches);
    const unused = await asData(named, '--altitude-kind', 'geometric', ...air);
    expect(unused.log.issues[0]).toMatchObject({ code: 'altitude-kind-unused', severity: 'caution' });
    expect(unused.approaches).toEqual(known.approaches);
  });

  it("takes a phone's heights from the roll, and leaves them as logged when that is asked for", async () => {
    const asLogged = await asData(sample('phone.gpx'), '--heights', 'as-logged');
    expect(asLogged.log.heightCorrectionFt).toBe(0);
    const { log } = await asData(sample('phone.gpx'));
    expect(await asData(sample('phone.gpx'), '--heights', 'from-rollout')).toEqual(
      await asData(sample('phone.gpx')),
    );
    const better = await asData(sample('phone.gpx'), '--receiver', 'augmented');
    expect(better.log).toMatchObject({ heightCorrectionFt: 0, positionError: { receiver: 'augmented' } });
    // Made 35 ft high, by a phone whose own error wanders.
    expect(Math.abs(log.heightCorrectionFt - 35)).toBeLessThan(15);
    expect(log.issues.map(({ code }) => code)).toContain('heights-from-rollout');
    const { status, messages } = await runCommand(
      'debrief',
      sample('phone.gpx'),
      ...AT_PETRELHOLM,
      '--heights',
      'x',
    );
    expect([status, messages.length]).toEqual([2, 1]);
  });

  it("takes the height of the receiver's antenna, six feet when nobody says", async () => {
    const biasFt = ({ approaches }: Debrief) => approaches[0]!.measures.rollout!.heightBiasFt!;
    const usual = await asData(sample('phone.gpx'));
    const said = await asData(sample('phone.gpx'), '--antenna-height', '10');
    expect([usual.log.antennaHeightFt, said.log.antennaHeightFt]).toEqual([6, 10]);
    expect(biasFt(usual) - biasFt(said)).toBeCloseTo(4, 4);
    for (const height of ['-1', '41', 'high', '0x10ft']) {
      const { status, messages } = await runCommand(
        'debrief',
        sample('phone.gpx'),
        ...AT_PETRELHOLM,
        `--antenna-height=${height}`,
      );
      expect([status, messages[0]]).toEqual([
        2,
        `halfdot: --antenna-height is a number from 0 to 40; "${height}" is none.`,
      ]);
    }
  });

  it('guesses no target, no Vref and no sight of the runway', async () => {
    const { approaches } = await asData(sample('tidy-landing.csv'));
    const why = (id: string) => approaches[0]!.criteria.find((criterion) => criterion.id === id);
    expect(why('airspeed-final')).toMatchObject({
      verdict: 'not-assessed',
      why: 'no target airspeed was given',
    });
    expect(why('minimums')).toMatchObject({
      verdict: 'not-assessed',
      why: 'whether the runway was in sight was not stated',
    });
    expect(approaches[0]!.stated).toMatchObject({ conditions: 'not-stated', targetAirspeedKt: null });
  });

  it('shows room that was allowed beside the plain verdict, which counts', async () => {
    const words = [
      sample('unstable-and-continued.csv'),
      '--target-airspeed',
      '90',
      '--allow',
      'airspeed-final=30: a gusty tailwind',
    ];
    const { answer } = await runCommand('debrief', ...words, ...AT_PETRELHOLM);
    expect(answer).toMatch(/▲ not met {6}Airspeed on final/);
    expect(answer).toContain('with 30 kt more allowed for a gusty tailwind: met');
    expect(answer.replaceAll('\n', ' ')).toContain(
      '30 kt more allowed on "Airspeed on final" for a gusty tailwind',
    );
  });

  it('is a table of one line a criterion as CSV, also of several logs and into a folder', async () => {
    const logs = [sample('tidy-landing.csv'), sample('overflight.csv'), sample('went-around.csv')];
    const { answer } = await runCommand('debrief', ...logs, ...AT_PETRELHOLM, ...SAID, '--format', 'csv');
    const { data: cells, errors } = Papa.parse(answer.trimEnd(), { skipEmptyLines: true });
    expect(errors).toEqual([]);
    const [names, ...rows] = cells as string[][];
    const data = rows.map((row) => Object.fromEntries(row.map((cell, i) => [names![i], cell])));
    // Seven criteria an approach; the overflight has none.
    expect(data.map((row) => row['file'])).toEqual([
      ...Array(7).fill('tidy-landing.csv'),
      ...Array(7).fill('went-around.csv'),
    ]);
    const json = await asData(logs[0]!, ...SAID);
    expect(data[2]).toMatchObject({
      criterion: 'localizer-final',
      verdict: 'met',
      upper: '0.75',
      level: String(json.approaches[0]!.grade!.level),
      measured: String(json.approaches[0]!.criteria[2]!.measured),
    });
    const out = join(folder, 'several');
    await runCommand('debrief', ...logs, ...AT_PETRELHOLM, '--format', 'csv', '--out', out);
    expect(readdirSync(out).toSorted()).toEqual([
      'overflight.debrief.csv',
      'tidy-landing.debrief.csv',
      'went-around.debrief.csv',
    ]);
  });

  it('has a sentence for every value that it leaves null', async () => {
    const { approaches } = await asData(sample('first-approach.gpx'));
    let nulls = 0;
    const walk = (value: unknown) => {
      if (Array.isArray(value)) return value.forEach(walk);
      if (value === null || typeof value !== 'object') return;
      const { unknown, ...rest } = value as Record<string, unknown>;
      if (unknown)
        for (const key of Object.keys(unknown)) {
          expect(rest[key]).toBeNull();
          nulls++;
        }
      Object.values(rest).forEach(walk);
    };
    walk(approaches);
    expect(nulls).toBeGreaterThan(10);
    for (const criterion of approaches[0]!.criteria)
      for (const key of ['limit', 'measured', 'timeOutsideS', 'points'] as const)
        if (criterion[key] === null) expect(criterion.unknown[key]).toMatch(/\.$/);
  });
});
